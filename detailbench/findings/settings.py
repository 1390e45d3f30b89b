"""The shop's settings with their defaults, each marked with where the default comes from."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from detailbench.basics.errors import RecordTrouble
from detailbench.basics.numbers import format_quantity
from detailbench.basics.texts import _
from detailbench.basics.workings import COMMON_PRACTICE
from detailbench.findings.settings_bounds import setting_unfit
from detailbench.record.picture import ShopPicture


@dataclass(frozen=True)
class Default:
    """A setting: its words, unit and default. ``value`` None means empty until the shop types it."""

    key: str
    says: str
    value: Any
    unit: str = ""
    source: str = COMMON_PRACTICE


PAGE_SIZES = ("A4", "Letter")
# settings that are one of a few words
ONE_OF: Mapping[str, tuple[str, ...]] = {
    "unit": ("um", "mil"),
    "page_size": PAGE_SIZES,
    "adviser_stop": ("prove", "thrift"),
    "change_first": ("compound", "pad"),
}
WALK_TURNS = ("left", "right")
SHOP_ONLY = ("undercoats_um", "undercoats_u_um")  # for the shop's picture of a clear coat, which never leaves the shop
FROM_MEMORY = "from memory, after Streitberger & Dössel 2008: layers as a factory lays them"

DEFAULTS: Mapping[str, Default] = {
    d.key: d
    for d in (
        Default("shop_name", "name of the workshop, as printed", ""),
        Default("shop_address", "address of the workshop, as printed", ""),
        Default("plausible_low_um", "readings below are kept and flagged", 30.0, "µm"),
        Default("plausible_high_um", "readings above are kept and flagged", 2000.0, "µm"),
        Default("careful_below_um", "total thickness below which work goes on with care", None, "µm"),
        Default("leave_below_um", "total thickness below which no machine starts", None, "µm"),
        Default("reserve_um", "clear coat that must stay, where a layer gauge measured it", None, "µm"),
        Default("largest_share", "largest share of the clear coat that may ever come off, 0.3 for 30 %", None),
        Default("most_risk", "largest chance of going below the reserve at a place, 0.05 for 5 %", 0.05),
        Default(
            "undercoats_um", "all layers below the clear coat, assumed for the shop's picture", 69.0, "µm", FROM_MEMORY
        ),
        Default("undercoats_u_um", "standard uncertainty of that assumption", 8.0, "µm", FROM_MEMORY),
        Default("walk_from", "panel the walk round the car begins at", "bonnet"),
        Default("walk_turn", "side of the car the walk takes first: left or right", "left"),
        Default("usual_scatter_um", "usual scatter between the panels of one car", 7.0, "µm"),
        Default("usual_load_path_j_m2", "load × path of the shop's usual technique", None, "J/m²"),
        Default("trial_min", "minutes a trial on a fresh place takes", 8.0, "min"),
        Default("refine_min", "minutes a refining trial on top takes", 6.0, "min"),
        Default("milder_worth_min", "minutes one milder combination is worth on a car, first step", 6.0, "min"),
        Default("milder_worth_second_min", "minutes one milder combination is worth, second step", 3.0, "min"),
        Default(
            "nothing_min", "minutes it costs to find nothing that serves; empty: two steps and an hour", None, "min"
        ),
        Default("adviser_stop", "where trials stop: prove (the mildest is shown) or thrift (fewest minutes)", "prove"),
        Default("misjudged_percent", "how often “cleared” is judged wrongly", 10.0, "%"),
        Default("finish_misjudged_dark_percent", "how often a finish is judged wrongly on dark paint", 10.0, "%"),
        Default("finish_misjudged_mid_percent", "the same on paint of medium lightness", 10.0, "%"),
        Default("finish_misjudged_light_percent", "the same on light paint, where haze hardly shows", 20.0, "%"),
        Default("paint_to_paint_percent", "scatter of what comes off from paint to paint", 40.0, "%"),
        Default("change_first", "what is changed first when more is needed: compound or pad", "compound"),
        Default("mild_start_thin", "trials start at the mild end on thin paint; 0 is off", 1.0),
        Default("mild_start_unreadable", "trials start at the mild end on paint no gauge can read; 0 is off", 1.0),
        Default(
            "mild_start_irreplaceable", "trials start at the mild end on paint that cannot be replaced; 0 is off", 1.0
        ),
        Default("prime_s", "priming a fresh or cleaned pad", 20.0, "s"),
        Default("spread_s", "spreading before the passes of a trial", 20.0, "s"),
        Default("wipe_s", "wiping after the passes of a trial", 30.0, "s"),
        Default("wait_s", "wait before the panel wipe and the look", 120.0, "s"),
        Default("panel_wipe_s", "panel wipe and look", 30.0, "s"),
        Default("second_lamp_s", "look under the second lamp; 0 leaves it out", 30.0, "s"),
        Default("refinish_recent_days", "days a refinish counts as recent", 90.0, "d"),
        Default("force_light_n", "light force, machine's weight in it, flat panel", 20.0, "N"),
        Default("force_moderate_n", "moderate force, the same", 40.0, "N"),
        Default("force_firm_n", "firm force, the same", 60.0, "N"),
        Default("start_below_c", "no trial starts on a panel warmer than this", 30.0, "°C"),
        Default("stop_metal_c", "a metal panel is left to cool at this temperature", 50.0, "°C"),
        Default("stop_plastic_c", "a plastic panel is left to cool at this temperature", 45.0, "°C"),
        Default("unit", "unit thickness is shown in", "um"),
        Default("page_size", "paper the documents are set on", "A4"),
        Default("currency", "currency of prices", "EUR"),
        Default("minute_price", "price of one minute of work", None),
        Default("touch_factor", "true millimetres per millimetre on the screen, set with a ruler", 1.0),
        Default("sound_volume", "how loud the four sounds are; 0 is off", 60.0, "%"),
        Default("watched_folder", "folder whose readings files are offered by themselves", ""),
    )
}


def setting(shop: ShopPicture, key: str) -> Any:
    """What the shop set, else the default. A value kept by an older program that cannot be is as if not set
    (``kept_unfit`` says so): a card must open all the same."""
    kept = _kept(shop, key)
    return DEFAULTS[key].value if kept is None or setting_unfit(key, kept[0]) else kept[0]


def whose(shop: ShopPicture, key: str) -> str:
    """Where the value in force comes from, in words: the shop's own, or what its default says of itself."""
    kept = _kept(shop, key)
    if kept is None or setting_unfit(key, kept[0]):
        default = DEFAULTS[key]
        return _(default.source)
    return _("the shop's own setting")


def kept_unfit(shop: ShopPicture, key: str) -> str:
    """The sentence where a value is kept that cannot be and another is used; empty where none is."""
    kept, default = _kept(shop, key), DEFAULTS[key]
    unfit = "" if kept is None else setting_unfit(key, kept[0])
    if not unfit or kept is None:
        return ""
    text = _("Kept here is {value}, which cannot be used. {why} Until it is changed {default} is used.")
    used = _("nothing") if default.value is None else format_quantity(default.value, default.unit)
    return text.format(value=format_quantity(kept[0], default.unit), why=unfit, default=used)


def all_kept_unfit(shop: ShopPicture) -> str:
    """The same of every setting, with what it is for."""
    found = ((d, kept_unfit(shop, d.key)) for d in DEFAULTS.values())
    return " ".join(_("Setting “{what}”: {why}").format(what=_(d.says), why=why) for d, why in found if why)


def _kept(shop: ShopPicture, key: str) -> tuple[Any] | None:
    """(what the shop set), None where it never did."""
    text = shop.setting(key)
    if text is None:
        return None
    try:
        return (json.loads(text),)
    except ValueError as error:
        raise RecordTrouble(
            _("The setting “{setting}” cannot be read: it was changed outside this program.").format(setting=key)
        ) from error


def plausible_range_um(shop: ShopPicture) -> tuple[float, float]:
    """Readings outside this range are kept and flagged; µm."""
    return float(setting(shop, "plausible_low_um")), float(setting(shop, "plausible_high_um"))


def paint_to_paint(shop: ShopPicture) -> float:
    """How what comes off scatters from paint to paint, as a share of the rate."""
    return float(setting(shop, "paint_to_paint_percent")) / 100


def in_force(shop: ShopPicture) -> tuple[tuple[Default, Any], ...]:
    """Every setting with the value in force, for the printed list; not what only the shop's own screen is drawn by."""
    return tuple((d, setting(shop, d.key)) for d in DEFAULTS.values() if d.key not in SHOP_ONLY)
