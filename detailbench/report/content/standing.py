"""The standing texts of the documents, read from ``resources/texts/standing.json`` and translated."""

from __future__ import annotations

from detailbench.basics.shelf import data
from detailbench.basics.texts import _
from detailbench.report.content.parts import Sayable, Text, said


def standing(key: str, **parts: Sayable) -> Text:
    """A standing text with its fields filled in. KeyError for a text there is none of."""
    return said(_(str(data("texts", "standing.json")[key])), **parts)
