"""Where in the range the first trial of a finish group starts. Common practice, no source."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.trials.rungs import Range

THICKNESS = ("ordinary", "thin", "unreadable", "irreplaceable")
CURE = ("none", "cured", "unknown", "not_cured")


@dataclass(frozen=True)
class Start:
    """``rung``: index of the combination to try first, or None where nothing may be tried. ``from_mild_end``: the
    paint asks for the mild end, whatever else would be quicker."""

    rung: int | None
    sentence: str
    from_mild_end: bool = False


def where_to_start(
    range_: Range, *, thickness: str = "ordinary", served_before: int | None = None, cure: str = "none"
) -> Start:
    """The first combination to try.

    ``thickness``: ordinary, thin, unreadable or irreplaceable. ``served_before``: the mildest rung that served on
    like paint in the shop's history. ``cure``: none (no recent refinish), cured, unknown, not_cured (under the paint
    maker's stated time). Raises BadInput for an unknown word.
    """
    for name, value, known in (("thickness", thickness, THICKNESS), ("cure", cure, CURE)):
        if value not in known:
            raise BadInput(_("“{value}” is not known here.").format(value=value), field=name, given=value)
    if served_before is not None and not 0 <= served_before < len(range_):
        raise BadInput(_("The combination that served is not in this range."), field="served_before")
    if cure == "not_cured":
        return Start(None, _("Under the paint maker's stated time: nothing but the painter's own finish."))
    allowed = [i for i, seen in enumerate(range_) if seen.usable]
    if not allowed:
        return Start(None, _("No combination of the range may be used here."))
    if thickness != "ordinary" or cure == "unknown":
        return Start(allowed[0], _start_mild(thickness, range_[allowed[0]].rung.label), from_mild_end=True)
    if served_before is not None:
        wanted = served_before
        text = _("Start with {name}: the mildest that served on like paint before.")
    else:
        in_use = [i for i, seen in enumerate(range_) if not seen.retired]
        wanted = in_use[(len(in_use) - 1) // 2]
        text = _("Start with {name}: the middle of the range.")
    # beside a barred one the milder neighbour comes first
    rung = min(allowed, key=lambda i: (abs(i - wanted), i))
    if rung != wanted:
        text = _("Start with {name}: the nearest that may be used here.")
    return Start(rung, text.format(name=range_[rung].rung.label))


def _start_mild(thickness: str, name: str) -> str:
    why = {
        "thin": _("thin paint"),
        "unreadable": _("paint that cannot be read"),
        "irreplaceable": _("paint that cannot be replaced"),
        "ordinary": _("a refinish whose cure is unknown"),
    }[thickness]
    return _("Start with {name}, the mild end: {why}.").format(name=name, why=why)
