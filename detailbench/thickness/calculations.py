"""The calculations of this room, as the ``workings`` command offers them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from detailbench.basics.calculations import Calculation, Field
from detailbench.basics.workings import Working
from detailbench.thickness.change import change
from detailbench.thickness.gauge import GaugeAccuracy, Shim
from detailbench.thickness.gauge_check import check_gauge
from detailbench.thickness.gloss import gloss_angle, gloss_change, haze_index
from detailbench.thickness.gloss_panel import gloss_panel
from detailbench.thickness.layer_check import check_layer
from detailbench.thickness.odd_findings import PanelMean
from detailbench.thickness.odd_panels import USUAL_SCATTER_UM, odd_panels
from detailbench.thickness.panel import panel
from detailbench.thickness.permission_calculations import PERMISSION_CALCULATIONS
from detailbench.thickness.place import read_place, repeatability, stated_repeatability
from detailbench.thickness.places_needed import places_needed
from detailbench.thickness.smallest_change import smallest_change
from detailbench.thickness.two_point import prove, two_point

Inputs = Mapping[str, Any]

ZERO = Field("zero_um", "raw readings on the zero plate", "numbers", fewest=2)
SHIM = Field("shim_um", "raw readings on the foil", "numbers", fewest=2)
CERTIFIED = Field("certified_um", "the foil's certified thickness", above=0)
FIXED = Field("fixed_um", "fixed part of the gauge's stated accuracy", minimum=0)
SHARE = Field("share", "share of the reading in it, 0.01 for 1 %", required=False, default=0.0, minimum=0)
SCATTER = (
    Field("repeatability_um", "s_r of one reading", minimum=0),
    Field("readings_per_place", "readings at each place", "integer", required=False, default=1, minimum=1),
    Field("reposition_um", "scatter from finding the place again", required=False, default=0.0, minimum=0),
    Field("removal_scatter_um", "scatter of the removal itself", required=False, default=0.0, minimum=0),
)
RESOLUTION = Field("resolution_um", "the gauge's last digit, 0 if not stated", required=False, default=0.0, minimum=0)


def _gauge_check(v: Inputs) -> Working:
    return check_gauge(
        v["zero_um"],
        v["shim_um"],
        shim=Shim(v["certified_um"], v["shim_accuracy_um"]),
        accuracy=GaugeAccuracy(v["fixed_um"], v["share"]),
        zero_accuracy_um=v["zero_accuracy_um"],
        principle=v["principle"],
        temperature_c=v["temperature_c"],
    ).working


def _two_point(v: Inputs) -> Working:
    shim = Shim(v["certified_um"], u_um=v["certified_u_um"])
    return two_point(v["zero_um"], v["shim_um"], shim, v["repeatability_um"]).working(v["reading_um"])


def _two_point_proof(v: Inputs) -> Working:
    first = Shim(v["certified_um"], serial=v["shim_serial"])
    second = Shim(v["second_certified_um"], v["second_accuracy_um"], v["second_serial"])
    line = two_point(v["zero_um"], v["shim_um"], first, v["repeatability_um"])
    return prove(line, v["second_shim_um"], second, GaugeAccuracy(v["fixed_um"], v["share"])).working


def _layer_check(v: Inputs) -> Working:
    return check_layer(
        v["layer_um"],
        reference=Shim(v["certified_um"], v["reference_accuracy_um"]),
        accuracy=GaugeAccuracy(v["fixed_um"], v["share"]),
        temperature_c=v["temperature_c"],
    ).working


def _place(v: Inputs) -> Working:
    """With readings: their place. Without: the repeatability of the session alone."""
    if v["repeatability_from"] is not None:
        known = stated_repeatability(
            v["repeatability_um"], v["repeatability_dof"] or 0, v["repeatability_from"], v["resolution_um"]
        )
    else:
        known = repeatability(v["session_places_um"] or (), v["shim_checks_um"] or (), v["resolution_um"])
    return read_place(v["readings_um"], known).working if v["readings_um"] else known.working


def _odd_panels(v: Inputs) -> Working:
    return odd_panels([PanelMean(**p) for p in v["panels"]], v["usual_scatter_um"]).working


def _places_needed(v: Inputs) -> Working:
    rest = {name: value for name, value in v.items() if name != "change_um"}
    return places_needed(v["change_um"], **rest).working


CALCULATIONS = (
    Calculation(
        "gauge_check",
        "Raw readings on zero plate and foil against the certificate",
        (
            ZERO,
            SHIM,
            CERTIFIED,
            Field("shim_accuracy_um", "± of the foil's certificate", required=False, default=0.0, minimum=0),
            FIXED,
            SHARE,
            Field("zero_accuracy_um", "± of the zero plate", required=False, default=0.0, minimum=0),
            Field(
                "principle",
                "the substrate checked on",
                "text",
                required=False,
                default="steel",
                choices=("steel", "aluminium"),
            ),
            Field("temperature_c", "temperature at the check", required=False),
        ),
        _gauge_check,
    ),
    Calculation(
        "two_point",
        "One reading corrected by zero plate and foil, with the uncertainty of the line",
        (
            Field("reading_um", "raw reading to be corrected"),
            ZERO,
            SHIM,
            CERTIFIED,
            Field("certified_u_um", "standard uncertainty of the foil", required=False, default=0.0, minimum=0),
            Field("repeatability_um", "s_r of one reading; that of the foil readings if left out", required=False),
        ),
        _two_point,
    ),
    Calculation(
        "two_point_proof",
        "A corrected gauge tried on a second foil that took no part",
        (
            ZERO,
            SHIM,
            CERTIFIED,
            Field("shim_serial", "what tells the foil apart", "text", required=False, default=""),
            Field("repeatability_um", "s_r of one reading; that of the foil readings if left out", required=False),
            Field("second_shim_um", "raw readings on the second foil", "numbers", fewest=5),
            Field("second_certified_um", "its certified thickness", above=0),
            Field("second_accuracy_um", "± of its certificate", required=False, default=0.0, minimum=0),
            Field("second_serial", "what tells it apart", "text", required=False, default=""),
            FIXED,
            SHARE,
        ),
        _two_point_proof,
    ),
    Calculation(
        "layer_check",
        "Raw readings of a layer gauge on a reference layer against its certificate",
        (
            Field("layer_um", "raw readings of the reference layer", "numbers", fewest=5),
            Field("certified_um", "the reference's certified thickness", above=0),
            Field("reference_accuracy_um", "± of its certificate", required=False, default=0.0, minimum=0),
            FIXED,
            SHARE,
            Field("temperature_c", "temperature at the check", required=False),
        ),
        _layer_check,
    ),
    Calculation(
        "place",
        "Readings at one place, and the repeatability they are judged by",
        (
            Field("readings_um", "readings at the place", "numbers", required=False),
            Field("repeatability_um", "s_r as already found", required=False, minimum=0),
            Field("repeatability_dof", "its degrees of freedom", "integer", required=False, minimum=0),
            Field(
                "repeatability_from",
                "what s_r was found from; left out: from the lists below",
                "text",
                required=False,
                choices=("places", "shim", "not known"),
            ),
            Field("session_places_um", "readings of the session, one list a place", "number_lists", required=False),
            Field("shim_checks_um", "foil readings of the session, one list a check", "number_lists", required=False),
            RESOLUTION,
        ),
        _place,
    ),
    Calculation(
        "panel",
        "One panel from its place means: middle, scatter, lower bound, one odd place",
        (
            Field("place_means_um", "one mean per place", "numbers", fewest=1),
            Field("extra_places_um", "places a person chose, not in mean and scatter", "numbers", required=False),
            Field("set_aside", "places set aside with a reason", "integer", required=False, default=0, minimum=0),
            Field("places_without_value", "places without a value", "integer", required=False, default=0, minimum=0),
            Field("confidence", "confidence of the statement", required=False, default=0.95, above=0, maximum=0.9999),
            Field("share", "share of the measured field", required=False, default=0.95, above=0, maximum=0.9999),
        ),
        lambda v: (
            panel(
                v["place_means_um"],
                extra_places_um=v["extra_places_um"] or (),
                set_aside=v["set_aside"],
                places_without_value=v["places_without_value"],
                confidence=v["confidence"],
                share=v["share"],
            ).working
        ),
    ),
    Calculation(
        "odd_panels",
        "Panels that differ from their twin and their family",
        (
            Field(
                "panels",
                "the panels of the car",
                "objects",
                fewest=1,
                of=(
                    Field("key", "panel", "text"),
                    Field("mean_um", "panel mean; left out when there is none", required=False),
                    Field("substrate", "steel, aluminium or what it is", "text", required=False, default="steel"),
                    Field(
                        "lie",
                        "how the panel lies",
                        "text",
                        required=False,
                        default="upright",
                        choices=("horizontal", "upright", "low"),
                    ),
                    Field(
                        "surface",
                        "where on the car",
                        "text",
                        required=False,
                        default="outside",
                        choices=("outside", "shut", "underside"),
                    ),
                    Field("twin", "key of the same panel on the other side", "text", required=False, default=""),
                    Field("no_value", "the gauge gave no value", "boolean", required=False, default=False),
                ),
            ),
            Field(
                "usual_scatter_um",
                "the shop's usual panel-to-panel scatter",
                required=False,
                default=USUAL_SCATTER_UM,
                above=0,
            ),
        ),
        _odd_panels,
    ),
    Calculation(
        "change",
        "What was removed between two sessions, with its interval",
        (
            Field("before_um", "place means before", "numbers", fewest=1),
            Field("after_um", "place means after, same places and order", "numbers", fewest=1),
            Field("shim_before_um", "foil readings before", "numbers", required=False),
            Field("shim_after_um", "readings on the same foil after", "numbers", required=False),
            Field("control_before_um", "unpolished control places before", "numbers", required=False),
            Field("control_after_um", "the same control places after", "numbers", required=False),
            Field("repeatability_um", "s_r; that of the foil readings if left out", required=False, minimum=0),
            Field("repeatability_dof", "its degrees of freedom", "integer", required=False, minimum=1),
            Field("u_cal_um", "standard uncertainty of the gauge, a/√3", required=False, minimum=0),
            RESOLUTION,
            Field("confidence", "confidence of the statement", required=False, default=0.95, above=0, maximum=0.9999),
        ),
        lambda v: (
            change(
                v["before_um"],
                v["after_um"],
                shim_before_um=v["shim_before_um"] or (),
                shim_after_um=v["shim_after_um"] or (),
                control_before_um=v["control_before_um"] or (),
                control_after_um=v["control_after_um"] or (),
                repeatability_um=v["repeatability_um"],
                repeatability_dof=v["repeatability_dof"],
                u_cal_um=v["u_cal_um"],
                resolution_um=v["resolution_um"],
                confidence=v["confidence"],
            ).working
        ),
    ),
    Calculation(
        "places_needed",
        "How many places show a change, and the floor the foil readings set",
        (
            Field("change_um", "smallest change to be seen", above=0),
            *SCATTER,
            Field("shim_readings", "foil readings in each session", "integer", required=False, default=10, minimum=2),
            Field("power", "chance of seeing it", required=False, default=0.8, above=0, maximum=0.9999),
            Field(
                "alpha", "chance of seeing one that is not there", required=False, default=0.05, above=0, maximum=0.5
            ),
        ),
        _places_needed,
    ),
    Calculation(
        "smallest_change",
        "The smallest change that could be seen, and the repeatability limit",
        (
            Field("places", "places measured before and after", "integer", minimum=2),
            *SCATTER,
            Field("shim_readings", "foil readings in each session", "integer", required=False, default=10, minimum=0),
            Field("u_cal_um", "standard uncertainty of the gauge, a/√3", required=False, minimum=0),
            Field("power", "chance of seeing it", required=False, default=0.8, above=0, maximum=0.9999),
            Field(
                "alpha", "chance of seeing one that is not there", required=False, default=0.05, above=0, maximum=0.5
            ),
        ),
        lambda v: smallest_change(v["places"], **{k: x for k, x in v.items() if k != "places"}).working,
    ),
    *PERMISSION_CALCULATIONS,
    Calculation(
        "gloss_angle",
        "The angle for gloss, from the reading at 60° before the work",
        (Field("gloss_60_gu", "gloss at 60°", minimum=0),),
        lambda v: gloss_angle(v["gloss_60_gu"]).working,
    ),
    Calculation(
        "gloss_panel",
        "Gloss of a panel before and after, at one angle, over the same places",
        (
            Field("before_gu", "place means before", "numbers", fewest=1),
            Field("after_gu", "place means after, same places and order", "numbers", fewest=1),
            Field("angle_deg", "the angle of both: 20, 60 or 85", "integer"),
        ),
        lambda v: gloss_panel(v["before_gu"], v["after_gu"], v["angle_deg"]).working,
    ),
    Calculation(
        "gloss_change",
        "Gloss after less gloss before, at one angle",
        (
            Field("before_gu", "gloss before", minimum=0),
            Field("before_angle", "its angle: 20, 60 or 85", "integer"),
            Field("after_gu", "gloss after", minimum=0),
            Field("after_angle", "its angle: 20, 60 or 85", "integer"),
        ),
        lambda v: gloss_change(v["before_gu"], v["before_angle"], v["after_gu"], v["after_angle"]).working,
    ),
    Calculation(
        "haze_index",
        "Gloss at 60° less gloss at 20°",
        (Field("gloss_60_gu", "gloss at 60°", minimum=0), Field("gloss_20_gu", "gloss at 20°", minimum=0)),
        lambda v: haze_index(v["gloss_60_gu"], v["gloss_20_gu"]).working,
    ),
)
