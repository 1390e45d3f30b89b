"""The check finds what was changed behind the program's back, and is silent where nothing was."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from invented_shop import InventedShop

from detailbench.record.checking import CheckResult, check
from detailbench.record.journal import hash_of
from detailbench.record.store import DATABASE, Store


def behind_its_back(invented: InventedShop, *statements: str) -> CheckResult:
    """Close, change the file by hand, check."""
    invented.bench.close()
    with closing(sqlite3.connect(invented.folder / DATABASE)) as raw, raw:
        for statement in statements:
            raw.execute(statement)
    return checked(invented)


def checked(invented: InventedShop, known_head: str | None = None) -> CheckResult:
    store = Store(invented.folder, invented.clock.now(), read_only=True)
    try:
        return check(store, known_head)
    finally:
        store.close()


@pytest.fixture
def worked(invented: InventedShop) -> InventedShop:
    """A job with an owner, a damage, readings, an undo and a kept file."""
    job = invented.job()
    invented.measured(job)
    invented.bench.undo(job)
    with invented.bench.store.writing(invented.clock.now(), invented.person) as w:
        w.keep_file(b"invented picture", "image/png", "invented.png")
        w.sign_off("shop", "KeepFile", "a file kept", undoable=True)
    return invented


def test_an_untouched_workshop_has_no_troubles(worked: InventedShop) -> None:
    result = check(worked.bench.store)
    assert result.troubles == ()
    assert result.files == 1
    assert result.entries == worked.bench.store.head()[0]
    assert result.head == worked.bench.store.head()[1]


@pytest.mark.parametrize(
    ("statements", "told"),
    [
        (("UPDATE reading SET value_um = 141 WHERE seq = (SELECT min(seq) FROM reading)",), "value_um differs"),
        (("UPDATE reading SET entered_at = '2031-03-09T08:30:00+01:00'",), "entered_at differs"),
        (("UPDATE reading SET withdrawn = 1",), "withdrawn differs"),
        (("DELETE FROM reading WHERE seq = (SELECT min(seq) FROM reading)",), "gone from the table"),
        (("INSERT INTO damage SELECT id || 'x', entered_at, entered_by, stated_at, seq, withdrawn, id, '', 'new', "
          "'', '' FROM job",), "not in the journal"),
        (("UPDATE journal SET body = replace(body, '118', '119') WHERE act = 'RecordReading'",), "match its hash"),
        (("UPDATE journal SET says = 'nothing of note' WHERE act = 'NewJob'",), "differ from its text"),
        (("UPDATE journal SET by = 'someone' WHERE act = 'NewJob'",), "columns (by)"),
        (("UPDATE journal SET at = '2031-03-09T08:30:00+01:00' WHERE n = 2",), "columns (at)"),
        (("DELETE FROM journal WHERE n = 3",), "entry 3 is missing"),
        (("UPDATE personal SET value = 'Another Owner' WHERE field = 'name'",), "personal value (name)"),
        (("UPDATE personal SET salt = 'ff' WHERE field = 'telephone'",), "personal value (telephone)"),
        (("UPDATE journal SET body = 'not json' WHERE n = 2",), "cannot be read"),
        (("UPDATE journal SET body = '{}' WHERE n = 2",), "cannot be read"),
        (("UPDATE journal SET body = '[]' WHERE n = 2",), "cannot be read"),
    ],
)  # fmt: skip
def test_what_was_changed_behind_its_back_is_found(
    worked: InventedShop, statements: tuple[str, ...], told: str
) -> None:
    result = behind_its_back(worked, *statements)
    assert any(told in t for t in result.troubles), result.troubles


def damaged(change: Callable[[Path], object]) -> Callable[[InventedShop], CheckResult]:
    def act(worked: InventedShop) -> CheckResult:
        file = next(p for p in (worked.folder / "evidence").rglob("*") if p.is_file())
        change(file)
        return checked(worked)

    return act


@pytest.mark.parametrize(
    ("act", "told"),
    [(damaged(lambda f: f.write_bytes(b"invented Picture")), "has been changed"), (damaged(Path.unlink), "is missing")],
    ids=["changed", "missing"],
)
def test_a_kept_file_changed_or_missing_is_found(
    worked: InventedShop, act: Callable[[InventedShop], CheckResult], told: str
) -> None:
    assert any(told in t for t in act(worked).troubles)


def test_personal_values_that_went_without_an_entry_that_forgets_them_are_found(worked: InventedShop) -> None:
    told = behind_its_back(worked, "UPDATE personal SET value = NULL, salt = NULL WHERE field = 'telephone'").troubles
    assert told == ("A personal value (telephone) is gone, and no entry of the journal forgets it.",)


def without_the_last_entry(invented: InventedShop) -> None:
    """Cut the tail so that nothing else shows it: the last entry gone, and the row it made."""
    invented.bench.close()
    with closing(sqlite3.connect(invented.folder / DATABASE)) as raw, raw:
        body = json.loads(raw.execute("SELECT body FROM journal ORDER BY n DESC LIMIT 1").fetchone()[0])
        for change in body["changes"]:
            raw.execute(f"DELETE FROM {change['table']} WHERE id = ?", (change["id"],))
        raw.execute("DELETE FROM journal WHERE n = (SELECT max(n) FROM journal)")


def test_a_cut_tail_shows_only_against_a_hash_kept_elsewhere(worked: InventedShop) -> None:
    kept_elsewhere = worked.bench.store.head()[1]
    without_the_last_entry(worked)
    assert checked(worked).troubles == ()
    told = checked(worked, kept_elsewhere)
    assert told.head_found is False
    assert any("tail was cut" in t for t in told.troubles)


def test_a_hash_kept_earlier_is_found_in_the_chain_that_grew_since(worked: InventedShop) -> None:
    kept_elsewhere = worked.bench.store.head()[1]
    worked.job("Second Invented Owner")
    result = check(worked.bench.store, kept_elsewhere)
    assert (result.head_found, result.troubles) == (True, ())


def test_a_chain_written_anew_shows_against_a_hash_kept_elsewhere(worked: InventedShop) -> None:
    kept_elsewhere = worked.bench.store.head()[1]
    worked.bench.close()
    with closing(sqlite3.connect(worked.folder / DATABASE)) as raw, raw:
        raw.execute("UPDATE reading SET value_um = 141 WHERE value_um = 118")
        previous = "0" * 64
        before: dict[str, str] = {}
        for n, text in raw.execute("SELECT n, body FROM journal ORDER BY n").fetchall():
            body = json.loads(text.replace('"value_um":118,', '"value_um":141,'))
            body["previous"] = previous
            body["before"] = before.get(body["scope"], "0" * 64)
            anew = json.dumps(body, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
            previous = before[body["scope"]] = hash_of(anew)
            raw.execute("UPDATE journal SET body = ?, hash = ? WHERE n = ?", (anew, previous, n))
    assert checked(worked).troubles == ()
    assert checked(worked, kept_elsewhere).head_found is False


def test_no_personal_value_stands_in_the_journal(invented: InventedShop) -> None:
    invented.job("Quintessa Unmistakable")
    invented.bench.close()
    with closing(sqlite3.connect(invented.folder / DATABASE)) as raw:
        told = " ".join(b + s for b, s in raw.execute("SELECT body, says FROM journal"))
        values = [v for (v,) in raw.execute("SELECT value FROM personal")]
    assert set(values) == {"Quintessa Unmistakable", "000 111", "INV 01"}
    assert [v for v in values if v in told] == []
