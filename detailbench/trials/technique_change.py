"""What a smaller section, a slower arm or more force does to the rubbing each place gets; and how warm it became."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import digits_apart, format_number, format_quantity
from detailbench.basics.texts import _
from detailbench.basics.workings import COMMON_PRACTICE
from detailbench.trials.load import load_path
from detailbench.trials.technique import STOP_C

Way = Literal["smaller_section", "slower_arm", "more_force"]
SMALLER, SLOWER, MORE = 0.5, 0.5, 1.25  # half the area, half the speed, a quarter more: rounded, common practice


@dataclass(frozen=True)
class TechniqueChange:
    """One change and what each place then gets, as a multiple of now; None with ``sentence`` why not.

    ``beyond_s``: seconds that would lie beyond the compound's working time. ``seconds``, ``patch_a_mm``,
    ``patch_b_mm``, ``force_n``: the technique after the change.
    """

    way: Way
    times_now: float | None
    beyond_s: float
    seconds: float
    patch_a_mm: float
    patch_b_mm: float
    force_n: float
    sentence: str


def technique_changes(
    *,
    force_n: float,
    pad_speed_m_s: float,
    seconds: float,
    patch_a_mm: float,
    patch_b_mm: float,
    pad_mm: float,
    working_time_s: float | None = None,
) -> tuple[TechniqueChange, ...]:
    """Half the section in the same seconds, half the arm speed on the same section, a quarter more force.

    One at a time, all else the same. Empty where the section is hand-led. Raises BadInput as ``load_path`` does.
    """
    now: dict[str, Any] = {
        "force_n": force_n,
        "pad_speed_m_s": pad_speed_m_s,
        "seconds": seconds,
        "patch_a_mm": patch_a_mm,
        "patch_b_mm": patch_b_mm,
        "pad_mm": pad_mm,
        "working_time_s": working_time_s,
    }
    if load_path(**now).load_path_j_m2 is None:
        return ()
    # the longer side gives way; sides are those the pad's centre travels
    side = "patch_a_mm" if patch_a_mm >= patch_b_mm else "patch_b_mm"
    return (
        _change("smaller_section", now, {side: pad_mm + SMALLER * (now[side] - pad_mm)}),
        _change("slower_arm", now, {"seconds": seconds / SLOWER}),
        _change("more_force", now, {"force_n": MORE * force_n}),
    )


def _change(way: Way, now: Mapping[str, Any], changed: Mapping[str, float]) -> TechniqueChange:
    after = {**now, **changed}
    before, then = load_path(**now), load_path(**after)
    times = None
    if then.load_path_j_m2 is not None and before.load_path_j_m2 is not None:
        times = then.load_path_j_m2 / before.load_path_j_m2
    text = {
        "smaller_section": _("Half the section in the same seconds"),
        "slower_arm": _("Half the arm speed on the same section"),
        "more_force": _("A quarter more force"),
    }[way]
    if times is None:
        said = _("{change}: the section would be hand-led, not computed.").format(change=text)
    else:
        said = _("{change}: each place gets {times} times as much rubbing, and warms more.").format(
            change=text, times=format_number(times, 2)
        )
    if then.spent_s > 0:
        beyond = _("{seconds} s lie beyond the working time: they only heat.")
        said = f"{said} {beyond.format(seconds=format_number(then.spent_s, 0))}"
    return TechniqueChange(
        way,
        times,
        then.spent_s,
        after["seconds"],
        after["patch_a_mm"],
        after["patch_b_mm"],
        after["force_n"],
        said,
    )


@dataclass(frozen=True)
class Warmth:
    """Panel temperature before and after against the stop setting; None where not measured. ``reached``: the limit
    was reached, None where the temperature after is not known."""

    rise_c: float | None
    limit_c: float
    margin_c: float | None
    reached: bool | None
    sentence: str


def warmth(
    before_c: float | None,
    after_c: float | None,
    material: str,
    settings: Mapping[str, float] = STOP_C,
    whose: str = "",
) -> Warmth:
    """``whose``: where the stop setting comes from, in words; empty: common practice. Raises BadInput for a material
    other than those of ``settings`` (metal, plastic)."""
    if material not in settings:
        raise BadInput(_("The material is metal or plastic."), field="material", given=material)
    limit = settings[material]
    rise = None if before_c is None or after_c is None else after_c - before_c
    if after_c is None:
        return Warmth(None, limit, None, None, _("Temperature after: not measured."))
    reached = after_c >= limit
    text = (
        _("{t} after: at or above the stop setting of {limit} ({source}).")
        if reached
        else _("{t} after; the stop setting is {limit} ({source}).")
    )
    shown = text.format(
        t=format_quantity(after_c, "°C", digits_apart(after_c, limit)),
        limit=format_quantity(limit, "°C"),
        source=whose or _(COMMON_PRACTICE),
    )
    if rise is None:
        shown = f"{shown} {_('Temperature before: not measured.')}"
    return Warmth(rise, limit, limit - after_c, reached, shown)
