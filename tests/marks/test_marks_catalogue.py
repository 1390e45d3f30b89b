from __future__ import annotations

import copy
from typing import Any

import pytest

from detailbench.basics import shelf
from detailbench.basics.errors import BadFile, BadInput
from detailbench.basics.texts import speak
from detailbench.marks import catalogue, kind, kinds, read_catalogue
from detailbench.marks.words import GROUPS, LAMPS, MEASURES, REMOVABLE, SURFACES, lamp_name, measure_name


def fresh() -> dict[str, Any]:
    return copy.deepcopy(shelf.data("marks.json"))


def test_a_kind_stands_once() -> None:
    keys = [k.key for k in kinds()]
    assert len(keys) == len(set(keys))
    names = [k.name for k in kinds()]
    assert len(names) == len(set(names))


def test_every_group_of_the_catalogue_has_kinds_and_the_file_agrees_with_the_words() -> None:
    assert {g for k in kinds() for g in k.groups} == set(GROUPS)
    assert shelf.data("marks.json")["lamps"] == dict(LAMPS)
    assert shelf.data("marks.json")["groups"] == dict(GROUPS)


def test_the_starter_dozen_fills_the_twelve_quick_keys_in_order() -> None:
    quick = catalogue().quick
    assert [k.quick for k in quick] == list(range(1, 13))
    assert {"swirl", "trails", "haze", "scratch_single", "bird_etch", "chip", "dent"} <= {k.key for k in quick}


def test_other_surfaces_are_never_mixed_with_paint() -> None:
    for one in catalogue().in_group("F"):
        assert one.surface != "paint"
        assert one.removable == "other_work"
        assert one.first_intent not in ("target", "reduce", "by_depth")
    assert {k.surface for k in kinds()} == set(SURFACES)


def test_what_may_be_made_while_working_is_marked_ours() -> None:
    ours = catalogue().in_group("G")
    assert {"towel_marks", "pad_ticks", "strike", "heat_mark"} <= {k.key for k in ours}
    assert all(k.ours for k in ours)
    assert kind("strike").mishap_if_ours
    assert not kind("towel_marks").mishap_if_ours


def test_matt_filmed_and_wrapped_take_no_abrasive() -> None:
    for key in ("film_edge", "wrap", "matt"):
        assert kind(key).first_intent == "hold"
        assert kind(key).removable == "never"


def test_an_iso_part_is_named_only_where_the_kind_is_that_parts() -> None:
    assert {k.key: k.iso for k in kinds() if k.iso} == {
        "oxidation": "4628-6",
        "clear_failure": "4628-5",
        "cracks": "4628-4",
        "blisters": "4628-2",
        "rust": "4628-3",
    }


def test_a_word_that_carries_a_cause_is_printed_as_what_it_looks_like() -> None:
    for key in ("bird_etch", "insect_etch", "claw", "luggage", "brush_lines"):
        assert kind(key).printed_name == f"looks like: {kind(key).name}"
    assert kind("swirl").printed_name == "swirl marks"


def test_every_word_used_has_a_text() -> None:
    for one in kinds():
        assert {measure_name(m) for m in one.measures} <= set(MEASURES.values())
        assert {lamp_name(letter) for letter in one.lamps} <= set(LAMPS.values())
        assert one.removable in REMOVABLE
        assert not one.hidden_in & one.lamps


def test_names_follow_the_language() -> None:
    speak("pseudo")
    try:
        assert kind("swirl").name != "swirl marks"
        assert kind("swirl").looks.startswith("⟦")
    finally:
        speak("en_GB")


def test_an_unknown_kind_is_told_in_a_sentence() -> None:
    with pytest.raises(BadInput, match="no kind of mark called “nothing”"):
        kind("nothing")


@pytest.mark.parametrize(
    ("column", "value", "part"),
    [
        ("first_intent", "polish it", "not known"),
        ("first_intent", None, "not known"),
        ("also_intent", "by_depth", "not known"),
        ("lamps", ["X"], "“X” is not known"),
        ("lamps", [], "a list is needed"),
        ("lamps", ["P", "P"], "stands twice"),
        ("measures", ["weight"], "not known"),
        ("flags", ["loud"], "not known"),
        ("groups", ["Z"], "not known"),
        ("surface", "sea", "not known"),
        ("removable", "maybe", "not known"),
        ("iso", "4628-9", "not known"),
        ("name", "  ", "words are missing"),
        ("quick", 13, "1 to 12"),
        ("quick", True, "1 to 12"),
        ("quick", 2, "stands twice"),
        ("key", "two words", "one word"),
        ("key", "brush_lines", "stands twice"),
    ],
)
def test_a_faulty_entry_is_refused_with_kind_and_column(column: str, value: object, part: str) -> None:
    data = fresh()
    data["kinds"][0][column] = value
    with pytest.raises(BadFile, match=part) as caught:
        read_catalogue(data, "shop.json")
    assert caught.value.column == column
    assert caught.value.name == "shop.json"


@pytest.mark.parametrize("data", [{}, {"kinds": []}, {"kinds": "many"}])
def test_an_empty_catalogue_is_refused(data: dict[str, Any]) -> None:
    with pytest.raises(BadFile, match="holds no kinds"):
        read_catalogue(data)


def test_an_entry_that_is_no_object_is_refused() -> None:
    with pytest.raises(BadFile, match="not a kind"):
        read_catalogue({"kinds": ["swirl"]})
