"""The tests of this folder work in an invented shop, with a few hands for measuring and polishing in it."""

from __future__ import annotations

from invented_findings import Hands, hands
from invented_shop import invented, prepared

__all__ = ["Hands", "hands", "invented", "prepared"]
