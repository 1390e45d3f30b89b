"""Texts can be found and translated: what is asked for is a literal, placeholders survive, words from the shelf pass
through the catalogue, and the American catalogue fits the program."""

from __future__ import annotations

import ast
import inspect
import re
from collections.abc import Iterator
from string import Formatter

import pytest
from babel.messages.pofile import read_po
from untranslated import PACKAGE, ROOT, messages, own_texts, plain_words

from detailbench.basics import errors
from detailbench.basics.texts import PSEUDO, SOURCE, _, speak
from detailbench.body.names import panel_name, short_name
from detailbench.body.panels import PANEL_KEYS
from detailbench.marks.catalogue import kinds
from detailbench.trials.kit import starter_kit
from detailbench.work.cautions import all_cautions

# asked for by another name than a literal, because the words stand elsewhere:
FROM_SHELF = {  # in resources/: marks, starter kit, cautions, standing texts, outline
    "self.name_text", "self.looks_text", "self.polishing_text", "self.says_text", "text", "machine.name", "pad.name",
    "product.name", "compound.name", "lamp.name", "towel.name", "one(shop.lamps, lamp_id).name", "group.name",
    "trial.dial", "position", "part.name", 'str(data("texts", "standing.json")[key])',
}  # fmt: skip
FROM_TABLE = {  # in a table of words in the code, one word for each of a closed set of keys
    "LAMPS[letter]", "GROUPS[letter]", "SURFACES[key]", "MEASURES[key]", "REMOVABLE[key]", "CALLED[self.table]",
    "CALLED[table]", "PRINCIPLES.get(gauge.principle, gauge.principle)", "NOUNS.get(thing.table, thing.table)",
    "PAINT[group.paint_system]", "SPOTS[trial.spot]", "NO_VALUE[reading.no_value]", "FLAGS.get(f, f)",
    "RULES.get(override.rule, override.rule)", "COMMON_PRACTICE", "default.says", "default.source", "d.says",
    'NOUNS.get(c.table, c.table.replace("_", " "))', "FIELDS[name]", 'FIELDS.get(c.field, "")',
    "sentence", "family.substrate", "shim.substrate", "s", "trial.force_word",
}  # fmt: skip
# faults named in English: the checker of drawings and of `workings` JSON name the file's own parts, and the shelf
# speaks before there is a catalogue
ENGLISH_FAULTS = {"basics/calculations.py", "basics/shelf.py", "body/outline_file.py", "body/outlines.py"}


@pytest.fixture
def pseudo() -> Iterator[None]:
    speak(PSEUDO)
    yield
    speak(SOURCE)


def fields_of(text: str) -> set[str]:
    return {name for _words, name, _spec, _how in Formatter().parse(text) if name is not None}


def test_what_is_asked_of_the_catalogue_is_a_literal_text() -> None:
    known = FROM_SHELF | FROM_TABLE
    assert {f"{m.file}: {m.source}" for m in messages() if m.text is None and m.source not in known} == set()


def test_every_exception_to_the_literal_is_still_used() -> None:
    assert {m.source for m in messages() if m.text is None} >= FROM_SHELF | FROM_TABLE


def test_no_text_asked_for_is_empty() -> None:
    assert [f"{m.file}:{m.line}" for m in messages() if m.text is not None and not m.text.strip()] == []


def test_the_fields_of_a_text_have_names_and_survive_translation(pseudo: None) -> None:
    for text in {m.text for m in messages() if m.text is not None}:
        names = fields_of(text)
        assert all(name.isidentifier() for name in names), text
        assert fields_of(_(text)) == names, text


def test_every_field_of_a_text_is_filled() -> None:
    """Where a text is filled in on the spot, the names given are the names of its fields."""
    wrong = []
    for file in sorted(PACKAGE.rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            text = filled_literal(node)
            if text is None:
                continue
            assert isinstance(node, ast.Call)
            given = {k.arg for k in node.keywords}
            if None not in given and not node.args and given != fields_of(text):
                wrong.append(f"{file.name}:{node.lineno} {text}")
    assert wrong == []


def filled_literal(node: ast.AST) -> str | None:
    """The text of ``_("…").format(…)``."""
    if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr == "format"):
        return None
    asked = node.func.value
    if not (isinstance(asked, ast.Call) and isinstance(asked.func, ast.Name) and asked.func.id == "_" and asked.args):
        return None
    first = asked.args[0]
    return first.value if isinstance(first, ast.Constant) and isinstance(first.value, str) else None


def test_faults_a_person_can_meet_are_not_worded_outside_the_catalogue() -> None:
    family = {name for name, kind in vars(errors).items() if inspect.isclass(kind)}
    wrong = []
    for file in sorted(PACKAGE.rglob("*.py")):
        where = file.relative_to(PACKAGE).as_posix()
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in family and node.args:
                first = node.args[0]
                plain = isinstance(first, ast.JoinedStr) or (isinstance(first, ast.Constant) and bool(first.value))
                if plain and where not in ENGLISH_FAULTS:
                    wrong.append(f"{where}:{node.lineno}")
    assert wrong == []


# words from the shelf
def test_the_names_of_marks_what_they_look_like_and_what_polishing_does_are_translated(pseudo: None) -> None:
    for kind in kinds():
        assert plain_words(f"{kind.name} {kind.looks} {kind.polishing}") == [], kind.key


def test_cautions_and_whom_to_defer_to_are_translated(pseudo: None) -> None:
    for caution in all_cautions():
        assert plain_words(" ".join((caution.says, *caution.defer_to))) == [], caution.key


def test_the_starter_kit_is_named_in_the_language_chosen(pseudo: None) -> None:
    kit = starter_kit()
    for thing in (*kit.machines, *kit.pads, *kit.compounds, *kit.lamps):
        assert thing.name in own_texts(), "a name that is shown through the catalogue stands on the shelf in English"
        assert plain_words(_(thing.name)) == []


def test_every_panel_has_a_name_in_the_language_chosen(pseudo: None) -> None:
    for key in PANEL_KEYS:
        assert plain_words(f"{panel_name(key)} {short_name(key)}") == [], key


# the American catalogue
def american() -> dict[str, str]:
    with (ROOT / "resources" / "locale" / "en_US.po").open("rb") as file:
        return {str(m.id): str(m.string) for m in read_po(file) if m.id}


def test_the_american_catalogue_translates_only_texts_there_are() -> None:
    assert set(american()) - own_texts() == set()


def test_no_american_text_is_empty_or_loses_a_field() -> None:
    for text, other in american().items():
        assert other.strip(), text
        assert fields_of(other) == fields_of(text), text


@pytest.mark.parametrize(
    ("key", "american_name"),
    [
        ("bonnet", "hood"),
        ("wing_front_l", "left front fender"),
        ("sill_r", "right rocker panel"),
        ("tailgate", "liftgate"),
        ("fuel_flap", "fuel door"),
    ],
)
def test_panels_bear_american_names_in_america(key: str, american_name: str) -> None:
    speak("en_US")
    said = panel_name(key)
    speak(SOURCE)
    assert said == american_name


def test_no_text_names_a_panel_by_its_british_name_in_america() -> None:
    speak("en_US")
    said = {text: _(text) for text in own_texts()}
    speak(SOURCE)
    british = re.compile(r"\b(bonnets?|wings?|sills?|tailgates?|fuel flaps?)\b")
    assert {text: other for text, other in said.items() if british.search(other)} == {}
