"""Units of the trade. Lengths inside the program are µm for paint and mm for everything else."""

from __future__ import annotations

UM_PER_MIL = 25.4  # exact: 1 mil = 0.001 inch, 1 inch = 25.4 mm (international inch)


def um_from_mil(mil: float) -> float:
    """Micrometres from thousandths of an inch."""
    return mil * UM_PER_MIL


def mil_from_um(um: float) -> float:
    """Thousandths of an inch from micrometres."""
    return um / UM_PER_MIL
