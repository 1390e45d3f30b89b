"""History: the journal of the open job in words and its check; the trials of all jobs, searched."""
