"""What a person calls the quantities of the calculations: sentences name them so, never by an inner name."""

from __future__ import annotations

from detailbench.basics.texts import _

UNITS = ("_j_m2", "_m_s2", "_m_s", "_um", "_mm", "_m2", "_min", "_percent", "_s", "_c", "_n")


def called(name: str) -> str:
    """``patch_a_mm`` as "one side of the section"; what has no words of its own here, its name without unit."""
    words = {
        # trials
        "force_n": _("the force"),
        "pad_speed_m_s": _("the pad speed"),
        "seconds": _("the time of the passes"),
        "patch_a_mm": _("the width of the section"),
        "patch_b_mm": _("the height of the section"),
        "pad_mm": _("the diameter of the pad"),
        "working_time_s": _("the working time"),
        "usual_j_m2": _("your usual load × path"),
        "load_path_j_m2": _("the load × path"),
        "arm_m_s": _("the arm speed"),
        "u_um": _("the uncertainty of what came off"),
        "paint_to_paint": _("the scatter from paint to paint"),
        # work
        "panel_m2": _("the area of the panel"),
        "section_m2": _("the area of the section"),
        "overlap": _("the overlap"),
        "spread_s": _("the time to spread"),
        "polish_s": _("the time of the passes"),
        "wipe_s": _("the time to wipe"),
        "pad_care_every": _("the sections between two pads"),
        "pad_care_s": _("the time to clean or change a pad"),
        "setup_s": _("the time to set up"),
        "actual_min": _("the time it took"),
        "planned_min": _("the time planned"),
        "elapsed_min": _("the time so far"),
        "ratios": _("the ratio of taken to planned time"),
        "sections_done": _("the sections done"),
        "discount_percent": _("the discount in percent"),
        "discount": _("the discount"),
        "tax_percent": _("the tax in percent"),
        "declared_m_s2": _("the declared vibration"),
        "k_m_s2": _("the uncertainty K of the vibration"),
        "minutes": _("the minutes"),
        "surface_c": _("the temperature of the surface"),
        # marks
        "severity": _("the severity"),
        "depth": _("the depth"),
        # thickness
        "value_um": _("the certified value"),
        "accuracy_um": _("the accuracy"),
        "u_cal_um": _("the uncertainty of the gauge check"),
        "resolution_um": _("the resolution of the gauge"),
        "chance": _("the chance of error"),
        "confidence": _("the confidence"),
        "share": _("the share of the panel"),
        "largest_share": _("the largest share of the clear coat"),
        "most_risk": _("the most risk taken"),
        "risk_after": _("the risk after the work"),
        "removed_before_um": _("what came off before"),
        "clear_um": _("the clear coat"),
        "layer_um": _("the layer"),
        "total_um": _("the total"),
        "extra_um": _("what lies on the clear coat"),
        "change_um": _("the change to be seen"),
        "readings_per_place": _("the readings at a place"),
        "repeatability_um": _("the repeatability"),
        "reposition_um": _("the scatter of finding a place again"),
        "removal_scatter_um": _("the scatter of what comes off"),
        "power, alpha": _("the certainty asked for"),
        "reading_um": _("the reading"),
        "readings_um": _("the readings"),
        "before_um": _("the readings before"),
        "after_um": _("the readings after"),
        "zero_um": _("the readings on the zero plate"),
        "shim_um": _("the readings on the foil"),
        "shim_before_um": _("the readings on the foil before"),
        "shim_after_um": _("the readings on the foil after"),
        "control_before_um": _("the control readings before"),
        "control_after_um": _("the control readings after"),
        "place_means_um": _("the means of the places"),
        "extra_places_um": _("the extra places"),
    }
    if name in words:
        return words[name]
    unit = next((u for u in UNITS if name.endswith(u)), "")
    return name.removesuffix(unit).replace("_", " ")


def opened(name: str) -> str:
    """The same as the beginning of a sentence."""
    words = called(name)
    return words[:1].upper() + words[1:]
