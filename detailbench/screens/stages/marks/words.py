"""Marks in words for the screen."""

from __future__ import annotations

from detailbench.basics.numbers import format_number, format_quantity
from detailbench.basics.texts import _
from detailbench.body.edges import EdgePosition
from detailbench.findings.mark_results import MarkResult
from detailbench.findings.state_words import state_words
from detailbench.marks.catalogue import kind as kind_of
from detailbench.marks.intents import Intent
from detailbench.marks.severity import depth_words, severity_words
from detailbench.marks.words import lamp_name
from detailbench.record.things import Lamp, Mark
from detailbench.screens.stages.marks.open_mark import scale_of


def position_of(mark: Mark) -> EdgePosition | None:
    """Where the record says it is; None for a mark all over the panel."""
    known = (mark.edge_a_mm, mark.edge_b_mm, mark.panel_w_mm, mark.panel_h_mm)
    if any(value is None for value in known):
        return None
    a, b, w, h = (float(v) for v in known if v is not None)
    return EdgePosition(mark.edge_a, a, mark.edge_b, b, w, h)


def where(mark: Mark) -> str:
    """Its place in words."""
    at = position_of(mark)
    return _("all over the panel") if at is None else at.phrase()


def lamp_words(lamp: Lamp | None) -> str:
    """A lamp by its name, and its kind where the name does not say it."""
    if lamp is None:
        return _("lamp not stated")
    if lamp_name(lamp.kind).casefold() in _(lamp.name).casefold():
        return _(lamp.name)
    return _("{name} ({kind})").format(name=_(lamp.name), kind=lamp_name(lamp.kind))


def severity_line(mark: Mark) -> str:
    """``severity 3: moderately many``, and the depth where it was judged."""
    kind = kind_of(mark.kind)
    parts = [
        _("severity {n}: {words}").format(
            n=format_number(mark.severity), words=severity_words(mark.severity, scale_of(kind))
        )
    ]
    if mark.depth is not None:
        parts.append(_("depth {n}: {words}").format(n=format_number(mark.depth), words=depth_words(mark.depth)))
    return ", ".join(parts)


def short(mark: Mark) -> str:
    """``swirl marks 3``, ``stone chip 2, depth 4``."""
    text = f"{kind_of(mark.kind).name} {format_number(mark.severity)}"
    return text if mark.depth is None else _("{mark}, depth {n}").format(mark=text, n=format_number(mark.depth))


def measures(mark: Mark) -> str:
    """Length and number, where they were taken."""
    parts = []
    if mark.length_mm is not None:
        parts.append(format_quantity(mark.length_mm, "mm", 0))
    if mark.count is not None:
        parts.append(_("{n} counted").format(n=format_number(mark.count)))
    return ", ".join(parts)


def in_list(result: MarkResult, lamp: Lamp | None) -> str:
    """A mark as its line in the list, two rows."""
    mark = result.mark
    first = f"{result.kind.name} · {severity_line(mark)}"
    second = [intent_words(mark.intent), where(mark), measures(mark), lamp_words(lamp), state_words(mark)]
    if result.after is not None:
        now = _("now {n}: {says} ({state})").format(
            n=format_number(result.after.severity), says=result.says, state=state_words(result.after)
        )
        second.insert(0, now)
    return first + "\n" + " · ".join(part for part in second if part)


def intent_words(intent: str) -> str:
    return Intent(intent).label
