"""The player stops where the script and the workshop disagree, and says on which line."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from detailbench.basics.clock import HandClock
from detailbench.basics.errors import BadFile
from detailbench.cli.walking.core.hand import Hand
from detailbench.moves.bench import Bench
from detailbench.record.checking import check

Walked = Callable[[str], Hand]

BEGUN = """clock 2031-05-05T18:10+02:00
shop gauge "invented gauge"
shop kit
job owner "Invented Owner"
session "invented gauge" 21 C
panel bonnet
"""
AFTER = BEGUN.count("\n") + 1  # the line the test's own first act stands on


@pytest.mark.parametrize(
    ("acts", "told"),
    [
        ("reading -3 um", "reading: A paint thickness is never below zero."),
        ('refused "anything"', "refused: the act before was not refused"),
        ('reading -3 um\nrefused "too high"', "refused: “too high” is not in: A paint thickness"),
        ("expect readings 3", "expect readings: it is 0, not 3"),
        ("reading 118 um\nexpect mean 119 um", "it is 118.000 um, not 119"),
        ("expect mean 119 um", "it is no figure, not 119"),
        ("expect state wiped", "not ('wiped'"),
        ("expect held", "nothing holds it back"),
        ('hold "not this one"\nexpect free', "it is held back: Held back: not this one."),
        ('hold "not this one"\nexpect held "other"', "“other” is not in: Held back"),
        ("expect odd thicker", "it is not_compared, not thicker"),
        ("expect steps-left 1", "it is 0, not 1"),
        ("expect change 2 um", "there is no figure: not measured again"),
        ("expect due arrival 0", "are due, not 0: car, vin"),
        ("expect standing handed_over", "it is arrived, not handed_over"),
        ("expect jobs 2", "it is 1, not 2"),
        ("expect documents 1", "it is 0, not 1"),
        ('expect notice "swirl"', "“swirl” is not in: gauge “invented gauge” in hand"),
        ("expect closed-record unchanged", "No such document was closed"),
        ('expect advice "Keep"', "not judged yet"),
        ("trial rung 99", "no rung 99"),
        ("start", "No process is adopted"),
        ('as "Nobody"', "Nobody called “Nobody” works here"),
        ('session "other gauge"', "no gauge called “other gauge”"),
        ("again swirl 0", "no such mark"),
        ("strike reading", "nothing of that kind"),
        ("open job 2031-009", "no job 2031-009"),
        ('photo "none.jpg"', "none.jpg cannot be read"),
        ('import "none.csv"', "none.csv cannot be read"),
        ("shift from 3", "That panel has no place 3"),
        ("reading 118 um\nshift from 2", "Place 2 of that panel has no reading"),
        ("reading was mil", "No reading of that panel is in doubt like that"),
        ("other side", "The bonnet has no twin"),
        ('type "1,118"', "Is this 1.118 or 1118?"),
        ('expect tried "foam"', "There is no trial yet"),
        ("expect replaced report 1", "it is 0, not 1"),
        ("close\nreading 118 um", "The workshop is closed"),
        ("reopen", "open already"),
    ],
)
def test_a_walk_stops_at_the_first_act_that_does_not_go_as_written(walked: Walked, acts: str, told: str) -> None:
    with pytest.raises(BadFile) as caught:
        walked(BEGUN + acts)
    assert told in str(caught.value)
    line = AFTER + acts.count("\n")
    assert str(caught.value).startswith(f"here.walk, line {line}, ")
    assert caught.value.line == line


def test_what_went_before_a_stop_is_kept_and_the_workshop_is_free_again(
    walked: Walked, hand: Hand, clock: HandClock
) -> None:
    with pytest.raises(BadFile):
        walked(BEGUN + "reading 118 um\nexpect readings 2\nreading 119 um")
    bench = Bench(hand.folder, clock)
    assert bench.read_only is None
    assert len(bench.job(hand.job).readings) == 1
    bench.close()


def test_several_values_come_apart_so_that_none_is_taken_for_a_double(walked: Walked, hand: Hand) -> None:
    walked(BEGUN + "readings 118 119 120 um\ngauge 121 um")
    hand.open()
    kept = hand.picture.readings
    hand.close()
    assert [(r.value_um, r.flags, r.source) for r in kept] == [
        (118.0, (), "typed"),
        (119.0, (), "typed"),
        (120.0, (), "typed"),
        (121.0, ("double",), "gauge"),
    ]


def test_a_reading_typed_in_mil_keeps_what_was_typed(walked: Walked, hand: Hand) -> None:
    walked(BEGUN + "reading 4.60 mil")
    hand.open()
    kept = hand.picture.readings[0]
    hand.close()
    assert (kept.value_um, kept.typed, kept.unit) == (pytest.approx(116.84), "4.60", "mil")


def test_time_is_the_machines_own_until_the_script_sets_it(walked: Walked) -> None:
    with pytest.raises(BadFile, match="Set the clock first"):
        walked("forward 4 s")


def test_the_rest_of_the_grammar_reaches_its_moves(walked: Walked, hand: Hand) -> None:
    """What the acceptance walks do not say."""
    (hand.beside / "values.csv").write_text("panel,value\nroof,110\nroof,111\n", "utf-8")
    walked(
        BEGUN
        + """shop person "Ana Invented"
as "Ana Invented"
shop lamp "invented lamp" kind L colour 5000 K
shop rename lamp "invented lamp" to "line lamp, invented"
shop retire gauge "invented gauge"
shop retire gauge "invented gauge" back
light "daylight, overcast"
owner "Invented Owner" address "1 Invented Lane" mail "owner@invented.example"
car described "x" length 4700 mm paint-code "INV" style estate plate "INV 01"
damage "cracked lamp glass"
strike damage
paint single_stage
paint matt of "plastic parts"
expect first-rung 4
hold "wait for the owner"
release
mark scratch_single 2 depth 2 at front 300 mm left 300 mm to 350 320 mm length 60 mm lamp "line lamp, invented"
correct mark severity 3 note "longer than it looked"
look
strike mark
place front 400 mm left 400 mm
reading 119 um
no-value nothing
reading 118 um place 2
strike reading
import "values.csv"
expect readings 2 of roof
decide 1 kept "looked at twice"
expect readings 2 of bonnet
drawn photo many
drawn photo none moment after
pair photos
strike photo
expect photos 1
trial rung 4 place worst because "the owner agreed" force 40 N passes 4 seconds 40 before 21 C after 25 C
outcome cant_tell smear note "wiped too early"
strike trial
lightness light
refinished yes on 2031-01-05 cure 30 d word "baked, he says"
feel hard sticky note "loads the pad"
expect range 4 never_tried
expect taken 4 "not measured"
expect adviser "No trial here"
trial rung 4 because "the owner agreed" hand firm dial "high" pad cleaned primed no batch "B 7" lamp "flood lamp"
expect pad-speed 3.8 m/s
outcome yes clear second "line lamp, invented"
count 24 left 3
expect notice "21 of 24"
expect range 4 serves
shop disc "invented disc" grade "P3000"
adopt rung 4 sand "invented disc"
refused "only where the owner agreed"
ask sanding "may it be sanded?" on bonnet
answer yes by present
adopt rung 4 section 0.1 m2 polish 60 s setup 300 s
refused "second panel"
adopt rung 4 section 0.1 m2 polish 60 s setup 300 s because "one panel only"
expect mildest "the mildest tried"
start because "the owner agreed"
left-running
expect no-change
sign owner "Invented Owner" declined
undo
redo
undo shop
redo shop
open job 2031-001
"""
    )
    hand.open()
    assert check(hand.bench.store).troubles == ()
    hand.close()
