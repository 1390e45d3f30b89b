"""Every word of the report goes through the catalogue: the whole report in a made-up language."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator

import pytest
from reading_reports import pdf_text, texts, workings
from untranslated import WORD, plain_words, typed_in
from whole_job import Whole

from detailbench.basics.texts import PSEUDO, SOURCE, speak
from detailbench.basics.workings import Working
from detailbench.findings.settings import in_force
from detailbench.report import document_pdf
from detailbench.report.content.parts import Text, Typed, plain

# words the invented people typed, though the program has the same ones
TYPED = (
    "zero plate two",
    "zero plate",
    "VIN plate",
    "clear coat lifting",
    "badge not removed",
    "badge taped over",
    "polisher",
    "dark blue",
)
# how a legend's sign is drawn, never printed; the content keeps it before the sign's words
SIGNS = (
    "falling", "rising", "crossed", "level", "dots", "zone", "place", "line", "dot", "patch", "open", "cross", "mean",
    "interval", "band", "point", "hollow",
)  # fmt: skip


@pytest.fixture
def pseudo() -> Iterator[None]:
    speak(PSEUDO)
    yield
    speak(SOURCE)


def said(text: Text) -> str:
    """A text without what people typed."""
    own = text[1:] if len(text) > 1 and text[0] in SIGNS else text
    return " ".join(plain((part,)) for part in own if not isinstance(part, Typed))


def test_no_text_of_the_report_is_left_untranslated(whole: Whole, pseudo: None) -> None:
    typed = TYPED + typed_in(whole.picture)
    found = {said(text) for text in texts(whole.content())}
    faults = {text: words for text in found if (words := plain_words(text, typed))}
    assert not faults, "\n".join(f"{' '.join(words)}\n    {text}" for text, words in faults.items())


def test_the_printed_pages_hold_no_other_words(whole: Whole, pseudo: None) -> None:
    """What the pages add to the content. The workings are the record's own: names, formula, values and published
    source are printed so that they can be given to the ``workings`` command."""
    content = whole.content()
    printed = pdf_text(document_pdf(content).pdf)
    own = {word for working in workings(content).values() for word in words_of(working)}
    found = plain_words(printed, TYPED + typed_in(whole.picture, *settings(whole)), own)
    assert not found, " ".join(dict.fromkeys(found))


def test_the_report_names_panels_in_american_words_in_america(whole: Whole) -> None:
    speak("en_US")
    printed = pdf_text(document_pdf(whole.content()).pdf)
    speak(SOURCE)
    for each in sorted({*TYPED, *typed_in(whole.picture)}, key=len, reverse=True):
        printed = printed.replace(each, " ") if len(each) > 2 else printed
    printed = re.sub(r"\b[a-z]+(?:_[a-z]+)+\b", " ", printed)  # panels as the record calls them: wing_front_l
    words = set(WORD.findall(printed.casefold())) - own_keys(whole)
    assert {"hood", "fender", "rocker", "liftgate"} <= words
    assert words & {"bonnet", "wing", "sill", "tailgate"} == set()


def own_keys(whole: Whole) -> set[str]:
    """Panels whose key in the workings' inputs is an English word."""
    return {w for working in workings(whole.content()).values() for w in words_of(working)} & {"bonnet", "tailgate"}


def settings(whole: Whole) -> list[str]:
    return [str(value) for _default, value in in_force(whole.picture.shop)]


def words_of(working: Working) -> set[str]:
    return set(WORD.findall(json.dumps(working.as_json(), ensure_ascii=False)))
