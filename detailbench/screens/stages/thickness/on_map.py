"""Thickness on the map: each panel's mean beside this car's own, and the places with what was read there."""

from __future__ import annotations

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import NBSP, format_number, format_thickness, format_thickness_change
from detailbench.basics.ramp import Hatch
from detailbench.basics.texts import _
from detailbench.body.panels import Outline
from detailbench.findings.thickness_map import Beside, PanelOnMap, thickness_map
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.map.colouring import Colouring, DrawnPlace, PanelFill
from detailbench.screens.stages.thickness import walk
from detailbench.screens.stages.thickness.survey import Survey

KEY = "thickness_mean"
HATCHES: dict[Beside, Hatch] = {
    "": "",
    "thicker than its twin": "rising",
    "thinner than its twin": "falling",
    "differs from its family": "crossed",
    "look again": "upright",
}
NO_VALUE: Hatch = "dots"


def means(context: Context, survey: Survey | None) -> Colouring:
    """Each panel's mean, printed; the ramp tells it from what is usual on this car, never what is good; the hatch tells
    it from its twin, the figure under the mean by how much."""
    title = _("thickness: mean of each panel, beside this car's own")
    if survey is None:
        return Colouring(KEY, title)
    seen = {key: survey.latest(key) for key in context.outline.panels}
    found = thickness_map({k: s.figures.mean_um for k, s in seen.items() if s.figures is not None}, survey.odd)
    fills = {key: _fill(survey, key, found.of(key)) for key in seen}
    used = {f.hatch for f in fills.values()}
    meanings: tuple[tuple[Hatch, str], ...] = (
        ("rising", _("thicker than its twin, by the figure")),
        ("falling", _("thinner than its twin, by the figure")),
        ("crossed", _("differs from its family")),
        ("upright", _("look again")),
        (NO_VALUE, _("no value")),
    )
    has = any(f.share is not None for f in fills.values())
    return Colouring(
        KEY,
        title,
        fills,
        format_thickness_change(-found.span_um, digits=0) if has else "",
        _("{much} from this car's own").format(much=format_thickness_change(found.span_um, digits=0)) if has else "",
        tuple(m for m in meanings if m[0] in used),
    )


def _fill(survey: Survey, key: str, here: PanelOnMap) -> PanelFill:
    seen, finding = survey.latest(key), survey.finding(key)
    if seen.figures is None:
        if seen.no_value:
            return PanelFill(None, NO_VALUE, "", _("no value: not measurable"))
        return PanelFill(says=_("not measured"))
    mean = seen.figures.mean_um
    says = _("mean {mean} of {n} places").format(
        mean=format_thickness(mean, digits=0), n=format_number(seen.figures.places)
    )
    if seen.corrected:
        says += ", " + seen.corrected
    if not seen.confirmed:
        says += ", " + _("not confirmed")
    if finding is not None and finding.sentence and (here.beside or finding.verdict == "two groups"):
        says += ". " + finding.sentence
    text = format_thickness(mean, digits=0, with_unit=False)
    return PanelFill(here.share, HATCHES[here.beside], text, says, _by(here))


def _by(here: PanelOnMap) -> str:
    """``+120``, with a question mark while more places are wanted."""
    if here.twin_um is None:
        return ""
    by = format_thickness_change(here.twin_um, digits=0).partition(NBSP)[0]
    return _("{by}?").format(by=by) if here.look_again else by


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
        for place in (*walk.places_of(picture, outline, key), *walk.references_of(picture, key)):
            try:
                x, y = walk.on_drawing(panel, place.at)
            except BadInput:
                continue  # another body style has other edges: the place is listed, not drawn
            last = place.last
            state = "due" if last is None else "none" if last.value_um is None else "flagged" if last.flags else "read"
            drawn = DrawnPlace(key, place.number, x, y, state, reference=place.reference)  # type: ignore[arg-type]
            out.append(drawn)  # its state is one of the four
    return tuple(out)
