"""Kept safe: backup, the owner's data, a job's file, the key, the clock."""
