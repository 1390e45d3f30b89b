"""The calculations of this room, as the ``workings`` command offers them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from detailbench.basics.calculations import Calculation, Field
from detailbench.basics.workings import Working
from detailbench.work.climate import dew_point
from detailbench.work.exposure import NoiseUse, VibrationUse, noise, vibration
from detailbench.work.learning import learning
from detailbench.work.left import STATES, left_of
from detailbench.work.plan import total_minutes
from detailbench.work.price import Line, amount, price
from detailbench.work.sections import minutes, sections


def _price(v: Mapping[str, Any]) -> Working:
    lines = [
        Line(x["says"], amount(x["amount"], f"lines[{i}].amount"), amount(x["quantity"], f"lines[{i}].quantity"))
        for i, x in enumerate(v["lines"])
    ]
    return price(
        lines,
        discount_percent=amount(v["discount_percent"], "discount_percent"),
        discount=amount(v["discount"], "discount"),
        tax_percent=amount(v["tax_percent"], "tax_percent"),
        tax_included=v["tax_included"],
        decimals=v["decimals"],
    ).working


SECTIONS = Calculation(
    name="sections",
    title="Sections a panel takes, with what its area leaves open",
    fields=(
        Field("panel_m2", "panel area", above=0),
        Field("section_m2", "area of the taped patch", above=0),
        Field("overlap", "share by which patches lap", required=False, default=0.0, minimum=0),
        Field("panel_share", "the panel's area is known to ± this share", required=False, default=0.0, minimum=0),
    ),
    work=lambda v: sections(**v).working,
)
MINUTES = Calculation(
    name="minutes",
    title="Minutes of one step on one panel",
    fields=(
        Field("sections", "sections", "integer", minimum=1),
        Field("sections_low", "fewest sections", "integer", required=False, minimum=1),
        Field("sections_high", "most sections", "integer", required=False, minimum=1),
        Field("spread_s", "seconds of spreading per section", minimum=0),
        Field("polish_s", "seconds of polishing per section", minimum=0),
        Field("wipe_s", "seconds of wiping per section", minimum=0),
        Field("pad_care_every", "pad care after so many sections, 0 for none", "integer", False, 0, minimum=0),
        Field("pad_care_s", "seconds of one pad care", required=False, default=0.0, minimum=0),
        Field("setup_s", "seconds of set-up", required=False, default=0.0, minimum=0),
    ),
    work=lambda v: minutes(**v).working,
)
WORK_PLAN = Calculation(
    name="work_plan",
    title="Minutes of the whole work plan",
    fields=(
        Field(
            "steps",
            "panel steps",
            "objects",
            of=(
                Field("panel", "panel", "text"),
                Field("step", "step", "text"),
                Field("minutes", "planned minutes", minimum=0),
                Field("minutes_low", "fewest minutes", minimum=0),
                Field("minutes_high", "most minutes", minimum=0),
            ),
        ),
    ),
    work=lambda v: total_minutes(v["steps"]),
)
WORK_LEFT = Calculation(
    name="work_left",
    title="Share of the planned minutes not done",
    fields=(
        Field(
            "steps",
            "panel steps",
            "objects",
            of=(
                Field("panel", "panel", "text"),
                Field("step", "step", "text"),
                Field("planned_min", "planned minutes", minimum=0),
                Field("state", "how far it is", "text", choices=STATES),
                Field("elapsed_min", "minutes elapsed", required=False, default=0.0, minimum=0),
                Field("sections", "sections planned", "integer", required=False, default=1, minimum=1),
                Field("sections_done", "sections ticked by hand", "integer", required=False, minimum=0),
            ),
        ),
    ),
    work=lambda v: left_of(v["steps"]).working,
)
DEW_POINT = Calculation(
    name="dew_point",
    title="Dew point, and how far the surface is above it",
    fields=(
        Field("air_c", "air temperature, °C", minimum=0, maximum=60),
        Field("humidity_percent", "relative humidity, %", above=0, maximum=100),
        Field("surface_c", "surface temperature, °C", required=False),
    ),
    work=lambda v: dew_point(**v).working,
)
PRICE = Calculation(
    name="price",
    title="Price from lines, discount and tax",
    fields=(
        Field(
            "lines",
            "lines",
            "objects",
            of=(
                Field("says", "what for", "text", required=False, default=""),
                Field("amount", "amount, like 123.45", "text"),
                Field("quantity", "how many", "text", required=False, default="1"),
            ),
        ),
        Field("discount_percent", "discount in percent", "text", required=False, default="0"),
        Field("discount", "discount as an amount", "text", required=False, default="0"),
        Field("tax_percent", "tax in percent", "text", required=False, default="0"),
        Field("tax_included", "the lines hold the tax", "boolean", required=False, default=False),
        Field("decimals", "decimals of the currency", "integer", required=False, default=2, minimum=0, maximum=4),
    ),
    work=_price,
)
VIBRATION = Calculation(
    name="vibration",
    title="A person's day of hand-arm vibration",
    fields=(
        Field(
            "uses",
            "machines used",
            "objects",
            of=(
                Field("machine", "machine", "text", required=False, default=""),
                Field("minutes", "minutes of contact", minimum=0),
                Field("declared_m_s2", "declared value, m/s²", required=False, minimum=0),
                Field("k_m_s2", "its uncertainty K, m/s²", required=False, minimum=0),
            ),
        ),
    ),
    work=lambda v: vibration([VibrationUse(**use) for use in v["uses"]]).working,
)
NOISE = Calculation(
    name="noise",
    title="A person's day of noise",
    fields=(
        Field(
            "uses",
            "noises",
            "objects",
            of=(
                Field("what", "what makes it", "text", required=False, default=""),
                Field("minutes", "minutes in it", minimum=0),
                Field("level_db", "level, dB(A)", required=False, minimum=0, maximum=160),
            ),
        ),
    ),
    work=lambda v: noise([NoiseUse(**use) for use in v["uses"]]).working,
)

LEARNING = Calculation(
    name="learning",
    title="What a person's next job may take, as a multiple of the plan",
    fields=(Field("ratios", "actual ÷ planned minutes, one a job", "numbers", above=0),),
    work=lambda v: learning(v["ratios"]).working,
)

CALCULATIONS = (SECTIONS, MINUTES, WORK_PLAN, WORK_LEFT, LEARNING, DEW_POINT, PRICE, VIBRATION, NOISE)
