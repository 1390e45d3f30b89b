"""Shop: people, gauges, foils, lamps, kit, range, settings, the screen."""
