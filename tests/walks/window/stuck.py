"""What stops a walk: a control that cannot be found or reached, or a fact that is not on the screen."""

from __future__ import annotations


class Stuck(AssertionError):
    """Says what was looked for and what was there instead."""


class Unusable(Stuck):
    """The control is there and does not answer: how the screen refuses before anything was entered."""
