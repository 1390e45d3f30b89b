"""What a setting of the shop can be. Plain bounds, common practice, no source: beyond them no figure could be worked
out, or a panel would be hurt before the program warns."""

from __future__ import annotations

from collections.abc import Mapping

from detailbench.basics.numbers import format_number, format_quantity
from detailbench.basics.texts import _
from detailbench.basics.workings import is_finite

ABOVE_ZERO = frozenset(
    {
        "careful_below_um", "leave_below_um", "usual_scatter_um", "touch_factor", "reserve_um", "largest_share",
        "most_risk", "undercoats_um", "undercoats_u_um", "paint_to_paint_percent",
    }
)  # fmt: skip
BELOW: Mapping[str, float] = {"largest_share": 1.0, "most_risk": 0.5}
# how often something is judged wrongly: never, or as often as not, cannot be worked with
MISJUDGED_PERCENT = (1.0, 49.0)
WITHIN: Mapping[str, tuple[float, float, str]] = {
    "stop_metal_c": (30.0, 90.0, "°C"),
    "stop_plastic_c": (30.0, 90.0, "°C"),
    "start_below_c": (5.0, 60.0, "°C"),
    "force_light_n": (1.0, 300.0, "N"),
    "force_moderate_n": (1.0, 300.0, "N"),
    "force_firm_n": (1.0, 300.0, "N"),
    "paint_to_paint_percent": (1.0, 300.0, "%"),
    "trial_min": (0.0, 600.0, "min"),
    "refine_min": (0.0, 600.0, "min"),
    **{
        key: (0.0, 3600.0, "s") for key in ("prime_s", "spread_s", "wipe_s", "wait_s", "panel_wipe_s", "second_lamp_s")
    },
    **{
        key: (*MISJUDGED_PERCENT, "%")
        for key in (
            "misjudged_percent", "finish_misjudged_dark_percent", "finish_misjudged_mid_percent",
            "finish_misjudged_light_percent",
        )
    },
}  # fmt: skip


def setting_unfit(key: str, value: object) -> str:
    """Why a number cannot be the value of a setting, in a sentence; empty where it can, and for what is no number."""
    if not is_finite(value) or isinstance(value, bool) or not isinstance(value, int | float):
        return ""
    if key in ABOVE_ZERO and value == 0:
        return _("That must be more than nothing.")
    if key in BELOW and value >= BELOW[key]:
        text = _("A share is typed like 0.05 for five in a hundred; here it lies below {most}.")
        return text.format(most=format_number(BELOW[key]))
    low, high, unit = WITHIN.get(key, (value, value, ""))
    if not low <= value <= high:
        text = _("That lies between {low} and {high}.")
        return text.format(low=format_number(low), high=format_quantity(high, unit))
    return ""
