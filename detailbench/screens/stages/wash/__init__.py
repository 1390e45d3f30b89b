"""Wash: what the surface is now, its paint, and panels held back."""
