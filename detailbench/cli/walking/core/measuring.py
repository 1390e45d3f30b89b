"""The gauge, its checks, and readings."""

from __future__ import annotations

from datetime import timedelta

from detailbench.basics.errors import BadFile, BadInput, Refused
from detailbench.basics.texts import _
from detailbench.body.panels import twin_key
from detailbench.cli.readings import lines_of, read_readings
from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.shop import found
from detailbench.cli.walking.core.surface import position
from detailbench.cli.walking.kinds import Quantity, amount
from detailbench.cli.walking.steps import measuring as s
from detailbench.findings.gauges import gauge_of
from detailbench.findings.walking import panel_places
from detailbench.moves.gauge_correction import CorrectGauge
from detailbench.moves.gloss import RecordGloss
from detailbench.moves.reading_mending import NotAValue, ReadAsMil
from detailbench.moves.readings import (
    AddPlace,
    DecidePlace,
    RecordCheck,
    RecordReading,
    StartSession,
    reading_session,
)
from detailbench.moves.readings_file import ImportReadings
from detailbench.moves.tray import HoldValues, Sent
from detailbench.moves.walk_mending import ChangeSides, ShiftBack
from detailbench.record.things import Reading
from detailbench.thickness.sent_text import read_sent

APART_S = 4.0  # nobody measures faster by hand


def begin_session(step: s.BeginSession, hand: Hand) -> None:
    gauge = found(hand, "gauge", step.gauge)
    hand.do(StartSession(hand.job, gauge.id, amount(step.temperature)))


def check_gauge(step: s.CheckGauge, hand: Hand) -> None:
    session = reading_session(hand.picture).id
    foil = found(hand, "foil", step.foil)
    hand.do(RecordCheck(hand.job, session, foil.id, tuple(v.um for v in step.values), again=step.again))


def correct_readings(step: s.CorrectReadings, hand: Hand) -> None:
    foil, second = found(hand, "foil", step.foil), found(hand, "foil", step.proved)
    hand.do(CorrectGauge(hand.job, reading_session(hand.picture).id, foil.id, second.id, step.reason))


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


def type_as_it_is(step: s.TypeAsItIs, hand: Hand) -> None:
    """What has two meanings, or none, is not entered: the question or the sentence is the refusal. Read as the gauge in
    hand means it: a clear coat behind a stroke, a gloss value behind its angle."""
    sessions = hand.picture.sessions
    gauge = gauge_of(hand.picture, sessions[-1]) if sessions else None
    read = read_sent(step.text) if gauge is None else read_sent(step.text, layers=gauge.layers, angles=gauge.angles_deg)
    if read.sentence or read.question:
        raise BadInput(read.question or read.sentence, field="value", given=step.text)
    panel, place = hand.on_panel(), hand.place
    if read.angle_deg is not None and read.value_gu is not None:
        hand.do(RecordGloss(hand.job, panel, read.angle_deg, read.value_gu, place_id=place, typed=step.text))
    else:
        hand.do(
            RecordReading(
                hand.job,
                panel,
                read.value_um,
                place_id=place,
                typed=step.text,
                unit=read.unit,
                clear_um=read.clear_um,
            )
        )
    hand.place = ""


def _sent(reading: Quantity) -> str:
    typed = f"{reading.value:.{reading.digits}f}"
    return typed if reading.unit == "um" else f"{typed} {reading.unit}"


def gauge_sends(step: s.GaugeSends, hand: Hand) -> None:
    if not hand.panel:  # it lands nowhere: it waits
        hand.do(HoldValues((Sent(_sent(step.reading), _("no panel is chosen")),), hand.job))
        return
    _record(hand, step.reading, source="gauge")


def gauge_sends_many(step: s.GaugeSendsMany, hand: Hand) -> None:
    hand.do(HoldValues(tuple(Sent(_sent(v), _("arrived at once")) for v in step.values), hand.job))


def no_value(step: s.NoValue, hand: Hand) -> None:
    hand.do(RecordReading(hand.job, hand.on_panel(), no_value=step.why, place_id=hand.place))
    hand.place = ""


def _readings_at(hand: Hand, places: set[str]) -> list[Reading]:
    return [r for r in hand.picture.readings if r.place_id in places]


def reading_was(step: s.ReadingWas, hand: Hand) -> None:
    panel = hand.on_panel()
    flag, move = {"nothing": ("zero", NotAValue), "mil": ("unit", ReadAsMil)}[step.what]
    doubtful = [
        r for r in _readings_at(hand, {p.id for p in hand.picture.places if p.panel == panel}) if flag in r.flags
    ]
    if not doubtful:
        raise Refused(_("No reading of that panel is in doubt like that."), rule="nothing")
    hand.do(move(hand.job, doubtful[-1].id))


def shift_from(step: s.ShiftFrom, hand: Hand) -> None:
    there = _readings_at(hand, {_place(hand, step.place)})
    if not there:
        raise Refused(_("Place {n} of that panel has no reading.").format(n=step.place), rule="nothing")
    hand.do(ShiftBack(hand.job, there[-1].id))


def change_side(step: s.ChangeSide, hand: Hand) -> None:
    panel = hand.on_panel()
    panels: tuple[str, ...] = (panel,)
    if step.whole_side and twin_key(panel):
        read = {p.panel for p in hand.picture.places if _readings_at(hand, {p.id})}
        panels = tuple(sorted(key for key in read if key[-2:] == panel[-2:]))
    hand.do(ChangeSides(hand.job, panels))


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
    s.TypeAsItIs: type_as_it_is,
    s.GaugeSends: gauge_sends,
    s.GaugeSendsMany: gauge_sends_many,
    s.NoValue: no_value,
    s.ReadingWas: reading_was,
    s.ShiftFrom: shift_from,
    s.ChangeSide: change_side,
    s.ChosenPlace: chosen_place,
    s.DecideOddPlace: decide_odd_place,
    s.ImportFile: import_file,
}
