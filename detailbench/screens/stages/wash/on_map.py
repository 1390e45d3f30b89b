"""What the wash asks of the map: state, cover, paint system, finish groups, panels held back."""

from __future__ import annotations

from collections.abc import Callable

from detailbench.basics.ramp import Hatch
from detailbench.basics.texts import _
from detailbench.findings.panels import outline_of
from detailbench.findings.processes import group_of
from detailbench.findings.state_words import cover_words
from detailbench.findings.states import State, states
from detailbench.record.picture import JobPicture
from detailbench.screens.context import Context
from detailbench.screens.map.colouring import Colouring, PanelFill
from detailbench.screens.stages.wash.words import clean_words, paint_words

CLEAN: dict[str, Hatch] = {"dirty": "dots", "washed": "rising", "decontaminated": "level", "wiped": ""}
COVER: dict[str, Hatch] = {"not_known": "dots", "earlier_coating": "crossed", "protected": "rising", "bare": ""}
PAINT: dict[str, Hatch] = {
    "clear_over_colour": "", "single_stage": "level", "tinted_clear": "rising", "unknown": "dots",
    "matt": "crossed", "filmed": "crossed", "wrapped": "crossed", "bare": "crossed",
}  # fmt: skip
GROUPS: tuple[Hatch, ...] = ("", "rising", "falling", "level", "dots", "crossed")
PICKED = "✓"  # printed on a panel that was taken in


def state_colouring(context: Context, picked: frozenset[str] = frozenset()) -> Colouring:
    """How clean each panel is; a panel taken in carries a tick."""
    words = clean_words()

    def fill(picture: JobPicture, key: str) -> tuple[Hatch, str]:
        clean = states(picture).get(key, State()).clean
        return CLEAN[clean], words[clean]

    return _coloured(context, "state", _("state"), fill, picked)


def cover_colouring(context: Context) -> Colouring:
    """What lies on the paint."""
    words = cover_words() | {"not_known": _("cover not known")}

    def fill(picture: JobPicture, key: str) -> tuple[Hatch, str]:
        cover = states(picture).get(key, State()).cover
        return COVER[cover], words[cover]

    return _coloured(context, "cover", _("cover"), fill)


def paint_colouring(context: Context) -> Colouring:
    """The paint system of each panel's finish group; what nothing abrasive may touch is hatched crosswise."""
    words = paint_words() | {"unknown": _("paint system unknown")}

    def fill(picture: JobPicture, key: str) -> tuple[Hatch, str]:
        group = group_of(picture, key)
        system = group.paint_system if group is not None else "unknown"
        return PAINT[system], words[system]

    made = _coloured(context, "paint", _("paint system"), fill)
    hatches = tuple(dict.fromkeys((h, _("nothing abrasive") if h == "crossed" else says) for h, says in made.hatches))
    return Colouring(made.key, made.title, made.fills, hatches=hatches)


def group_colouring(context: Context) -> Colouring:
    """Which panels share one paint and so one process."""
    picture = context.picture
    hatch_of = {g.id: GROUPS[i % len(GROUPS)] for i, g in enumerate(picture.groups)} if picture is not None else {}

    def fill(picture: JobPicture, key: str) -> tuple[Hatch, str]:
        group = group_of(picture, key)
        return (hatch_of[group.id], _(group.name)) if group is not None else ("", _("in no finish group"))

    return _coloured(context, "group", _("finish groups"), fill)


def held_colouring(context: Context) -> Colouring:
    """Panels a person holds back from any machine."""

    def fill(picture: JobPicture, key: str) -> tuple[Hatch, str]:
        hold = next((h for h in picture.holds if h.panel == key and not h.lifted), None)
        return ("crossed", _("held back: {reason}").format(reason=hold.reason)) if hold is not None else ("", "")

    made = _coloured(context, "held", _("held back"), fill)
    held = any(f.hatch for f in made.fills.values())
    return Colouring(made.key, made.title, made.fills, hatches=(("crossed", _("held back")),) if held else ())


def _coloured(
    context: Context,
    key: str,
    title: str,
    fill: Callable[[JobPicture, str], tuple[Hatch, str]],
    picked: frozenset[str] = frozenset(),
) -> Colouring:
    """Every panel by its hatch and words; the legend lists those in use, the plain one too."""
    fills: dict[str, PanelFill] = {}
    used: dict[tuple[Hatch, str], None] = {}
    if context.picture is not None:
        for panel in outline_of(context.picture).panels:
            hatch, says = fill(context.picture, panel)
            used.setdefault((hatch, says), None)
            spoken = _("{says}, taken in").format(says=says) if panel in picked else says
            fills[panel] = PanelFill(None, hatch, PICKED if panel in picked else "", spoken)
    return Colouring(key, title, fills, hatches=tuple(used))
