"""The first schema, written out: each column as name, kind and a question mark where it may be empty."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

KINDS = {"text": sa.Text, "whole": sa.Integer, "real": sa.Float, "truth": sa.Boolean}

# table: columns; the first column is the key; columns marked with an asterisk are indexed
TABLES = {
    "journal": (
        "n whole, at text, by text, scope* text, act text, undoable truth, refers_to whole?, says text, body text, "
        "hash text"
    ),
    "personal": "id text, subject* text, field text, digest text, seq whole, withdrawn truth, salt text?, value text?",
    "workshop": "key text, value text",
    "person": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, retired truth, name "
        "text, initials text, role text"
    ),
    "gauge": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, retired truth, name "
        "text, principle text, substrates text, resolution_um real, accuracy_fixed_um real, accuracy_share real, "
        "layers truth, serial text, certificate text, laboratory text, certified_on text?, due_on text?"
    ),
    "shim": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, retired truth, label "
        "text, value_um real, accuracy_um real, u_um real, substrate text, certificate text"
    ),
    "lamp": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, retired truth, name "
        "text, kind text, colour_temperature_k whole?"
    ),
    "machine": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, retired truth, name "
        "text, movement text, orbit_mm real?, dials text, own_rpm real?, plate_mm real?, vibration_m_s2 real?, "
        "vibration_k_m_s2 real?, replaces text"
    ),
    "pad": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, retired truth, name "
        "text, material text, diameter_mm real, replaces text"
    ),
    "product": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, retired truth, name "
        "text, kind text, working_time_s real?, batch text, replaces text"
    ),
    "combination": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, retired truth, "
        "machine_id text, pad_id text, product_id text, rung whole"
    ),
    "setting": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, retired truth, key "
        "text, value text"
    ),
    "car": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, style text, "
        "described text, colour text, paint_code text, lightness text, year whole?, vin text, vin_absent text, "
        "length_mm real?"
    ),
    "job": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, car_id text, number "
        "text, kind text, hoped_level text, will_remain text, price_range text"
    ),
    "visit": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, "
        "arrived_at text, light text, odometer_in whole?, odometer_unit text, odometer_out whole?, left_at text?"
    ),
    "party": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, role "
        "text, authority text"
    ),
    "damage": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, panel "
        "text, words text"
    ),
    "finish_group": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, name "
        "text, panels text, paint_system text, note text"
    ),
    "state_note": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, panels "
        "text, clean text, work text, cover text, how text"
    ),
    "hold": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, panel "
        "text, reason text, lifted truth"
    ),
    "evidence": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, sha256 text, size "
        "whole, media_type text, name text, taken_at text?, offset_source text, width_px whole?, height_px whole?"
    ),
    "photo": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, clean "
        "text, work text, cover text, evidence_id text, panel text, mark_id text, moment text, lamp_id text, caption "
        "text, pair text"
    ),
    "mark": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, clean "
        "text, work text, cover text, panel text, kind text, shape text, edge_a text, edge_a_mm real?, edge_b text, "
        "edge_b_mm real?, end_a_mm real?, end_b_mm real?, panel_w_mm real?, panel_h_mm real?, severity whole, depth "
        "whole?, intent text, count whole?, length_mm real?, area_cm2 real?, lamp_id text, note text"
    ),
    "mark_check": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, clean "
        "text, work text, cover text, mark_id text, severity whole, depth whole?, lamp_id text, note text"
    ),
    "panel_look": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, clean "
        "text, work text, cover text, panel text, lamp_id text"
    ),
    "gauge_session": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, "
        "gauge_id text, temperature_c real?, note text"
    ),
    "check_reading": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, "
        "session_id text, shim_id text, value_um real, round_no whole"
    ),
    "place": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, panel "
        "text, number whole, edge_a text, edge_a_mm real, edge_b text, edge_b_mm real, panel_w_mm real, panel_h_mm "
        "real, origin text"
    ),
    "reading": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, clean "
        "text, work text, cover text, place_id text, session_id text, value_um real?, no_value text, flags text, "
        "typed text, unit text, source text, note text"
    ),
    "place_decision": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, "
        "place_id text, moment text, decision text, reason text"
    ),
    "trial": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, "
        "group_id text, panel text, combination_id text, spot text, on_top_of text, edge_a text, edge_a_mm real?, "
        "edge_b text, edge_b_mm real?, dial text, force_n real?, force_word text, section_w_mm real?, section_h_mm "
        "real?, passes whole?, seconds real?, surface_before_c real?, surface_after_c real?, lamp_id text, note text"
    ),
    "trial_outcome": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, "
        "trial_id text, cleared text, finish text, stopped text, only_deep_left truth, next_result text, note text"
    ),
    "process": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, "
        "group_id text, trial_ids text, words text"
    ),
    "process_step": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, "
        "process_id text, number whole, combination_id text, means text, section_m2 real, spread_s real, polish_s "
        "real, wipe_s real, overlap real, pad_care_every whole, pad_care_s real, setup_s real"
    ),
    "step_run": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, panel "
        "text, step_id text, started_at text, finished_at text?, ended text, sections_done whole?, minutes real?"
    ),
    "override": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, rule "
        "text, panel text, reason text"
    ),
    "protection": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, panels "
        "text, product text, kind text, batch text, air_c real?, humidity_percent real?, surface_c real?, cure_h "
        "real?"
    ),
    "document": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, kind "
        "text, evidence_id text, sha256 text, pages whole, key_fingerprint text, chain_head text, replaces text"
    ),
    "acceptance": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, answer "
        "text, light text"
    ),
    "signature": (
        "id text, entered_at text, entered_by text, stated_at text?, seq whole, withdrawn truth, job_id* text, role "
        "text, way text, moment text, statement text"
    ),
}


def upgrade() -> None:
    for table, columns in TABLES.items():
        made, indexed = [], []
        for number, column in enumerate(columns.split(", ")):
            name, kind = column.split(" ")
            if name.endswith("*"):
                name = name[:-1]
                indexed.append(name)
            may_be_empty = kind.endswith("?")
            column_kind = KINDS[kind.rstrip("?")]()
            made.append(
                sa.Column(name, column_kind, nullable=may_be_empty, primary_key=number == 0, autoincrement=False)
            )
        op.create_table(table, *made)
        for name in indexed:
            op.create_index(f"ix_{table}_{name}", table, [name])
