"""Trials and their outcomes."""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.record.thing import JobThing


@dataclass(frozen=True, kw_only=True)
class Trial(JobThing):
    """One polishing test with all that is needed to repeat it. ``spot``: typical, worst or confirming. ``on_top_of``:
    the trial it refines (it then speaks about finish only). The section is the taped patch, outer size in mm.
    ``pad_condition``: fresh, cleaned or loaded; ``batch``: of the compound or polish then; ``primed``: yes or no.
    ``timer``: started while the timer leads and its passes are not over (its seconds are not known till then, however
    the program ended), left_running where nobody came back to it and nobody could say the seconds."""

    table = "trial"
    group_id: str
    panel: str
    combination_id: str
    spot: str = "typical"
    on_top_of: str = ""
    edge_a: str = ""
    edge_a_mm: float | None = None
    edge_b: str = ""
    edge_b_mm: float | None = None
    dial: str = ""
    force_n: float | None = None
    force_word: str = ""
    section_w_mm: float | None = None
    section_h_mm: float | None = None
    passes: int | None = None
    seconds: float | None = None
    surface_before_c: float | None = None
    surface_after_c: float | None = None
    lamp_id: str = ""
    note: str = ""
    pad_condition: str = ""
    primed: str = ""
    batch: str = ""
    timer: str = ""


@dataclass(frozen=True, kw_only=True)
class TrialOutcome(JobThing):
    """What was seen: ``cleared`` yes, cant_tell or no; ``finish`` clear, even_haze, trails, pad_marks, towel_marks or
    smear; or ``stopped`` heat, colour_on_pad, edge or pad. The newest outcome of a trial counts. Under which lamp it
    was judged, and under which second one; marks counted in the frame before and after, where somebody counted."""

    table = "trial_outcome"
    trial_id: str
    cleared: str = ""
    finish: str = ""
    stopped: str = ""
    only_deep_left: bool = False
    next_result: str = ""
    note: str = ""
    lamp_id: str = ""
    second_lamp_id: str = ""
    counted_before: int | None = None
    counted_left: int | None = None


@dataclass(frozen=True, kw_only=True)
class PaintFeel(JobThing):
    """How the paint of these panels behaves under the pad, as the trials showed: ``feel`` soft, medium or hard;
    ``sticky`` yes or no. The newest one about a panel counts."""

    table = "paint_feel"
    panels: tuple[str, ...]
    feel: str = ""
    sticky: str = ""
    note: str = ""
