"""Paint thickness: gauge checks, places, panels, what differs, what changed, and what may be worked.

Plain values in, frozen results out; every result carries its Working. Nothing here knows a screen or a database.
"""
