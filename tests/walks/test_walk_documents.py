"""What the documents of two clumsy walks print: whatever was typed as it was typed, kit by its name of then."""

from __future__ import annotations

from pathlib import Path

import pypdfium2
import pytest

from detailbench.cli.walking.core.hand import Hand
from detailbench.cli.walking.core.player import play
from detailbench.cli.walking.grammar import read_walk_file

HERE = Path(__file__).parent
OWNER = '<b>&" =HYPERLINK("x") [4 letters that cannot be shown]'


def printed(hand: Hand, walk: str) -> dict[str, str]:
    """The text of each closed document, by kind, its line breaks taken for blanks."""
    play(read_walk_file(HERE / f"{walk}.walk"), hand)
    hand.open()
    out = {}
    for document in hand.picture.documents:
        pdf = pypdfium2.PdfDocument(hand.bench.store.files.read(document.sha256))
        text = " ".join(page.get_textpage().get_text_bounded() for page in pdf)
        out[document.kind] = " ".join(text.split())
        pdf.close()
    hand.close()
    return out


@pytest.mark.slow
def test_act_17_whatever_is_typed_stands_in_all_three_documents(hand: Hand) -> None:
    found = printed(hand, "clumsy_words")
    assert set(found) == {"arrival", "supplement", "handover"}
    for text in found.values():
        assert OWNER in text
        assert "Invented <b>Bay</b> & Sons" in text
        assert "{0} {name}" not in text
    assert "=1+1 <remark> &amp;" in found["arrival"]
    assert "<td>under the dirt</td> & more [4 letters that cannot be shown]" in found["supplement"]
    assert "Line 11 of a pasted page: the owner writes about the car, 5 < 6 & 7 > 3, and goes on." in found["handover"]
    assert "<script>pad</script> & trim" in found["handover"]
    assert "owner said <so> & more" in found["handover"]
    assert "AhornbirkeZeder" in found["arrival"].replace(" ", "")


@pytest.mark.slow
def test_act_14_the_report_names_pad_and_machine_as_they_were_called_then(hand: Hand) -> None:
    report = printed(hand, "clumsy_kit")["handover"]
    assert "free orbital" in report
    assert "medium foam" in report
    assert "orbital by the window" not in report
