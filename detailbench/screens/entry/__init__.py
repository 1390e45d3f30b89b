"""Fields and choosers made for gloves, dim light and a gauge that types."""
