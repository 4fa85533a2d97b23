"""Attempts and their events."""

import sqlalchemy as sa
from alembic import op

revision, down_revision = "0001", None


def upgrade() -> None:
    """Make the first tables."""
    op.create_table("schema_version", sa.Column("version", sa.Integer, nullable=False))
    op.create_table(
        "attempt",
        sa.Column("id", sa.String(36), nullable=False),
        sa.Column("learner", sa.Text, nullable=False),
        sa.Column("case_source", sa.String(16), nullable=False),
        sa.Column("case_name", sa.Text, nullable=False),
        sa.Column("profile_digest", sa.String(64), nullable=False),
        sa.Column("case_digest", sa.String(64), nullable=False),
        sa.Column("seed", sa.Integer, nullable=False),
        sa.Column("program_version", sa.String(20), nullable=False),
        sa.Column("started_at", sa.String(40), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_attempt"),
    )
    op.create_table(
        "event",
        sa.Column("id", sa.Integer, autoincrement=True, nullable=False),
        sa.Column("attempt_id", sa.String(36), nullable=False),
        sa.Column("number", sa.Integer, nullable=False),
        sa.Column("kind", sa.String(20), nullable=False),
        sa.Column("at", sa.String(40), nullable=False),
        sa.Column("data", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_event"),
        sa.ForeignKeyConstraint(["attempt_id"], ["attempt.id"], name="fk_event_attempt_id"),
        sa.UniqueConstraint("attempt_id", "number", name="uq_event_attempt_id"),
    )
