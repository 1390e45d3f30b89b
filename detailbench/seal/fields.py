"""The two signature fields of a closed document, by name. Both are there before the first signature."""

from __future__ import annotations

SEAL_FIELD = "WorkshopSeal"
OWNER_FIELD = "OwnerSignature"

# Room kept in the file for the seal, in bytes; a seal takes about 1,100. The rest stays zero, and is checked.
SEAL_ROOM = 4096

Box = tuple[float, float, float, float]
"""left, low, right, high on the page, in points from its lower left corner."""
