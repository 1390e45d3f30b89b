"""Arrival: the car as it stands, and what is hoped for."""
