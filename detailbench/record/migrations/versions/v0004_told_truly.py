"""Paint that cannot be replaced is kept with its finish group; a trial's timer that was left; the owner's word on each
approved test section."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None

ADDED = (
    ("finish_group", "irreplaceable", ""),
    ("trial", "timer", ""),
    ("acceptance", "met_ids", "[]"),
    ("acceptance", "not_met_ids", "[]"),
)


def upgrade() -> None:
    for table, name, before in ADDED:
        op.add_column(table, sa.Column(name, sa.Text(), nullable=False, server_default=before))
