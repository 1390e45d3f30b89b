"""The gauge, its checks, and readings."""

from __future__ import annotations

from datetime import timedelta

from detailbench.basics.errors import BadFile, Refused
from detailbench.basics.texts import _
from detailbench.cli.readings import lines_of, read_readings
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.shop import found
from detailbench.cli.walking.core.surface import position
from detailbench.cli.walking.kinds import Quantity, amount
from detailbench.cli.walking.steps import measuring as s
from detailbench.findings.walking import panel_places
from detailbench.moves.gauge_correction import CorrectGauge
from detailbench.moves.readings import AddPlace, DecidePlace, RecordCheck, RecordReading, StartSession
from detailbench.moves.readings_file import ImportReadings
from detailbench.moves.tray import HoldValues, Sent

APART_S = 4.0  # nobody measures faster by hand


def begin_session(step: s.BeginSession, hand: Hand) -> None:
    gauge = found(hand, "gauge", step.gauge)
    hand.do(StartSession(hand.job, gauge.id, amount(step.temperature)))


def check_gauge(step: s.CheckGauge, hand: Hand) -> None:
    if not hand.picture.sessions:
        raise Refused(_("Choose the gauge first; a reading belongs to a gauge."), rule="no_gauge")
    session = hand.picture.sessions[-1].id
    foil = found(hand, "foil", step.foil)
    hand.do(RecordCheck(hand.job, session, foil.id, tuple(v.um for v in step.values), again=step.again))


def correct_readings(step: s.CorrectReadings, hand: Hand) -> None:
    if not hand.picture.sessions:
        raise Refused(_("Choose the gauge first; a reading belongs to a gauge."), rule="no_gauge")
    foil, second = found(hand, "foil", step.foil), found(hand, "foil", step.proved)
    hand.do(CorrectGauge(hand.job, hand.picture.sessions[-1].id, foil.id, second.id, step.reason))


def _record(hand: Hand, reading: Quantity, place: str = "", source: str = "typed", note: str = "") -> None:
    typed = f"{reading.value:.{reading.digits}f}"
    hand.do(
        RecordReading(
            hand.job,
            hand.on_panel(),
            reading.um,
            place_id=place or hand.place,
            typed=typed,
            unit=reading.unit,
            source=source,
            note=note,
        )
    )
    hand.place = ""


def type_reading(step: s.TypeReading, hand: Hand) -> None:
    place = "" if step.place is None else _place(hand, step.place)
    _record(hand, step.reading, place, note=step.note)


def type_readings(step: s.TypeReadings, hand: Hand) -> None:
    apart = timedelta(seconds=APART_S if step.every is None else step.every.value)
    for reading in step.values:
        if hand.clock.by_hand is not None:
            hand.clock.forward(apart)
        _record(hand, reading)


def gauge_sends(step: s.GaugeSends, hand: Hand) -> None:
    if not hand.panel:  # it lands nowhere: it waits
        typed = f"{step.reading.value:.{step.reading.digits}f}"
        text = typed if step.reading.unit == "um" else f"{typed} {step.reading.unit}"
        hand.do(HoldValues((Sent(text, _("no panel is chosen")),), hand.job))
        return
    _record(hand, step.reading, source="gauge")


def no_value(step: s.NoValue, hand: Hand) -> None:
    hand.do(RecordReading(hand.job, hand.on_panel(), no_value=step.why, place_id=hand.place))
    hand.place = ""


def chosen_place(step: s.ChosenPlace, hand: Hand) -> None:
    panel = hand.on_panel()
    at = position(hand, panel, step.at)
    if at is not None:
        hand.place = hand.do(AddPlace(hand.job, panel, at)).id


def _place(hand: Hand, number: int) -> str:
    for place in panel_places(hand.picture, hand.on_panel()):
        if place.number == number:
            return place.id
    raise Refused(_("That panel has no place {n}.").format(n=number), rule="no_place")


def decide_odd_place(step: s.DecideOddPlace, hand: Hand) -> None:
    place = _place(hand, step.place)
    newest = [r for r in hand.picture.readings if r.place_id == place]
    moment = newest[-1].work if newest else "as_found"
    hand.do(DecidePlace(hand.job, place, moment, step.decision, step.reason))


def import_file(step: s.ImportFile, hand: Hand) -> None:
    path = hand.beside / step.file
    try:
        content = path.read_bytes()
    except OSError as error:
        raise BadFile(
            _("{name} cannot be read ({why}).").format(name=step.file, why=error.strerror), name=step.file
        ) from error
    read = read_readings(hand.bench, content, path.name, "mil" if step.unit == "mil" else "um")
    if read.refused:
        first = read.refused[0]
        raise BadFile(first.sentence, name=path.name, line=first.line)
    hand.do(ImportReadings(hand.job, lines_of(read, step.panel or hand.panel), path.name))


ACTS = {
    s.BeginSession: begin_session,
    s.CheckGauge: check_gauge,
    s.CorrectReadings: correct_readings,
    s.TypeReading: type_reading,
    s.TypeReadings: type_readings,
    s.GaugeSends: gauge_sends,
    s.NoValue: no_value,
    s.ChosenPlace: chosen_place,
    s.DecideOddPlace: decide_odd_place,
    s.ImportFile: import_file,
}
