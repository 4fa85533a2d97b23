"""Keeping records in order: deleting a learner or a set for good, a backup in one file, and its restoring."""

from __future__ import annotations

import gzip
import hashlib
import json
import zlib
from collections.abc import Iterator
from pathlib import Path
from typing import IO, Any

from sqlalchemy import Connection, Table, delete, func, insert, select

from trainer.cases.plain_file import open_plain
from trainer.cases.whole_file import write_whole
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
PART_ROWS, MOST_LINE = 500, 16_000_000


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


def _delete_attempts(connection: Connection, ids: Any) -> int:
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
        finally:
            raw.close()


def expired(store: Store, today: str) -> list[str]:
    """Return the ids of sets whose results were to be kept only until a day before today (ISO 8601)."""
    kept = set_table.c.keep_until
    wanted = select(set_table.c.id).where(kept != "", kept < today).order_by(set_table.c.id)
    with store.engine.connect() as connection:
        return list(connection.execute(wanted).scalars())


def write_backup(store: Store, path: Path) -> int:
    """Write all records into one packed file that shows any change of what it holds; returns the number of rows."""
    rows = -1  # the head is no row

    def write(part: IO[bytes]) -> None:
        nonlocal rows
        digest = hashlib.sha256()
        with gzip.GzipFile(fileobj=part, mode="wb", filename="", mtime=0) as packed:
            for line in _lines(store):
                rows += 1
                digest.update(line)
                packed.write(line)
            packed.write(json.dumps({"sha256": digest.hexdigest()}).encode("ascii") + b"\n")

    write_whole(path, write)
    return rows


def _lines(store: Store) -> Iterator[bytes]:
    yield json.dumps({"form": FORM, "schema": SCHEMA_VERSION}).encode("ascii") + b"\n"
    with store.engine.connect().execution_options(yield_per=2000) as connection:
        for table in KEPT:
            for row in connection.execute(select(table).order_by(*table.primary_key.columns)).mappings():
                yield json.dumps({table.name: dict(row)}, ensure_ascii=False).encode("utf-8") + b"\n"


def restore_backup(store: Store, path: Path) -> int:
    """Put a backup into a store without attempts; raises WrongCallError for a full store and for a damaged file.

    The file is read twice: whole and proved first, then put in, a part at a time.
    """
    try:
        _prove(path)
        with store.writing() as connection:
            if connection.execute(select(func.count()).select_from(attempt_table)).scalar_one():
                raise WrongCallError("store_not_empty", place=store.place)
            for table in reversed(KEPT):
                connection.execute(delete(table))
            return _put_back(connection, path)
    except gzip.BadGzipFile as error:
        raise WrongCallError("backup_damaged", file=path.name) from error
    except OSError as error:
        raise MissingHereError("file_unreadable", path=path, reason=error.strerror) from error
    except (EOFError, ValueError, KeyError, IndexError, AttributeError, RecursionError, zlib.error) as error:
        raise WrongCallError("backup_damaged", file=path.name) from error


def _put_back(connection: Connection, path: Path) -> int:
    tables = {table.name: table for table in KEPT}
    part: list[dict[str, Any]] = []
    here, rows = "", 0

    def flush() -> None:
        if part:
            connection.execute(insert(tables[here]), part)
        part.clear()

    with open_plain(path) as file, gzip.open(file, "rb") as packed:
        packed.readline(MOST_LINE)
        for line in packed:
            ((name, row),) = json.loads(line).items()
            if name == "sha256":
                break
            if name != here or len(part) == PART_ROWS:
                flush()
                here = name
            if name == event_table.name:
                del row["id"]  # its number in the database is the database's own
            part.append(row)
            rows += 1
    flush()
    return rows


def _prove(path: Path) -> None:
    """Read a backup to its end; raises WrongCallError or ValueError for one that is not as it was written."""
    digest = hashlib.sha256()
    with open_plain(path) as file, gzip.open(file, "rb") as packed:
        head = json.loads(packed.readline(MOST_LINE))
        if head["form"] != FORM:
            raise ValueError("another form")
        if head["schema"] != SCHEMA_VERSION:
            raise WrongCallError("backup_version", file=path.name, version=head["schema"], known=SCHEMA_VERSION)
        digest.update(json.dumps(head).encode("ascii") + b"\n")
        line = packed.readline(MOST_LINE)
        while line and not line.startswith(b'{"sha256"'):
            digest.update(line)
            line = packed.readline(MOST_LINE)
        rest = packed.read(1)  # to the end: the packing has its own sum
        if rest or json.loads(line)["sha256"] != digest.hexdigest():
            raise ValueError("another content")
