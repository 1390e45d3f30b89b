"""The gauge check judges readings as read, against the certificate and the gauge's own stated accuracy."""

from __future__ import annotations

import math

import numpy as np
import pytest

from detailbench.basics.errors import BadInput
from detailbench.thickness.gauge import GaugeAccuracy, Shim
from detailbench.thickness.gauge_check import GaugeCheck, check_gauge

ACCURACY = GaugeAccuracy(fixed_um=1.0, share=0.01)


def around(mean: float, half: float = 0.2) -> list[float]:
    """Five readings with the given mean."""
    return [mean - half, mean + half, mean, mean - half, mean + half]


def checked(zero: float, on_shim: float, shim: Shim, half: float = 0.2) -> GaugeCheck:
    return check_gauge(around(zero, half), around(on_shim, half), shim=shim, accuracy=ACCURACY)


def test_the_limit_joins_gauge_and_shim_as_a_root_of_squares() -> None:
    result = checked(0.2, 102.5, Shim(102.0, 0.5))
    assert result.shim_limit_um == pytest.approx(2.081, abs=5e-4)
    assert result.zero_limit_um == 1.0
    assert result.passed


def test_a_shim_that_reads_beyond_the_limit_fails_the_check() -> None:
    result = checked(0.2, 104.4, Shim(102.0, 0.5))
    assert not result.passed
    assert result.zero_passed
    assert not result.shim_passed
    assert "The gauge check failed" in result.sentences[1]
    assert "failed" not in result.sentences[0]


def test_a_zero_plate_beyond_its_limit_fails_the_check_alone() -> None:
    result = checked(1.2, 102.0, Shim(102.0, 0.5))
    assert (result.zero_passed, result.shim_passed, result.passed) == (False, True, False)


def test_the_zero_plates_own_accuracy_widens_its_limit() -> None:
    result = check_gauge(around(1.2), around(102.0), shim=Shim(102.0), accuracy=ACCURACY, zero_accuracy_um=0.8)
    assert result.zero_limit_um == pytest.approx(math.sqrt(1.64))
    assert result.passed


def test_exactly_at_the_limit_passes() -> None:
    result = check_gauge([1.0] * 5, [102.0] * 5, shim=Shim(102.0), accuracy=ACCURACY)
    assert result.zero_passed


def test_low_readings_fail_as_high_ones_do() -> None:
    assert not checked(0.0, 99.6, Shim(102.0, 0.5)).passed
    assert not checked(-1.2, 102.0, Shim(102.0, 0.5)).passed


def test_a_correction_is_offered_only_when_the_error_stands_out_of_the_scatter() -> None:
    assert checked(0.0, 103.0, Shim(102.0), half=0.2).correction_offered
    assert not checked(0.0, 103.0, Shim(102.0), half=2.0).correction_offered
    assert checked(0.0, 103.0, Shim(102.0), half=0.2).passed


def test_offering_a_correction_changes_nothing_about_a_failed_check() -> None:
    result = check_gauge([0.1] * 5, [130.8] * 5, shim=Shim(126.0, 1.0), accuracy=ACCURACY)
    assert result.shim_limit_um == pytest.approx(2.471, abs=5e-4)
    assert result.correction_offered
    assert not result.passed


@pytest.mark.parametrize("field", ["zero_um", "shim_um"])
def test_four_readings_are_too_few(field: str) -> None:
    given = {"zero_um": [0.0] * 5, "shim_um": [102.0] * 5} | {field: [0.0] * 4}
    with pytest.raises(BadInput, match="at least 5 are needed") as caught:
        check_gauge(given["zero_um"], given["shim_um"], shim=Shim(102.0), accuracy=ACCURACY)
    assert caught.value.field == field


def test_what_is_no_number_is_refused() -> None:
    with pytest.raises(BadInput, match="not a real number"):
        check_gauge([0, 0, 0, 0, math.nan], [102.0] * 5, shim=Shim(102.0), accuracy=ACCURACY)
    with pytest.raises(BadInput, match="nought or more"):
        GaugeAccuracy(-1.0)
    with pytest.raises(BadInput, match="certified thickness"):
        Shim(0.0)
    with pytest.raises(BadInput, match="foil's accuracy"):
        Shim(100.0, -1.0)


def test_uncorrected_readings_carry_the_stated_accuracy_over_root_three() -> None:
    assert ACCURACY.standard_uncertainty_um(102.0) == pytest.approx(2.02 / math.sqrt(3))
    assert Shim(102.0, 0.6).standard_uncertainty_um() == pytest.approx(0.6 / math.sqrt(3))
    assert Shim(102.0, 0.6, u_um=0.25).standard_uncertainty_um() == 0.25


def test_the_order_of_the_readings_is_of_no_consequence() -> None:
    rng = np.random.default_rng(3)
    zero, on_shim = rng.normal(0.2, 0.3, 7), rng.normal(102.4, 0.3, 6)
    one = check_gauge(zero, on_shim, shim=Shim(102.0), accuracy=ACCURACY)
    two = check_gauge(zero[::-1], rng.permutation(on_shim), shim=Shim(102.0), accuracy=ACCURACY)
    assert one.shim_mean_um == pytest.approx(two.shim_mean_um, abs=1e-12)
    assert one.shim_sd_um == pytest.approx(two.shim_sd_um, abs=1e-12)
