"""The week as it really goes, in print: one test for each thing an assessor asks of the day and its documents."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
from reading_reports import pdf_text, said_in, workings
from week_job import KINDS, Week, played

from detailbench.record.past import PutRight
from detailbench.record.picture import JobPicture
from detailbench.record.things import ClockNote, Forgetting, OwnerLimit, Visit
from detailbench.record.writing import PER_ENTRY
from detailbench.report import DocumentContent, document_pdf
from detailbench.report.content.blocks import Days, Facts
from detailbench.report.content.parts import plain


@pytest.fixture(scope="session")
def report(week: Week) -> DocumentContent:
    return week.content()


@pytest.fixture(scope="session")
def text(report: DocumentContent) -> str:
    return said_in(report)


@pytest.fixture(scope="session")
def arrival(week: Week) -> str:
    return said_in(week.content("arrival"))


def section(content: DocumentContent, title: str) -> str:
    return said_in([s for s in content.sections if s.title == title])


# who, and with what authority
def test_bearer_and_authority_stand_in_every_document(week: Week) -> None:
    for kind in KINDS:
        front = said_in(week.content(kind).front)
        assert "Owner: Invented Motors" in front
        assert 'brought by Fourth <b>Invented</b> & "Person", daughter of the owner, by telephone' in front


def test_a_company_owns_and_somebody_speaks_for_it(arrival: str) -> None:
    assert "Invented Motors (a company)" in arrival
    assert "spoken for by Third Invented Owner" in arrival


def test_an_authority_nobody_noted_is_said_to_be_so(week: Week) -> None:
    said = {k: v for k, v in week.picture.personal.items() if k[1] != "authority"}
    picture = replace(week.picture, shop=replace(week.picture.shop, personal=said))
    front = said_in(week.content("arrival", picture).front)
    assert "on an authority that was not noted" in front


def test_initials_stand_on_every_line_of_the_days(report: DocumentContent) -> None:
    (days,) = [b for s in report.sections for b in s.blocks if isinstance(b, Days)]
    who = {said_in([line.who]) for day in days.days for line in day.lines}
    assert who == {"AE", "BE"}


# the arrival record
def test_the_arrival_record_lists_damage_of_panel_wheel_and_glass(arrival: str) -> None:
    for words in ("stone chip near the front edge", "Wheel, rear right", "Glass, windscreen"):
        assert words in arrival
    assert "2 entries are about parts that are not drawn as panels" in arrival


def test_damage_is_drawn_on_the_plan_view(week: Week) -> None:
    view = week.content("arrival").front.plan
    assert {k for k, fill in view.fills.items() if fill.hatch} == {"bonnet"}
    assert said_in([view.fills["bonnet"].text]) == "1"


def test_repairs_stand_as_stated_and_by_whom(arrival: str) -> None:
    assert "painted after a parking knock\nthe bearer" in arrival
    assert "A repair as stated is somebody's word" in arrival


def test_custody_in_is_in_the_arrival_record_and_both_ways_in_the_report(arrival: str, text: str) -> None:
    for words in ("40 %", "2 keys; board, hook 4", "none lit", "child seat", "yard, space 2"):
        assert words in arrival
    assert "39 %" in text
    assert "Warning lamps\nnot noted" not in arrival


def test_light_and_unwashed_state_are_said(arrival: str) -> None:
    assert "seen unwashed in this light: daylight, overcast" in arrival


def test_the_bearer_signed_the_arrival_statement(arrival: str) -> None:
    assert "I have seen this record of the car as it stood here, unwashed, on 5 May 2031." in arrival
    assert "I sign for the owner on the authority of daughter of the owner, by telephone." in arrival
    assert "Signing gives up no right." in arrival


def test_without_a_signature_the_lines_are_left_to_be_filled(week: Week) -> None:
    found = said_in(week.content("arrival", replace(week.picture, signatures=())).signing)
    assert "on ____________" in found
    assert found.count("not signed") == 2


def test_an_arrival_entered_late_after_work_had_begun_says_so(week: Week) -> None:
    visit = week.picture.visits[0]
    late = replace(
        visit, arrived_at=visit.arrived_at, entered_at=visit.arrived_at + timedelta(days=4), seq=10**12
    )  # fmt: skip
    found = said_in(week.content("arrival", replace(week.picture, visits=(late,))))
    assert "Entered 4 days after the stated arrival, after work had begun." in found
    assert "entered on 5 May 2031 after work had begun" in found
    assert "as it stood here, unwashed, on" not in found


def test_an_arrival_record_closed_early_says_what_is_missing(week: Week) -> None:
    car = replace(week.picture.car, vin_absent="")
    bare = replace(week.picture, car=car, signatures=(), photos=())
    front = said_in(week.content("arrival", bare).front)
    for words in ("The VIN is not noted.", "The plate is not noted.", "Nobody signed for the owner."):
        assert words in front


# documents, hashes, deliveries
def test_the_arrival_record_stands_in_later_documents_with_delivery_and_hash(week: Week) -> None:
    (closed,) = (d for d in week.picture.documents if d.kind == "arrival")
    grouped = " ".join(closed.sha256[i : i + 8] for i in range(0, 64, 8))
    for kind in ("supplement", "handover"):
        found = said_in(week.content(kind))
        assert grouped in found
        assert re.search(r"delivered by mail to owner's mail on 5 May 2031, 17:30 \(UTC\+02:00\)", found)


def test_a_record_sent_to_nobody_noted_says_so_unless_the_name_was_deleted(week: Week) -> None:
    (first, *_rest) = week.picture.deliveries
    nobody = {key: value for key, value in week.picture.personal.items() if key[0] != first.id}
    picture = replace(week.picture, shop=replace(week.picture.shop, personal=nobody))
    assert re.search(
        r"delivered by mail on 5 May 2031, .*, to whom is not noted, noted by", said_in(week.content(picture=picture))
    )
    gone = Forgetting(id="f", entered_at=week.now, entered_by="", job_id=picture.job.id, seq=first.seq + 1)
    assert "to whom is not noted" not in said_in(week.content(picture=replace(picture, forgettings=(gone,))))


def test_a_document_that_never_left_says_so(week: Week) -> None:
    found = said_in(week.content(picture=replace(week.picture, deliveries=())))
    assert "that it was delivered is not noted" in found
    assert "That the arrival record left the shop is not noted." in found


def test_the_note_of_a_delivery_is_printed(text: str) -> None:
    assert "delivered by message to 000 111 222 on 7 May 2031" in text
    assert "(with two photographs)" in text


# the supplement
def test_the_supplement_puts_what_was_found_and_that_no_machine_starts_before(week: Week) -> None:
    found = said_in(week.content("supplement"))
    assert "two deep scratches" in found
    assert "No machine is started on this car before the owner has answered it" in found
    assert "the scratches on the roof stay?" in found
    assert "90 EUR" in found


def test_a_supplement_not_answered_says_so_and_leaves_lines(week: Week) -> None:
    found = said_in(week.content("supplement", replace(week.picture, agreements=())))
    assert "1 thing is not answered yet." in found
    assert "Answer:  yes  /  yes, with this remark: ____________" in found


# what was agreed, limits
def test_agreements_say_channel_by_whom_when_price_and_remark(report: DocumentContent) -> None:
    found = section(report, "What was agreed")
    assert re.search(
        r"Yes, with a remark, by telephone, Invented Motors, 7 May 2031, 09:00, to AE; remark: “leave the roof”", found
    )
    assert "price 420 EUR" in found


def test_the_test_section_the_owner_agreed_to_is_named(report: DocumentContent) -> None:
    found = section(report, "Test sections")
    assert "the level of the test section for the front end." in found
    assert "Price agreed with it: 420 EUR." in found
    assert "Yes, present, Invented Motors, 7 May 2031, 09:00, to AE." in found


def test_limits_say_whether_they_were_kept(report: DocumentContent) -> None:
    found = section(report, "What was agreed")
    assert "Kept: no clay, test section, work or protection is recorded there." in found
    assert "Kept as measured on bonnet (at most 1.9)." in found
    assert "Kept: no step with solvent is recorded there." in found
    assert "Read before the work: AE, 7 May 2031." in found


def test_a_limit_not_kept_is_said_not_to_be(week: Week) -> None:
    own = week.picture.limits[0]
    barred: OwnerLimit = replace(own, panels=("bonnet",))
    tight = replace(week.picture.limits[1], most_off_um=1.0)
    found = said_in(week.content(picture=replace(week.picture, limits=(barred, tight))))
    assert "Not kept: work is recorded on bonnet." in found
    assert "Not kept: more was measured off on bonnet (at most 1.9)." in found


# own faults
def test_a_mishap_says_who_was_told(report: DocumentContent) -> None:
    found = section(report, "What was agreed")
    assert "pad edge touched the trim" in found
    assert "The owner was told, by telephone, 7 May 2031, 09:30" in found


def test_a_mishap_nobody_was_told_of_stands_on_page_one(week: Week) -> None:
    mishaps = tuple(replace(m, told="", told_at=None, channel="") for m in week.picture.mishaps)
    content = week.content(picture=replace(week.picture, mishaps=mishaps))
    assert "1 mishap nobody was told of." in said_in(content.front)


def test_a_rule_set_aside_stands_with_name_and_reason(text: str) -> None:
    assert "owner waits for it" in text
    assert re.search(r"Ana Invented \(AE\), 7 May 2031", text)


def test_every_rule_that_can_be_set_aside_has_words() -> None:
    import ast

    from detailbench.report.content.work_done import RULES

    package = Path(__file__).resolve().parents[2] / "detailbench"
    rules = set()
    for path in (*(package / "findings").glob("*.py"), *(package / "moves").glob("*.py")):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Stop" and node.args:
                firm = any(k.arg == "may_override" and getattr(k.value, "value", None) is False for k in node.keywords)
                names = [n.value for n in ast.walk(node.args[0]) if isinstance(n, ast.Constant)]
                rules |= set() if firm else set(names)
    assert {"held", "low_reading", "supplement"} <= rules
    assert rules <= set(RULES)


def test_what_is_put_right_before_a_document_is_counted_and_later_is_printed(week: Week, text: str) -> None:
    assert re.search(r"Visit, entered 5 May 2031, 17:30: odometer in was 52340, is 52344; corrected 9 May 2031", text)
    quiet = tuple(replace(c, first=c.n) for c in week.past)
    found = said_in(week.content(past=quiet))
    assert "1 entry was put right or taken back within the visit and before a document listed it." in found
    assert "corrected 9 May 2031" not in found
    assert "Nothing was put right or taken back." in said_in(week.content(past=()))


def test_what_is_put_right_in_a_later_visit_is_printed(week: Week) -> None:
    first = week.picture.visits[0]
    again: Visit = replace(first, id="again", seq=(week.past[-1].n - 1) * PER_ENTRY)
    picture = replace(week.picture, documents=(), deliveries=(), visits=(first, again))
    assert "corrected 9 May 2031" in said_in(week.content(picture=picture))


def test_a_struck_reading_is_counted_apart(week: Week) -> None:
    reading = week.picture.readings[0]
    gone = PutRight(
        n=99, at=week.now, by=reading.entered_by, act="undo", first=98, table="reading", id=reading.id,
        field="withdrawn", was=False, now=True, row={"value_um": 118.0, "entered_at": reading.entered_at.isoformat()},
    )  # fmt: skip
    left = replace(week.picture, readings=week.picture.readings[1:])
    n = len(left.readings)
    found = said_in(week.content(picture=left, past=(gone,)))
    assert f"{n} readings taken, {n} printed" in found
    assert "1 reading was struck out or taken back; it stays in the journal and is not printed." in found


def test_a_clock_that_went_back_is_printed(week: Week) -> None:
    mark = week.picture.marks[0]
    early = replace(mark, entered_at=mark.entered_at - timedelta(days=1))
    picture = replace(week.picture, marks=(early, *week.picture.marks[1:]))
    found = said_in(week.content(picture=picture))
    assert "The computer's clock went back from 6 May 2031, 08:00 (UTC+02:00) to 5 May 2031, 08:00" in found
    assert "Nothing was noted about it." in found
    note = ClockNote(
        id="c", entered_at=week.now, entered_by=mark.entered_by, seq=10**13, last_at=week.now, words="battery changed"
    )
    noted = said_in(week.content(picture=replace(picture, shop=replace(picture.shop, clock_notes=(note,)))))
    assert "Noted by Ben Invented (BE): battery changed." in noted


# the rest of the day
def test_wash_second_look_other_work_protection(text: str) -> None:
    for words in (
        "left out: no bonded dirt felt", "invented shampoo", "Roof: no colour; hidden edge",
        "Bonnet: still clear; washed once, wiped", "trim cleaned; 20 min",
    ):  # fmt: skip
        assert words in text, words


def test_pauses_are_printed_with_reason(text: str) -> None:
    assert "Paused 7 May 2031, 09:30, AE: waiting for trim cleaner." in text
    assert "Goes on 8 May 2031, 08:15, BE." in text


def test_remarks_stand_as_typed_and_are_no_markup(week: Week) -> None:
    typed = '=HYPERLINK("http://invented.invalid") <i>&amp;</i>'
    assert typed in said_in(week.content())
    assert typed in pdf_text(document_pdf(week.content("arrival")).pdf)


def test_settings_leave_out_the_minute_price_and_a_unit_has_no_practice_as_source(report: DocumentContent) -> None:
    found = section(report, "How this was recorded")
    assert "price of one minute" not in found
    assert "unit thickness is shown in\nµm\nas shipped" in found


def test_no_id_of_the_record_stands_in_a_printed_working(report: DocumentContent) -> None:
    uuid = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-")
    found = workings(report)
    assert "work_plan" in {w.name for w in found.values()}
    assert [ref for ref, w in found.items() if uuid.search(str(w.as_json()))] == []


def test_the_days_hold_every_day_and_the_car_is_here_all_along(report: DocumentContent) -> None:
    (days,) = [b for s in report.sections for b in s.blocks if isinstance(b, Days)]
    assert [said_in([d.title]) for d in days.days] == [
        "Monday, 5 May 2031", "Tuesday, 6 May 2031", "Wednesday, 7 May 2031", "Thursday, 8 May 2031",
        "Friday, 9 May 2031",
    ]  # fmt: skip
    assert days.days[1].here == (0.0, 1.0)
    assert days.days[0].here is not None
    assert days.days[0].here[0] == pytest.approx((17 + 10 / 60) / 24)
    bars = [line for d in days.days for line in d.lines if line.end is not None]
    assert len(bars) == 2
    assert all(line.at < (line.end or 0) for line in bars)


def test_own_faults_stand_on_page_one_with_where_to_read_on(week: Week) -> None:
    rows = {r.label: " ".join(plain(t) for t in r.texts) for r in week.content().front.rows.rows}
    assert "1 mishap (see What was agreed)" in rows["Own faults"]
    # a person's decision is no fault: it stands on a line of its own
    assert "set aside" not in rows["Own faults"]
    assert rows["Set aside"] == "1 rule, by a person who gave a reason (see Work)."
    clean = replace(week.picture, mishaps=(), overrides=(), check_readings=())
    labels = {r.label for r in week.content(picture=clean).front.rows.rows}
    assert not labels & {"Own faults", "Set aside"}
    ruled = replace(week.picture, mishaps=(), check_readings=())
    labels = {r.label for r in week.content(picture=ruled).front.rows.rows}
    assert labels & {"Own faults", "Set aside"} == {"Set aside"}


def test_how_it_was_recorded_tells_rules_set_aside_apart_from_own_faults(week: Week) -> None:
    def rows(picture: JobPicture) -> dict[str, str]:
        blocks = [b for s in week.content(picture=picture).sections for b in s.blocks if isinstance(b, Facts)]
        return {r.label: " ".join(plain(t) for t in r.texts) for b in blocks for r in b.rows}

    found = rows(week.picture)
    assert "set aside" not in found["Own faults"]
    assert found["Set aside"] == "Rules were set aside by a person; they stand under Work with name and reason."
    assert rows(replace(week.picture, overrides=()))["Set aside"] == "No rule was set aside."


def test_a_place_of_a_panel_drawn_in_another_size_then_is_said_to_have_moved(week: Week) -> None:
    words = "moved: the panel was drawn in another size then"
    assert words not in said_in(week.content())
    longer = replace(week.picture, car=replace(week.picture.car, length_mm=5000.0))
    content = week.content(picture=longer)
    assert words in section(content, "Readings, panel by panel")
    assert words in section(content, "Marks")


def test_a_reading_a_failed_check_left_out_says_that_and_not_that_it_was_read_otherwise(tmp_path: Path) -> None:
    week = played(tmp_path, "../walks/monday_to_friday.walk")
    found = section(week.content(), "Readings, panel by panel")
    assert "not counted, no good gauge check on both sides: 118" in found
    assert "118 · 118" not in found
    assert "read otherwise" not in found
