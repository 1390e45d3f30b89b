"""Giving the car back."""
