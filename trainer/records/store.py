"""Attempts and their events in a database; events are added, never changed or removed."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event, func, insert, select
from sqlalchemy.exc import DatabaseError, IntegrityError, OperationalError

from trainer.errors import MissingHereError
from trainer.practice.events import Event, EventKind
from trainer.records.tables import SCHEMA_VERSION, attempt_table, event_table, metadata, schema_table


@dataclass(frozen=True, slots=True)
class AttemptRow:
    """What an attempt is about; `case_source` is `shipped`, `file` or `code`, `case_name` its name, path or code."""

    id: str
    learner: str
    case_source: str
    case_name: str
    profile_digest: str
    case_digest: str
    seed: int
    program_version: str
    started_at: str


class Store:
    """The store behind one engine; open it with `opened`."""

    def __init__(self, engine: Engine, place: str) -> None:
        self._engine, self.place = engine, place

    def begin(self, row: AttemptRow, first: Event) -> None:
        """Add an attempt with its first event, in one transaction."""
        with self._writing() as connection:
            connection.execute(insert(attempt_table), {name: getattr(row, name) for name in row.__dataclass_fields__})
            connection.execute(insert(event_table), _row_of(row.id, first))

    def append(self, attempt_id: str, happened: Event) -> None:
        """Add one event; raises ValueError where that place in the attempt's order is taken already."""
        try:
            with self._writing() as connection:
                connection.execute(insert(event_table), _row_of(attempt_id, happened))
        except IntegrityError as error:
            raise ValueError(f"event {happened.number} of this attempt is stored already") from error

    def _writing(self) -> _Writing:
        return _Writing(self._engine, self.place)

    def events(self, attempt_id: str) -> list[Event]:
        """Return an attempt's events in order."""
        wanted = select(event_table).where(event_table.c.attempt_id == attempt_id).order_by(event_table.c.number)
        with self._engine.connect() as connection:
            return [
                Event(row.number, EventKind(row.kind), row.at, json.loads(row.data))
                for row in connection.execute(wanted)
            ]

    def closings(self, learner: str, except_for: str) -> list[dict[str, Any]]:
        """Return what the learner's closed attempts ended with, one of them left out."""
        wanted = (
            select(event_table.c.data)
            .join(attempt_table, attempt_table.c.id == event_table.c.attempt_id)
            .where(
                attempt_table.c.learner == learner,
                attempt_table.c.id != except_for,
                event_table.c.kind == EventKind.CLOSED.value,
            )
            .order_by(event_table.c.at)
        )
        with self._engine.connect() as connection:
            return [json.loads(row.data) for row in connection.execute(wanted)]

    def open_attempts(self, learner: str, case_name: str, case_digest: str) -> Sequence[AttemptRow]:
        """Return a learner's attempts at a case that have no end yet, the newest first."""
        waiting = self.unfinished(learner)
        return [row for row in waiting if (row.case_name, row.case_digest) == (case_name, case_digest)]

    def unfinished(self, learner: str) -> Sequence[AttemptRow]:
        """Return all of a learner's attempts that have no end yet, the newest first."""
        closed = select(event_table.c.attempt_id).where(event_table.c.kind == EventKind.CLOSED.value)
        wanted = (
            select(attempt_table)
            .where(attempt_table.c.learner == learner, attempt_table.c.id.not_in(closed))
            .order_by(attempt_table.c.started_at.desc())
        )
        with self._engine.connect() as connection:
            return [AttemptRow(**row._mapping) for row in connection.execute(wanted)]

    def learners(self) -> tuple[str, ...]:
        """Return everybody who has worked here, whoever was here last first."""
        last = func.max(attempt_table.c.started_at)
        wanted = select(attempt_table.c.learner).group_by(attempt_table.c.learner).order_by(last.desc())
        with self._engine.connect() as connection:
            return tuple(row.learner for row in connection.execute(wanted))

    def solved_names(self, learner: str) -> frozenset[str]:
        """Return the names of the cases that a learner has finished at least once."""
        wanted = (
            select(attempt_table.c.case_name)
            .join(event_table, event_table.c.attempt_id == attempt_table.c.id)
            .where(attempt_table.c.learner == learner, event_table.c.kind == EventKind.CLOSED.value)
        )
        with self._engine.connect() as connection:
            return frozenset(row.case_name for row in connection.execute(wanted))

    def latest(self) -> str | None:
        """Return when the newest event happened (UTC, ISO 8601), or None for no event at all."""
        with self._engine.connect() as connection:
            newest: str | None = connection.execute(select(func.max(event_table.c.at))).scalar_one()
        return newest

    def count(self) -> int:
        """Return how many events are stored."""
        with self._engine.connect() as connection:
            return connection.execute(select(func.count()).select_from(event_table)).scalar_one()

    def close(self) -> None:
        """Let go of the database."""
        self._engine.dispose()


class _Writing:
    """One transaction whose failure is told as what this machine lacks."""

    def __init__(self, engine: Engine, place: str) -> None:
        self._context, self._place = engine.begin(), place

    def __enter__(self) -> Connection:
        return self._context.__enter__()

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: object) -> None:
        try:
            self._context.__exit__(kind, error, trace)  # type: ignore[arg-type]  # passes what Python hands in
        except OperationalError as failure:
            raise _lacking(self._place, failure) from failure
        if isinstance(error, OperationalError):
            raise _lacking(self._place, error) from error


def _lacking(place: str, error: DatabaseError) -> MissingHereError:
    reason = str(error.orig).splitlines()[0] if error.orig else "it does not answer"
    return MissingHereError("store_unwritable", place=place, reason=reason)


def opened(folder: Path | None) -> Store:
    """Open the store in a folder, made if it is missing; None keeps everything in memory only.

    Raises MissingHereError where the folder or the file cannot be used.
    """
    place = "memory" if folder is None else str(folder / "attempts.sqlite3")
    if folder is not None:
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise MissingHereError("no_folder", folder=folder, reason=error.strerror) from error
    engine = create_engine("sqlite://" if folder is None else f"sqlite:///{place}")
    event.listen(engine, "connect", _durable)
    try:
        metadata.create_all(engine)
        with engine.begin() as connection:
            version = connection.execute(select(schema_table.c.version)).scalar_one_or_none()
            if version is None:
                connection.execute(insert(schema_table), {"version": SCHEMA_VERSION})
            elif version != SCHEMA_VERSION:
                raise MissingHereError("store_version", place=place, version=version, known=SCHEMA_VERSION)
    except DatabaseError as error:
        raise _lacking(place, error) from error
    return Store(engine, place)


def _durable(connection: object, _record: object) -> None:
    """An event counts once it is on the disk: a write-ahead log, synchronised at every commit."""
    cursor = connection.cursor()  # type: ignore[attr-defined]  # SQLAlchemy hands in the driver's own connection
    for line in ("PRAGMA journal_mode=WAL", "PRAGMA synchronous=FULL", "PRAGMA foreign_keys=ON"):
        cursor.execute(line)
    cursor.close()


def _row_of(attempt_id: str, happened: Event) -> dict[str, object]:
    return {
        "attempt_id": attempt_id,
        "number": happened.number,
        "kind": happened.kind.value,
        "at": happened.at,
        "data": json.dumps(happened.data, sort_keys=True),
    }
