"""Paint that cannot be replaced: kept with the finish group."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("finish_group", sa.Column("irreplaceable", sa.Text(), nullable=False, server_default=""))
