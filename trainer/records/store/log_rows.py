"""Attempts and events as rows and as values: what comes in is checked here, wherever it comes from."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from pydantic import JsonValue

from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.records.store.row_types import row_model
from trainer.records.store.tables import attempt_table, event_table


@dataclass(frozen=True, slots=True)
class AttemptRow:
    """What an attempt is about; `case_name` is what was asked for.

    `case_source` is `shipped`, `file`, `code`, `set` or `exercise`.

    In a set `item` is the case's index from 1, `redraw` how often it was voided before, `model` the version of the
    model. An attempt of a sealed set holds no seed, and digests that only the set's key can make.
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


Row = Mapping[Any, Any]
"""A row as the database gives it: values by the names of its columns."""

UNFIT = (KeyError, TypeError, ValueError, AttributeError, OverflowError, RecursionError)
"""What checking raises for rows that are no attempts or events; pydantic's errors are ValueErrors."""

_ATTEMPT, _EVENT = row_model(attempt_table), row_model(event_table)
_HALF_LETTER = re.compile(r"\\u[dD][89a-fA-F]")


def attempt_of(row: Row) -> AttemptRow:
    """Return the attempt that a row is; raises one of UNFIT for a row that is none."""
    _ATTEMPT.model_validate(dict(row))
    datetime.fromisoformat(row["started_at"])
    return AttemptRow(**row)


def event_of(row: Row) -> EventRecord:
    """Return the event that a row is, its data written as JSON; raises one of UNFIT for a row that is none."""
    _EVENT.model_validate(dict(row))
    if not row["link"].isascii():
        raise ValueError("a link that is none")
    return event_from(row["number"], row["kind"], row["at"], data_of(row["data"]))


def event_from(number: Any, kind: Any, at: Any, data: Any) -> EventRecord:
    """Return an event of plain values; raises one of UNFIT for values that are none.

    `spent_s` and `minutes` are checked here because they are summed without regard to what the event is.
    """
    if type(number) is not int or number < 1 or not isinstance(data, dict):
        raise ValueError("no event")
    datetime.fromisoformat(at)
    for name in ("spent_s", "minutes"):
        amount = data.get(name, 0.0)
        if not math.isfinite(amount) or amount < 0.0:
            raise ValueError(f"{name} is no amount")
    return EventRecord(number, EventKind(kind), at, data)


def data_of(written: str) -> dict[str, JsonValue]:
    """Return the data of an event; raises one of UNFIT for text that holds none, or what no store can keep."""
    data: object = json.loads(written, parse_constant=_refuse_constant, parse_float=_finite)
    if not isinstance(data, dict):
        raise TypeError("data of an event")
    if _HALF_LETTER.search(written):
        json.dumps(data, ensure_ascii=False).encode("utf-8")  # raises for half of a letter, which no store takes
    return data


def _refuse_constant(name: str) -> None:
    raise ValueError(f"{name} is no JSON")


def _finite(written: str) -> float:
    number = float(written)
    if not math.isfinite(number):
        raise ValueError("a number beyond all numbers")
    return number


def row_of(attempt_id: str, event: EventRecord, link: str = "") -> dict[str, object]:
    """Return an event as its row."""
    return {
        "attempt_id": attempt_id,
        "number": event.number,
        "kind": event.kind.value,
        "at": event.at,
        "data": json.dumps(event.data, sort_keys=True),
        "link": link,
    }
