"""The tests of this folder work in an invented shop."""

from __future__ import annotations

from invented_shop import invented, prepared

__all__ = ["invented", "prepared"]
