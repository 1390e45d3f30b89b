"""The calculations of this room, as the ``workings`` command offers them."""

from __future__ import annotations

from detailbench.basics.calculations import Calculation, Field
from detailbench.marks.share import share_cleared

CALCULATIONS = (
    Calculation(
        name="share_cleared",
        title="Share of counted marks gone, with its interval from 20 marks on",
        fields=(
            Field("marks_before", "marks counted before", "integer", minimum=1),
            Field("marks_left", "of these, still seen after", "integer", minimum=0),
            Field("agreed_share", "share agreed with the owner, 0 to 1", required=False, minimum=0, maximum=1),
        ),
        work=lambda v: share_cleared(v["marks_before"], v["marks_left"], v["agreed_share"]).working,
    ),
)
