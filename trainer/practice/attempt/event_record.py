"""The record that a log keeps of an event: append-only, plain JSON, each with the time it happened."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from pydantic import JsonValue


class EventKind(StrEnum):
    """What can happen in an attempt; `closed` and `voided` end it, `away` says that the window was left.

    In a set: `looked_back`, at the debrief of any of its cases, is the one kind that may follow an end; `clock_back`,
    the computer's date went back; `unguarded`, other programs can reach this exam.
    """

    STARTED = "started"
    HEARD = "heard"
    CODES_READ = "codes_read"
    MEASURED = "measured"
    WORKED = "worked"
    SUSPECTED = "suspected"
    HINTED = "hinted"
    FOUND = "found"
    REPAIRED = "repaired"
    RETESTED = "retested"
    CLOSED = "closed"
    RESUMED = "resumed"
    AWAY = "away"
    VOIDED = "voided"
    LOOKED_BACK = "looked_back"
    CLOCK_BACK = "clock_back"
    UNGUARDED = "unguarded"


SLACK = timedelta(minutes=1)
"""A clock that goes back by no more is one that a time server puts right."""


def went_back(before: str, now: str) -> bool:
    """Return whether the date of an event (UTC, ISO 8601) contradicts the one before it, "" for none."""
    return bool(before) and datetime.fromisoformat(now) < datetime.fromisoformat(before) - SLACK


@dataclass(frozen=True, slots=True)
class EventRecord:
    """One event as stores, bundles and exports keep it: its number from 1, kind, time (UTC, ISO 8601) and data.

    `trainer.practice.attempt.event_json` parses the data into the event's class and serializes it back.
    """

    number: int
    kind: EventKind
    at: str
    data: Mapping[str, JsonValue]

    @property
    def spent_s(self) -> float:
        """The real seconds since the event before, where a set records them."""
        spent_s = self.data.get("spent_s")
        return float(spent_s) if isinstance(spent_s, int | float) else 0.0
