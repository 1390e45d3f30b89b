"""Gauges that speak by a way of their own: a line, a folder."""
