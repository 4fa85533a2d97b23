"""Keeping records in order: deleting a learner or a set for good, a backup in one file, and its restoring."""

from __future__ import annotations

import gzip
import hashlib
import json
import zlib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Table, delete, func, insert, select
from sqlalchemy import text as statement

from trainer.cases.whole_file import write_bytes
from trainer.errors import MissingHereError, WrongCallError
from trainer.records.store import Store
from trainer.records.tables import (
    SCHEMA_VERSION,
    attempt_table,
    delivery_table,
    event_table,
    note_table,
    result_table,
    roster_table,
    set_table,
)  # fmt: skip

KEPT: tuple[Table, ...] = (set_table, attempt_table, event_table, result_table, note_table, roster_table)
FORM = "records backup/1"
PART_ROWS = 500


def delete_learner(store: Store, learner: str) -> int:
    """Delete everything that names a learner; returns how many attempts that were."""
    with store.writing() as connection:
        ids = select(attempt_table.c.id).where(attempt_table.c.learner == learner).scalar_subquery()
        count = _delete_attempts(connection, ids)
        for table in (result_table, note_table, roster_table):
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


def _delete_attempts(connection: Connection, ids: Any) -> int:
    for table in (result_table, delivery_table, event_table):
        connection.execute(delete(table).where(table.c.attempt_id.in_(ids)))
    return connection.execute(delete(attempt_table).where(attempt_table.c.id.in_(ids))).rowcount


def _shred(store: Store) -> None:
    """Leave nothing of what was deleted in the file of an embedded store."""
    if store.engine.dialect.name == "sqlite":
        with store.engine.connect().execution_options(isolation_level="AUTOCOMMIT") as connection:
            connection.execute(statement("VACUUM"))
            connection.execute(statement("PRAGMA wal_checkpoint(TRUNCATE)"))


def expired(store: Store, today: str) -> list[str]:
    """Return the ids of sets whose results were to be kept only until a day before today (ISO 8601)."""
    kept = set_table.c.keep_until
    wanted = select(set_table.c.id).where(kept != "", kept < today).order_by(set_table.c.id)
    with store.engine.connect() as connection:
        return list(connection.execute(wanted).scalars())


def write_backup(store: Store, path: Path) -> int:
    """Write all records into one packed file that shows any damage; returns the number of rows."""
    digest = hashlib.sha256()
    lines = []
    for line in _lines(store):
        digest.update(line)
        lines.append(line)
    lines.append(json.dumps({"sha256": digest.hexdigest()}).encode("ascii") + b"\n")
    write_bytes(path, gzip.compress(b"".join(lines), mtime=0))
    return len(lines) - 2


def _lines(store: Store) -> Iterator[bytes]:
    yield json.dumps({"form": FORM, "schema": SCHEMA_VERSION}).encode("ascii") + b"\n"
    with store.engine.connect() as connection:
        for table in KEPT:
            for row in connection.execute(select(table).order_by(*table.primary_key.columns)).mappings():
                yield json.dumps({table.name: dict(row)}, ensure_ascii=False).encode("utf-8") + b"\n"


def restore_backup(store: Store, path: Path) -> int:
    """Put a backup into a store without attempts; raises WrongCallError for a full store and for a damaged file."""
    lines = _backup_lines(path)
    rows: dict[str, list[dict[str, Any]]] = {table.name: [] for table in KEPT}
    for line in lines:
        for name, row in json.loads(line).items():
            rows[name].append(row)
    with store.writing() as connection:
        if connection.execute(select(func.count()).select_from(attempt_table)).scalar_one():
            raise WrongCallError("store_not_empty", place=store.place)
        for table in KEPT:
            connection.execute(delete(table))
            if table is event_table:  # its number in the database is the database's own
                for row in rows[table.name]:
                    del row["id"]
            for start in range(0, len(rows[table.name]), PART_ROWS):
                connection.execute(insert(table), rows[table.name][start : start + PART_ROWS])
    return sum(map(len, rows.values()))


def _backup_lines(path: Path) -> list[bytes]:
    try:
        lines = gzip.decompress(path.read_bytes()).splitlines(keepends=True)
        head, last = json.loads(lines[0]), json.loads(lines[-1])
    except OSError as error:
        if isinstance(error, gzip.BadGzipFile):
            raise WrongCallError("backup_damaged", file=path.name) from error
        raise MissingHereError("file_unreadable", path=path, reason=error.strerror) from error
    except (EOFError, ValueError, IndexError, zlib.error) as error:
        raise WrongCallError("backup_damaged", file=path.name) from error
    whole = hashlib.sha256(b"".join(lines[:-1])).hexdigest()
    if not isinstance(last, dict) or last.get("sha256") != whole or head.get("form") != FORM:
        raise WrongCallError("backup_damaged", file=path.name)
    if head["schema"] != SCHEMA_VERSION:
        raise WrongCallError("backup_version", file=path.name, version=head["schema"], known=SCHEMA_VERSION)
    return lines[1:-1]
