"""The panel map: the car unfolded in plan, one item a panel, over the geometry of ``body``."""
