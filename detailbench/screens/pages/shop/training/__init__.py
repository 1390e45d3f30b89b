"""Training: the trials of an ended job gone through again, the next step said before it is shown."""
