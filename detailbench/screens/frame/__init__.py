"""The parts of the one window round the map and the card."""
