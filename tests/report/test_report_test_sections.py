"""The test sections in print: told in sentences, the range drawn, why this process, what it takes off, what the owner
agreed to; and every figure traced."""

from __future__ import annotations

from decimal import Decimal

import pytest
from invented_findings import Hands
from invented_handover import jpeg
from invented_shop import FOIL_UM, InventedShop
from reading_reports import figures, pdf_text, said_in, traced_value, workings
from whole_job import Whole, frozen

from detailbench.body.edges import EdgePosition, to_edges
from detailbench.findings.panels import outline_of
from detailbench.moves.agreeing import AnswerOwner, AskOwner
from detailbench.moves.finish_groups import NotePaintFeel
from detailbench.moves.handover import RecordAcceptance
from detailbench.moves.photos import AddPhoto, PairPhotos
from detailbench.moves.readings import AddPlace, RecordReading
from detailbench.moves.shop import AddToShop
from detailbench.moves.surface import SetState
from detailbench.moves.trials import JudgeTrial, RecordTrial
from detailbench.moves.work import AdoptProcess
from detailbench.report import DocumentContent, document_pdf
from detailbench.report.content.blocks import RangePicture
from detailbench.report.content.tried import what_next
from detailbench.trials.outcome import Result

MIDDLE = ((-60.0, 0.0), (-30.0, 20.0), (0.0, -20.0), (30.0, 10.0), (60.0, 0.0))
BEFORE = (110.0, 111.0, 112.0, 109.0, 110.5)
AFTER = (108.0, 108.9, 110.1, 107.0, 108.4)


def at(hands: Hands, dx: float = 0.0, dy: float = 0.0) -> EdgePosition:
    panel = outline_of(hands.picture).panels["roof"]
    x0, y0, x1, y1 = panel.bounds
    return to_edges(panel, (x0 + x1) / 2 + dx, (y0 + y1) / 2 + dy)


def read(hands: Hands, where: list[str], values: tuple[float, ...]) -> None:
    hands.do(SetState(hands.job, ("roof",), clean="wiped", cover="bare"))
    session = hands.checked_session()
    for place, value in zip(where, values, strict=True):
        hands.later()
        hands.do(RecordReading(hands.job, "roof", value, place_id=place))
    hands.check(session, FOIL_UM, again=True)
    hands.later()


def trial(
    hands: Hands, rung: int, panel: str = "roof", *, placed: bool = False, on_top_of: str = "", **more: object
) -> str:
    group = hands.shop.group(hands.job, panel)
    combination = hands.picture.shop.combinations[rung].id
    technique = {"dial": "high", "force_word": "moderate", "section_w_mm": 600.0, "section_h_mm": 600.0, "passes": 4,
                 "seconds": 50.0, "pad_condition": "fresh", "primed": "yes", **more}  # fmt: skip
    place = at(hands) if placed else None
    return hands.do(
        RecordTrial(hands.job, group.id, panel, combination, at=place, on_top_of=on_top_of, technique=technique)
    )


def judged(hands: Hands, of: str, cleared: str, finish: str = "clear", **more: object) -> None:
    hands.later(300)
    hands.do(JudgeTrial(hands.job, of, cleared, finish, **more))  # type: ignore[arg-type]


@pytest.fixture(scope="module")
def story(prepared: InventedShop, tmp_path_factory: pytest.TempPathFactory) -> tuple[Whole, DocumentContent]:
    """Too mild, too mild, served with a haze, refined on top, measured; confirmed, shown to the owner, adopted."""
    import shutil
    from dataclasses import replace

    from invented_shop import INVENTED_NOW

    from detailbench.basics.clock import HandClock
    from detailbench.moves.bench import Bench

    folder = tmp_path_factory.mktemp("sections") / "workshop"
    shutil.copytree(prepared.folder, folder)
    clock = HandClock(INVENTED_NOW)
    shop = replace(prepared, bench=Bench(folder, clock, person=prepared.person), clock=clock)
    hands = Hands(shop, shop.job())
    lamp, second = shop.bench.shop().lamps[:2]
    judged(hands, trial(hands, 0), "no", lamp_id=lamp.id)
    judged(hands, trial(hands, 3), "no", counted_before=30, counted_left=12, lamp_id=lamp.id, second_lamp_id=second.id)
    where = [hands.do(AddPlace(hands.job, "roof", at(hands, *o))) for o in MIDDLE]
    read(hands, where, BEFORE)
    cut = trial(hands, 4, placed=True, surface_before_c=21.0, surface_after_c=29.5, batch="B 7")
    read(hands, where, AFTER)
    judged(hands, cut, "yes", "even_haze", lamp_id=lamp.id)
    judged(hands, trial(hands, 0, on_top_of=cut), "yes")
    other = trial(hands, 4, "bonnet")
    judged(hands, other, "yes", "even_haze")
    top = trial(hands, 0, "bonnet", on_top_of=other)
    judged(hands, top, "yes")
    hands.do(NotePaintFeel(hands.job, ("roof",), "soft", "yes", "clogs the pad"))
    group = shop.group(hands.job, "roof")
    steps = [{"combination_id": hands.picture.shop.combinations[n].id} for n in (4, 0)]
    hands.do(AdoptProcess(hands.job, group.id, steps))
    halves = []
    for words, grey, seed in (("untouched half", 150, 1), ("polished half", 90, 2)):
        shot = jpeg(words, grey, seed)
        move = AddPhoto(
            hands.job, shot, panel="bonnet", moment="trial", shows="test_section", trial_id=top, caption=words
        )
        halves.append(hands.do(move))
    hands.do(PairPhotos(hands.job, *halves))
    asked = hands.do(
        AskOwner(hands.job, "test_section", "Is this the level?", Decimal("640"), ("bonnet",), trial_id=top,
                 level="swirl gone, deep scratches stay")
    )  # fmt: skip
    hands.do(AnswerOwner(hands.job, asked, "yes", "present"))
    hands.do(RecordAcceptance(hands.job, "accepted", level_met="yes"))
    whole = frozen(shop, hands.job)
    shop.bench.close()
    return whole, whole.content()


def section(content: DocumentContent, title: str = "Test sections") -> str:
    return said_in(next(s for s in content.sections if s.title == title))


def test_the_story_is_told_in_sentences(story: tuple[Whole, DocumentContent]) -> None:
    text = section(story[1])
    for words in (
        "The marks were not cleared. The finish was clear.",
        "The marks were cleared. The finish had an even haze.",
        "fresh pad, primed",
        "batch B 7",
        "surface 21 °C before, 29.5 °C after",
        "on top of test section 3",
        "In the frame 12 of 30 counted marks were left.",
        "Soft, sticky; clogs the pad.",
        "This served: it could be kept.",
        "Why this one: it was the mildest that served on this paint.",
    ):
        assert words in text, words
    assert "Result:" not in text
    assert "Seen under" in text
    assert " and under " in text


@pytest.mark.parametrize("result", list(Result))
def test_what_a_section_led_to_is_a_sentence_and_none_of_our_names(result: Result) -> None:
    assert what_next(result).endswith(".")
    assert not what_next(result).lower().startswith(result.label)


def test_what_came_off_is_said_with_its_interval_and_the_rest_is_not_measured(
    story: tuple[Whole, DocumentContent],
) -> None:
    text = section(story[1])
    assert "Measured here: removed 2.0 µm" in text
    assert "Step 1: in one test section 2.0 µm came off." in text
    assert "Step 2: not measured." in text


def test_the_approved_test_section_stands_with_level_price_answer_pair_and_handover(
    story: tuple[Whole, DocumentContent],
) -> None:
    text = section(story[1])
    assert "Test section 6 was shown as the level for these panels: swirl gone, deep scratches stay." in text
    assert "Price agreed with it: 640" in text
    assert "Yes, present" in text
    assert "At handover: as agreed." in text
    assert "untouched half" in text
    assert "polished half" in text
    assert "swirl gone, deep scratches stay: as agreed." in said_in(story[1].signing)
    photographs = section(story[1], "Photographs")
    assert "untouched half" not in photographs  # printed once
    assert "stand with the test sections" in photographs


def test_every_figure_of_it_leads_to_the_record_or_to_a_working(story: tuple[Whole, DocumentContent]) -> None:
    whole, content = story
    appendix = workings(content)
    assert {w.name for w in appendix.values()} >= {"removal", "change"}
    wrong = [f for f in figures(content) if not same(f.value, traced_value(f, whole.picture, appendix, whole.now))]
    assert wrong == []


def same(one: object, other: object) -> bool:
    if isinstance(one, int | float) and isinstance(other, int | float):
        return one == pytest.approx(other, rel=1e-9, abs=1e-9)
    return one == other


def test_the_range_is_drawn_with_the_trials_where_they_fell(story: tuple[Whole, DocumentContent]) -> None:
    content = story[1]
    blocks = next(s for s in content.sections if s.title == "Test sections").blocks
    (drawn,) = [b for b in blocks if isinstance(b, RangePicture)]
    assert [r.sign for r in drawn.rungs[:5]] == ["failed", "unknown", "unknown", "failed", "hazy"]
    assert [r.step for r in drawn.rungs[:5]] == [2, 0, 0, 0, 1]
    assert not any(r.next for r in drawn.rungs)
    text = pdf_text(document_pdf(content).pdf)
    assert "range from mild to strong" in text
    assert "adopted, step 1" in text
    assert "did not clear" in text


def test_sanding_is_printed_with_its_disc_and_its_agreement(invented: InventedShop) -> None:
    hands = Hands(invented, invented.job())
    disc = hands.do(AddToShop("sanding_disc", {"name": "fine disc", "grade": "P2000"}))
    unknown = hands.do(AddToShop("sanding_disc", {"name": "finer disc", "grade": "P3000"}))
    asked = hands.do(AskOwner(hands.job, "sanding", "May the run be sanded?", panels=("roof",)))
    hands.do(AnswerOwner(hands.job, asked, "yes", "present"))
    for panel in ("roof", "bonnet"):
        judged(hands, trial(hands, 2, panel), "yes")
    group = invented.group(hands.job, "roof")
    polishing = {"combination_id": hands.picture.shop.combinations[2].id}
    sanding = [{"means": "sanding", "disc_id": d} for d in (disc, unknown)]
    hands.do(AdoptProcess(hands.job, group.id, [*sanding, polishing]))
    text = section(frozen(invented, hands.job).content())
    assert "Step 1: sanding with fine disc (grade P2000, grain about 10.3 µm)." in text
    assert "Step 2: sanding with finer disc (grade P3000, grain not known)." in text
    assert "Step 3: free orbital" in text
    assert "Sanding, as agreed: Yes" in text
