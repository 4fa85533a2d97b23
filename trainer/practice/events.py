"""The event log of an attempt: append-only, plain data, each event with the time it happened."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Any


class EventKind(StrEnum):
    """What can happen in an attempt; `closed` and `voided` end it, `away` tells that the window was left."""

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


@dataclass(frozen=True, slots=True)
class Event:
    """One thing that happened: its place in the attempt's order, kind, time (UTC, ISO 8601) and plain data."""

    number: int
    kind: EventKind
    at: str
    data: dict[str, Any]
