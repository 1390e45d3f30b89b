"""The report can be printed from any state of a job and says what is missing; what was not measured is not stated."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta

import pytest
from invented_handover import HandoverJob
from invented_shop import InventedShop
from reading_reports import pdf_pages, pdf_text, said_in
from whole_job import Whole

from detailbench.moves import handover, marks, readings, surface
from detailbench.report import DocumentContent, document_pdf

ReportOf = Callable[[str], DocumentContent]


def test_a_job_just_begun_prints_and_says_what_is_missing(invented: InventedShop, report_of: ReportOf) -> None:
    content = report_of(invented.job())
    text = said_in(content)
    for words in (
        "No marks were entered", "Paint thickness was not measured", "No panel was polished", "No readings were taken",
        "Not accepted yet: no answer of the owner was entered", "No gauge was taken in hand",
        "No test section was polished", "No machine work is recorded", "No coating, sealant or wax was recorded",
        "No photographs were added", "No figure in this report was computed", "not signed",
    ):  # fmt: skip
        assert words in text, words
    assert document_pdf(content).pages < 9


def test_a_copy_that_is_not_closed_says_that_it_carries_no_seal(whole: Whole) -> None:
    text = said_in(whole.content(fingerprint=""))
    assert "it carries no seal" in text
    assert "Place for the owner's own electronic signature" not in text
    assert "it carries no seal" not in said_in(whole.content())


def test_marks_seen_but_not_looked_at_again_are_said_to_be_so(invented: InventedShop, report_of: ReportOf) -> None:
    job = invented.job()
    invented.bench.do(surface.SetState(job, ("bonnet",), clean="wiped"))
    invented.bench.do(marks.RecordMark(job, "bonnet", "swirl", 3))
    text = said_in(report_of(job))
    assert "1 mark as found." in text
    assert "No mark was looked at again after the work." in text


def test_readings_before_only_state_no_change(invented: InventedShop, report_of: ReportOf) -> None:
    job = invented.job()
    invented.measured(job, values=(118.0, 119.0, 117.0, 118.0, 120.0))
    text = said_in(report_of(job))
    assert "Not measured after the work" in text
    assert "removed" not in text
    assert "not confirmed by a gauge check" in text


def changed(whole: Whole, **after: object) -> DocumentContent:
    """The whole job with every reading after the work altered."""
    readings_ = tuple(replace(r, **after) if r.work == "polished" else r for r in whole.picture.readings)
    return whole.content(replace(whole.picture, readings=readings_))


def test_readings_through_a_coating_give_no_figure(whole: Whole) -> None:
    text = said_in(changed(whole, cover="protected"))
    assert "not comparable: protected after" in text.lower()
    assert "removed" not in text


def test_hot_readings_give_no_figure_and_name_both_temperatures(whole: Whole) -> None:
    last = whole.picture.sessions[-1]
    sessions = (*whole.picture.sessions[:-1], replace(last, temperature_c=31.0))
    text = said_in(whole.content(replace(whole.picture, sessions=sessions)))
    assert "21 °C before, 31 °C after" in text
    assert "removed" not in text


def test_without_a_temperature_the_change_is_kept_off_paper(whole: Whole) -> None:
    sessions = tuple(replace(s, temperature_c=None) for s in whole.picture.sessions)
    text = said_in(whole.content(replace(whole.picture, sessions=sessions)))
    assert "no figure is printed: the temperature was not recorded on both sides" in text
    assert "removed" not in text


def test_a_thicker_car_after_the_work_is_never_called_a_removal(whole: Whole) -> None:
    thicker = tuple(
        replace(r, value_um=r.value_um + 6.0) if r.work == "polished" and r.value_um else r
        for r in whole.picture.readings
    )
    text = said_in(whole.content(replace(whole.picture, readings=thicker)))
    assert "no removal can be stated" in text
    assert "removed -" not in text
    assert "removed −" not in text


def test_a_change_lost_in_the_scatter_is_said_to_be_so(whole: Whole) -> None:
    wiggle = (1.5, -1.5, 0.4, -0.4, 1.0, -1.0, 0.2, -0.2)
    before = {r.place_id: r.value_um for r in whole.picture.readings if r.work == "as_found"}
    places = {p.id: p for p in whole.picture.places}
    noisy = tuple(
        replace(r, value_um=(before[r.place_id] or 0.0) + wiggle[places[r.place_id].number % 8])
        if r.work == "polished"
        else r
        for r in whole.picture.readings
    )
    text = said_in(whole.content(replace(whole.picture, readings=noisy)))
    assert "not distinguishable from zero (less than " in text


def test_a_thick_door_and_a_total_only_gauge_print_no_clear_coat_figure(whole: Whole, made_text: str) -> None:
    assert "Clear coat was not measured: no figure for it is printed or used." in made_text
    shop = made_text.index("Settings in force"), made_text.index("What this report is not")
    for sentence in (made_text[: shop[0]] + made_text[shop[1] :]).split("."):  # the shop's settings are of no car
        if "clear coat" in sentence.lower() and "clear coat lifting" not in sentence and "Regulation" not in sentence:
            assert "µm" not in sentence, sentence
    door = next(p for p in whole.picture.places if p.panel == "door_front_l")
    assert any(r.value_um == pytest.approx(241.0) for r in whole.picture.readings if r.place_id == door.id)
    assert "Left front door: Thicker than its twin by 122 µm" in made_text


@pytest.fixture(scope="module")
def made_text(made: object) -> str:
    return pdf_text(made.pdf)  # type: ignore[attr-defined]


def test_two_groups_are_named_neither_first_nor_last(whole: Whole) -> None:
    thick = {"wing_front_l", "door_front_l", "door_rear_l", "quarter_rear_l", "sill_l", "wing_front_r", "door_front_r"}
    places = {p.id: p.panel for p in whole.picture.places}
    values = tuple(
        replace(r, value_um=(r.value_um or 0.0) % 10 + (200.0 if places[r.place_id] in thick else 110.0))
        if r.value_um
        else r
        for r in whole.picture.readings
    )
    text = said_in(whole.content(replace(whole.picture, readings=values)))
    assert "Two groups:" in text
    assert "The readings cannot tell which came first." in text


def test_entries_made_later_say_how_many_days(whole: Whole) -> None:
    damage = whole.picture.damages[0]
    late = replace(damage, stated_at=damage.entered_at - timedelta(days=4))
    text = said_in(whole.content(replace(whole.picture, damages=(late, *whole.picture.damages[1:]))))
    assert "Existing damage: stated for 6 March 2031, " in text
    assert "entered 4 days later" in text


def test_a_photograph_entered_later_says_so_beside_it(whole: Whole) -> None:
    first = whole.picture.photos[0]
    evidence = tuple(
        replace(e, taken_at=first.entered_at - timedelta(days=3), offset_source="camera")
        if e.id == first.evidence_id
        else e
        for e in whole.picture.shop.evidence
    )
    shop = replace(whole.picture.shop, evidence=evidence)
    text = said_in(whole.content(replace(whole.picture, shop=shop)))
    assert "taken 7 March 2031" in text
    assert "entered 3 days later" in text
    assert "1 photograph was entered a day or more after it was taken" in text


def test_a_missing_file_leaves_its_place_and_the_reason(whole: Whole) -> None:
    picture = whole.picture
    content = replace(whole, files={}).content(picture)
    assert said_in(content).count("The kept file is missing from the workshop folder.") == len(picture.photos)
    assert "not shown" in pdf_text(document_pdf(content).pdf)


def set_aside(whole: Whole, seq: int) -> DocumentContent:
    """The first place of the roof set aside by a decision entered as number ``seq``."""
    from detailbench.record.things import PlaceDecision

    place = next(p for p in whole.picture.places if p.panel == "roof")
    decision = PlaceDecision(
        id="d1", entered_at=whole.now, entered_by=whole.picture.shop.people[0].id, job_id=whole.picture.job.id,
        place_id=place.id, moment="as_found", decision="set_aside", reason="probe slipped there", seq=seq,
    )  # fmt: skip
    return whole.content(replace(whole.picture, place_decisions=(decision,)))


def test_a_low_place_set_aside_is_counted_and_keeps_its_reason(whole: Whole) -> None:
    text = said_in(set_aside(whole, 10**12))
    assert "1 place set aside, each with its reason" in text
    assert "set aside by AE: probe slipped there" in text


def test_a_place_read_again_since_it_was_set_aside_counts_and_says_so(whole: Whole) -> None:
    text = said_in(set_aside(whole, 0))
    assert "0 places set aside, each with its reason" in text
    assert "was set aside, read again since and counted by AE: probe slipped there" in text


@pytest.mark.parametrize(
    ("way", "words"),
    [("declined", "declined to sign"), ("absent", "was absent"), ("telephone", "answered by telephone")],
)
def test_an_owner_who_does_not_draw_is_said_to_have_answered_so(way: str, words: str, whole: Whole) -> None:
    signatures = tuple(replace(s, way=way) if s.role == "owner" else s for s in whole.picture.signatures)
    personal = {k: v for k, v in whole.picture.shop.personal.items() if k[1] != "strokes"}
    picture = replace(whole.picture, signatures=signatures, shop=replace(whole.picture.shop, personal=personal))
    assert words in said_in(whole.content(picture))


def test_a_failed_check_and_a_partial_one_are_printed_with_their_values(
    invented: InventedShop, report_of: ReportOf
) -> None:
    job = invented.job()
    session = invented.checked(job, (130.8, 130.9, 130.7, 130.8, 130.8))
    invented.bench.do(readings.RecordCheck(job, session, invented.foil, (102.0, 102.1), again=True))
    text = said_in(report_of(job))
    assert "The gauge check failed." in text
    assert "130.8 · 130.9" in text
    assert "Not a whole check: 0 readings on the zero plate, 2 readings on a foil" in text
    assert "A gauge check failed in session A" in text


def test_a_protection_near_the_dew_point_says_so(invented: InventedShop, report_of: ReportOf) -> None:
    job = invented.job()
    invented.bench.do(
        handover.RecordProtection(
            job, ("roof",), "invented wax", "wax", air_c=20.0, humidity_percent=50.0, surface_c=10.0
        )
    )
    invented.bench.do(handover.RecordProtection(job, ("bonnet",), "invented wax", "wax", air_c=20.0))
    text = said_in(report_of(job))
    assert "the surface was only 0.7 °C above it: little margin" in text
    assert "The dew point cannot be given." in text


def test_the_whole_job_in_another_order_of_panels_stays_in_walking_order(content: DocumentContent) -> None:
    text = said_in([s for s in content.sections if s.title == "Readings, panel by panel"])
    order = [text.index(f"\n{name}\n") for name in ("Bonnet", "Left front wing", "Tailgate", "Roof")]
    assert order == sorted(order)


def test_sheets_of_a_panel_are_not_torn_apart(made: object, content: DocumentContent) -> None:
    pages = pdf_pages(made.pdf)  # type: ignore[attr-defined]
    page = next(p for p in pages if "Left sill" in p and ", scatter" in p)
    words = " ".join(page.split())
    assert "54 front, 53 lower" in words or "479 front" in words


def test_the_job_is_finished_from_start_to_end_by_moves_alone(invented: InventedShop, report_of: ReportOf) -> None:
    job = HandoverJob(invented)
    job.arrive()
    text = said_in(report_of(job.job))
    assert "not fetched yet when this was printed" in text
    assert "2 entries of damage already there on arrival." in text
