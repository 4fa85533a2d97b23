"""Everything in a store as one packed file, and back: every row checked by its type on both ways, a part at a time.

Lines of JSON, packed by gzip: a head, one line for each row, and the SHA-256 of every byte before it.
"""

from __future__ import annotations

import gzip
import hashlib
import json
import os
import zlib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import IO, Any, BinaryIO

from pydantic import ConfigDict, TypeAdapter, create_model
from sqlalchemy import Connection, Table, func, insert, select
from sqlalchemy.exc import IntegrityError

from trainer.cases.files.plain_file import open_plain
from trainer.cases.files.whole_file import write_whole
from trainer.errors import MissingHereError, WrongCallError
from trainer.records.store.row_types import row_model, typed
from trainer.records.store.store import Store
from trainer.records.store.tables import (
    SCHEMA_VERSION,
    attempt_table,
    event_table,
    note_table,
    result_table,
    roster_table,
    set_table,
)

KEPT: tuple[Table, ...] = (set_table, attempt_table, event_table, result_table, note_table, roster_table)
BackupRow = dict[str, str | int | float]
FORM = "records backup/1"
PART_ROWS, PART_BYTES = 500, 4_000_000
"""So many rows, or so many bytes of them, are put into the database together."""

MOST_LINE = 2_000_000
"""Bytes of a line: no row that is written is longer, and none that is read."""

MOST_TIGHT, LEAST_BYTES = 200, 1_000_000
"""A backup unpacks to at most so many times its size: ids alone keep real rows from being packed as tightly."""


@dataclass(frozen=True, slots=True)
class Rows:
    """How many rows were written or put back, and how many were left out because they are damaged."""

    done: int
    left_out: int


def write_backup(store: Store, path: Path) -> Rows:
    """Write all records into one packed file that shows any change of what it holds; damaged rows are left out.

    Raises MissingHereError where the file cannot be written.
    """
    rows = -1  # the head is no row

    def write(part: IO[bytes]) -> None:
        nonlocal rows
        digest = hashlib.sha256()
        with gzip.GzipFile(fileobj=part, mode="wb", filename="", mtime=0) as packed:
            for line in _lines(store):
                rows += 1
                digest.update(line)
                packed.write(line)
            packed.write(_last_line(digest.hexdigest()))

    write_whole(path, write)
    with store.reading() as connection:
        there = sum(connection.execute(select(func.count()).select_from(table)).scalar_one() for table in KEPT)
    return Rows(rows, max(there - rows, 0))


def _lines(store: Store) -> Iterator[bytes]:
    yield json.dumps({"form": FORM, "schema": SCHEMA_VERSION}).encode("ascii") + b"\n"
    with store.reading(yield_per=2000) as connection:
        for table in KEPT:
            whole = select(table).where(typed(table)).order_by(*table.primary_key.columns)
            for row in connection.execute(whole).mappings():
                line = json.dumps({table.name: dict(row)}, ensure_ascii=False).encode("utf-8") + b"\n"
                if len(line) <= MOST_LINE:
                    yield line


def restore_backup(store: Store, path: Path) -> Rows:
    """Put a backup into an empty store, in one transaction; rows that do not fit to the others are left out.

    Raises WrongCallError for a store that is not empty and for a file that is not as it was written; the store is then
    untouched.
    """
    try:
        with open_plain(path) as opened, store.writing() as connection:
            if any(connection.execute(select(table).limit(1)).first() for table in KEPT):
                raise WrongCallError("store_not_empty", place=store.place)
            return _put_back(connection, _rows_in(opened, path))
    except (EOFError, ValueError, zlib.error, gzip.BadGzipFile) as error:
        raise WrongCallError("backup_damaged", file=path.name) from error
    except OSError as error:
        raise MissingHereError("file_unreadable", path=path, reason=error.strerror) from error


def _put_back(connection: Connection, rows: Iterator[tuple[Table, BackupRow, int]]) -> Rows:
    part: list[BackupRow] = []
    here, part_bytes, count, left_out = KEPT[0], 0, 0, 0

    def flush() -> None:
        nonlocal left_out
        if part and not _fits(connection, here, part):
            left_out += sum(not _fits(connection, here, [row]) for row in part)
        part.clear()

    for table, row, size in rows:
        if table is not here or len(part) == PART_ROWS or part_bytes > PART_BYTES:
            flush()
            here, part_bytes = table, 0
        if table is event_table:
            del row["id"]  # its number in the database is the database's own
        part.append(row)
        part_bytes += size
        count += 1
    flush()
    return Rows(count - left_out, left_out)


def _fits(connection: Connection, table: Table, rows: list[BackupRow]) -> bool:
    """Add rows, all or none; tell whether they fit: each once, and to attempts that are there."""
    try:
        with connection.begin_nested():
            connection.execute(insert(table), rows)
    except IntegrityError:
        return False
    return True


_TABLES = {table.name: table for table in KEPT}
_FORMS: dict[str, Any] = {table.name: (row_model(table) | None, None) for table in KEPT}
_LINE = create_model("Line", __config__=ConfigDict(strict=True, extra="forbid"), **_FORMS)
_HEAD = TypeAdapter(dict[str, str | int])


def _rows_in(opened: BinaryIO, path: Path) -> Iterator[tuple[Table, BackupRow, int]]:
    """Yield the rows of a backup, each with its table and the length of its line in bytes.

    Raises ValueError and its like for a file that is not as it was written, at the latest at its end.
    """
    lines = _lines_in(opened)
    first = next(lines, b"")
    head = _HEAD.validate_json(first)
    if head.get("form") != FORM:
        raise ValueError("another form")
    if head.get("schema") != SCHEMA_VERSION:
        raise WrongCallError("backup_version", file=path.name, version=head.get("schema"), known=SCHEMA_VERSION)
    digest = hashlib.sha256(first)
    for line in lines:
        if line == _last_line(digest.hexdigest()):
            if next(lines, b""):
                raise ValueError("more after the end")
            return
        digest.update(line)
        rows_by_table = _LINE.model_validate_json(line)
        for name, row in rows_by_table:
            if row is not None:
                yield _TABLES[name], dict(row), len(line)
    raise ValueError("no end")


def _lines_in(opened: BinaryIO) -> Iterator[bytes]:
    """Yield the lines of a packed file; raises ValueError beyond the limits of a line and of the whole."""
    left = LEAST_BYTES + MOST_TIGHT * os.fstat(opened.fileno()).st_size
    with gzip.GzipFile(fileobj=opened, mode="rb") as packed:
        while line := packed.readline(MOST_LINE + 1):
            left -= len(line)
            if len(line) > MOST_LINE or left < 0:
                raise ValueError("longer than any backup")
            yield line


def _last_line(digest: str) -> bytes:
    return json.dumps({"sha256": digest}).encode("ascii") + b"\n"
