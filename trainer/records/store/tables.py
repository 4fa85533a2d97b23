"""The tables of the store, the same in embedded SQLite and in PostgreSQL."""

from sqlalchemy import Column, Float, ForeignKey, Index, Integer, MetaData, String, Table, Text, UniqueConstraint

SCHEMA_VERSION = 2

metadata = MetaData(
    naming_convention={
        "pk": "pk_%(table_name)s",
        "fk": "fk_%(table_name)s_%(column_0_name)s",
        "uq": "uq_%(table_name)s_%(column_0_name)s",
        "ix": "ix_%(table_name)s_%(column_0_name)s",
    }
)

schema_table = Table("schema_version", metadata, Column("version", Integer, nullable=False))

identity_table = Table("store_identity", metadata, Column("id", String(36), primary_key=True))

attempt_table = Table(
    "attempt",
    metadata,
    Column("id", String(36), primary_key=True),
    Column("learner", Text, nullable=False, index=True),
    Column("case_source", String(16), nullable=False),
    Column("case_name", Text, nullable=False),
    Column("profile_digest", String(64), nullable=False),
    Column("case_digest", String(64), nullable=False),
    Column("seed", Integer, nullable=False),
    Column("program_version", String(20), nullable=False),
    Column("started_at", String(40), nullable=False),
    Column("set_id", String(32), nullable=False, server_default="", index=True),
    Column("item", Integer, nullable=False, server_default="0"),
    Column("try_number", Integer, nullable=False, server_default="0"),
    Column("redraw", Integer, nullable=False, server_default="0"),
    Column("model", String(64), nullable=False, server_default=""),
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
    Column("link", String(64), nullable=False, server_default=""),
    UniqueConstraint("attempt_id", "number"),
)
"""`link` chains each event of a set's attempt to the one before it, under the set's key."""

set_table = Table(
    "class_set",
    metadata,
    Column("id", String(32), primary_key=True),
    Column("name", Text, nullable=False),
    Column("title", Text, nullable=False),
    Column("mode", String(12), nullable=False),
    Column("size", Integer, nullable=False),
    Column("counts", String(8), nullable=False),
    Column("passes_at", Float, nullable=False),
    Column("certainty_weight", Float, nullable=False),
    Column("weights", Text, nullable=False),
    Column("closes", String(40), nullable=False),
    Column("keep_until", String(40), nullable=False, server_default=""),
)

result_table = Table(
    "result",
    metadata,
    Column("attempt_id", String(36), ForeignKey("attempt.id"), primary_key=True),
    Column("set_id", String(32), nullable=False),
    Column("learner", Text, nullable=False),
    Column("item", Integer, nullable=False),
    Column("try_number", Integer, nullable=False),
    Column("redraw", Integer, nullable=False),
    Column("closed_at", String(40), nullable=False),
    Column("engine", Text, nullable=False),
    Column("title", Text, nullable=False),
    Column("kind_class", String(40), nullable=False),
    Column("mark", Float, nullable=False),
    Column("points", Float, nullable=False),
    Column("right", Integer, nullable=False),
    Column("certainty", Float, nullable=False),
    Column("faulty", Integer, nullable=False),
    Column("said_faulty", Integer, nullable=False),
    Column("place", Text, nullable=False),
    Column("said_place", Text, nullable=False),
    Column("cylinders", Text, nullable=False),
    Column("said_cylinders", Text, nullable=False),
    Column("kinds", Text, nullable=False),
    Column("said_kinds", Text, nullable=False),
    Column("misconception", String(40), nullable=False),
    Column("plays", Integer, nullable=False),
    Column("readings", Integer, nullable=False),
    Column("hints", Integer, nullable=False),
    Column("minutes", Float, nullable=False),
    Column("best_minutes", Float, nullable=False),
    Column("spent_s", Float, nullable=False),
    Column("supported", Integer, nullable=False),
    Column("model", String(64), nullable=False),
    Column("voided", Integer, nullable=False, server_default="0"),
    Column("counted", Integer, nullable=False, server_default="0"),
    Index("ix_result_set_counted", "set_id", "counted"),
    Index("ix_result_learner", "learner"),
)
"""What a closed attempt came to; all of it follows from events and the set, and can be made again from them."""

note_table = Table(
    "note",
    metadata,
    Column("id", String(36), primary_key=True),
    Column("at", String(40), nullable=False),
    Column("kind", String(12), nullable=False),
    Column("set_id", String(32), nullable=False),
    Column("learner", Text, nullable=False),
    Column("item", Integer, nullable=False),
    Column("text", Text, nullable=False),
)
"""What an instructor adds: `void` with its reason, `comment`, `answer` for another right answer; never changed.

`settle` is what marking found that an instructor should ask about.
"""

SETTLE = "settle"
"""The kind of a note that marking adds; its text is the id of a sentence, and an earlier date in it."""

roster_table = Table(
    "roster",
    metadata,
    Column("learner", Text, primary_key=True),
    Column("name", Text, nullable=False),
    Column("class_name", Text, nullable=False),
)

delivery_table = Table(
    "delivery",
    metadata,
    Column("attempt_id", String(36), ForeignKey("attempt.id"), primary_key=True),
    Column("events", Integer, nullable=False),
)
"""How many events of an attempt the shared store has confirmed."""
