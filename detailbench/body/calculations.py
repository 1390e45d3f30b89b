"""The calculations of this room, as the ``workings`` command offers them."""

from __future__ import annotations

from detailbench.basics.calculations import Calculation, Field
from detailbench.body.vin import vin_working

CALCULATIONS: tuple[Calculation, ...] = (
    Calculation(
        name="vin",
        title="Vehicle identification number: form and check digit",
        fields=(Field("number", "the number as it stands on the plate", kind="text"),),
        work=lambda given: vin_working(given["number"]),
    ),
)
