"""The settings under headings, and the words of those that are one of a few."""

from __future__ import annotations

from collections.abc import Mapping

from detailbench.basics.texts import _
from detailbench.body.names import panel_name
from detailbench.findings.settings import DEFAULTS, PAGE_SIZES, Default

ELSEWHERE = ("touch_factor",)  # set with a ruler, on a part of its own
BEGINS = ("bonnet", "wing_front_l", "wing_front_r", "door_front_l", "door_front_r", "bumper_front", "tailgate", "roof")


def groups() -> tuple[tuple[str, tuple[Default, ...]], ...]:
    """Heading and its settings, each once; what is named nowhere stands last."""
    named: tuple[tuple[str, tuple[str, ...]], ...] = (
        (_("Documents and prices"), ("shop_name", "shop_address", "page_size", "currency", "minute_price")),
        (
            _("What may come off"),
            ("careful_below_um", "leave_below_um", "reserve_um", "largest_share", "most_risk"),
        ),
        (_("The picture of the clear coat, for the shop only"), ("undercoats_um", "undercoats_u_um")),
        (_("The walk round the car"), ("walk_from", "walk_turn")),
        (
            _("Readings"),
            ("plausible_low_um", "plausible_high_um", "usual_scatter_um", "watched_folder", "unit"),
        ),
        (_("Sound"), ("sound_volume",)),
    )
    known = {key for _title, keys in named for key in keys} | set(ELSEWHERE)
    rest = tuple(d for d in DEFAULTS.values() if d.key not in known)
    made = tuple((title, tuple(DEFAULTS[key] for key in keys)) for title, keys in named)
    return (*made, (_("Trials and work"), rest)) if rest else made


def chosen_words(key: str, now: str = "") -> Mapping[str, str]:
    """Word → how it is said, for a setting that is one of a few; empty for any other. ``now``: what is set."""
    panels = (*BEGINS, *((now,) if now and now not in BEGINS else ()))
    said: Mapping[str, Mapping[str, str]] = {
        "unit": {"um": "µm", "mil": "mil"},
        "page_size": {size: _("Letter") if size == "Letter" else size for size in PAGE_SIZES},
        "walk_from": {key: panel_name(key) for key in panels},
        "walk_turn": {"left": _("left side first"), "right": _("right side first")},
        "adviser_stop": {"prove": _("proving the mildest"), "thrift": _("fewest minutes")},
        "change_first": {"compound": _("compound or polish"), "pad": _("pad")},
    }
    return said.get(key, {})


def title_of(default: Default) -> str:
    """What stands over the field."""
    if default.key == "unit":
        return _("thickness is shown in")
    if default.key == "page_size":
        return _("documents are set on")
    if default.key == "walk_from":
        return _("the walk begins at")
    if default.key == "walk_turn":
        return _("side of the car taken first")
    return f"{_(default.says)}, {default.unit}" if default.unit else _(default.says)
