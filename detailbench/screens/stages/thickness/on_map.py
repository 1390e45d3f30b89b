"""Thickness on the map: each panel's mean beside this car's own, and the places with what was read there."""

from __future__ import annotations

from statistics import median, median_low

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number, format_thickness, format_thickness_change
from detailbench.basics.ramp import Hatch
from detailbench.basics.texts import _
from detailbench.body.panels import Outline
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.map.colouring import Colouring, DrawnPlace, PanelFill
from detailbench.screens.stages.thickness import walk
from detailbench.screens.stages.thickness.survey import Survey
from detailbench.thickness.odd_findings import Finding

KEY = "thickness_mean"
LEAST_SPAN_UM = 20.0  # the ramp is never finer than this, so that noise is not painted as a difference
FEWEST_FOR_A_MIDDLE = 3  # the middle of two panels, one refinished, would make the other one look thin
SPAN_SCATTERS = 4.0


def means(context: Context, survey: Survey | None) -> Colouring:
    """Each panel's mean, printed; the ramp tells it from what is usual on this car, never what is good."""
    title = _("thickness: mean of each panel, beside this car's own")
    if survey is None:
        return Colouring(KEY, title)
    usual, span = _usual(survey)
    fills = {key: _fill(survey, key, usual, span) for key in context.outline.panels}
    used = {f.hatch for f in fills.values()}
    meanings: tuple[tuple[Hatch, str], ...] = (
        ("rising", _("no value")),
        ("crossed", _("differs from twin or family")),
        ("falling", _("look again")),
    )
    shown = span[0] if span else LEAST_SPAN_UM
    has = any(f.share is not None for f in fills.values())
    return Colouring(
        KEY,
        title,
        fills,
        format_thickness_change(-shown, digits=0) if has else "",
        _("{much} of this car's own").format(much=format_thickness_change(shown, digits=0)) if has else "",
        tuple(m for m in meanings if m[0] in used),
    )


def _usual(survey: Survey) -> tuple[dict[str, float], tuple[float, ...]]:
    """Panel → what is usual in its family (µm), and the half width of the ramp."""
    found = survey.odd
    if found is None:
        return {}, ()
    measured = {f.key: f.mean_um for f in found.findings if f.mean_um is not None}
    if not measured:
        return {}, ()
    out, scatters = {}, []
    for family in found.families:
        own = family.own_mean_um
        values = [measured[k] for k in family.keys if k in measured]
        middle = own if own is not None else (median(values) if len(values) >= FEWEST_FOR_A_MIDDLE else None)
        if family.own_scatter_um is not None:
            scatters.append(family.own_scatter_um)
        if middle is not None:
            out.update(dict.fromkeys(family.keys, middle))
    rest = median_low(measured.values())  # of two, the thinner: halfway between them lies neither
    return {k: out.get(k, rest) for k in measured}, (max(LEAST_SPAN_UM, SPAN_SCATTERS * max(scatters, default=0.0)),)


def _fill(survey: Survey, key: str, usual: dict[str, float], span: tuple[float, ...]) -> PanelFill:
    seen, finding = survey.latest(key), survey.finding(key)
    if seen.figures is None:
        if seen.no_value:
            return PanelFill(None, "rising", "", _("no value: not measurable"))
        return PanelFill(says=_("not measured"))
    mean = seen.figures.mean_um
    share = 0.5
    if key in usual and span:
        share = min(max(0.5 + (mean - usual[key]) / (2 * span[0]), 0.0), 1.0)
    says = _("mean {mean} of {n} places").format(
        mean=format_thickness(mean, digits=0), n=format_number(seen.figures.places)
    )
    if seen.corrected:
        says += ", " + seen.corrected
    if not seen.confirmed:
        says += ", " + _("not confirmed")
    if finding is not None and finding.sentence and finding.verdict in ("differs", "look again", "two groups"):
        says += ". " + finding.sentence
    return PanelFill(share, _hatch(finding), format_number(mean, 0), says)


def _hatch(finding: Finding | None) -> Hatch:
    if finding is None:
        return ""
    if finding.verdict == "differs":
        return "crossed"
    return "falling" if finding.verdict == "look again" else ""


def drawn(picture: JobPicture | None, outline: Outline, selected: str) -> tuple[DrawnPlace, ...]:
    """Places of every panel begun, and those proposed for the selected one."""
    if picture is None:
        return ()
    panels = {p.panel for p in picture.places} | ({selected} if selected else set())
    out = []
    for key in panels:
        panel = outline.panels.get(key)
        if panel is None:
            continue
        for place in walk.places_of(picture, outline, key):
            try:
                x, y = walk.on_drawing(panel, place.at)
            except BadInput:
                continue  # another body style has other edges: the place is listed, not drawn
            last = place.last
            state = "due" if last is None else "none" if last.value_um is None else "flagged" if last.flags else "read"
            out.append(DrawnPlace(key, place.number, x, y, state))  # type: ignore[arg-type]  # one of the four
    return tuple(out)
