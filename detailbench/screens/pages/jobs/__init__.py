"""Jobs: the list, a new job, and the first start of an empty workshop."""
