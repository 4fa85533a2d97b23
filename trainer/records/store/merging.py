"""Merges attempts from elsewhere into a store: what is there stays, what is missing is added, nothing twice."""

from __future__ import annotations

from dataclasses import asdict, dataclass

from sqlalchemy import Connection, insert, select

from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.records.store.log_rows import AttemptRow, row_of
from trainer.records.store.store import ENDS
from trainer.records.store.tables import attempt_table, event_table


@dataclass(frozen=True, slots=True)
class WholeAttempt:
    """One attempt with its events and their links."""

    row: AttemptRow
    events: tuple[EventRecord, ...]
    links: tuple[str, ...]


class ForkedError(Exception):
    """Raised where an attempt is another here than there: what it is about, an event, or what follows its end."""


def merge_attempt(connection: Connection, attempt: WholeAttempt) -> bool:
    """Add what a store lacks of an attempt; tell whether anything was; raises ForkedError where both went on apart."""
    row_id = attempt.row.id
    known = connection.execute(select(attempt_table).where(attempt_table.c.id == row_id)).first()
    if known is not None and AttemptRow(**known._mapping) != attempt.row:
        raise ForkedError(row_id)
    columns = event_table.c
    wanted = select(columns.number, columns.kind, columns.at, columns.data, columns.link)
    have = {row.number: row for row in connection.execute(wanted.where(columns.attempt_id == row_id))}
    fresh = []
    for event, link in zip(attempt.events, attempt.links, strict=True):
        told = row_of(row_id, event, link)
        there = have.get(event.number)
        if there is None:
            fresh.append(told)
        elif any(getattr(there, name) != told[name] for name in ("kind", "at", "data", "link")):
            raise ForkedError(row_id)
    working = any(told["kind"] != EventKind.LOOKED_BACK for told in fresh)
    if working and any(row.kind in ENDS for row in have.values()):
        raise ForkedError(row_id)  # no work follows an end
    if known is None:
        connection.execute(insert(attempt_table), asdict(attempt.row))
    if fresh:
        connection.execute(insert(event_table), fresh)
    return bool(fresh) or known is None
