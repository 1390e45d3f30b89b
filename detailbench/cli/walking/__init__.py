"""Walk scripts: a job written down act by act, and the player that carries one out through moves."""
