"""Whether a value fits the field it is meant for: the last look before a row is written."""

from __future__ import annotations

import math
from collections.abc import Mapping
from datetime import date, datetime
from typing import Any

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.record.tables import KINDS
from detailbench.record.thing import Thing

EARLIEST, LATEST = 1900, 9000  # years: before there is no car, and at the ends of the calendar no clock can be turned
LARGEST = 2**53 - 1  # whole numbers above it are not the same everywhere (RFC 8785, RFC 7493)


def fit(cls: type[Thing], values: Mapping[str, Any]) -> None:
    """Raise BadInput naming the field for the first value that is not of its field's kind."""
    for name, value in values.items():
        kind, optional = KINDS[cls][name]
        if value is None and optional:
            continue
        sentence = unfit(kind, value)
        if sentence:
            raise BadInput(sentence, field=name, given=value)


def fit_text(name: str, value: object) -> None:
    """Raise BadInput when ``value`` is no text that can be kept."""
    sentence = unfit(str, value)
    if sentence:
        raise BadInput(sentence, field=name, given=value)


def unfit(kind: type, value: object) -> str:
    """Why a value is not of a kind, in a sentence; empty where it is."""
    if kind in (int, float):
        return _unfit_number(kind, value)
    if kind is datetime and isinstance(value, datetime) and value.tzinfo is None:
        return _("A time needs its offset from world time.")
    if isinstance(value, date) and not EARLIEST <= value.year <= LATEST:
        return _("That year cannot be.")
    if kind is date and isinstance(value, datetime):
        return _("A day is expected here, without a time.")
    if kind is tuple and isinstance(value, (tuple, list)):
        return next(filter(None, (unfit(type(v), v) for v in value)), "")
    if not isinstance(value, kind):
        words = {
            str: _("Text is expected here."),
            bool: _("Yes or no is expected here."),
            tuple: _("A list is expected here."),
        }
        return words.get(kind, _("A date or time is expected here."))
    if isinstance(value, str) and not _can_be_kept(value):
        return _("This text holds characters that cannot be kept; type it again.")
    return ""


def _unfit_number(kind: type, value: object) -> str:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return _("That is not a number.")
    if isinstance(value, int):
        return _("That number is too large.") if abs(value) > LARGEST else ""
    if not math.isfinite(value):
        return _("That is not a number.")
    return _("A whole number is expected here.") if kind is int else ""


def _can_be_kept(text: str) -> bool:
    """Half a character (a file name in an unknown coding, say) has no place in any file of ours."""
    try:
        text.encode()
    except UnicodeEncodeError:
        return False
    return True
