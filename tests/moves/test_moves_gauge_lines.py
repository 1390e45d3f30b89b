"""A gauge's own line is kept with the shop, follows a changed gauge, and a port has one gauge."""

from __future__ import annotations

import pytest
from invented_shop import InventedShop

from detailbench.basics.errors import RecordTrouble, Refused
from detailbench.findings.gauge_lines import key_of, line_of, lines
from detailbench.moves.gauge_lines import SetGaugeLine
from detailbench.moves.move import SHOP
from detailbench.moves.shop import AddToShop, ChangeInShop, Retire
from detailbench.record.things import Setting
from detailbench.thickness.gauge_line import GaugeLine, LineForm

LINE = GaugeLine("invented-port", 19200, "7E1", LineForm("semicolon", 3, 4, "mil", ",", "T", ("----", "E5")))


def test_a_line_is_kept_whole_and_taken_back_by_one_undo(invented: InventedShop) -> None:
    invented.bench.do(SetGaugeLine(invented.gauge, LINE))
    assert line_of(invented.reopened().shop(), invented.gauge) == LINE
    invented.bench.undo(SHOP)
    assert line_of(invented.bench.shop(), invented.gauge) is None


def test_a_line_taken_away_is_gone(invented: InventedShop) -> None:
    invented.bench.do(SetGaugeLine(invented.gauge, LINE))
    invented.bench.do(SetGaugeLine(invented.gauge, None))
    assert lines(invented.bench.shop()) == {}


def test_a_changed_gauge_stays_plugged_in(invented: InventedShop) -> None:
    invented.bench.do(SetGaugeLine(invented.gauge, LINE))
    new = invented.bench.do(ChangeInShop("gauge", invented.gauge, {"serial": "X 1"})).id
    assert lines(invented.bench.shop()) == {new: LINE}


def test_a_port_has_one_gauge_of_those_in_use(invented: InventedShop) -> None:
    other = invented.bench.do(AddToShop("gauge", {"name": "other invented gauge"})).id
    invented.bench.do(SetGaugeLine(other, LINE))
    with pytest.raises(Refused, match="other invented gauge"):
        invented.bench.do(SetGaugeLine(invented.gauge, GaugeLine("invented-port")))
    invented.bench.do(Retire("gauge", other))
    invented.bench.do(SetGaugeLine(invented.gauge, GaugeLine("invented-port")))
    assert list(lines(invented.bench.shop())) == [invented.gauge]


@pytest.mark.parametrize("text", ["{", '{"port": ""}', '{"port": "p", "form": {"decimal": "x"}}', "7"])
def test_a_line_changed_outside_the_program_is_said_in_a_sentence(invented: InventedShop, text: str) -> None:
    store = invented.bench.store
    with store.writing(invented.clock.now(), "") as w:
        w.add(Setting, key=key_of(invented.gauge), value=text)
        w.sign_off(SHOP, "x", "x", undoable=True)
    with pytest.raises(RecordTrouble, match="changed outside"):
        line_of(invented.bench.shop(), invented.gauge)
