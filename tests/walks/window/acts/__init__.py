"""The acts of a walk as they are done on the screen."""
