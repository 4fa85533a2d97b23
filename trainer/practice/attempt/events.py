"""The event log of an attempt: append-only, plain data, each event with the time it happened."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import Any


class EventKind(StrEnum):
    """What can happen in an attempt; `closed` and `voided` end it, `away` tells that the window was left.

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
    """Tell whether the date of an event (UTC, ISO 8601) contradicts the one before it, "" for none."""
    return bool(before) and datetime.fromisoformat(now) < datetime.fromisoformat(before) - SLACK


@dataclass(frozen=True, slots=True)
class Event:
    """One thing that happened: its place in the attempt's order, kind, time (UTC, ISO 8601) and plain data."""

    number: int
    kind: EventKind
    at: str
    data: dict[str, Any]
