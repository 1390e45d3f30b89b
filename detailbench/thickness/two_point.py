"""The two-point correction of a gauge, its uncertainty, and its proof on a shim that took no part."""

from __future__ import annotations

import math
from dataclasses import dataclass

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.numbers import format_thickness
from detailbench.basics.texts import _
from detailbench.basics.workings import Source, Working
from detailbench.thickness.gauge import GaugeAccuracy, Shim
from detailbench.thickness.readings import Floats, Values, as_readings, mean_of, plain, sd_of

SOURCE = Source("straight line through zero plate and foil, propagated by JCGM 100:2008, 5.1", "own derivation")
PROOF_SOURCE = Source(
    "ASTM D7091 and SSPC-PA 2, verification of accuracy, on a foil that took no part", from_memory=True
)
FEWEST_WORDS = 2


@dataclass(frozen=True)
class TwoPoint:
    """A straight line through the zero plate's and the shim's mean reading.

    ``gain`` is c/(mean shim − mean zero). ``repeatability_um`` is the standard deviation of one reading.
    """

    shim: Shim
    zero_um: Floats
    shim_um: Floats
    gain: float
    repeatability_um: float

    def corrected_um(self, raw_um: Values) -> Floats:
        """Corrected readings, same shape, µm."""
        return (as_readings(raw_um, "reading_um") - mean_of(self.zero_um)) * self.gain

    def u_um(self, corrected_um: float) -> float:
        """Standard uncertainty of the line at a corrected thickness, common to all readings of the session, µm."""
        part = corrected_um / self.shim.certified_um
        noise = (part - 1) ** 2 / self.zero_um.size + part**2 / self.shim_um.size
        own = (part * self.shim.standard_uncertainty_um()) ** 2
        return math.sqrt(self.gain**2 * noise * self.repeatability_um**2 + own)

    def working(self, raw_um: float) -> Working:
        """How one raw reading becomes a corrected one."""
        corrected = float(self.corrected_um([raw_um])[0])
        return Working(
            name="two_point",
            formula="t = (r − z)·c/(s − z); u² = g²·[(t/c − 1)²/m_z + (t/c)²/m_s]·s_r² + (t/c)²·u_c², g = c/(s − z)",
            inputs={
                "reading_um": float(raw_um),
                "zero_um": plain(self.zero_um),
                "shim_um": plain(self.shim_um),
                "certified_um": self.shim.certified_um,
                "certified_u_um": self.shim.standard_uncertainty_um(),
                "repeatability_um": self.repeatability_um,
            },
            results={
                "corrected_um": corrected,
                "u_um": self.u_um(corrected),
                "gain": self.gain,
                "zero_mean_um": mean_of(self.zero_um),
                "shim_mean_um": mean_of(self.shim_um),
            },
            source=SOURCE,
            changes_with=_("new readings on zero plate and foil; another foil"),
            notes=(_("A correction never turns a failed gauge check into a passed one."),),
        )


@dataclass(frozen=True)
class Proof:
    """A corrected gauge tried on a second shim."""

    passed: bool
    corrected_mean_um: float
    error_um: float
    limit_um: float
    sentence: str
    working: Working


@dataclass(frozen=True)
class Standing:
    """Whether a correction is in force, and why (not). It never confirms a reading: only a passed check does."""

    in_force: bool
    sentence: str


def two_point(zero_um: Values, shim_um: Values, shim: Shim, repeatability_um: float | None = None) -> TwoPoint:
    """The correction from raw readings (two or more on each). ``repeatability_um`` None: that of the shim readings.

    Refused (rule "two_point") unless |mean shim − c| exceeds twice its standard error: within that, a
    correction adds noise only. BadInput when the shim does not read above the zero plate.
    """
    zero = as_readings(zero_um, "zero_um", 2)
    on_shim = as_readings(shim_um, "shim_um", 2)
    zero_mean, shim_mean = mean_of(zero), mean_of(on_shim)
    s_r = sd_of(on_shim) if repeatability_um is None else float(repeatability_um)
    if shim_mean <= zero_mean:
        raise BadInput(
            _("The foil reads no more than the zero plate: there is no line to correct by."), field="shim_um"
        )
    if abs(shim_mean - shim.certified_um) <= 2 * s_r / math.sqrt(on_shim.size):
        raise Refused(
            _("The foil's error lies within twice the uncertainty of its mean: a correction would only add noise."),
            rule="two_point",
        )
    return TwoPoint(shim, zero, on_shim, shim.certified_um / (shim_mean - zero_mean), s_r)


def prove(line: TwoPoint, readings_um: Values, second: Shim, accuracy: GaugeAccuracy) -> Proof:
    """Try a corrected gauge on a second shim, five raw readings or more. BadInput when it is the same shim."""
    if second.serial == line.shim.serial and second.certified_um == line.shim.certified_um:
        raise BadInput(_("The proof needs a foil that took no part in the correction."), field="second")
    raw = as_readings(readings_um, "readings_um", 5)
    mean = mean_of(line.corrected_um(raw))
    error = mean - second.certified_um
    limit = math.hypot(accuracy.at_um(second.certified_um), second.accuracy_um)
    passed = abs(error) <= limit
    text = (
        _("Second foil {shim}: corrected mean {mean}, within ± {limit}. The correction is proved.")
        if passed
        else _("Second foil {shim}: corrected mean {mean}, outside ± {limit}. The correction is not proved.")
    )
    sentence = text.format(
        shim=format_thickness(second.certified_um),
        mean=format_thickness(mean, digits=1),
        limit=format_thickness(limit, digits=2),
    )
    working = Working(
        name="two_point_proof",
        formula="pass when |mean of corrected readings − c₂| ≤ √(a(c₂)² + a_shim₂²); t = (r − z)·c/(s − z)",
        inputs={
            "zero_um": plain(line.zero_um),
            "shim_um": plain(line.shim_um),
            "certified_um": line.shim.certified_um,
            "shim_serial": line.shim.serial,
            "repeatability_um": line.repeatability_um,
            "second_shim_um": plain(raw),
            "second_certified_um": second.certified_um,
            "second_accuracy_um": second.accuracy_um,
            "second_serial": second.serial,
            "fixed_um": accuracy.fixed_um,
            "share": accuracy.share,
        },
        results={"passed": passed, "corrected_mean_um": mean, "error_um": error, "limit_um": limit},
        source=PROOF_SOURCE,
        changes_with=_("new readings on the second foil; another second foil"),
        notes=(_("A correction never turns a failed gauge check into a passed one."),),
    )
    return Proof(passed, mean, error, limit, sentence, working)


def correction_stands(proof: Proof | None, reason: str) -> Standing:
    """A correction counts only by a person's decision with a reason of at least two words, and once proved."""
    if proof is None:
        return Standing(False, _("Not in force: it was not proved on a second foil."))
    if not proof.passed:
        return Standing(False, _("Not in force: the second foil did not prove it."))
    if len(reason.split()) < FEWEST_WORDS:
        return Standing(False, _("Not in force: a person decides, with a reason of at least two words."))
    return Standing(True, _("In force, by a person's decision, proved on a second foil."))
