"""Irregularities of an exam that an instructor settles with a learner: contradictory dates, looks back, an open exam.

Stations record them as events; marking adds a note for each to the set, and the report lists the notes.
"""

from __future__ import annotations

import contextlib
import uuid
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from sqlalchemy import ColumnElement, insert, or_, select

from trainer.errors import DamagedError
from trainer.practice.attempt.event_json import parse_as, parse_event
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.practice.attempt.events import ClockBack, LookedBack, Started, Unguarded
from trainer.records.class_report.results import StoredSet, without
from trainer.records.class_report.roster import roster
from trainer.records.store.log_rows import UNFIT, data_of
from trainer.records.store.row_types import typed
from trainer.records.store.store import Store
from trainer.records.store.tables import SETTLE, attempt_table, event_table, note_table, result_table
from trainer.sets.case_set import CaseSet, Mode
from trainer.words import has, text

AHEAD = timedelta(minutes=10)
"""How far a station's clock may be ahead of the instructor's before the report says so."""

MOST_SHOWN = 200
KINDS = [EventKind.LOOKED_BACK.value, EventKind.CLOCK_BACK.value, EventKind.UNGUARDED.value]


@dataclass(frozen=True, slots=True)
class _CandidateEvent:
    """An event that may be an irregularity, with its attempt."""

    attempt_id: str
    learner: str
    item: int
    try_number: int
    number: int
    at: str
    noted: LookedBack | ClockBack | Unguarded | None


def add_irregularity_notes(store: Store, case_set: CaseSet) -> int:
    """Add a note for each new irregularity of an exam; return how many notes there are."""
    if case_set.policy.mode is not Mode.EXAM:
        return 0
    rows = {row["id"]: row for row in _note_rows(store, case_set)}
    here = note_table.c.set_id == case_set.id, note_table.c.kind == SETTLE
    with store.writing() as connection:
        known = set(connection.execute(select(note_table.c.id).where(*here)).scalars())
        fresh = [row for name, row in rows.items() if name not in known]
        if fresh:
            connection.execute(insert(note_table), fresh)
    return len(known) + len(fresh)


def _note_rows(store: Store, case_set: CaseSet) -> Iterator[dict[str, str | int]]:
    for one in _candidate_events(store, case_set):
        note = _note_text(store, case_set, one)
        if not note:
            continue
        # one note a learner for an exam that others could reach, one an attempt for a date before the opening
        about = {"unguarded": one.learner, "before_opening": one.attempt_id}.get(note, f"{one.attempt_id} {one.number}")
        name = uuid.uuid5(uuid.NAMESPACE_OID, f"{case_set.id} {note} {about}")
        yield {
            "id": str(name), "at": one.at, "kind": SETTLE, "set_id": case_set.id, "learner": one.learner,
            "item": one.item, "text": note,
        }  # fmt: skip


def _candidate_events(store: Store, case_set: CaseSet) -> list[_CandidateEvent]:
    """Return every event of a set that may be an irregularity, in the order of storing."""
    attempt, event = attempt_table.c, event_table.c
    wanted: ColumnElement[bool] = event.kind.in_(KINDS)
    opens = case_set.policy.opens
    if opens is not None:
        wanted = or_(wanted, event.at < opens.astimezone(UTC).isoformat(timespec="milliseconds"))
    query = (
        select(
            event.attempt_id, attempt.learner, attempt.item, attempt.try_number, event.number, event.at,
            event.kind, event.data,
        )
        .join(attempt_table, attempt.id == event.attempt_id)
        .where(attempt.set_id == case_set.id, wanted, typed(attempt_table), typed(event_table))
        .order_by(event.id)
    )  # fmt: skip
    found = []
    with store.reading() as connection:
        for row in connection.execute(query):
            with contextlib.suppress(*UNFIT):  # a damaged event is told where its attempt is marked
                found.append(_CandidateEvent(*row[:-2], _noted(row.kind, row.at, row.data)))
    return found


def _noted(kind: str, at: str, written: str) -> LookedBack | ClockBack | Unguarded | None:
    """Return an irregularity that the station noted itself, None for another event; raises one of UNFIT."""
    if kind not in KINDS:
        return None
    event = parse_event(EventRecord(1, EventKind(kind), at, data_of(written)))
    assert isinstance(event, LookedBack | ClockBack | Unguarded)  # the classes of those kinds
    return event


def _note_text(store: Store, case_set: CaseSet, one: _CandidateEvent) -> str:
    """Return the text of a note on an event, "" for one that needs none."""
    match one.noted:
        case LookedBack(left=left):
            return "looked_back" if left and _worked_on(store, case_set, one) else ""
        case ClockBack(before=before):
            return f"clock_back {before[:40]}"
        case Unguarded():
            return "unguarded"
    return "before_opening"


def _worked_on(store: Store, case_set: CaseSet, look: _CandidateEvent) -> bool:
    """Tell whether the learner worked on in the same try after a look at a debrief."""
    try:
        events, links = store.logged(look.attempt_id)
        if any(event.number > look.number and event.kind is not EventKind.LOOKED_BACK for event in events):
            return True
        since = links[look.number - 1 :]
        others = [row for row in store.in_set(case_set.id, look.learner) if row.try_number == look.try_number]
        return any(parse_as(store.events(row.id)[0], Started).after in since for row in others)
    except (DamagedError, ValueError):  # that cannot be told any more, so it is to be settled
        return True


def irregularity_lines(store: Store, stored: StoredSet, now: str) -> list[str]:
    """Return the irregularities of a set in words, with dates later than `now` (UTC, ISO 8601) among them."""
    columns = (note_table.c.learner, note_table.c.item, note_table.c.at, note_table.c.text)
    notes = select(*columns).where(note_table.c.set_id == stored.id, note_table.c.kind == SETTLE, typed(note_table))
    result = result_table.c
    latest = (datetime.fromisoformat(now).replace(tzinfo=UTC) + AHEAD).isoformat(timespec="milliseconds")
    ahead = select(result.learner, result.item, result.closed_at).where(
        result.set_id == stored.id, result.closed_at > latest, without(stored.damaged)
    )
    named = {learner: person.name or learner for learner, person in roster(store).items()}
    with store.reading() as connection:
        rows = list(connection.execute(notes.order_by(columns[0], columns[2], columns[1], columns[3])))
        late = list(connection.execute(ahead.order_by(result.learner, result.item)))
    lines: list[str] = []
    unguarded: list[str] = []
    for learner, item, at, note in rows:
        key, _space, before = note.partition(" ")
        who = named.get(learner, learner)
        if key == "unguarded":
            unguarded.append(who)
        elif has(f"settle.{key}"):
            lines.append(text(f"settle.{key}", who=who, item=item, at=_moment(at), before=_moment(before)))
    lines += [
        text("settle.ahead", who=named.get(learner, learner), item=item, at=_moment(at)) for learner, item, at in late
    ]
    if unguarded:
        lines.append(text("settle.unguarded", n=len(unguarded), who=", ".join(unguarded[:MOST_SHOWN])))
    return lines[:MOST_SHOWN]


def _moment(at: str) -> str:
    return at[:16].replace("T", " ")
