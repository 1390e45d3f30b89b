"""Marks: the catalogue of kinds, severity and depth in words, intents, and the share of marks cleared."""

from detailbench.marks.catalogue import Catalogue, Kind, catalogue, kind, kinds, read_catalogue
from detailbench.marks.intents import Intent, cannot_be_target, first_intent, makes_no_abrasive_zone
from detailbench.marks.share import ShareCleared, share_cleared

__all__ = [
    "Catalogue",
    "Intent",
    "Kind",
    "ShareCleared",
    "cannot_be_target",
    "catalogue",
    "first_intent",
    "kind",
    "kinds",
    "makes_no_abrasive_zone",
    "read_catalogue",
    "share_cleared",
]
