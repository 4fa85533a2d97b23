"""Attempts as lines of JSON, as bundles and learners' records carry them: each attempt followed by its events."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Sequence
from dataclasses import asdict
from datetime import datetime
from typing import Any

from pydantic import TypeAdapter

from trainer.practice.events import Event, EventKind
from trainer.records.chain import canonical
from trainer.records.merging import WholeAttempt
from trainer.records.store import AttemptRow

ROWS = TypeAdapter(AttemptRow)
MOST_NUMBER = 2**31
"""What a whole number in a store stays under."""

LONGEST = 500
"""No text of an attempt's row is longer."""

HALF_LETTER = re.compile(rb"\\u[dD][89a-fA-F]")

UNFIT = (KeyError, TypeError, ValueError, AttributeError, OverflowError, RecursionError)
"""What reading raises for lines that are no attempts."""


def attempt_lines(row: AttemptRow, events: Sequence[Event], links: Sequence[str]) -> list[bytes]:
    """Return an attempt as lines."""
    told = [
        {"number": event.number, "kind": str(event.kind), "at": event.at, "data": event.data, "link": link}
        for event, link in zip(events, links, strict=True)
    ]
    return [canonical(one) for one in ({"attempt": asdict(row)}, *told)]


def attempts_in(lines: Iterable[bytes]) -> list[WholeAttempt]:
    """Return the attempts that lines hold; raises one of UNFIT for lines that hold none, or what no store can."""
    found: list[tuple[AttemptRow, list[Event], list[str]]] = []
    for line in lines:
        told = json.loads(line)
        if HALF_LETTER.search(line):
            json.dumps(told, ensure_ascii=False).encode("utf-8")  # raises for half of a letter, which no store takes
        if "attempt" in told:
            found.append((_row(told["attempt"]), [], []))
        elif not found:
            raise ValueError("an event without its attempt")
        else:
            found[-1][1].append(_event(told))
            found[-1][2].append(str(told["link"]))
    return [WholeAttempt(row, tuple(events), tuple(links)) for row, events, links in found]


def _row(told: dict[str, Any]) -> AttemptRow:
    if told.keys() != AttemptRow.__dataclass_fields__.keys():
        raise ValueError("fields of an attempt")
    row: AttemptRow = ROWS.validate_json(json.dumps(told), strict=True)
    if any(isinstance(one, int) and abs(one) >= MOST_NUMBER for one in told.values()):
        raise ValueError("a number out of range")
    if any(isinstance(one, str) and len(one) > LONGEST for one in told.values()):
        raise ValueError("a text out of range")
    datetime.fromisoformat(row.started_at)
    return row


def _event(told: dict[str, Any]) -> Event:
    if not isinstance(told["data"], dict) or type(told["number"]) is not int:
        raise TypeError("data of an event")
    datetime.fromisoformat(told["at"])
    return Event(told["number"], EventKind(told["kind"]), told["at"], told["data"])
