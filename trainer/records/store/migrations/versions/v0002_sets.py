"""Sets, results, notes, the roster, what was delivered; events are chained."""

import uuid

import sqlalchemy as sa
from alembic import op

from trainer.records.store import tables

revision, down_revision = "0002", "0001"

ADDED = (
    tables.identity_table, tables.set_table, tables.result_table, tables.note_table, tables.roster_table,
    tables.delivery_table,
)  # fmt: skip


def upgrade() -> None:
    """Add what sets need, and give the store a name of its own."""
    for name, kind, empty in (
        ("set_id", sa.String(32), ""), ("item", sa.Integer, "0"), ("try_number", sa.Integer, "0"),
        ("redraw", sa.Integer, "0"), ("model", sa.String(64), ""),
    ):  # fmt: skip
        op.add_column("attempt", sa.Column(name, kind, nullable=False, server_default=empty))
    op.create_index("ix_attempt_learner", "attempt", ["learner"])
    op.create_index("ix_attempt_set_id", "attempt", ["set_id"])
    op.add_column("event", sa.Column("link", sa.String(64), nullable=False, server_default=""))
    connection = op.get_bind()
    for table in ADDED:
        table.create(connection)
    connection.execute(sa.insert(tables.identity_table), {"id": str(uuid.uuid4())})
    connection.execute(sa.delete(tables.schema_table))
    connection.execute(sa.insert(tables.schema_table), {"version": 2})
