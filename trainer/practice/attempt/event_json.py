"""The one adapter between events and the JSON of their records.

A record of any earlier version is parsed; what a later version adds to an event is ignored. The JSON of an outcome lies
flat in the event that closes an attempt.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import fields, replace
from typing import Annotated, TypeVar

from pydantic import Field, JsonValue, TypeAdapter

from trainer.instruments.measuring import Request
from trainer.practice.attempt import events
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.practice.attempt.events import Closed, Event
from trainer.practice.attempt.field_types import Names, nested_work
from trainer.practice.attempt.outcome import Outcome

AnEvent = TypeVar("AnEvent", bound=Event)

_WORKED = Annotated[
    events.Provoked | events.Swapped | events.Substituted | events.GaveBack | events.Looked, Field(discriminator="did")
]
_OTHERS = (
    events.Started, events.Heard, events.CodesRead, events.Measured, events.Suspected, events.Hinted, events.Found,
    events.Repaired, events.Retested, events.Closed, events.Resumed, events.Away, events.Voided, events.LookedBack,
    events.ClockBack, events.Unguarded,
)  # fmt: skip
_ADAPTERS: Mapping[EventKind, TypeAdapter[Event]] = {
    EventKind.WORKED: TypeAdapter(_WORKED),
    **{one.kind: TypeAdapter(one) for one in _OTHERS},
}
_OUTCOME = TypeAdapter(Outcome)
_ASKED = {field.name for field in fields(Request)}
_ALWAYS = ("did", "what")
"""Always written; any other field is left out where it holds its default."""


def parse_event(record: EventRecord, names: Names | None = None) -> Event:
    """Return the event of a record; `names` are those of its engine, without which nothing done there is parsed.

    Raises ValueError for data that are not those of the record's kind.
    """
    data = dict(record.data)
    if "work" in data:
        data["work"] = nested_work(data["work"])
    request = data.get("request", {})
    if not isinstance(request, dict) or not set(request) <= _ASKED:
        raise ValueError("a measurement that this version does not know")
    event = _ADAPTERS[record.kind].validate_json(json.dumps(data), strict=True, context=names)
    return replace(event, outcome=_readable_outcome(data)) if isinstance(event, Closed) else event


def parse_as(record: EventRecord, kind: type[AnEvent], names: Names | None = None) -> AnEvent:
    """Return the event of a record that must be of one class; raises ValueError for any other."""
    event = parse_event(record, names)
    if not isinstance(event, kind):
        raise ValueError(f"not an event of the kind {kind.kind}")
    return event


def closed_from(data: Mapping[str, JsonValue]) -> Closed:
    """Return the event that closed an attempt from its data alone; raises ValueError for data that are not of one."""
    return parse_as(EventRecord(1, EventKind.CLOSED, "", data), Closed)


def record_of(event: Event, number: int, at: str) -> EventRecord:
    """Return the record of an event, with its number in the attempt and its time (UTC, ISO 8601)."""
    data: dict[str, JsonValue] = _ADAPTERS[event.kind].dump_python(event, mode="json", by_alias=True)
    for field in fields(event):
        if field.name not in _ALWAYS and field.default == getattr(event, field.name):
            data.pop(field.name, None)
    outcome = data.pop("outcome", None)
    return EventRecord(number, event.kind, at, {**data, **outcome} if isinstance(outcome, dict) else data)


def outcome_json(outcome: Outcome) -> dict[str, JsonValue]:
    """Return an outcome as JSON."""
    data: dict[str, JsonValue] = _OUTCOME.dump_python(outcome, mode="json")
    return data


def _readable_outcome(data: Mapping[str, JsonValue]) -> Outcome | None:
    """Return the outcome in the data of a closing event, None where there is none that this version can read."""
    if "points" not in data:
        return None
    try:
        return _OUTCOME.validate_json(json.dumps(data), strict=True)
    except ValueError:
        return None
