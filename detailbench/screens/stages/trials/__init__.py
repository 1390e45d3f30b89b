"""Trials by finish group: where to start, one test section at a time, what it says to do next."""
