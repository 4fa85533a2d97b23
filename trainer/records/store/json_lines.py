"""Encode attempts as lines of JSON for bundles and learners' records: each attempt followed by its events."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import asdict

from pydantic import JsonValue

from trainer.practice.attempt.event_record import EventRecord
from trainer.records.store.chain import canonical
from trainer.records.store.log_rows import AttemptRow, attempt_of, data_of, event_from
from trainer.records.store.merging import WholeAttempt

LONGEST = 500
"""No text of an attempt's row is longer."""


def attempt_lines(row: AttemptRow, events: Sequence[EventRecord], links: Sequence[str]) -> list[bytes]:
    """Return an attempt as lines."""
    parsed = [
        {"number": event.number, "kind": str(event.kind), "at": event.at, "data": event.data, "link": link}
        for event, link in zip(events, links, strict=True)
    ]
    return [canonical(one) for one in ({"attempt": asdict(row)}, *parsed)]


def attempts_in(lines: Iterable[bytes]) -> list[WholeAttempt]:
    """Return the attempts that lines hold; raises one of UNFIT for lines that hold none, or what no store can."""
    found: list[tuple[AttemptRow, list[EventRecord], list[str]]] = []
    for line in lines:
        parsed = data_of(line.decode("utf-8"))
        if "attempt" in parsed:
            found.append((_row(parsed["attempt"]), [], []))
        elif not found:
            raise ValueError("an event without its attempt")
        else:
            found[-1][1].append(event_from(parsed["number"], parsed["kind"], parsed["at"], parsed["data"]))
            found[-1][2].append(_link(parsed["link"]))
    return [WholeAttempt(row, tuple(events), tuple(links)) for row, events, links in found]


def _row(parsed: JsonValue) -> AttemptRow:
    if not isinstance(parsed, dict):
        raise TypeError("no row of an attempt")
    row = attempt_of(parsed)
    if any(isinstance(one, str) and len(one) > LONGEST for one in parsed.values()):
        raise ValueError("a text out of range")
    return row


def _link(parsed: JsonValue) -> str:
    if not isinstance(parsed, str) or not parsed.isascii() or len(parsed) > LONGEST:
        raise ValueError("a link that is none")
    return parsed
