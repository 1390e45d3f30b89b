"""A layer gauge is checked on a reference layer, on raw readings, without a zero plate."""

from __future__ import annotations

import math

import pytest

from detailbench.basics.errors import BadInput
from detailbench.thickness.gauge import GaugeAccuracy, Shim
from detailbench.thickness.layer_check import check_layer

REFERENCE = Shim(40.0, 0.5)
ACCURACY = GaugeAccuracy(1.0, 0.02)


@pytest.mark.parametrize(("reads", "passed"), [(40.0, True), (41.86, True), (41.87, False), (38.13, False)])
def test_it_passes_within_both_tolerances_together(reads: float, passed: bool) -> None:
    found = check_layer([reads] * 5, reference=REFERENCE, accuracy=ACCURACY)
    assert found.limit_um == pytest.approx(math.sqrt(1.8**2 + 0.5**2))
    assert found.passed is passed
    assert ("The gauge check failed" in found.sentence) is not passed


def test_its_readings_are_five_or_more_and_numbers() -> None:
    with pytest.raises(BadInput, match="at least 5"):
        check_layer([40.0] * 4, reference=REFERENCE, accuracy=ACCURACY)
    with pytest.raises(BadInput, match="not a real number"):
        check_layer([40.0] * 4 + [math.nan], reference=REFERENCE, accuracy=ACCURACY)


def test_it_says_that_sound_differs_in_paint() -> None:
    found = check_layer([40.0, 40.2, 39.8, 40.1, 39.9], reference=REFERENCE, accuracy=ACCURACY)
    assert "another speed in the paint" in found.working.notes[0]
    assert found.sd_um == pytest.approx(math.sqrt(0.1 / 4))
