"""The car on paper: outlines, panels, edges, where to measure, and the vehicle identification number."""
