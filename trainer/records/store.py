"""Attempts and their events in a database; events are added, never changed or removed."""

from __future__ import annotations

import contextlib
import json
import weakref
from collections.abc import Callable, Sequence
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Engine, func, insert, select
from sqlalchemy.exc import DatabaseError, IntegrityError

from trainer.errors import MissingHereError
from trainer.practice.events import Event, EventKind
from trainer.practice.outcome import Outcome, outcome_from
from trainer.records.opening import WRITES, engine_for, lacking, made_ready, place_of
from trainer.records.tables import attempt_table, event_table, identity_table


@dataclass(frozen=True, slots=True)
class AttemptRow:
    """What an attempt is about; `case_name` is what was asked for.

    `case_source` is `shipped`, `file`, `code`, `set` or `exercise`.

    In a set `item` is the case's index from 1, `redraw` how often it was voided before, `model` a hash of the code that
    computes. An attempt of a sealed set holds no seed, and digests that only the set's key can make.
    """

    id: str
    learner: str
    case_source: str
    case_name: str
    profile_digest: str
    case_digest: str
    seed: int
    program_version: str
    started_at: str
    set_id: str = ""
    item: int = 0
    try_number: int = 0
    redraw: int = 0
    model: str = ""


PRACTICE = "practice"
"""Under which the event that ends a task holds what practice adapts by."""

EXERCISE = "exercise"
"""The source of an attempt at an exercise, whose name stands for its case."""

ENDS = (EventKind.CLOSED.value, EventKind.VOIDED.value)
"""What ends an attempt."""


class Store:
    """The store behind one engine; open it with `opened`.

    Where it belongs to a station of a school, `written`, `fetch` and `stop` lead to the store that is shared.
    """

    def __init__(self, engine: Engine) -> None:
        self.engine, self.place = engine, place_of(engine)
        weakref.finalize(self, engine.dispose)  # a store that nobody closed lets go of the database with its last user
        self.written: Callable[[], None] = _nothing
        self.fetch: Callable[[str], object] = _nothing
        self.stop: Callable[[], object] = _nothing

    @property
    def id(self) -> str:
        """The store's own name, by which bundles of two stations are told apart."""
        with self.engine.connect() as connection:
            found: str = connection.execute(select(identity_table.c.id)).scalar_one()
        return found

    def begin(self, row: AttemptRow, first: Event, link: str = "") -> None:
        """Add an attempt with its first event, in one transaction."""
        with self.writing() as connection:
            connection.execute(insert(attempt_table), asdict(row))
            connection.execute(insert(event_table), row_of(row.id, first, link))
        self.written()

    def append(self, attempt_id: str, happened: Event, link: str = "") -> None:
        """Add one event; raises ValueError where that place in the attempt's order is taken already."""
        try:
            with self.writing() as connection:
                connection.execute(insert(event_table), row_of(attempt_id, happened, link))
        except IntegrityError as error:
            raise ValueError(f"event {happened.number} of this attempt is stored already") from error
        self.written()

    def writing(self) -> _Writing:
        """One transaction whose failure is told as what this machine lacks."""
        return _Writing(self.engine, self.place)

    def logged(self, attempt_id: str) -> tuple[list[Event], list[str]]:
        """Return an attempt's events in order with their links, as they were at one moment."""
        wanted = select(event_table).where(event_table.c.attempt_id == attempt_id).order_by(event_table.c.number)
        with self.engine.connect() as connection:
            rows = connection.execute(wanted).all()
        events = [Event(row.number, EventKind(row.kind), row.at, json.loads(row.data)) for row in rows]
        return events, [row.link for row in rows]

    def events(self, attempt_id: str) -> list[Event]:
        """Return an attempt's events in order."""
        return self.logged(attempt_id)[0]

    def links(self, attempt_id: str) -> list[str]:
        """Return the links of an attempt's events in order."""
        return self.logged(attempt_id)[1]

    def closings(self, learner: str, except_for: str = "") -> list[Outcome]:
        """Return what the learner's own finished cases came to, one of them left out.

        An exam's cases close unscored, a worked lesson was the program's, and what another version wrote is not read.
        """
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
        with self.engine.connect() as connection:
            closings = [json.loads(row.data) for row in connection.execute(wanted)]
        outcomes = []
        for data in closings:
            with contextlib.suppress(KeyError, TypeError, ValueError, AttributeError):
                if not data.get(PRACTICE, {}).get("lesson") or data[PRACTICE]["answers"]:
                    outcomes.append(outcome_from(data))
        return outcomes

    def practised(self, learner: str, since: int = 0) -> list[tuple[int, str, dict[str, Any]]]:
        """Return what practice kept of each task that was ended, in the order of storing: event's id, time, data."""
        wanted = (
            select(event_table.c.id, event_table.c.at, event_table.c.data)
            .join(attempt_table, attempt_table.c.id == event_table.c.attempt_id)
            .where(
                attempt_table.c.learner == learner,
                event_table.c.id > since,
                event_table.c.kind == EventKind.CLOSED.value,
                event_table.c.data.contains(f'"{PRACTICE}": '),
            )
            .order_by(event_table.c.id)
        )
        with self.engine.connect() as connection:
            rows = connection.execute(wanted).all()
        # thousands of small texts are read far quicker as one
        read = json.loads(f"[{','.join(row.data for row in rows)}]")
        return [(row.id, row.at, data[PRACTICE]) for row, data in zip(rows, read, strict=True) if PRACTICE in data]

    def open_attempts(self, learner: str, case_name: str, case_digest: str) -> Sequence[AttemptRow]:
        """Return a learner's attempts at a case that have no end yet, the newest first."""
        waiting = self.unfinished(learner)
        return [row for row in waiting if (row.case_name, row.case_digest) == (case_name, case_digest)]

    def unfinished(self, learner: str, *, exercises: bool = False) -> Sequence[AttemptRow]:
        """Return a learner's attempts outside sets that have no end yet, at cases or at exercises, the newest first."""
        closed = select(event_table.c.attempt_id).where(event_table.c.kind.in_(ENDS))
        wanted = (
            select(attempt_table)
            .where(
                attempt_table.c.learner == learner,
                attempt_table.c.set_id == "",
                attempt_table.c.id.not_in(closed),
                (attempt_table.c.case_source == EXERCISE) == exercises,
            )
            .order_by(attempt_table.c.started_at.desc())
        )
        with self.engine.connect() as connection:
            return [AttemptRow(**row._mapping) for row in connection.execute(wanted)]

    def learners(self) -> tuple[str, ...]:
        """Return everybody who has worked here, whoever was here last first."""
        last = func.max(attempt_table.c.started_at)
        wanted = select(attempt_table.c.learner).group_by(attempt_table.c.learner).order_by(last.desc())
        with self.engine.connect() as connection:
            return tuple(row.learner for row in connection.execute(wanted))

    def solved_names(self, learner: str) -> frozenset[str]:
        """Return the names of the cases that a learner has finished at least once."""
        wanted = (
            select(attempt_table.c.case_name)
            .join(event_table, event_table.c.attempt_id == attempt_table.c.id)
            .where(
                attempt_table.c.learner == learner,
                attempt_table.c.set_id == "",
                event_table.c.kind == EventKind.CLOSED.value,
            )
        )
        with self.engine.connect() as connection:
            return frozenset(row.case_name for row in connection.execute(wanted))

    def in_set(self, set_id: str, learner: str) -> list[AttemptRow]:
        """Return a learner's attempts in a set, in the order in which they were begun."""
        wanted = (
            select(attempt_table)
            .where(attempt_table.c.set_id == set_id, attempt_table.c.learner == learner)
            .order_by(attempt_table.c.started_at, attempt_table.c.try_number, attempt_table.c.redraw)
        )
        with self.engine.connect() as connection:
            return [AttemptRow(**row._mapping) for row in connection.execute(wanted)]

    def all_in_set(self, set_id: str) -> list[AttemptRow]:
        """Return everybody's attempts in a set."""
        columns = attempt_table.c
        wanted = select(attempt_table).where(columns.set_id == set_id).order_by(columns.learner, columns.started_at)
        with self.engine.connect() as connection:
            return [AttemptRow(**row._mapping) for row in connection.execute(wanted)]

    def latest(self) -> str | None:
        """Return when the newest event happened (UTC, ISO 8601), or None for no event at all."""
        with self.engine.connect() as connection:
            newest: str | None = connection.execute(select(func.max(event_table.c.at))).scalar_one()
        return newest

    def count(self) -> int:
        """Return how many events are stored."""
        with self.engine.connect() as connection:
            return connection.execute(select(func.count()).select_from(event_table)).scalar_one()

    def close(self) -> None:
        """Let go of the database, what waits to be delivered sent before if it can be."""
        self.stop()
        self.engine.dispose()


class _Writing:
    """One transaction whose failure is told as what this machine lacks."""

    def __init__(self, engine: Engine, place: str) -> None:
        self._context, self._place = engine.execution_options(**{WRITES: True}).begin(), place

    def __enter__(self) -> Connection:
        try:
            return self._context.__enter__()
        except DatabaseError as error:
            raise lacking(self._place, error) from error

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: object) -> None:
        try:
            self._context.__exit__(kind, error, trace)  # type: ignore[arg-type]  # passes what Python hands in
        except IntegrityError:
            raise
        except DatabaseError as failure:
            raise lacking(self._place, failure) from failure
        if isinstance(error, DatabaseError) and not isinstance(error, IntegrityError):
            raise lacking(self._place, error) from error


def opened(folder: Path | None) -> Store:
    """Open the store in a folder, made if it is missing; None keeps everything in memory only.

    Raises MissingHereError where the folder or the file cannot be used.
    """
    if folder is not None:
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise MissingHereError("no_folder", folder=folder, reason=error.strerror) from error
    return opened_at("sqlite://" if folder is None else f"sqlite:///{folder / 'attempts.sqlite3'}")


def opened_at(url: str, statement_timeout_s: int = 0) -> Store:
    """Open the store at a database's URL; raises WrongCallError for no URL and MissingHereError for no answer."""
    store = Store(engine_for(url, statement_timeout_s))
    made_ready(store.engine)
    return store


def row_of(attempt_id: str, happened: Event, link: str = "") -> dict[str, object]:
    """Return an event as its row."""
    return {
        "attempt_id": attempt_id,
        "number": happened.number,
        "kind": happened.kind.value,
        "at": happened.at,
        "data": json.dumps(happened.data, sort_keys=True),
        "link": link,
    }


def _nothing(*_told: object) -> None:
    """No store is shared: nothing is to be fetched or delivered."""
