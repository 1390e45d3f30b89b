"""The Marks stage: what is seen on each panel under which lamp, and the photographs of it."""
