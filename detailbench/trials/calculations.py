"""The calculations of this room, as the ``workings`` command offers them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from detailbench.basics.calculations import Calculation, Field
from detailbench.trials.adviser import adviser_working
from detailbench.trials.adviser_doubt import MISJUDGED
from detailbench.trials.adviser_doubt_line import adviser_in_doubt_working
from detailbench.trials.adviser_prior import LIKENESS, MOST_RUNGS
from detailbench.trials.adviser_search import Costs
from detailbench.trials.load import load_path, load_path_panel
from detailbench.trials.movement import Movement, pad_speed
from detailbench.trials.range_order import range_order_working
from detailbench.trials.removal import PAINT_TO_PAINT, MeasuredTrial, removal
from detailbench.trials.sanding_grade import sanding_grade
from detailbench.trials.technique import arm_speed

SEEN = ("", "yes", "no")
COSTS = {
    "trial": "minutes of a trial",
    "refine": "minutes of a refining trial on top",
    "one_step": "minutes of the car in one step, by the mildest",
    "second_step": "minutes of a second step",
    "per_rung": "minutes each stronger combination adds",
    "per_rung_second": "minutes each stronger combination adds in the second step",
    "nothing": "minutes it costs to find nothing",
}
BOX = {
    "cl": "mildest that may clear, lowest",
    "ch": "mildest that may clear, highest",
    "gl": "how many finish clear, at least",
    "gh": "how many finish clear, at most",
    "rl": "mildest that may take haze off, lowest",
}

COST_FIELDS = tuple(
    Field(f"{name}_min", says, required=False, default=getattr(Costs(), name), minimum=0)
    for name, says in COSTS.items()
)
HALVES_FIELD = Field(
    "rubbed_harder",
    "combinations tried with a smaller section or worked longer too: each counts as one between itself and the next",
    "objects",
    required=False,
    default=[],
    of=(
        Field("after", "which combination, 0 the mildest, these not counted", "integer", minimum=0, maximum=MOST_RUNGS),
        Field("added_min", "minutes its smaller sections or longer working add", required=False, default=0.0),
    ),
)
BEFORE_FIELD = Field(
    "before",
    "like paint in this shop before: the worlds each job left, and how like it is",
    "objects",
    required=False,
    default=[],
    of=(
        *(Field(name, says, "integer", minimum=0, maximum=MOST_RUNGS + 1) for name, says in BOX.items()),
        Field("likeness", "how like it is", "text", choices=tuple(LIKENESS)),
    ),
)

MEASURED = (
    Field("removed_um", "what came off, negative too"),
    Field("u_um", "its standard uncertainty", above=0),
    Field("load_path_j_m2", "load × path of the trial", above=0),
    Field("paint", "a word for its paint, the same for trials of one paint", "text", False, ""),
)

CALCULATIONS = (
    Calculation(
        name="load_path",
        title="Load × path in the middle of a taped section",
        fields=(
            Field("force_n", "force on the pad", above=0),
            Field("pad_speed_m_s", "mean speed of the pad over the paint", above=0),
            Field("seconds", "seconds of polishing on the section, priming not counted", above=0),
            Field("patch_a_mm", "one outer side of the taped patch", above=0),
            Field("patch_b_mm", "the other outer side", above=0),
            Field("pad_mm", "pad diameter", above=0),
            Field("working_time_s", "how long the compound works", required=False, above=0),
        ),
        work=lambda v: load_path(**v).working,
    ),
    Calculation(
        name="load_path_panel",
        title="Mean load × path over a whole panel",
        fields=(
            Field("force_n", "force on the pad", above=0),
            Field("pad_speed_m_s", "mean speed of the pad over the paint", above=0),
            Field("seconds", "seconds of polishing on the panel", above=0),
            Field("panel_m2", "panel area", above=0),
            Field("panel_share", "the area is known to ± this share", required=False, default=0.0, minimum=0),
        ),
        work=lambda v: load_path_panel(**v).working,
    ),
    Calculation(
        name="pad_speed",
        title="Mean speed of the pad over the paint",
        fields=(
            Field("movement", "how the machine moves the pad", "text", choices=tuple(m.value for m in Movement)),
            Field("orbit_mm", "diameter of the orbit", required=False, minimum=0),
            Field("orbits_per_min", "orbits per minute", required=False, minimum=0),
            Field("turns_per_min", "turns of the pad per minute", required=False, minimum=0),
            Field("pad_mm", "pad diameter", required=False, above=0),
            Field("stroke_m_s", "speed of the hand", required=False, minimum=0),
        ),
        work=lambda v: pad_speed(Movement(v["movement"]), **{k: x for k, x in v.items() if k != "movement"}).working,
    ),
    Calculation(
        name="sanding_grade",
        title="Grain of a sanding disc by its FEPA grade",
        fields=(Field("grade", "grade as written on the disc, like P2000", "text"),),
        work=lambda v: sanding_grade(v["grade"]).working,
    ),
    Calculation(
        name="arm_speed",
        title="Speed of the arm along its lines",
        fields=(
            Field("patch_a_mm", "one outer side of the taped patch", above=0),
            Field("patch_b_mm", "the other outer side", above=0),
            Field("pad_mm", "pad diameter", above=0),
            Field("passes_along", "passes along the first side", "integer", minimum=0),
            Field("passes_across", "passes along the second side", "integer", minimum=0),
            Field("seconds", "seconds of polishing", above=0),
        ),
        work=lambda v: arm_speed(**v).working,
    ),
    Calculation(
        name="removal",
        title="Removal of a combination from this shop's own measured trials",
        fields=(
            Field(
                "trials",
                "the measured trials of this combination",
                "objects",
                of=MEASURED,
            ),
            Field("this_paint", "the paint asked for, where it is among the trials", "text", required=False),
            Field("load_path_j_m2", "planned load × path", required=False, above=0),
            Field(
                "paint_to_paint",
                "usual scatter from paint to paint as a share of the rate",
                required=False,
                default=PAINT_TO_PAINT,
                above=0,
            ),
        ),
        work=lambda v: removal([MeasuredTrial(**t) for t in v["trials"]], **_rest(v, "trials")).working,
    ),
    Calculation(
        name="range_order",
        title="Two neighbours of the range held against what they took off",
        fields=(
            Field("milder", "measured trials of the one called milder", "objects", fewest=1, of=MEASURED),
            Field("stronger", "measured trials of the one called stronger", "objects", fewest=1, of=MEASURED),
            Field("paint_to_paint", "usual scatter, as for “removal”", required=False, default=PAINT_TO_PAINT, above=0),
        ),
        work=lambda v: range_order_working(
            [MeasuredTrial(**t) for t in v["milder"]],
            [MeasuredTrial(**t) for t in v["stronger"]],
            v["paint_to_paint"],
        ),
    ),
    Calculation(
        name="adviser",
        title="What to try next on a range, by expected minutes",
        fields=(
            Field(
                "rungs",
                "the range without what may not be used, mildest first, and what was seen of each",
                "objects",
                fewest=1,
                of=(
                    Field("cleared", "cleared on a fresh place", "text", False, "", choices=SEEN),
                    Field("finish_clear", "finished clear on a fresh place", "text", False, "", choices=SEEN),
                    Field("refined", "finished clear on top of a cut", "text", False, "", choices=SEEN),
                    Field("refined_on", "on top of which, counted from 0", "numbers", False),
                    Field("trails", "left trails, which are of its movement", "text", False, "", choices=("", "yes")),
                    Field(
                        "movement",
                        "how its machine moves the pad",
                        "text",
                        False,
                        Movement.FREE_ORBITAL.value,
                        choices=tuple(m.value for m in Movement),
                    ),
                ),
            ),
            Field("stop", "where to stop", "text", required=False, default="prove", choices=("prove", "thrift")),
            *COST_FIELDS,
            HALVES_FIELD,
            BEFORE_FIELD,
        ),
        work=adviser_working,
    ),
    Calculation(
        name="adviser_in_doubt",
        title="What to try next where judgements contradict each other",
        fields=(
            Field("rungs", "how many combinations may be used", "integer", minimum=1, maximum=MOST_RUNGS),
            Field(
                "answers",
                "the judged trials in the order made",
                "objects",
                of=(
                    Field("rung", "combination tried, 0 the mildest", "integer", minimum=0, maximum=2 * MOST_RUNGS),
                    Field("cleared", "cleared", "text", False, "", choices=SEEN),
                    Field("finish_clear", "finished clear", "text", False, "", choices=SEEN),
                    Field("beneath", "on top of this one", "integer", False, minimum=0, maximum=2 * MOST_RUNGS),
                ),
            ),
            Field("stop", "where to stop", "text", required=False, default="prove", choices=("prove", "thrift")),
            Field("misjudged_share", "how often cleared is misjudged", required=False, default=MISJUDGED, above=0),
            Field("finish_misjudged_share", "how often the finish is", required=False, default=MISJUDGED, above=0),
            *COST_FIELDS,
            HALVES_FIELD,
            BEFORE_FIELD,
        ),
        work=adviser_in_doubt_working,
    ),
)


def _rest(values: Mapping[str, Any], *without: str) -> dict[str, Any]:
    return {k: x for k, x in values.items() if k not in without}
