"""The only door that writes: one frozen dataclass per move, done through the Bench."""
