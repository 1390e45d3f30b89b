"""The values of a working in words for the eye. What the ``workings`` command reads and prints stays as it is."""

from __future__ import annotations

import re
from collections.abc import Mapping

from detailbench.basics.numbers import format_number
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain

FIGURES = 5  # significant figures on screen; the exact value stays in the Working
EMPTY: tuple[Plain, ...] = (None, "", [], {})
COUNTED_FROM_0 = ("rung", "on_top", "beneath", "refined_on", "after")  # combinations of a range
_KEY = re.compile(r"[a-z][a-z0-9]*(_[a-z0-9]+)+")

_UNITS = {
    "um": "µm", "mm": "mm", "m2": "m²", "m": "m", "s": "s", "min": "min", "c": "°C", "n": "N", "kg": "kg", "g": "g",
    "pct": "%", "deg": "°", "rpm": "1/min", "j_m2": "J/m²", "m_s": "m/s", "m_s2": "m/s²", "um2": "µm²", "mil": "mil",
}  # fmt: skip


def words(name: str) -> str:
    """A name as it stands in a working, in words."""
    return name.replace("_", " ")


def name_and_unit(name: str) -> tuple[str, str]:
    """``readings_um`` as ("readings", "µm"); a name without unit keeps all of itself."""
    parts = name.split("_")
    for count in (2, 1):
        unit = _UNITS.get("_".join(parts[-count:]))
        if unit and len(parts) > count:
            return " ".join(parts[:-count]), unit
    return words(name), ""


def in_words(name: str, value: Plain) -> tuple[str, str]:
    """What a named value is called and what it is, for the eye: objects a line each, by number; the combinations of a
    range counted from 1."""
    what, unit = name_and_unit(name)
    what = _of_the_range().get(name, what)
    if name in COUNTED_FROM_0:
        return what, _counted(value)
    return what, shown(value, unit)


def _of_the_range() -> dict[str, str]:
    """What the adviser's values are called where their own names are short for it."""
    return {
        "rungs": _("combinations, mildest first"),
        "rung": _("combination"),
        "on_top": _("on top"),
        "stop": _("trials aim at"),
        "trial_min": _("a trial"),
        "refine_min": _("a refining trial on top"),
        "one_step_min": _("the car in one step"),
        "second_step_min": _("a second step"),
        "per_rung_min": _("each stronger one adds"),
        "per_rung_second_min": _("each adds in the second step"),
        "nothing_min": _("finding nothing costs"),
        "before": _("like paint in this shop"),
    }


def shown(value: Plain, unit: str = "") -> str:
    """A plain value with its unit."""
    if isinstance(value, list):
        if any(isinstance(v, dict) for v in value):
            return "\n".join(f"{format_number(i)}: {shown(v)}" for i, v in enumerate(value, 1))
        text = "; ".join(shown(v) for v in value)
    elif isinstance(value, dict):
        text = _object(value)
    elif value is None:
        return "–"
    elif isinstance(value, bool):
        return _("yes") if value else _("no")
    elif isinstance(value, (int, float)):
        text = format_number(float(f"{value:.{FIGURES}g}"))
    else:
        return _word(value)
    return f"{text}\u00a0{unit}" if unit and text else text


def _word(text: str) -> str:
    """A key as words; anything somebody wrote as it stands."""
    known = {"yes": _("yes"), "no": _("no"), "prove": _("proving the mildest"), "thrift": _("fewest minutes")}
    return known.get(text) or (words(text) if _KEY.fullmatch(text) else text)


def _counted(value: Plain) -> str:
    if isinstance(value, list):
        return ", ".join(_counted(v) for v in value)
    return shown(value + 1 if isinstance(value, (int, float)) and not isinstance(value, bool) else value)


def _object(values: Mapping[str, Plain]) -> str:
    """Its values in one line, empty ones left out."""
    if "cleared" in values and "finish_clear" in values:
        return _trial(values)
    if {"cl", "ch", "gl", "gh", "rl"} <= values.keys():
        return _like_paint(values)
    told = (" ".join(in_words(k, v)) for k, v in values.items() if v not in EMPTY)
    return ", ".join(told) or "–"


def _trial(values: Mapping[str, Plain]) -> str:
    """What was seen of a combination, or in a trial."""
    seen = {
        "cleared": {"yes": _("cleared"), "no": _("did not clear")},
        "finish_clear": {"yes": _("finish clear"), "no": _("finish not clear")},
        "refined": {"yes": _("finish clear on top of {cut}"), "no": _("finish not clear on top of {cut}")},
        "trails": {"yes": _("left trails")},
    }
    cut = _("a cut") if values.get("refined_on") in EMPTY else _counted(values["refined_on"])
    found = [said[str(values[k])].format(cut=cut) for k, said in seen.items() if values.get(k) in tuple(said)]
    found = found or [_("nothing seen")]
    if values.get("rung") is not None:
        found.insert(0, _("combination {n}").format(n=_counted(values["rung"])))
    if values.get("beneath") is not None:
        found.append(_("on top of {n}").format(n=_counted(values["beneath"])))
    if values.get("movement"):
        # the trade is read once a working is shown, not with the window
        from detailbench.trials.movement import Movement

        found.append(Movement(str(values["movement"])).label)
    return ", ".join(found)


def _like_paint(values: Mapping[str, Plain]) -> str:
    """What a job before left possible."""
    text = _(
        "mildest that clears {cl} to {ch}, {gl} to {gh} finish clear, haze taken off from {rl} on, likeness: {likeness}"
    )
    counted = {k: _counted(values[k]) for k in ("cl", "ch", "rl")}
    return text.format(**counted, gl=shown(values["gl"]), gh=shown(values["gh"]), likeness=shown(values["likeness"]))
