"""What may come off, room left, the shop's picture, the first panel: as the ``workings`` command offers them."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any, get_args

from detailbench.basics.calculations import Calculation, Field
from detailbench.basics.errors import BadInput
from detailbench.basics.texts import _
from detailbench.basics.workings import Working
from detailbench.thickness.clear_picture import Undercoats, picture_of
from detailbench.thickness.first_panel import Figure, first_panel
from detailbench.thickness.layer_room import MOST_RISK, ClearLimits, LayerRoom, Removal, layer_room
from detailbench.thickness.permission import (
    Compared,
    Measured,
    OwnerLimits,
    PaintSystem,
    PanelTells,
    ShopTotals,
    what_may_come_off,
)

Inputs = Mapping[str, Any]

RESOLUTION = Field("resolution_um", "the gauge's last digit, 0 if not stated", required=False, default=0.0, minimum=0)
REMOVAL = (
    Field("removal_um", "what is to come off and was not measured yet", required=False, default=0.0, minimum=0),
    Field("u_removal_um", "its standard uncertainty", required=False, default=0.0, minimum=0),
    Field("removal_dof", "its degrees of freedom; left out: not estimated", required=False, above=0),
)
U_CAL = Field("u_cal_um", "standard uncertainty of the gauge, common to all", required=False, default=0.0, minimum=0)
MOST = Field("most_risk", "chance of going below the reserve that the shop allows", required=False, default=MOST_RISK,
             above=0, maximum=0.4999)  # fmt: skip
LAYERS = (
    Field("clear_um", "place means of the clear coat by a layer gauge", "numbers", fewest=5),
    Field("extra_um", "places a person chose, not in mean and scatter", "numbers", required=False),
    Field("reserve_um", "clear coat that must stay", above=0),
    Field(
        "largest_share", "largest share of the clear coat that may come off", required=False, above=0, maximum=0.9999
    ),
    MOST,
    *REMOVAL,
    U_CAL,
    RESOLUTION,
    Field("removed_before_um", "measured as removed before", required=False, default=0.0, minimum=0),
)


def _removal(v: Inputs) -> Removal:
    dof = v["removal_dof"]
    return Removal(v["removal_um"], v["u_removal_um"], math.inf if dof is None else dof)


def _room(v: Inputs) -> LayerRoom:
    return layer_room(
        v["clear_um"],
        ClearLimits(v["reserve_um"], v["largest_share"], v["most_risk"]),
        _removal(v),
        extra_um=v["extra_um"] or (),
        u_cal_um=v["u_cal_um"],
        resolution_um=v["resolution_um"],
        removed_before_um=v["removed_before_um"],
    )


def _what_may_come_off(v: Inputs) -> Working:
    layers = v["layers"] or []
    if len(layers) > 1:
        raise BadInput(_("“layers” holds one object at most."), field="layers")
    tells = PanelTells(
        key="",
        measured=v["measured"],
        paint_system=v["paint_system"],
        compared=v["compared"],
        lowest_um=v["lowest_um"],
        low_extra_place=v["low_extra_place"],
        stated_repair=v["stated_repair"],
        unconfirmed=v["unconfirmed"],
        removed_um=v["removed_um"],
        planned_um=v["planned_um"],
        plan_unmeasured=v["plan_unmeasured"],
        clear_words=v["clear_words"],
    )
    shop, owner = ShopTotals(v["careful_below_um"], v["leave_below_um"]), OwnerLimits(v["barred"], v["most_um"])
    return what_may_come_off(tells, shop, owner, _room(layers[0]) if layers else None).working


def _clear_picture(v: Inputs) -> Working:
    limits = None if v["reserve_um"] is None else ClearLimits(v["reserve_um"], most_risk=v["chance"])
    return picture_of(
        v["total_um"],
        undercoats=Undercoats(v["undercoats_um"], v["undercoats_u_um"]),
        limits=limits,
        removal=_removal(v),
        u_cal_um=v["u_cal_um"],
        resolution_um=v["resolution_um"],
        chance=v["chance"],
    ).working


def _first_panel(v: Inputs) -> Working:
    measured = None
    if v["measured_um"] is not None:
        if v["measured_u_um"] is None:
            raise BadInput(_("“measured_u_um” is missing: the uncertainty of what was removed."), field="measured_u_um")
        measured = _figure(v, "measured")
    forecast = None
    if v["forecast_um"] is not None:
        if v["forecast_u_um"] is None:
            raise BadInput(_("“forecast_u_um” is missing: the uncertainty of what is foreseen."), field="forecast_u_um")
        forecast = _figure(v, "forecast")
    return first_panel(
        forecast,
        measured,
        risk_after=v["risk_after"],
        most_risk=v["most_risk"],
        confidence=v["confidence"],
    ).working


def _figure(v: Inputs, side: str) -> Figure:
    dof = v[f"{side}_dof"]
    return Figure(v[f"{side}_um"], v[f"{side}_u_um"], math.inf if dof is None else dof)


PERMISSION_CALCULATIONS = (
    Calculation(
        "what_may_come_off",
        "The ruling for one panel, with its reasons",
        (
            Field("measured", "whether it was measured", "text", choices=get_args(Measured)),
            Field("paint_system", "what the paint is", "text", choices=get_args(PaintSystem)),
            Field("compared", "how it reads beside the rest", "text", required=False, default="not compared",
                  choices=get_args(Compared)),
            Field("lowest_um", "lowest total, places chosen by hand included", required=False),
            Field("low_extra_place", "a place chosen by hand is low", "boolean", required=False, default=False),
            Field("stated_repair", "a repair was stated", "boolean", required=False, default=False),
            Field("unconfirmed", "no gauge check confirms the readings", "boolean", required=False, default=False),
            Field("removed_um", "measured as removed in this job", required=False),
            Field("planned_um", "what the plan still takes", required=False, default=0.0, minimum=0),
            Field("plan_unmeasured", "the plan takes what nobody measured", "boolean", required=False, default=False),
            Field("clear_words", "what a layer gauge says where no room left can be stated", "text", required=False,
                  default=""),
            Field("careful_below_um", "the shop's total to be careful below", required=False, above=0),
            Field("leave_below_um", "the shop's total to leave below", required=False, above=0),
            Field("barred", "the owner does not want it touched", "boolean", required=False, default=False),
            Field("most_um", "the most the owner allows", required=False, minimum=0),
            Field("layers", "what a layer gauge measured, one object at most", "objects", required=False, of=LAYERS),
        ),
        _what_may_come_off,
    ),
    Calculation("room_left", "Room left in the clear coat, by a layer gauge", LAYERS, lambda v: _room(v).working),
    Calculation(
        "clear_picture",
        "For the shop only: the clear coat there may be if the layers below are a factory's",
        (
            Field("total_um", "place means of the total", "numbers", fewest=5),
            Field("undercoats_um", "everything below the clear coat, assumed", required=False, default=69.0, above=0),
            Field("undercoats_u_um", "its standard uncertainty", required=False, default=8.0, above=0),
            Field("reserve_um", "clear coat that must stay", required=False, above=0),
            *REMOVAL,
            U_CAL,
            RESOLUTION,
            Field("chance", "chance on either side of the range", required=False, default=0.05, above=0,
                  maximum=0.4999),
        ),
        _clear_picture,
    ),
    Calculation(
        "first_panel",
        "What came off the first panel against what the plan foresaw",
        (
            Field("forecast_um", "removal foreseen; left out: none", required=False),
            Field("forecast_u_um", "its standard uncertainty", required=False, minimum=0),
            Field("forecast_dof", "its degrees of freedom; left out: not estimated", required=False, above=0),
            Field("measured_um", "removal measured; left out: none", required=False),
            Field("measured_u_um", "its standard uncertainty", required=False, minimum=0),
            Field("measured_dof", "its degrees of freedom; left out: not estimated", required=False, above=0),
            Field("risk_after", "chance of less than the reserve, from the readings after", required=False, minimum=0,
                  maximum=1),
            MOST,
            Field("confidence", "confidence of both intervals", required=False, default=0.95, above=0, maximum=0.9999),
        ),
        _first_panel,
    ),
)  # fmt: skip
