"""The Jobs page: finding, opening and beginning jobs; the first start of an empty workshop."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from day_window import click, click_line, day_window, field, keys, lines, named, press, press_button, texts, type_into
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QApplication
from pytestqt.qtbot import QtBot

from detailbench.basics.clock import HandClock
from detailbench.moves.arrival import AddDamage, DescribeCar, NewJob
from detailbench.moves.bench import Bench
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import SetState
from detailbench.screens.window import Window

VIN = "1M8GDM9AXKP042788"  # the worked example of the rule itself, 49 CFR 565.15


@pytest.fixture
def two_jobs(bench: Bench) -> tuple[str, str]:
    """An older one and a newer one."""
    made = [
        bench.do(NewJob(car={"described": car, "colour": colour}, plate=plate, owner={"name": owner})).scope
        for car, colour, plate, owner in (
            ("invented estate", "blue", "INV 11", "Mara Example"),
            ("invented tourer", "silver", "INV 22", "Jo Sample"),
        )
    ]
    return made[0], made[1]


@pytest.fixture
def page(qtbot: QtBot, clock: HandClock, bench: Bench, two_jobs: tuple[str, str]) -> Window:
    return day_window(qtbot, clock, bench)


@pytest.fixture
def empty(tmp_path: Path, clock: HandClock) -> Iterator[Bench]:
    """A workshop in which nothing was ever entered."""
    opened = Bench(tmp_path / "new", clock)
    yield opened
    opened.close()


# opening
def test_the_jobs_are_in_front_while_none_is_open(page: Window) -> None:
    assert page.rail.rows["jobs"].isChecked()
    assert [line.split("\n") for line in lines(page, "jobs")] == [
        ["2031-002 · invented tourer, silver, INV 22 · Jo Sample", "arrived"],
        ["2031-001 · invented estate, blue, INV 11 · Mara Example", "arrived"],
    ]
    assert QApplication.focusWidget() is field(page, "find a job")


def test_typing_narrows_the_list_and_enter_opens_the_first(page: Window, two_jobs: tuple[str, str]) -> None:
    keys("mara est")
    assert [line[:8] for line in lines(page, "jobs")] == ["2031-001"]
    press(Qt.Key.Key_Return)
    assert page.context.job_id == two_jobs[0]
    assert page.rail.rows["arrival"].isChecked()


@pytest.mark.parametrize("word", ["INV 22", "jo", "tourer", "2031-002", "SILVER"])
def test_a_job_is_found_by_plate_owner_car_number_and_colour(page: Window, word: str) -> None:
    keys(word)
    assert [line[:8] for line in lines(page, "jobs")] == ["2031-002"]


def test_words_that_fit_no_job_say_so_and_enter_opens_nothing(page: Window) -> None:
    keys("submarine")
    press(Qt.Key.Key_Return)
    assert lines(page, "jobs") == []
    assert "No job fits these words." in texts(page)
    assert page.context.job_id is None


def test_the_list_is_walked_by_arrows_and_enter_opens(page: Window, two_jobs: tuple[str, str]) -> None:
    press(Qt.Key.Key_Down)
    press(Qt.Key.Key_Down)
    press(Qt.Key.Key_Return)
    assert page.context.job_id == two_jobs[0]


def test_one_press_of_the_mouse_opens_a_job(page: Window, two_jobs: tuple[str, str]) -> None:
    click_line(page, "jobs", "Mara Example")
    assert page.context.job_id == two_jobs[0]
    assert page.rail.rows["arrival"].isChecked()


def test_a_job_opens_where_the_last_thing_was_entered(page: Window, bench: Bench, two_jobs: tuple[str, str]) -> None:
    bench.do(SetState(two_jobs[1], ("bonnet",), clean="washed"))
    bench.do(AddDamage(two_jobs[0], "an invented dent", "roof"))
    click_line(page, "jobs", "Jo Sample")
    assert page.rail.rows["wash"].isChecked()
    click(page.rail.rows["jobs"])
    click_line(page, "jobs", "Mara Example")
    assert page.rail.rows["arrival"].isChecked()


def test_the_open_job_is_marked_and_pressing_it_goes_back_to_it(page: Window, two_jobs: tuple[str, str]) -> None:
    click_line(page, "jobs", "Jo Sample")
    click(page.rail.rows["jobs"])
    assert [line for line in lines(page, "jobs") if line.endswith("open now")] == [
        "2031-002 · invented tourer, silver, INV 22 · Jo Sample\narrived, open now"
    ]
    click_line(page, "jobs", "Jo Sample")
    assert page.context.job_id == two_jobs[1]
    assert page.rail.rows["arrival"].isChecked()


def test_the_line_says_how_a_job_stands_now(page: Window, bench: Bench, two_jobs: tuple[str, str]) -> None:
    bench.do(SetState(two_jobs[0], ("bonnet",), clean="washed"))
    assert [line.split("\n")[1] for line in lines(page, "jobs")] == ["arrived", "in work"]


def test_a_stage_without_a_job_says_where_jobs_are(page: Window) -> None:
    click(page.rail.rows["wash"])
    assert "No job is open yet" in page.notices.text


# beginning
def test_a_job_is_begun_by_keys_alone(page: Window, bench: Bench) -> None:
    field(page, "new job: owner's name").setFocus()
    for text in ("Ben Sample", "INV 33", "invented wagon", "green", VIN.lower()):
        keys(text)
        press(Qt.Key.Key_Return)
    job = bench.job(page.context.job_id or "")
    owner = next(p for p in job.parties if p.role == "owner")
    assert job.said(owner.id, "name") == "Ben Sample"
    assert job.said(job.car.id, "plate") == "INV 33"
    assert (job.car.described, job.car.colour, job.car.vin) == ("invented wagon", "green", VIN)
    assert page.rail.rows["arrival"].isChecked()


def test_a_job_is_begun_by_one_press_with_an_empty_form(page: Window, bench: Bench) -> None:
    press_button(page, "Begin this job")
    assert bench.job(page.context.job_id or "").job.number == "2031-003"


def test_the_form_is_empty_again_for_the_next_car(page: Window) -> None:
    type_into(page, "new job: colour", "green", None)
    press_button(page, "Begin this job")
    click(page.rail.rows["jobs"])
    assert field(page, "new job: colour").text() == ""


def test_an_inspection_is_begun_as_one(page: Window, bench: Bench) -> None:
    press_button(page, "kind of job: inspection only")
    press_button(page, "Begin this job")
    assert bench.job(page.context.job_id or "").job.kind == "inspection"
    click(page.rail.rows["jobs"])
    assert "inspection" in lines(page, "jobs")[0]


def test_a_job_that_cannot_be_begun_leaves_the_form_as_typed(
    qtbot: QtBot, clock: HandClock, bench: Bench, two_jobs: tuple[str, str]
) -> None:
    reader = Bench(bench.folder, clock, read_only=True)
    window = day_window(qtbot, clock, reader)
    type_into(window, "new job: owner's name", "Ben Sample", None)
    press_button(window, "Begin this job")
    assert field(window, "new job: owner's name").text() == "Ben Sample"
    assert window.notices.kind == "stop"
    assert window.context.job_id is None
    window.close()
    reader.close()


def test_the_beginning_of_a_job_can_be_taken_back(page: Window, bench: Bench) -> None:
    press_button(page, "Begin this job")
    press_button(page, "Undo the last entry")
    assert len(bench.shop().jobs) == 2
    assert page.context.picture is None
    assert page.rail.rows["jobs"].isChecked()


# a car known from before
def test_a_known_vin_offers_its_car_and_continuing_it_keeps_it_one_car(
    page: Window, bench: Bench, two_jobs: tuple[str, str]
) -> None:
    bench.do(DescribeCar(two_jobs[0], {"vin": VIN}))
    type_into(page, "new job: VIN", f" {VIN.lower()}", None)
    assert "Last here 10 March 2031: invented estate, blue, INV 11. Continue this car?" in texts(page)
    press_button(page, "Continue this car")
    assert field(page, "new job: owner's name").text() == "Mara Example"
    press(Qt.Key.Key_Space)  # the focus is on what begins the job
    job = bench.job(page.context.job_id or "")
    assert job.job.number == "2031-003"
    assert job.car.id == bench.job(two_jobs[0]).car.id


def test_a_plate_is_no_key(page: Window) -> None:
    type_into(page, "new job: plate", "INV 11", None)
    offers = [w for w in page.findChildren(QAbstractButton) if w.accessibleName() == "Continue this car"]
    assert [w.isVisible() for w in offers] == [False]


def test_a_new_job_for_the_car_of_an_old_one(page: Window, bench: Bench, two_jobs: tuple[str, str]) -> None:
    press(Qt.Key.Key_Down)
    press(Qt.Key.Key_Down)
    press_button(page, "New job for its car")
    press_button(page, "Begin this job")
    job = bench.job(page.context.job_id or "")
    assert job.car.id == bench.job(two_jobs[0]).car.id
    assert job.said(job.car.id, "plate") == "INV 11"


def test_a_number_that_fails_its_check_digit_warns_as_it_is_typed(page: Window) -> None:
    type_into(page, "new job: VIN", VIN[:8] + "5" + VIN[9:], None)
    assert "The check digit (character 9) is 5 but should be X" in texts(page)


# the first start
def test_an_empty_workshop_begins_with_its_first_steps_by_keys(qtbot: QtBot, clock: HandClock, empty: Bench) -> None:
    window = day_window(qtbot, clock, empty)
    keys("Ana Berg")
    assert field(window, "your initials").text() == "AB"
    press(Qt.Key.Key_Return)
    assert [(p.name, p.initials) for p in empty.shop().people] == [("Ana Berg", "AB")]
    assert empty.person == empty.shop().people[0].id
    assert window.strip.person.text() == "Ana Berg"
    assert "Ana Berg is entering." in texts(window)
    keys("Invented Workshop")
    press(Qt.Key.Key_Return)
    assert empty.shop().setting("shop_name") == '"Invented Workshop"'
    window.close()


def test_every_first_step_can_be_left_out(qtbot: QtBot, clock: HandClock, empty: Bench) -> None:
    window = day_window(qtbot, clock, empty)
    press_button(window, "To the jobs")
    assert empty.entries() == ()
    assert "No job yet." in texts(window)
    assert QApplication.focusWidget() is field(window, "new job: owner's name")
    press_button(window, "First steps of a new workshop")
    assert field(window, "your name").isVisible()
    window.close()


def test_the_kit_is_put_on_the_shelf_once(qtbot: QtBot, clock: HandClock, empty: Bench) -> None:
    window = day_window(qtbot, clock, empty)
    press_button(window, "Put the starter kit on the shelf")
    count = len(empty.shop().combinations)
    assert count > 3
    assert f"{count} combinations stand in the range." in texts(window)
    assert not named(window, "Put the starter kit on the shelf").isEnabled()
    window.close()


def test_a_gauge_is_kept_with_what_checks_it(qtbot: QtBot, clock: HandClock, empty: Bench) -> None:
    window = day_window(qtbot, clock, empty)
    for name, text in (
        ("the gauge's name", "invented gauge"),
        ("accuracy, fixed ±, µm", "1,5"),
        ("accuracy, ± % of the reading", "2"),
        ("a check foil's value, µm", "102"),
    ):
        type_into(window, name, text)
    press_button(window, "it reads on: both metals")
    press_button(window, "shows the clear coat too: no")
    press_button(window, "Keep gauge, zero plate and foil")
    assert empty.shop().gauges == ()  # the foil's tolerance is in its papers, not in this program
    assert field(window, "its tolerance ±, µm").accessibleDescription() == "A number is needed here."
    type_into(window, "its tolerance ±, µm", "0.6")
    press_button(window, "Keep gauge, zero plate and foil")
    gauge = empty.shop().gauges[0]
    assert (gauge.name, gauge.accuracy_fixed_um, gauge.accuracy_share) == ("invented gauge", 1.5, 0.02)
    assert (gauge.principle, gauge.substrates, gauge.layers) == ("magnetic_induction", ("steel", "aluminium"), False)
    assert [s.value_um for s in empty.shop().shims] == [0.0, 102.0]
    assert empty.shop().shims[1].u_um == pytest.approx(0.346410, abs=1e-6)  # 0.6/√3, JCGM 100:2008 4.3.7
    window.close()


@pytest.mark.parametrize(
    ("reads", "layers", "kept"),
    [
        ("aluminium", "no", ("eddy_current", ("aluminium",), False)),
        ("all, by ultrasound", "yes", ("ultrasonic", ("steel", "aluminium"), True)),
    ],
)
def test_a_first_gauge_is_not_kept_before_it_is_said_what_it_reads(
    qtbot: QtBot, clock: HandClock, empty: Bench, reads: str, layers: str, kept: object
) -> None:
    window = day_window(qtbot, clock, empty)
    for name, text in (
        ("the gauge's name", "invented gauge"),
        ("accuracy, fixed ±, µm", "1.5"),
        ("accuracy, ± % of the reading", "2"),
    ):
        type_into(window, name, text)
    for asked in ("it reads on: ", "shows the clear coat too: "):
        press_button(window, "Keep gauge, zero plate and foil")
        assert empty.shop().gauges == ()
        assert "Say what the gauge reads on" in texts(window)
        assert field(window, "the gauge's name").text() == "invented gauge"
        press_button(window, asked + (reads if asked.startswith("it") else layers))
    press_button(window, "Keep gauge, zero plate and foil")
    gauge = empty.shop().gauges[0]
    assert (gauge.principle, gauge.substrates, gauge.layers) == kept
    assert "Say what the gauge reads on" not in texts(window)
    window.close()


def test_a_foil_left_empty_is_said_beside_the_gauge(qtbot: QtBot, clock: HandClock, empty: Bench) -> None:
    window = day_window(qtbot, clock, empty)
    for name, text in (
        ("the gauge's name", "invented gauge"),
        ("accuracy, fixed ±, µm", "1.5"),
        ("accuracy, ± % of the reading", "2"),
    ):
        type_into(window, name, text)
    press_button(window, "it reads on: steel")
    press_button(window, "shows the clear coat too: no")
    press_button(window, "Keep gauge, zero plate and foil")
    assert [s.value_um for s in empty.shop().shims] == [0.0]
    said = "On the shelf: invented gauge. No foil yet: without one no gauge check can be finished"
    assert said in texts(window)
    empty.do(AddToShop("shim", {"label": "foil 102", "value_um": 102.0}))
    assert "No foil yet" not in texts(window)
    window.close()


def test_a_gauge_with_a_letter_for_a_figure_keeps_nothing_and_the_typing_stays(
    qtbot: QtBot, clock: HandClock, empty: Bench
) -> None:
    window = day_window(qtbot, clock, empty)
    type_into(window, "the gauge's name", "invented gauge")
    type_into(window, "accuracy, fixed ±, µm", "1O", Qt.Key.Key_Tab)
    press_button(window, "Keep gauge, zero plate and foil")
    assert empty.shop().gauges == ()
    assert field(window, "accuracy, fixed ±, µm").text() == "1O"
    assert "letter" in field(window, "accuracy, fixed ±, µm").accessibleDescription()
    window.close()


def test_where_one_person_works_that_one_enters_and_of_two_nobody_is_guessed(
    qtbot: QtBot, clock: HandClock, bench: Bench
) -> None:
    person, bench.person = bench.person, ""
    window = day_window(qtbot, clock, bench)
    assert bench.person == person
    assert window.strip.person.text() == "Ana Berg"
    window.close()
    bench.do(AddToShop("person", {"name": "Jon Til", "initials": "JT"}))
    bench.person = ""
    window = day_window(qtbot, clock, bench)
    assert bench.person == ""


def test_a_workshop_with_people_shows_its_jobs_at_once(qtbot: QtBot, clock: HandClock, bench: Bench) -> None:
    bench.do(AddToShop("person", {"name": "Jon Til", "initials": "JT"}))
    window = day_window(qtbot, clock, bench)
    assert field(window, "find a job").isVisible()
