"""The tables of the store."""

from sqlalchemy import Column, ForeignKey, Integer, MetaData, String, Table, Text, UniqueConstraint

SCHEMA_VERSION = 1

metadata = MetaData(
    naming_convention={
        "pk": "pk_%(table_name)s",
        "fk": "fk_%(table_name)s_%(column_0_name)s",
        "uq": "uq_%(table_name)s_%(column_0_name)s",
    }
)

schema_table = Table("schema_version", metadata, Column("version", Integer, nullable=False))

attempt_table = Table(
    "attempt",
    metadata,
    Column("id", String(36), primary_key=True),
    Column("learner", String(80), nullable=False),
    Column("case_source", String(16), nullable=False),
    Column("case_name", Text, nullable=False),
    Column("profile_digest", String(64), nullable=False),
    Column("case_digest", String(64), nullable=False),
    Column("seed", Integer, nullable=False),
    Column("program_version", String(20), nullable=False),
    Column("started_at", String(40), nullable=False),
)

event_table = Table(
    "event",
    metadata,
    Column("id", Integer, primary_key=True, autoincrement=True),
    Column("attempt_id", String(36), ForeignKey("attempt.id"), nullable=False),
    Column("number", Integer, nullable=False),
    Column("kind", String(20), nullable=False),
    Column("at", String(40), nullable=False),
    Column("data", Text, nullable=False),
    UniqueConstraint("attempt_id", "number"),
)
