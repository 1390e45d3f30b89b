"""The day as it really goes: custody, limits, agreements, wash steps, mishaps, second looks, deliveries."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

KINDS = {"text": sa.Text, "whole": sa.Integer, "real": sa.Float, "truth": sa.Boolean}

# every row begins with these; then the table's own columns; a question mark: may be empty, an asterisk: indexed
HEAD = "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, "
TABLES = {
    "clock_note": "retired truth, last_at text, words text",
    "stated_repair": "job_id* text, panel text, words text, said_by text",
    "custody": (
        "job_id* text, moment text, energy text, energy_percent real?, keys_count whole?, keys_at text, "
        "warning_lamps text, valuables text, stands_at text"
    ),
    "car_moved": "job_id* text, from_place text, to_place text, person_id text, words text",
    "remark": "job_id* text, moment text, role text",
    "job_turn": "job_id* text, turn text, reason text",
    "owner_limit": "job_id* text, kind text, panels text, most_off_um real?, words text, lifted_by text",
    "limit_seen": "job_id* text, limit_id text, day text",
    "agreement": (
        "job_id* text, about text, question text, answer text, channel text, party_id text, price text?, panels "
        "text, answered_at text?, answered_to text, replaces text, limit_id text, document_id text, trial_id "
        "text, mishap_id text, evidence_id text"
    ),
    "supplement_item": "job_id* text, words text, panel text, mark_id text",
    "mishap": "job_id* text, words text, panel text, told text, told_at text?, channel text",
    "wash_step": "job_id* text, kind text, panels text, product text, why_not text, note text",
    "rub_test": "job_id* text, clean text, work text, cover text, panel text, found text, note text",
    "second_look": "job_id* text, clean text, work text, cover text, panels text, found text, lamp_id text, words text",
    "other_work": "job_id* text, words text, minutes real?, price text?",
    "delivery": "job_id* text, document_id text, way text, note text",
    "history": "job_id* text, evidence_id text, head text, entries whole",
    "gauge_correction": (
        "job_id* text, session_id text, zero_id text, shim_id text, proof_id text, reason text, round_no whole, "
        "proof_round whole"
    ),
    "waiting_value": (
        "retired truth, text text, why text, job_id* text, gauge_id text, value_um real?, unit text, no_value text"
    ),
    "readings_file": "retired truth, sha256 text, job_id* text, lines whole, fate text",
    "forgetting": "job_id* text, values_gone whole, files_gone whole",
}

# table, column, kind, and what rows written before hold there
ADDED: tuple[tuple[str, str, str, str], ...] = (
    ("party", "kind", "text", "person"),
    ("party", "errand", "text", ""),
    ("damage", "part", "text", ""),
    ("damage", "where", "text", ""),
    ("evidence", "forgotten", "truth", "0"),
    ("photo", "shows", "text", ""),
    ("photo", "mishap_id", "text", ""),
    ("place", "same_as", "text", ""),
)


def _column(name: str, kind: str, first: bool = False, before: str | None = None) -> sa.Column[object]:
    return sa.Column(
        name,
        KINDS[kind.rstrip("?")](),
        nullable=kind.endswith("?"),
        primary_key=first,
        autoincrement=False,
        server_default=before,
    )


def upgrade() -> None:
    for table, own in TABLES.items():
        columns = [each.split(" ") for each in (HEAD + own).split(", ")]
        op.create_table(table, *(_column(name.rstrip("*"), kind, n == 0) for n, (name, kind) in enumerate(columns)))
        for name, _kind in columns:
            if name.endswith("*"):
                op.create_index(f"ix_{table}_{name[:-1]}", table, [name[:-1]])
    for table, name, kind, before in ADDED:
        op.add_column(table, _column(name, kind, before=before))
