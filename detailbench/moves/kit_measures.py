"""What a measure of the kit can be. Unmeasured is left empty; nought is no measure, and what no machine, pad or lamp
has is a slip of the hand. The upper ends are plain bounds, common practice, no source."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from typing import Any

from detailbench.basics.errors import BadInput
from detailbench.basics.numbers import format_quantity
from detailbench.basics.texts import _
from detailbench.basics.workings import is_finite

# (table, field) → (least, most, unit); least 0 means more than nothing
WITHIN: Mapping[tuple[str, str], tuple[float, float, str]] = {
    ("pad", "diameter_mm"): (5, 500, "mm"),
    ("sanding_disc", "diameter_mm"): (5, 500, "mm"),
    ("machine", "orbit_mm"): (0.1, 50, "mm"),
    ("machine", "plate_mm"): (5, 500, "mm"),
    ("machine", "own_rpm"): (1, 20_000, "/min"),
    ("machine", "vibration_m_s2"): (0, 100, "m/s²"),
    ("machine", "vibration_k_m_s2"): (0, 100, "m/s²"),
    ("machine", "weight_n"): (0, 200, "N"),
    ("machine", "noise_db"): (20, 140, "dB(A)"),
    ("product", "working_time_s"): (1, 3600, "s"),
    ("lamp", "distance_cm"): (0, 1000, "cm"),
    ("lamp", "colour_temperature_k"): (1000, 20_000, "K"),
}
NEEDED = frozenset({("pad", "diameter_mm")})
MOST_RPM = 30_000.0
MOST_NAME = 200


def measures_fit(table: str, values: Mapping[str, Any]) -> None:
    """Raise BadInput for the first measure no such thing has."""
    for name, value in values.items():
        bounds = WITHIN.get((table, name))
        if bounds is not None and is_finite(value):
            _within(table, name, float(value), bounds)
        if name in ("name", "label", "batch") and isinstance(value, str) and len(value) > MOST_NAME:
            raise BadInput(_("That is longer than a name can be."), field=name, given=value[:60])
    if table == "machine":
        _dials_fit(values.get("dials") or ())


def _within(table: str, name: str, value: float, bounds: tuple[float, float, str]) -> None:
    least, most, unit = bounds
    if value == 0:
        if (table, name) in NEEDED:
            raise BadInput(_("0 is no size: measure it."), field=name, given=value)
        if name == "vibration_k_m_s2":
            text = _("K is never 0: leave it empty where the machine's papers state none.")
            raise BadInput(text, field=name, given=value)
        raise BadInput(_("0 is no measure: leave it empty where nothing was measured."), field=name, given=value)
    if not (least <= value and value <= most):
        text = _("That lies between {low} and {high}.") if least else _("That lies above 0, up to {high}.")
        low, high = (format_quantity(end, unit) for end in (least, most))
        raise BadInput(text.format(low=low, high=high), field=name, given=value)


def _dials_fit(dials: Any) -> None:
    """Each dial position stands once and turns faster than the one before it."""
    if not isinstance(dials, tuple | list) or not all(
        isinstance(d, tuple | list) and len(d) == 2 and isinstance(d[0], str) and is_finite(d[1]) for d in dials
    ):
        raise BadInput(_("A dial is positions with their numbers, like “3 4200”."), field="dials")
    if any(not 0 < per_min <= MOST_RPM for _position, per_min in dials):
        raise BadInput(
            _("A dial's number lies above 0, up to {high}.").format(high=format_quantity(MOST_RPM, "/min")),
            field="dials",
        )
    positions = [str(position).strip() for position, _per_min in dials]
    if "" in positions or len(set(positions)) < len(positions):
        raise BadInput(_("Each dial position stands once."), field="dials")
    if any(low[1] >= high[1] for low, high in pairwise(dials)):
        raise BadInput(_("The dial must rise from low to high."), field="dials")
