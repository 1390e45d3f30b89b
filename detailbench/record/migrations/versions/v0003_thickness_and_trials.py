"""Layers, gloss, shuts and undersides; kit, paint feel, the approved test section, training, files given out."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None

KINDS = {"text": sa.Text, "whole": sa.Integer, "real": sa.Float, "truth": sa.Boolean}

# every row begins with these; then the table's own columns; a question mark: may be empty, an asterisk: indexed
HEAD = "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, "
TABLES = {
    "gloss_reading": (
        "job_id* text, clean text, work text, cover text, place_id text, session_id text, angle_deg whole, "
        "value_gu real, flags text, typed text, source text, note text"
    ),
    "paint_feel": "job_id* text, panels text, feel text, sticky text, note text",
    "towel": "retired truth, name text, use text, replaces text",
    "sanding_disc": "retired truth, name text, grade text, diameter_mm real?, replaces text",
    "training_answer": "retired truth, trial_of text, trial_id text, person_id text, result text, round_id text",
    "job_file_out": "retired truth, of_job text, sha256 text, personal truth",
}

# table, column, kind, and what rows written before hold there
ADDED: tuple[tuple[str, str, str, str | None], ...] = (
    ("place", "surface", "text", "outer"),
    ("reading", "clear_um", "real?", None),
    ("waiting_value", "clear_um", "real?", None),
    ("waiting_value", "angle_deg", "whole?", None),
    ("gauge", "angles_deg", "text", "[]"),
    ("lamp", "distance_cm", "real?", None),
    ("machine", "weight_n", "real?", None),
    ("machine", "noise_db", "real?", None),
    ("finish_group", "lightness", "text", ""),
    ("finish_group", "refinished", "text", ""),
    ("finish_group", "refinished_on", "text?", None),
    ("finish_group", "cure_days", "real?", None),
    ("finish_group", "cure_word", "text", ""),
    ("trial", "pad_condition", "text", ""),
    ("trial", "primed", "text", ""),
    ("trial", "batch", "text", ""),
    ("trial_outcome", "lamp_id", "text", ""),
    ("trial_outcome", "second_lamp_id", "text", ""),
    ("trial_outcome", "counted_before", "whole?", None),
    ("trial_outcome", "counted_left", "whole?", None),
    ("process_step", "disc_id", "text", ""),
    ("photo", "trial_id", "text", ""),
    ("acceptance", "level_met", "text", ""),
    ("agreement", "level", "text", ""),
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
