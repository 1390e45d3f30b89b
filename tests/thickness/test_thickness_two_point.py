"""The two-point correction: its line, its uncertainty, when it is refused, and its proof on another shim."""

from __future__ import annotations

import numpy as np
import pytest

from detailbench.basics.errors import BadInput, Refused
from detailbench.thickness.gauge import GaugeAccuracy, Shim
from detailbench.thickness.gauge_check import check_gauge
from detailbench.thickness.two_point import correction_stands, prove, two_point

ACCURACY = GaugeAccuracy(1.0, 0.01)
SHIM = Shim(102.0, serial="invented-1", u_um=0.5)
ZERO, ON_SHIM = [1.2] * 5, [104.4] * 5


def test_a_corrected_shim_reads_its_certificate_and_the_zero_plate_nought() -> None:
    line = two_point(ZERO, ON_SHIM, SHIM, 1.0)
    assert line.corrected_um([104.4, 1.2]) == pytest.approx([102.0, 0.0], abs=1e-12)


def test_the_lines_uncertainty_follows_from_propagating_each_reading() -> None:
    """The formula against a simulation of the whole procedure."""
    rng = np.random.default_rng(11)
    runs, s_r, u_c = 40_000, 1.0, 0.5
    zero = rng.normal(1.2, s_r / np.sqrt(5), runs)
    on_shim = rng.normal(104.4, s_r / np.sqrt(8), runs)
    certified = rng.normal(102.0, u_c, runs)
    corrected = (150.0 - zero) * certified / (on_shim - zero)
    line = two_point(ZERO, [104.4] * 8, SHIM, s_r)
    assert line.u_um(float(line.corrected_um([150.0])[0])) == pytest.approx(corrected.std(), rel=0.02)


def test_a_correction_within_the_scatter_of_the_shim_is_refused() -> None:
    with pytest.raises(Refused, match="only add noise") as caught:
        two_point([0.0] * 5, [101, 103.4, 102.6, 101.2, 103.0], SHIM)
    assert caught.value.rule == "two_point"


def test_a_shim_that_reads_no_more_than_the_zero_plate_gives_no_line() -> None:
    with pytest.raises(BadInput, match="no line"):
        two_point([1.0, 1.0], [1.0, 1.0], SHIM)


def test_a_gauge_that_failed_stays_failed_after_its_correction() -> None:
    shim = Shim(126.0, 1.0)
    line = two_point([0.0] * 5, [130.8] * 5, shim)
    assert line.corrected_um([130.8])[0] == pytest.approx(126.0)
    assert not check_gauge([0.0] * 5, [130.8] * 5, shim=shim, accuracy=ACCURACY).passed


def test_the_proof_takes_a_second_shim() -> None:
    line = two_point(ZERO, ON_SHIM, SHIM)
    with pytest.raises(BadInput, match="took no part"):
        prove(line, ON_SHIM, SHIM, ACCURACY)
    with pytest.raises(BadInput, match="at least 5 are needed"):
        prove(line, [250.0] * 4, Shim(250.0), ACCURACY)


@pytest.mark.parametrize(("error", "passed"), [(0.0, True), (3.4, True), (3.6, False), (-3.6, False)])
def test_the_proof_holds_within_the_limit_of_the_second_shim(error: float, passed: bool) -> None:
    line = two_point(ZERO, ON_SHIM, SHIM)
    raw = (250.0 + error) / line.gain + 1.2
    result = prove(line, [raw] * 5, Shim(250.0, 0.4, serial="invented-2"), ACCURACY)
    assert result.error_um == pytest.approx(error, abs=1e-9)
    assert result.limit_um == pytest.approx(np.hypot(3.5, 0.4))
    assert result.passed is passed
    assert ("not proved" in result.sentence) is not passed


def test_a_correction_stands_only_proved_and_by_a_decision_with_its_reason() -> None:
    line = two_point(ZERO, ON_SHIM, SHIM)
    second = Shim(250.0, 0.4, serial="invented-2")
    proved, failed = (prove(line, [(250.0 + error) / line.gain + 1.2] * 5, second, ACCURACY) for error in (0.0, 9.0))
    assert correction_stands(proved, "gauge drifted").in_force
    for proof, reason, part in (
        (None, "gauge drifted", "was not proved on a second foil"),
        (failed, "gauge drifted", "did not prove it"),
        (proved, "drifted", "at least two words"),
        (proved, "  ", "at least two words"),
    ):
        found = correction_stands(proof, reason)
        assert not found.in_force
        assert part in found.sentence


def test_the_proofs_working_says_that_a_failed_check_stays_failed() -> None:
    proof = prove(two_point(ZERO, ON_SHIM, SHIM), [255.0] * 5, Shim(250.0, 0.4), ACCURACY)
    assert "never turns a failed gauge check" in proof.working.notes[0]
    assert proof.working.results["passed"] is proof.passed
