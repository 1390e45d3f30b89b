"""The core player: carries out a walk script through moves, without a window."""
