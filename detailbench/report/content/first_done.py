"""The first panel done by each process: what came off against what was foreseen."""

from __future__ import annotations

import math

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.first_panel import FirstSeen, first_panels
from detailbench.report.content.blocks import Block, Heading, Para
from detailbench.report.content.figures import bare_thickness, number, thickness, worked
from detailbench.report.content.gathered import Gathered
from detailbench.report.content.parts import Figure, Text, joined, said, traced
from detailbench.report.content.wording import initials, opening
from detailbench.thickness.first_panel import FirstPanel


def first_panel_blocks(g: Gathered) -> tuple[Block, ...]:
    """One line a process; nothing while no first panel was read again."""
    seen = [s for s in first_panels(g.picture) if s.found is not None]
    if not seen:
        return ()
    return (Heading((_("First panel of each process"),)), *(Para(_line(g, s)) for s in seen))


def _line(g: Gathered, seen: FirstSeen) -> Text:
    if seen.found is None:
        return ()
    text = said(
        "{panel}: {sentence}",
        panel=opening(panel_name(seen.panel)),
        sentence=traced(seen.found.sentence, _figures(g, seen.found)),
    )
    if seen.set_aside is None:
        return text
    who = initials(g.picture.shop, seen.set_aside.entered_by)
    return joined([text, said(_("Gone on all the same by decision of {who}; see the rules set aside."), who=who)])


def _figures(g: Gathered, found: FirstPanel) -> list[Figure]:
    """In the order the sentence has them: measured, foreseen, the risk after the work and the shop's most."""
    ref = g.refs.of(found.working)
    out: list[Figure] = []
    for side, interval in (("measured", found.measured_um), ("forecast", found.forecast_um)):
        if interval is None or found.meet is None:
            continue
        low, high = interval
        if side == "measured" or low >= 0:  # a forecast below nought is shown as nought
            out.append(bare_thickness(low, worked(ref, f"{side}_low_um"), 1))
        out.append(thickness(high, worked(ref, f"{side}_high_um"), 1))
    risk, most = found.working.inputs["risk_after"], found.working.inputs["most_risk"]
    if isinstance(risk, float) and isinstance(most, float):
        shown = format_number(_up(100 * risk), 1)
        out.append(Figure(shown, 100 * risk, worked(ref, "risk_after", times=100)))
        out.append(number(round(100 * most, 6), worked(ref, "most_risk", times=100)))
    return out


def _up(percent: float) -> float:
    """As the sentence has it: rounded up, so that it stays true."""
    return math.ceil(10 * percent) / 10
