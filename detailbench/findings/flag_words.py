"""What is odd about a value, in words: said where it is entered, in the list of places, and by the shell."""

from __future__ import annotations

from detailbench.basics.texts import _


def flag_words(flag: str, gloss: bool = False) -> str:
    """A question a person can answer."""
    if gloss and flag in ("implausible", "zero"):
        return _("More than paint shows; kept.") if flag == "implausible" else _("0 GU? Kept.")
    return {
        "double": _("double? A second value came within 0.8\u00a0s."),
        "unit": _("Did the gauge switch to mil?"),
        "implausible": _("Outside the shop's usual range; kept."),
        "zero": _("0 means bare metal here; no value?"),
    }.get(flag, flag)
