"""Attempts and their events in a database; events are added, never changed or removed."""

from __future__ import annotations

import contextlib
import json
import weakref
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import asdict
from pathlib import Path

from pydantic import JsonValue
from sqlalchemy import Connection, Engine, func, insert, select
from sqlalchemy.exc import DatabaseError, IntegrityError

from trainer.errors import DamagedError, MissingHereError, Sentence, UserError
from trainer.practice.attempt.event_json import closed_from, parse_as
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.practice.attempt.events import Started
from trainer.practice.attempt.outcome import Outcome
from trainer.records.store.database import WRITES, engine_for, place_of, upgrade_tables
from trainer.records.store.database_errors import user_error_of
from trainer.records.store.log_rows import UNFIT, AttemptRow, Row, attempt_of, data_of, event_of, row_of
from trainer.records.store.tables import attempt_table, event_table, identity_table
from trainer.words import text

PRACTICE = "practice"
"""Under which the event that ends a task holds what practice adapts by."""

EXERCISE = "exercise"
"""The source of an attempt at an exercise; the exercise's name takes the place of the case's."""

SHOWN_LEFT_OUT = 3
"""So many damaged attempts are named."""

ENDS = (EventKind.CLOSED.value, EventKind.VOIDED.value)
"""What ends an attempt."""


class Store:
    """The store behind one engine; open it with `opened`.

    Where it belongs to a station of a school, `written`, `fetch` and `stop` lead to the store that is shared; `fetch`
    returns what kept it from bringing a learner's attempts here.
    """

    def __init__(self, engine: Engine) -> None:
        self.engine, self.place = engine, place_of(engine)
        weakref.finalize(self, engine.dispose)  # a store that nobody closed lets go of the database with its last user
        self.written: Callable[[], None] = _nothing
        self.fetch: Callable[[str], UserError | None] = _nothing
        self.stop: Callable[[], object] = _nothing
        self.left_out: set[str] = set()
        """What was passed over because it is damaged, each as what it is and its id."""
        self.tell: Callable[[str], object] = _nothing
        """Called when the store is closed, with the sentence that says what was left out."""

    @property
    def keeps(self) -> bool:
        """Whether what is written outlives the program."""
        return bool(self.engine.url.database) or self.engine.dialect.name != "sqlite"

    @property
    def id(self) -> str:
        """The store's own name: it distinguishes the bundles of two stations."""
        with self.reading() as connection:
            found = connection.execute(select(identity_table.c.id).limit(2)).scalars().all()
        if len(found) != 1 or not isinstance(found[0], str) or not found[0].isascii():
            raise DamagedError("store_damaged", place=self.place, reason=Sentence("damage.no_identity"))
        return found[0]

    def begin(self, row: AttemptRow, first: EventRecord, link: str = "") -> None:
        """Add an attempt with its first event, in one transaction."""
        with self.writing() as connection:
            connection.execute(insert(attempt_table), asdict(row))
            connection.execute(insert(event_table), row_of(row.id, first, link))
        self.written()

    def append(self, attempt_id: str, event: EventRecord, link: str = "") -> None:
        """Add one event; raises ValueError where that place in the attempt's order is taken already."""
        with self.writing() as connection:
            try:
                connection.execute(insert(event_table), row_of(attempt_id, event, link))
            except IntegrityError as error:
                raise ValueError(f"event {event.number} of this attempt is stored already") from error
        self.written()

    @contextlib.contextmanager
    def writing(self) -> Iterator[Connection]:
        """Open a transaction; the database's errors are raised as DamagedError or MissingHereError."""
        with self._translated_errors(), self.engine.execution_options(**{WRITES: True}).begin() as connection:
            yield connection

    @contextlib.contextmanager
    def reading(self, yield_per: int | None = None) -> Iterator[Connection]:
        """Open a connection to read by, fetching `yield_per` rows at a time; errors are translated as in `writing`."""
        with self._translated_errors(), self.engine.connect() as connection:
            yield connection if yield_per is None else connection.execution_options(yield_per=yield_per)

    @contextlib.contextmanager
    def _translated_errors(self) -> Iterator[None]:
        try:
            yield
        except DatabaseError as error:
            raise user_error_of(error) from error

    def logged(self, attempt_id: str) -> tuple[list[EventRecord], list[str]]:
        """Return an attempt's events in order with their links, as they were at one moment.

        Raises DamagedError where an event is missing or is none.
        """
        wanted = select(event_table).where(event_table.c.attempt_id == attempt_id).order_by(event_table.c.number)
        with self.reading() as connection:
            rows = connection.execute(wanted).mappings().all()
        events = []
        for number, row in enumerate(rows, start=1):
            try:
                events.append(event_of(row))
            except UNFIT as error:
                raise self.damaged(attempt_id, number) from error
            if events[-1].number != number:
                raise self.damaged(attempt_id, number)
        if not events:
            raise self.damaged(attempt_id, 1)
        return events, [row["link"] for row in rows]

    def damaged(self, attempt_id: str, number: int) -> DamagedError:
        """Note that an attempt is damaged, and return the error that says so: from which event on it cannot be read."""
        self.left_out.add(f"attempt {attempt_id}")
        return DamagedError("attempt_damaged", attempt=attempt_id, number=number, place=self.place)

    def started(self, row: AttemptRow) -> Started | None:
        """Return the event that an attempt began with, or None for one whose events are damaged: it is left out."""
        try:
            return parse_as(self.events(row.id)[0], Started)
        except DamagedError:
            return None
        except ValueError:
            self.damaged(row.id, 1)
            return None

    def events(self, attempt_id: str) -> list[EventRecord]:
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
        with self.reading() as connection:
            closings = connection.execute(wanted).all()
        outcomes = []
        for row in closings:
            with contextlib.suppress(*UNFIT):
                closed = closed_from(data_of(row.data))
                worked_for_learner = (
                    closed.practice and closed.practice.get("lesson") and not closed.practice["answers"]
                )
                if closed.outcome is not None and not worked_for_learner:
                    outcomes.append(closed.outcome)
        return outcomes

    def practised(self, learner: str, since: int = 0) -> list[tuple[int, str, dict[str, JsonValue]]]:
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
        with self.reading() as connection:
            rows = connection.execute(wanted).all()
        all_data = _all_data([row.data for row in rows])
        kept = [(row.id, row.at, (data or {}).get(PRACTICE)) for row, data in zip(rows, all_data, strict=True)]
        return [(number, at, practice) for number, at, practice in kept if isinstance(practice, dict)]

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
        with self.reading() as connection:
            return self.attempts(connection.execute(wanted).mappings())

    def attempts(self, rows: Iterable[Row]) -> list[AttemptRow]:
        """Return the attempts that rows are; damaged ones are left out."""
        found = []
        for row in rows:
            try:
                found.append(attempt_of(row))
            except UNFIT:
                self.left_out.add(f"attempt {row['id']}")
        return found

    def learners(self) -> tuple[str, ...]:
        """Return everybody who has worked here, whoever was here last first."""
        last = func.max(attempt_table.c.started_at)
        wanted = select(attempt_table.c.learner).group_by(attempt_table.c.learner).order_by(last.desc())
        with self.reading() as connection:
            return tuple(row.learner for row in connection.execute(wanted) if isinstance(row.learner, str))

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
        with self.reading() as connection:
            return frozenset(row.case_name for row in connection.execute(wanted))

    def in_set(self, set_id: str, learner: str) -> list[AttemptRow]:
        """Return a learner's attempts in a set, in the order in which they were begun.

        Raises DamagedError where one of them is damaged: no case of a set may be worked twice for want of its attempt.
        """
        wanted = (
            select(attempt_table)
            .where(attempt_table.c.set_id == set_id, attempt_table.c.learner == learner)
            .order_by(attempt_table.c.started_at, attempt_table.c.try_number, attempt_table.c.redraw)
        )
        with self.reading() as connection:
            rows = connection.execute(wanted).mappings().all()
        found = self.attempts(rows)
        if len(found) < len(rows):
            known = {row.id for row in found}
            raise self.damaged(next(row["id"] for row in rows if row["id"] not in known), 1)
        return found

    def all_in_set(self, set_id: str) -> list[AttemptRow]:
        """Return everybody's attempts in a set; damaged ones are left out."""
        columns = attempt_table.c
        wanted = select(attempt_table).where(columns.set_id == set_id).order_by(columns.learner, columns.started_at)
        with self.reading() as connection:
            return self.attempts(connection.execute(wanted).mappings())

    def latest(self) -> str | None:
        """Return when the newest event happened (UTC, ISO 8601), or None for no event at all."""
        with self.reading() as connection:
            years = event_table.c.at.between("1", "3")  # a damaged time is none
            newest: str | None = connection.execute(select(func.max(event_table.c.at)).where(years)).scalar_one()
        return newest

    def count(self) -> int:
        """Return how many events are stored."""
        with self.reading() as connection:
            return connection.execute(select(func.count()).select_from(event_table)).scalar_one()

    @property
    def left_out_line(self) -> str:
        """What was left out because it is damaged, in words; "" for nothing."""
        if not self.left_out:
            return ""
        first = sorted(self.left_out)[:SHOWN_LEFT_OUT]
        which = ", ".join([*first, "..."] if len(self.left_out) > len(first) else first)
        return text("damage.left_out", n=len(self.left_out), which=which)

    def close(self) -> None:
        """Deliver what waits, if the shared store answers, and close the database."""
        self.stop()
        if self.left_out:
            self.tell(self.left_out_line)
        self.engine.dispose()


def open_store(folder: Path | None) -> Store:
    """Open the store in a folder, made if it is missing; None keeps everything in memory only.

    Raises MissingHereError where the folder or the file cannot be used.
    """
    if folder is not None:
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise MissingHereError("no_folder", folder=folder, reason=error.strerror) from error
    return open_store_at("sqlite://" if folder is None else f"sqlite:///{folder / 'attempts.sqlite3'}")


def open_store_at(url: str, statement_timeout_s: int = 0) -> Store:
    """Open the store at a database's URL; raises WrongCallError for no URL and MissingHereError for no answer."""
    store = Store(engine_for(url, statement_timeout_s))
    upgrade_tables(store.engine)
    return store


def _all_data(written: Sequence[str]) -> list[dict[str, JsonValue] | None]:
    """Return the data of many events, None for damaged ones; thousands of small texts are read far quicker as one."""
    try:
        read: list[dict[str, JsonValue] | None] = json.loads(f"[{','.join(written)}]")
        if len(read) == len(written) and all(isinstance(data, dict) for data in read):
            return read
    except UNFIT:
        pass
    return [_data_or_none(one) for one in written]


def _data_or_none(written: str) -> dict[str, JsonValue] | None:
    try:
        return data_of(written)
    except UNFIT:
        return None


def _nothing(*_progress: object) -> None:
    """No store is shared: nothing is to be fetched or delivered."""
