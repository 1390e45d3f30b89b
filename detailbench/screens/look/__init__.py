"""How it looks: two looks, one palette, one type scale, one spacing table, and the stylesheet made from them."""
