"""Carries records from a station to a store that a school shares: kept here first, delivered when the network is there.

Every event lies in the station's own store before it counts. The shared store takes an event by its attempt and number,
so that one whose answer was lost on the way is not stored twice when it is sent again.
"""

from __future__ import annotations

import contextlib
import threading
from dataclasses import dataclass

from sqlalchemy import func, insert, select, update
from sqlalchemy.exc import DatabaseError, DataError, IntegrityError

from trainer.errors import DamagedError, MissingHereError, UserError
from trainer.records.store.database import engine_for
from trainer.records.store.database_errors import user_error_of
from trainer.records.store.log_rows import AttemptRow
from trainer.records.store.merging import ForkedError, WholeAttempt, merge_attempt
from trainer.records.store.store import Store, open_store_at
from trainer.records.store.tables import attempt_table, delivery_table, event_table

RETRY_S, STATEMENT_TIMEOUT_S = 5.0, 20
FETCH_WAIT_S = 3.0


@dataclass(frozen=True, slots=True)
class Delivered:
    """What one round carried over, what still waits, and what is in the way, None for nothing.

    `forked` are attempts that another station went on with apart from this one, `refused` those that the shared store
    cannot take: they stay here, and are told.
    """

    events: int
    waiting: int
    forked: tuple[str, ...] = ()
    refused: tuple[str, ...] = ()
    error: UserError | None = None


def whole_attempt(store: Store, row: AttemptRow) -> WholeAttempt:
    """Return an attempt with all its events."""
    events, links = store.logged(row.id)
    return WholeAttempt(row, tuple(events), tuple(links))


def undelivered(store: Store) -> list[tuple[AttemptRow, int]]:
    """Return attempts with events that the shared store has not confirmed, and how many those are."""
    held = func.count(event_table.c.id)
    sent = func.coalesce(delivery_table.c.events, 0)
    wanted = (
        select(attempt_table, (held - sent).label("waiting"))
        .join(event_table, event_table.c.attempt_id == attempt_table.c.id)
        .outerjoin(delivery_table, delivery_table.c.attempt_id == attempt_table.c.id)
        .group_by(*attempt_table.c, delivery_table.c.events)
        .having(held > sent)
        .order_by(attempt_table.c.started_at)
    )
    found = []
    with store.reading() as connection:
        for row in connection.execute(wanted).mappings():
            attempt = store.attempts([{name: row[name] for name in AttemptRow.__dataclass_fields__}])
            found += [(one, int(row["waiting"])) for one in attempt]
    return found


class Delivery:
    """The way from a station's store to the shared one at a URL; it works in a thread of its own once started.

    Raises WrongCallError for a URL that is none: it is told now, not when the lesson is over.
    """

    def __init__(self, local: Store, url: str) -> None:
        engine_for(url).dispose()
        self._local, self._url = local, url
        self._far: Store | None = None
        self._wake, self._stopping = threading.Event(), threading.Event()
        self._lock = threading.Lock()
        self._thread: threading.Thread | None = None
        self.latest = Delivered(0, 0)

    def start(self) -> None:
        """Deliver from now on whatever is written."""
        self._local.written = self._wake.set
        self._thread = threading.Thread(target=self._run, daemon=True, name="delivery")
        self._thread.start()

    def _run(self) -> None:
        while not self._stopping.is_set():
            self.latest = self.once()
            self._wake.wait(RETRY_S)
            self._wake.clear()

    def stop(self) -> Delivered:
        """Deliver once more, if the store answers soon, and end."""
        self._stopping.set()
        self._wake.set()
        if self._thread is not None:
            self._thread.join(2 * RETRY_S)
        if self._lock.acquire(timeout=RETRY_S):  # held by work on a server that went silent, it is not waited for
            try:
                self.latest = self._once()
                if self._far is not None:
                    self._far.close()
            finally:
                self._lock.release()
        return self.latest

    def once(self) -> Delivered:
        """Carry over everything that waits."""
        with self._lock:
            return self._once()

    def _once(self) -> Delivered:
        try:
            waiting = undelivered(self._local)
        except UserError as error:
            return Delivered(0, 0, error=error)
        left, carried = sum(count for _row, count in waiting), 0
        forked: list[str] = []
        refused: list[str] = []
        for row, count in waiting:
            try:
                self._carry(row)
                carried += count
            except ForkedError:
                forked.append(row.id)
            except IntegrityError:  # another station wrote the same attempt at the same moment: next round
                continue
            except (DataError, DamagedError):
                refused.append(row.id)
            except (DatabaseError, MissingHereError) as error:
                return Delivered(carried, left - carried, tuple(forked), tuple(refused), self._lost(error))
        return Delivered(carried, left - carried, tuple(forked), tuple(refused))

    def _carry(self, row: AttemptRow) -> None:
        whole = whole_attempt(self._local, row)
        with self._shared().engine.begin() as connection:
            merge_attempt(connection, whole)
        with self._local.writing() as connection:
            confirmed = {"events": len(whole.events)}
            done = connection.execute(
                update(delivery_table).where(delivery_table.c.attempt_id == row.id).values(confirmed)
            )
            if not done.rowcount:
                connection.execute(insert(delivery_table), {"attempt_id": row.id, **confirmed})

    def _shared(self) -> Store:
        if self._far is None:
            self._far = open_store_at(self._url, STATEMENT_TIMEOUT_S)
        return self._far

    def _lost(self, error: DatabaseError | MissingHereError) -> UserError:
        """Let go of a store that does not answer; the next round tries anew."""
        if self._far is not None:
            self._far.close()
            self._far = None
        return error if isinstance(error, MissingHereError) else user_error_of(error)

    def fetch(self, learner: str) -> UserError | None:
        """Bring a learner's attempts from the shared store here; return what kept it from that in time."""
        lost: list[UserError] = []

        def bring() -> None:
            try:
                self._bring(learner)
            except UserError as error:
                lost.append(error)
            except DatabaseError as error:
                lost.append(user_error_of(error))

        thread = threading.Thread(target=bring, daemon=True, name="fetch")
        thread.start()
        thread.join(FETCH_WAIT_S)
        return MissingHereError("store_away") if thread.is_alive() else next(iter(lost), None)

    def _bring(self, learner: str) -> None:
        with self._lock:
            far = self._shared()
            with far.reading() as connection:
                wanted = select(attempt_table).where(attempt_table.c.learner == learner)
                rows = far.attempts(connection.execute(wanted).mappings())
            for row in rows:
                with contextlib.suppress(ForkedError, DamagedError):
                    whole = whole_attempt(far, row)
                    with self._local.writing() as connection:
                        merge_attempt(connection, whole)
