"""Load × path: how much rubbing one place of a section gets.

Preston 1927: depth worn = K·pressure·speed·time. With pressure = force/pad area, and a middle point under the pad
for the share of the time that its area bears to the section, the pad area cancels: D = F·v·T/A [J/m²]. Nominal:
normal force × path, friction is not in it. A is the area the pad's centre travels, the taped patch less one pad
each way. D holds at least half a pad inside that path: a whole pad inside the patch.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_number
from detailbench.basics.quantity_words import opened
from detailbench.basics.texts import _
from detailbench.basics.workings import Plain, Source, Working

HAND_LED_PADS = 1.2  # a patch no longer than this many pads on one side is led by hand: nothing is computed
PRESTON = Source("Preston 1927, wear = K·pressure·speed·time; section and pad area by own derivation")
FORMULA = "D = F·v·T/pad area × (disc in path/path area); with the disc whole in the path D = F·v·T/path area"


@dataclass(frozen=True)
class LoadPath:
    """``load_path_j_m2`` is None where the section is hand-led. ``spent_s``: seconds beyond the working time."""

    load_path_j_m2: float | None
    section_m2: float | None
    spent_s: float
    working: Working


def load_path(
    *,
    force_n: float,
    pad_speed_m_s: float,
    seconds: float,
    patch_a_mm: float,
    patch_b_mm: float,
    pad_mm: float,
    working_time_s: float | None = None,
) -> LoadPath:
    """Load × path in the middle of a taped patch ``patch_a_mm`` × ``patch_b_mm`` (outer sides).

    Seconds count up to the compound's working time. Priming is not part of ``seconds``. Raises BadInput.
    """
    inputs: dict[str, Plain] = {
        "force_n": _positive("force_n", force_n),
        "pad_speed_m_s": _positive("pad_speed_m_s", pad_speed_m_s),
        "seconds": _positive("seconds", seconds),
        "patch_a_mm": _positive("patch_a_mm", patch_a_mm),
        "patch_b_mm": _positive("patch_b_mm", patch_b_mm),
        "pad_mm": _positive("pad_mm", pad_mm),
        "working_time_s": None if working_time_s is None else _positive("working_time_s", working_time_s),
    }
    counted_s = seconds if working_time_s is None else min(seconds, working_time_s)
    spent_s = seconds - counted_s
    notes = [_("Holds a whole pad and more inside the patch. Nominal: friction and heat are not in it.")]
    if spent_s > 0:
        notes.append(
            _("{seconds} s beyond the working time are spent: they only heat.").format(seconds=format_number(spent_s))
        )
    load: float | None = None
    section_m2: float | None = None
    if min(patch_a_mm, patch_b_mm) <= HAND_LED_PADS * pad_mm:
        notes.append(
            _("Hand-led: a side is no longer than {n} pads, not computed.").format(n=format_number(HAND_LED_PADS))
        )
    else:
        path_a, path_b, pad = ((patch_a_mm - pad_mm) / 1000, (patch_b_mm - pad_mm) / 1000, pad_mm / 1000)
        section_m2 = path_a * path_b
        pad_m2 = math.pi * pad * pad / 4
        share = disc_in_rectangle(pad / 2, path_a / 2, path_b / 2) / pad_m2
        load = force_n * pad_speed_m_s * counted_s / pad_m2 * (share / section_m2 * pad_m2)
    working = Working(
        name="load_path",
        formula=FORMULA,
        inputs=inputs,
        results={"load_path_j_m2": load, "section_m2": section_m2, "counted_s": counted_s, "spent_s": spent_s},
        source=PRESTON,
        changes_with=_("twice the force, speed or time doubles it; half the section doubles it"),
        notes=tuple(notes),
    )
    return LoadPath(load, section_m2, spent_s, working)


@dataclass(frozen=True)
class PanelLoadPath:
    """Mean load × path over a whole panel, J/m², with the range that the panel's area leaves open; ``share``: its
    relative standard uncertainty from that area."""

    load_path_j_m2: float
    low_j_m2: float
    high_j_m2: float
    working: Working
    share: float = 0.0


def load_path_panel(
    *, force_n: float, pad_speed_m_s: float, seconds: float, panel_m2: float, panel_share: float = 0.0
) -> PanelLoadPath:
    """Mean over a panel: F·v·(total seconds)/area. ``panel_share``: the area is known to ± this share (below 1)."""
    for name, value in (
        ("force_n", force_n),
        ("pad_speed_m_s", pad_speed_m_s),
        ("seconds", seconds),
        ("panel_m2", panel_m2),
    ):
        _positive(name, value)
    if not 0 <= panel_share < 1:
        raise BadInput(
            _("The share by which the area may be off lies from 0 to below 1."), field="panel_share", given=panel_share
        )
    mean = force_n * pad_speed_m_s * seconds / panel_m2
    low, high = mean / (1 + panel_share), mean / (1 - panel_share)
    working = Working(
        name="load_path_panel",
        formula="D = F·v·T/panel area, over area·(1 ± share)",
        inputs={
            "force_n": force_n,
            "pad_speed_m_s": pad_speed_m_s,
            "seconds": seconds,
            "panel_m2": panel_m2,
            "panel_share": panel_share,
        },
        results={"load_path_j_m2": mean, "low_j_m2": low, "high_j_m2": high},
        source=PRESTON,
        changes_with=_("the minutes spent on the panel and how well its area is known"),
        notes=(_("A mean: single places get more or less."),),
    )
    return PanelLoadPath(mean, low, high, working, panel_share)


def disc_in_rectangle(radius: float, half_a: float, half_b: float) -> float:
    """Area that a disc and a rectangle about the same middle have in common."""
    reach = min(half_a, radius)
    # under the rectangle's upper side the arc is cut off up to this x, then it runs free
    cut = math.sqrt(max(radius * radius - half_b * half_b, 0.0))
    flat = min(cut, reach)
    return 4 * (flat * half_b + _under_arc(radius, reach) - _under_arc(radius, flat))


def _under_arc(radius: float, x: float) -> float:
    x = min(x, radius)
    return (x * math.sqrt(radius * radius - x * x) + radius * radius * math.asin(x / radius)) / 2


def times_usual(load_path_j_m2: float | None, usual_j_m2: float | None) -> float | None:
    """The load × path as a multiple of the shop's usual; None where either is not known."""
    if load_path_j_m2 is None or usual_j_m2 is None:
        return None
    return load_path_j_m2 / _positive("usual_j_m2", usual_j_m2)


def _positive(name: str, value: float) -> float:
    if not (math.isfinite(value) and value > 0):
        raise BadInput(_("{what} must be a number above zero.").format(what=opened(name)), field=name, given=value)
    return value
