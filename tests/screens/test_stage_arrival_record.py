"""Arrival, second half: bearer, custody, limits, remarks, signatures; the record closed and sent off the same day."""

from __future__ import annotations

import io
from datetime import timedelta
from pathlib import Path

import pytest
from day_window import (
    click_line,
    day_window,
    field,
    lines,
    named,
    note,
    press_button,
    said_at,
    tap,
    texts,
    type_into,
)
from PIL import Image
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPlainTextEdit, QWidget
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.findings.custody import custody_of
from detailbench.findings.due import due
from detailbench.moves.arrival import AddDamage, NewJob, SetOwner
from detailbench.moves.bench import Bench
from detailbench.moves.custody import NoteCustody, SetArrived
from detailbench.moves.intake import AddRemark, AddRepair
from detailbench.moves.limits import AddLimit
from detailbench.moves.parties import SetBearer
from detailbench.moves.shop import SetSetting
from detailbench.moves.surface import SetState
from detailbench.screens.stages.arrival.car_photos import CarPhotos
from detailbench.screens.stages.arrival.card import ArrivalCard
from detailbench.screens.window import Window

LONG_MS = 60_000
SECRET = "four ordinary words here"


@pytest.fixture
def arrival(qtbot: QtBot, clock: HandClock, bench: Bench, job_id: str) -> Window:
    bench.do(SetSetting("shop_name", "Invented Paintworks"))
    return day_window(qtbot, clock, bench, job_id, stage="arrival")


def card_of(window: Window) -> ArrivalCard:
    (card,) = window.findChildren(ArrivalCard)
    return card


def turn(window: Window, page: str, face: str = "") -> None:
    card_of(window).pages.turn(page)
    if face:
        press_button(window, face)


# owner, bearer
def test_a_company_is_asked_who_speaks_for_it_and_a_person_is_not(arrival: Window, bench: Bench, job_id: str) -> None:
    assert "who speaks for the company" not in texts(arrival)
    press_button(arrival, "owner is a: company")
    type_into(arrival, "who speaks for the company", "Third Invented")
    owner = next(p for p in bench.job(job_id).parties if p.role == "owner")
    assert (owner.kind, bench.job(job_id).said(owner.id, "contact")) == ("company", "Third Invented")


def test_nobody_chose_the_lightness_so_none_is_shown_as_chosen(arrival: Window) -> None:
    turn(arrival, "car")
    for shade in ("dark", "mid", "light"):
        assert not named(arrival, f"lightness of the colour: {shade}").isChecked()  # type: ignore[attr-defined]


def test_who_fetches_the_car_may_be_another_than_who_brings_it(arrival: Window, bench: Bench, job_id: str) -> None:
    turn(arrival, "bearer")
    type_into(arrival, "bearer's name", "Fourth Invented")
    note(arrival, "authority: on whose word, in words", "daughter, by telephone")
    press_button(arrival, "errand: fetches")
    assert field(arrival, "bearer's name").text() == ""
    type_into(arrival, "bearer's name", "Fifth Invented")
    picture = bench.job(job_id)
    noted = [p for p in picture.parties if p.role == "bearer"]
    bearers = [(p.errand, picture.said(p.id, "name"), picture.said(p.id, "authority")) for p in noted]
    assert bearers == [("brings", "Fourth Invented", "daughter, by telephone"), ("fetches", "Fifth Invented", "")]
    press_button(arrival, "Take the bearer out")
    assert [p.errand for p in bench.job(job_id).parties if p.role == "bearer"] == ["brings"]


def test_both_said_of_the_one_bearer_is_an_entry(arrival: Window, bench: Bench, job_id: str) -> None:
    bench.do(SetBearer(job_id, {"name": "Fourth Invented"}))
    turn(arrival, "bearer")
    press_button(arrival, "errand: both")
    assert [p.errand for p in bench.job(job_id).parties if p.role == "bearer"] == ["both"]
    assert "brings the car and fetches it" in texts(arrival)


# visit and custody
def test_the_time_of_arrival_is_typed_as_stated_and_says_how_much_later_it_was_entered(
    arrival: Window, bench: Bench, job_id: str, clock: HandClock
) -> None:
    turn(arrival, "visit")
    now = clock.now()
    stated = now - timedelta(days=4)
    type_into(arrival, "arrived, as stated", stated.strftime("%Y-%m-%d %H:%M"))
    assert bench.job(job_id).visits[-1].arrived_at == stated.replace(second=0, microsecond=0)
    assert "Entered 4 days after the stated arrival." in texts(arrival)
    type_into(arrival, "arrived, as stated", "yesterday")
    assert "18:10 for today" in said_at(arrival, "arrived, as stated")
    later = (now + timedelta(hours=1)).strftime("%H:%M")
    type_into(arrival, "arrived, as stated", later)
    assert "still to come" in said_at(arrival, "arrived, as stated")
    assert bench.job(job_id).visits[-1].arrived_at == stated.replace(second=0, microsecond=0)


def test_an_arrival_after_work_that_was_entered_is_said_at_its_place(
    arrival: Window, bench: Bench, job_id: str, clock: HandClock
) -> None:
    bench.do(SetState(job_id, ("bonnet",), clean="washed"))
    came = bench.job(job_id).visits[-1].arrived_at
    clock.forward(minutes=30)
    turn(arrival, "visit")
    later = (clock.now() - timedelta(minutes=10)).strftime("%Y-%m-%d %H:%M")
    type_into(arrival, "arrived, as stated", later)
    assert "state of panels. It cannot have arrived later" in said_at(arrival, "arrived, as stated")
    assert field(arrival, "arrived, as stated").text() == later
    assert bench.job(job_id).visits[-1].arrived_at == came


def test_custody_is_kept_field_by_field_and_the_newest_stands_in_it(arrival: Window, bench: Bench, job_id: str) -> None:
    turn(arrival, "custody")
    press_button(arrival, "runs on: charge")
    type_into(arrival, "how full, %", "70 %")
    type_into(arrival, "keys", "2")
    type_into(arrival, "where they hang", "board, hook 4")
    type_into(arrival, "keys", "1")
    type_into(arrival, "how full, %", "170")
    assert "0 to 100\u00a0%" in said_at(arrival, "how full, %")
    now = custody_of(bench.job(job_id), "in")
    assert (now.energy, now.energy_percent, now.keys_count, now.keys_at) == ("charge", 70.0, 1, "board, hook 4")
    type_into(arrival, "where they hang", "")
    assert custody_of(bench.job(job_id), "in").keys_at == ""


def test_that_the_car_was_moved_names_where_from_and_by_whom(arrival: Window, bench: Bench, job_id: str) -> None:
    bench.do(NoteCustody(job_id, "in", {"stands_at": "yard, space 2"}))
    turn(arrival, "custody")
    assert "It stands: yard, space 2." in texts(arrival)
    type_into(arrival, "moved to", "bay 1")
    assert "by Ana Berg: from yard, space 2 to bay 1." in texts(arrival)
    type_into(arrival, "by whom, if not by you", "the neighbour", None)
    press_button(arrival, "Note that the car was moved")
    assert said_at(arrival, "moved to") == "Say where the car stands now."
    type_into(arrival, "moved to", "bay 2")
    moved = bench.job(job_id).car_moves
    assert [(m.to_place, m.words, bool(m.person_id)) for m in moved] == [
        ("bay 1", "", True), ("bay 2", "the neighbour", False),
    ]  # fmt: skip


# limits, repairs, the map
def test_a_limit_is_noted_for_the_tapped_panel_or_the_whole_car(arrival: Window, bench: Bench, job_id: str) -> None:
    turn(arrival, "limits")
    tap(arrival, "bonnet")
    assert not named(arrival, "for: whole car").isEnabled()  # a car nobody may touch is not taken in
    type_into(arrival, "in the owner's words", "leave it alone")
    press_button(arrival, "owner's limit: most off")
    press_button(arrival, "Note this limit")
    assert "how much may come off" in said_at(arrival, "at most, µm")
    type_into(arrival, "at most, µm", "4")
    assert [(x.kind, x.panels, x.most_off_um, x.words) for x in bench.job(job_id).limits] == [
        ("bar_panel", ("bonnet",), None, "leave it alone"),
        ("most_off", (), 4.0, ""),
    ]
    click_line(arrival, "Owner's limits", "at most")
    press_button(arrival, "Strike out the chosen limit")
    assert [x.kind for x in bench.job(job_id).limits] == ["bar_panel"]


def test_barred_panels_damage_and_stated_repairs_are_told_apart_on_the_map(
    arrival: Window, bench: Bench, job_id: str
) -> None:
    bench.do(AddDamage(job_id, "chip", "bonnet"))
    bench.do(AddRepair(job_id, "painted", "roof", "papers"))
    bench.do(AddDamage(job_id, "scuff", "roof"))
    bench.do(AddRepair(job_id, "blended", "wing_front_l"))
    bench.do(AddDamage(job_id, "dent", "door_front_l"))
    bench.do(AddLimit(job_id, "bar_panel", ("door_front_l",)))
    items = arrival.centre.map.items_by_key
    hatches = {key: items[key].fill.hatch for key in ("bonnet", "roof", "wing_front_l", "door_front_l", "tailgate")}
    assert len({hatches["bonnet"], hatches["wing_front_l"], hatches["door_front_l"], hatches["tailgate"]}) == 4
    assert hatches["roof"] == hatches["bonnet"]
    assert items["roof"].fill.says == "scuff; repair as stated: painted"
    assert "not to be touched" in items["door_front_l"].fill.says
    assert "dent" in items["door_front_l"].fill.says


def test_a_stated_repair_says_who_stated_it(arrival: Window, bench: Bench, job_id: str) -> None:
    turn(arrival, "damage", "note: stated repair")
    tap(arrival, "roof")
    press_button(arrival, "stated by: papers")
    type_into(arrival, "repair as stated, in words", "painted")
    assert lines(arrival, "existing damage") == ["roof, as papers state: painted · AB"]
    click_line(arrival, "existing damage", "painted")
    press_button(arrival, "Strike out the chosen line")
    assert bench.job(job_id).repairs == ()


def test_words_typed_for_one_job_do_not_stand_in_another(arrival: Window, bench: Bench) -> None:
    other = bench.do(NewJob()).scope
    turn(arrival, "sign")
    edit = named(arrival, "remark, printed as typed", QPlainTextEdit)
    QTest.keyClicks(edit, "a")
    assert card_of(arrival).sign.remarks.words.text() == "a"
    arrival.open_job(other)
    turn(arrival, "sign")
    assert card_of(arrival).sign.remarks.words.text() == ""


# photographs of the car
def test_photos_of_the_car_say_what_they_show_and_when_they_came_in(
    arrival: Window, bench: Bench, job_id: str, clock: HandClock, tmp_path: Path, qtbot: QtBot
) -> None:
    out = io.BytesIO()
    Image.new("RGB", (320, 240), (20, 40, 90)).save(out, "JPEG")
    file = tmp_path / "monday.jpg"
    file.write_bytes(out.getvalue())
    bench.do(SetArrived(job_id, clock.now() - timedelta(days=4)))
    turn(arrival, "visit")
    photos = card_of(arrival).visit.photos
    assert isinstance(photos, CarPhotos)
    photos.choose = lambda _over, _title, _filters, _many, chosen: chosen([file])
    press_button(arrival, "Add photos of the car")
    assert "Choose what the photos show first." in arrival.notices.text
    press_button(arrival, "photo of: VIN plate")
    press_button(arrival, "Add photos of the car")
    qtbot.waitUntil(lambda: not photos.intake.busy)
    assert [(p.shows, p.moment, p.panel) for p in bench.job(job_id).photos] == [("vin_plate", "arrival", "")]
    (line,) = lines(arrival, "Photos of the car")
    assert line.startswith("VIN plate")
    assert "entered 4 days after the stated arrival" in line
    click_line(arrival, "Photos of the car", "VIN plate")
    press_button(arrival, "photo of: odometer")
    assert bench.job(job_id).photos[0].shows == "odometer"


# signing
@pytest.fixture
def brought(arrival: Window, bench: Bench, job_id: str) -> Window:
    """A relative brings it and has something to say."""
    bench.do(SetOwner(job_id, {"name": "Third Invented"}))
    bench.do(SetBearer(job_id, {"name": "Fourth Invented", "authority": "daughter, by telephone."}))
    bench.do(AddRemark(job_id, "mind the <roof> rails", "arrival", "bearer"))
    turn(arrival, "sign", "on arrival: Signatures")
    return arrival


def sign(window: Window) -> None:
    """Draw across the pad and say done."""
    pad = next(w for w in window.findChildren(QWidget) if w.isVisible() and w.accessibleName() == "Pad to sign on")
    box = pad.rect()
    points = [QPoint(round(box.width() * x), round(box.height() * 0.5)) for x in (0.3, 0.5, 0.7)]
    QTest.mousePress(pad, Qt.MouseButton.LeftButton, pos=points[0])
    for point in points[1:]:
        QTest.mouseMove(pad, point)
    QTest.mouseRelease(pad, Qt.MouseButton.LeftButton, pos=points[-1])
    press_button(window, "Signed")


def test_the_bearer_signs_for_the_owner_on_the_authority_named(brought: Window, bench: Bench, job_id: str) -> None:
    assert field(brought, "name, as it is printed").text() == "Fourth Invented"
    press_button(brought, "Hand the screen over to sign")
    told = texts(brought)
    assert "I sign for the owner on the authority of daughter, by telephone." in told
    assert "bearer: mind the <roof> rails" in told
    assert "unwashed" in told
    sign(brought)
    (signature,) = bench.job(job_id).signatures
    assert (signature.role, signature.way, signature.moment) == ("bearer", "drawn", "arrival")
    assert "Remarks: as noted above." in signature.statement
    assert "roof" not in signature.statement
    press_button(brought, "The workshop takes the screen back: who?: Ana Berg")
    assert lines(brought, "Signatures")[0].startswith("bearer, Fourth Invented: drawn here")


@pytest.mark.parametrize("way", ["by telephone", "by message", "declined", "absent"])
def test_who_does_not_sign_here_answers_otherwise_and_has_stated_nothing(
    brought: Window, bench: Bench, job_id: str, way: str
) -> None:
    press_button(brought, "who: owner")
    press_button(brought, f"or answered otherwise: {way}")
    (signature,) = bench.job(job_id).signatures
    assert (signature.role, signature.moment, signature.statement) == ("owner", "arrival", "")
    assert way in lines(brought, "Signatures")[0]


def test_a_signature_of_the_arrival_is_none_of_the_handover(brought: Window, bench: Bench, job_id: str) -> None:
    press_button(brought, "or answered otherwise: declined")
    assert "signatures" in due(bench.job(job_id))["handover"].what


# the record
def close(window: Window, qtbot: QtBot) -> None:
    turn(window, "record", "record: Close")
    for name in ("passphrase of the workshop's key", "the passphrase again"):
        found = [w for w in window.findChildren(QWidget) if w.isVisible() and w.accessibleName() == name]
        if found:
            field(window, name).setText(SECRET)
    acts = card_of(window).record._acts
    press_button(window, "Close the arrival record")
    qtbot.waitUntil(lambda: not acts.beside.busy, timeout=LONG_MS)


def test_what_is_still_open_is_said_and_does_not_stop_the_record(arrival: Window, bench: Bench, job_id: str) -> None:
    turn(arrival, "record")
    assert "Still open, and the record will say so: owner's name, VIN, or why there is none" in texts(arrival)
    assert "Neither owner nor bearer has signed or answered yet." in texts(arrival)
    assert named(arrival, "Close the arrival record").isEnabled()


def test_the_record_is_closed_and_counts_as_done_once_it_has_left(
    arrival: Window, bench: Bench, job_id: str, qtbot: QtBot
) -> None:
    limit = bench.do(AddLimit(job_id, "no_sanding")).id
    close(arrival, qtbot)
    assert [d.kind for d in bench.job(job_id).documents] == ["arrival"]
    assert "it has not left the shop yet" in texts(arrival)  # turned to by itself
    assert "record" in due(bench.job(job_id))["arrival"].what
    press_button(arrival, "Note that it left")
    assert "Choose how it left first." in arrival.notices.text
    press_button(arrival, "it left by: mail")
    type_into(arrival, "to whom", "the owner's mail", None)
    press_button(arrival, "Note that it left")
    assert "record" not in due(bench.job(job_id))["arrival"].what
    (line,) = lines(arrival, "How it left")
    assert line.endswith("by mail, to the owner's mail · AB")
    press_button(arrival, "it left by: message")
    press_button(arrival, "Note that it left")
    assert lines(arrival, "How it left")[0].endswith("by message, to whom is not noted · AB")
    press_button(arrival, "it left by: print")
    press_button(arrival, "Note that it left")
    assert lines(arrival, "How it left")[0].endswith("in print · AB")
    turn(arrival, "limits")
    click_line(arrival, "Owner's limits", "no sanding")
    assert limit == bench.job(job_id).limits[0].id
    assert not named(arrival, "Strike out the chosen limit").isEnabled()
    assert "only an agreement" in texts(arrival)


def test_a_time_it_cannot_have_left_at_stays_typed_with_the_reason(
    arrival: Window, bench: Bench, job_id: str, qtbot: QtBot
) -> None:
    close(arrival, qtbot)
    press_button(arrival, "it left by: handed over")
    type_into(arrival, "when, if not now", "2030-01-01 10:00", None)
    press_button(arrival, "Note that it left")
    assert "cannot have left before" in said_at(arrival, "when, if not now")
    assert field(arrival, "when, if not now").text() == "2030-01-01 10:00"
    assert bench.job(job_id).deliveries == ()


def test_a_delivery_that_never_was_is_put_right(arrival: Window, bench: Bench, job_id: str, qtbot: QtBot) -> None:
    close(arrival, qtbot)
    press_button(arrival, "it left by: print")
    press_button(arrival, "Note that it left")
    click_line(arrival, "How it left", "in print")
    press_button(arrival, "The chosen delivery did not leave after all")
    assert bench.job(job_id).deliveries == ()
    assert "it has not left the shop yet" in texts(arrival)


def test_the_passphrase_serves_every_document_of_the_day(
    arrival: Window, bench: Bench, job_id: str, qtbot: QtBot
) -> None:
    close(arrival, qtbot)
    assert arrival.context.opened_key is not None
    turn(arrival, "record", "record: Close")
    assert "passphrase of the workshop's key" not in texts(arrival)
    assert card_of(arrival).record.faces.closing.close_it.text() == "Close a new arrival record"
