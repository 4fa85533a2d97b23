"""Delete a learner or a set for good, and find sets whose time is over."""

from __future__ import annotations

import sqlite3

from sqlalchemy import Connection, ScalarSelect, delete, select

from trainer.errors import DamagedError
from trainer.records.store.store import Store
from trainer.records.store.tables import (
    attempt_table,
    delivery_table,
    event_table,
    note_table,
    result_table,
    roster_table,
    set_table,
)


def delete_learner(store: Store, learner: str) -> int:
    """Delete everything that names a learner; returns how many attempts that were."""
    with store.writing() as connection:
        ids = select(attempt_table.c.id).where(attempt_table.c.learner == learner).scalar_subquery()
        count = _delete_attempts(connection, ids)
        for table in (note_table, roster_table):
            connection.execute(delete(table).where(table.c.learner == learner))
    _shred(store)
    return count


def delete_set(store: Store, set_id: str) -> int:
    """Delete a set's results, attempts and notes; returns how many attempts that were."""
    with store.writing() as connection:
        ids = select(attempt_table.c.id).where(attempt_table.c.set_id == set_id).scalar_subquery()
        count = _delete_attempts(connection, ids)
        connection.execute(delete(note_table).where(note_table.c.set_id == set_id))
        connection.execute(delete(set_table).where(set_table.c.id == set_id))
    _shred(store)
    return count


def _delete_attempts(connection: Connection, ids: ScalarSelect[str]) -> int:
    for table in (result_table, delivery_table, event_table):
        connection.execute(delete(table).where(table.c.attempt_id.in_(ids)))
    return connection.execute(delete(attempt_table).where(attempt_table.c.id.in_(ids))).rowcount


def _shred(store: Store) -> None:
    """Leave nothing of what was deleted in the file of an embedded store."""
    if store.engine.dialect.name == "sqlite":
        raw = store.engine.raw_connection()  # outside any transaction
        try:
            raw.cursor().execute("VACUUM")
            raw.cursor().execute("PRAGMA wal_checkpoint(TRUNCATE)")
        except sqlite3.DatabaseError as error:
            raise DamagedError("not_shredded", place=store.place, reason=error) from error
        finally:
            raw.close()


def expired(store: Store, today: str) -> list[str]:
    """Return the ids of sets whose results were to be kept only until a day before today (ISO 8601)."""
    kept = set_table.c.keep_until
    wanted = select(set_table.c.id).where(kept != "", kept < today).order_by(set_table.c.id)
    with store.reading() as connection:
        return list(connection.execute(wanted).scalars())
