"""The chain of a set's attempt: each event carries a link made from the one before it under the set's key.

Whoever has the key sees that an event was changed, left out, put in or moved. HMAC-SHA-256, RFC 2104.
"""

from __future__ import annotations

import hmac
import json
from collections.abc import Sequence
from dataclasses import asdict

from trainer.practice.attempt.event_json import parse_as
from trainer.practice.attempt.event_record import EventKind, EventRecord
from trainer.practice.attempt.events import Started
from trainer.records.store.log_rows import AttemptRow


def canonical(value: object) -> bytes:
    """Return plain data as canonical JSON: sorted keys, no spaces, one text for one value."""
    return json.dumps(value, sort_keys=True, ensure_ascii=True, separators=(",", ":")).encode("ascii")


def first_link(key: bytes, row: AttemptRow) -> str:
    """Return the link that an attempt's first event follows: what the attempt is about."""
    return hmac.digest(key, b"attempt" + canonical(asdict(row)), "sha256").hex()


def next_link(key: bytes, before: str, event: EventRecord) -> str:
    """Return the link of an event after the link before it."""
    told = [before, event.number, str(event.kind), event.at, event.data]
    return hmac.digest(key, b"event" + canonical(told), "sha256").hex()


def order_of(attempts: Sequence[tuple[Sequence[EventRecord], Sequence[str]]]) -> list[int] | None:
    """Return the places of a learner's attempts in the order they were begun, None where one is missing or cut short.

    Each tells in its first event the last link of the one before it; the latest one's own end nobody tells. Dates are
    not asked: a clock may have been set back in between.
    """
    try:
        following = {parse_as(events[0], Started).after: place for place, (events, _links) in enumerate(attempts)}
    except ValueError:
        return None
    order: list[int] = []
    ends: Sequence[str] = ("",)
    while (end := next((one for one in ends if one in following), None)) is not None:
        place = following.pop(end)
        order.append(place)
        ends = _ends(*attempts[place])
    return order if len(order) == len(attempts) else None


def _ends(events: Sequence[EventRecord], links: Sequence[str]) -> Sequence[str]:
    """Return the links that an attempt may have ended with: a look back can have come after the next one was begun."""
    looks = 0
    while looks < len(events) - 1 and events[-1 - looks].kind is EventKind.LOOKED_BACK:
        looks += 1
    return links[len(links) - 1 - looks :]


def broken_at(key: bytes, row: AttemptRow, events: Sequence[EventRecord], links: Sequence[str]) -> int | None:
    """Return the number of the first event that does not fit its chain, or None where all do."""
    link = first_link(key, row)
    for event, kept in zip(events, links, strict=True):
        link = next_link(key, link, event)
        if not hmac.compare_digest(link, kept):
            return event.number
    return None
