"""What a trial's technique can be: plain bounds, so that a slip of the hand is said where it is typed. Common practice,
no source; a panel's size is that of its drawing along the curve."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from detailbench.basics.numbers import format_number, format_quantity
from detailbench.basics.texts import _
from detailbench.basics.workings import is_finite
from detailbench.body.names import panel_name
from detailbench.findings.kit_names import parts
from detailbench.findings.panels import outline_of
from detailbench.record.picture import JobPicture
from detailbench.record.things import Combination
from detailbench.trials.technique import FORCE_N

MOST_FORCE_N = 300.0
MOST_SECONDS = 3600.0
MOST_PASSES = 200
LEAST_SIDE_MM = 10.0
MOST_NOTE = 5000  # a pasted page is kept as typed
MOST_BATCH = 200
SIDES = ("section_w_mm", "section_h_mm")


def technique_unfit(
    picture: JobPicture, panel: str, combination: Combination, values: Mapping[str, Any]
) -> tuple[str, str] | None:
    """(field, the sentence) of the first value no trial on this panel with this combination can have; else None."""
    for name in SIDES:
        unfit = _side_unfit(picture, panel, name, values)
        if unfit:
            return name, unfit
    dial, force = values.get("dial"), values.get("force_word")
    machine, _pad, _product = parts(picture.shop, combination)
    positions = [position for position, _per_min in machine.dials]
    if isinstance(dial, str) and dial and positions and dial not in positions:
        text = _("This machine's dial has no position “{dial}”: {known}.")
        return "dial", text.format(dial=dial[:20], known=", ".join(_(position) for position in positions))
    if isinstance(force, str) and force and force not in FORCE_N:
        return "force_word", _("The force is light, moderate or firm, or weighed in newtons.")
    return _number_unfit(values) or _text_unfit(values)


def section_unfit(picture: JobPicture, panel: str, values: Mapping[str, Any]) -> str:
    """Why a section of these sides cannot be laid out on the panel; empty where it can, or a side is not known."""
    return next(filter(None, (_side_unfit(picture, panel, name, values) for name in SIDES)), "")


def _side_unfit(picture: JobPicture, panel: str, name: str, values: Mapping[str, Any]) -> str:
    """Why a side of the section cannot be; it may lie either way round on the panel."""
    side = values.get(name)
    drawn = outline_of(picture).panels.get(panel)
    if not is_finite(side) or side is None or drawn is None:
        return ""
    if side < LEAST_SIDE_MM:
        text = _("A section's side is at least {least}.")
        return text.format(least=format_quantity(LEAST_SIDE_MM, "mm"))
    long, short = largest_section_mm(picture, panel)
    other = values.get(next(s for s in SIDES if s != name))
    most = short if is_finite(other) and other is not None and other > side else long
    if is_finite(other) and other is not None and other == side:
        most = short
    if side <= most:
        return ""
    text = _("The {panel} is no larger than {long} × {short}.")
    return text.format(
        panel=panel_name(panel), long=format_quantity(long, "mm", 0), short=format_quantity(short, "mm", 0)
    )


def largest_section_mm(picture: JobPicture, panel: str) -> tuple[float, float]:
    """The panel's own size, the longer side first, mm along the curve."""
    drawn = outline_of(picture).panels[panel]
    sides = (drawn.width_mm * drawn.curvature, drawn.height_mm * drawn.curvature)
    return max(sides), min(sides)


def _number_unfit(values: Mapping[str, Any]) -> tuple[str, str] | None:
    for name, most, unit in (("force_n", MOST_FORCE_N, "N"), ("seconds", MOST_SECONDS, "s")):
        value = values.get(name)
        if is_finite(value) and value is not None and value > most:
            return name, _("At most {most} can be entered here.").format(most=format_quantity(most, unit))
    passes = values.get("passes")
    if is_finite(passes) and passes is not None:
        if passes != int(passes):
            return "passes", _("Passes are counted in whole numbers.")
        if passes > MOST_PASSES:
            return "passes", _("At most {most} can be entered here.").format(most=format_number(MOST_PASSES))
    return None


def _text_unfit(values: Mapping[str, Any]) -> tuple[str, str] | None:
    for name, most in (("note", MOST_NOTE), ("batch", MOST_BATCH)):
        value = values.get(name)
        if isinstance(value, str) and len(value) > most:
            return name, text_too_long(len(value), most)
    return None


def text_too_long(letters: int, most: int = MOST_NOTE) -> str:
    """The sentence at a text of more characters than can be kept."""
    text = _("This text has {n} characters; at most {most} are kept here.")
    return text.format(n=format_number(letters), most=format_number(most))
