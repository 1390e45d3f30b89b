"""Gauge readings corrected by two points: by a person's decision, proved on a foil that took no part.

The raw values stay, and so does every gauge check's verdict: a correction confirms no reading.
"""

from __future__ import annotations

from dataclasses import dataclass

from detailbench.basics.errors import BadInput, Refused
from detailbench.basics.texts import _
from detailbench.body.outlines import load_outline
from detailbench.findings.gauges import accuracy_of, gauge_of, principle_of, thickness_sessions
from detailbench.findings.kit_names import initials
from detailbench.record.picture import JobPicture, one
from detailbench.record.things import GaugeCorrection, GaugeSession, Reading
from detailbench.record.things import Shim as KeptShim
from detailbench.thickness.gauge import Shim
from detailbench.thickness.gauge_check import FEWEST
from detailbench.thickness.two_point import Proof, TwoPoint, prove, two_point


@dataclass(frozen=True)
class Points:
    """What a correction is drawn through and proved on: foils, the rounds of checks they were read in, raw values."""

    session: GaugeSession
    zero: KeptShim
    shim: KeptShim
    second: KeptShim
    round_no: int
    proof_round: int
    line: TwoPoint
    proof: Proof


def points_of(
    picture: JobPicture, session: GaugeSession, shim_id: str, second_id: str, before_seq: int | None = None
) -> Points:
    """The line through zero plate and ``shim_id`` as read in the newest check that has both, and its proof on
    ``second_id`` as read in the newest check with five readings of it; of what was entered before ``before_seq``.
    Raises Refused (rule "two_point") where readings are missing or the line would only add noise, BadInput where the
    foils do not fit."""
    shims = {s.id: s for s in picture.shop.shims}
    shim, second = one(picture.shop.shims, shim_id), one(picture.shop.shims, second_id)
    if shim.value_um <= 0 or second.value_um <= 0 or shim.substrate != second.substrate:
        raise BadInput(_("A correction takes two foils on the same metal."), field="shim_id")
    read: dict[tuple[int, str], list[float]] = {}
    for c in picture.check_readings:
        if c.session_id == session.id and (before_seq is None or c.seq < before_seq):
            read.setdefault((c.round_no, c.shim_id), []).append(c.value_um)
    plates = [s.id for s in shims.values() if s.value_um == 0 and s.substrate == shim.substrate]
    with_both = [
        (n, plate)
        for plate in plates
        for n in {n for n, _id in read}
        if len(read.get((n, plate), ())) >= FEWEST and len(read.get((n, shim_id), ())) >= FEWEST
    ]
    proofs = [n for (n, id_), values in read.items() if id_ == second_id and len(values) >= FEWEST]
    if not with_both or not proofs:
        raise Refused(
            _("A correction takes {n} readings each on zero plate, foil and a second foil, in this spell.").format(
                n=FEWEST
            ),
            rule="two_point",
        )
    round_no, plate_id = max(with_both)
    proof_round = max(proofs)
    line = two_point(read[(round_no, plate_id)], read[(round_no, shim_id)], _trade(shim))
    proof = prove(line, read[(proof_round, second_id)], _trade(second), accuracy_of(gauge_of(picture, session)))
    return Points(session, shims[plate_id], shim, second, round_no, proof_round, line, proof)


def offered(picture: JobPicture) -> Points | None:
    """A correction that could be decided for the gauge in hand: drawn through the thickest foil read, proved on the
    next. None while one is in force, a second foil is missing, or the foil reads right within its scatter."""
    sessions = thickness_sessions(picture)
    if not sessions or correction_of(picture, sessions[-1]) is not None:
        return None
    session = sessions[-1]
    ids = {c.shim_id for c in picture.check_readings if c.session_id == session.id}
    foils = sorted((s for s in picture.shop.shims if s.id in ids and s.value_um > 0), key=lambda s: -s.value_um)
    for shim in foils:
        for second in foils:
            if second is shim or second.substrate != shim.substrate:
                continue
            try:
                return points_of(picture, session, shim.id, second.id)
            except (Refused, BadInput):  # these two give no line
                continue
    return None


def correction_of(picture: JobPicture, session: GaugeSession, principle: str = "") -> GaugeCorrection | None:
    """The correction decided last for this session, by this principle (empty: by any)."""
    metal = {s.id: s.substrate for s in picture.shop.shims}
    found = [c for c in picture.corrections if c.session_id == session.id and principle in ("", metal[c.shim_id])]
    return found[-1] if found else None


def line_in_force(picture: JobPicture, session: GaugeSession, principle: str = "") -> TwoPoint | None:
    """The line readings of this session are corrected by; None: they count as read. A correction whose readings were
    struck since, or that its second foil does not prove, is not in force."""
    kept = correction_of(picture, session, principle)
    if kept is None:
        return None
    try:
        points = points_of(picture, session, kept.shim_id, kept.proof_id, kept.seq)
    except (Refused, BadInput):  # its foil readings were taken back since
        return None
    return points.line if points.proof.passed else None


def common_u_um(picture: JobPicture, session: GaugeSession, principle: str, at_um: float) -> float:
    """Standard uncertainty common to all readings of a session at a thickness, µm: that of the line they are corrected
    by where one is in force, else the gauge's stated accuracy over √3."""
    line = line_in_force(picture, session, principle)
    if line is not None:
        return line.u_um(at_um)
    return accuracy_of(gauge_of(picture, session)).standard_uncertainty_um(at_um)


class Corrected:
    """Which readings of a job count corrected, and by whose decision; each session's line is found once."""

    def __init__(self, picture: JobPicture) -> None:
        self._picture = picture
        self._panel = {p.id: p.panel for p in picture.places}
        self._sessions = {s.id: s for s in picture.sessions}
        self._lines: dict[tuple[str, str], TwoPoint | None] = {}
        self._drawn = load_outline(picture.car.style, picture.car.length_mm).panels if picture.corrections else {}

    def value_um(self, reading: Reading) -> float | None:
        """The value that counts, µm: corrected where a correction is in force, else as read."""
        line = self._line(reading)
        if line is None or reading.value_um is None:
            return reading.value_um
        return float(line.corrected_um([reading.value_um])[0])

    def line(self, reading: Reading) -> TwoPoint | None:
        """The line this reading is corrected by; its ``working`` says how."""
        return self._line(reading)

    def words(self, readings: tuple[Reading, ...]) -> str:
        """ "corrected by decision of AE", or nothing where none of these is."""
        who: dict[str, None] = {}
        for reading in readings:
            if self._line(reading) is not None:
                session = self._sessions[reading.session_id]
                kept = correction_of(self._picture, session, self._principle(reading))
                who[initials(self._picture.shop, kept.entered_by) if kept is not None else "–"] = None
        return _("corrected by decision of {who}").format(who=", ".join(who)) if who else ""

    def _principle(self, reading: Reading) -> str:
        panel = self._drawn.get(self._panel.get(reading.place_id, ""))
        gauge = gauge_of(self._picture, self._sessions[reading.session_id])
        return principle_of(gauge, panel.substrate if panel is not None else "")

    def _line(self, reading: Reading) -> TwoPoint | None:
        if not self._picture.corrections:
            return None
        key = (reading.session_id, self._principle(reading))
        if key not in self._lines:
            self._lines[key] = line_in_force(self._picture, self._sessions[key[0]], key[1])
        return self._lines[key]


def _trade(shim: KeptShim) -> Shim:
    return Shim(shim.value_um, shim.accuracy_um, shim.label, shim.u_um)
