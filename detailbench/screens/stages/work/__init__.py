"""The process carried over the car, panel by panel."""
