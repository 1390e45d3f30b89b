"""Frozen migrations: each stands for itself and imports nothing of ours."""
