"""The chain of a set's attempt: each event carries a link made from the one before it under the set's key.

Whoever has the key sees that an event was changed, left out, put in or moved. HMAC-SHA-256, RFC 2104.
"""

from __future__ import annotations

import hmac
import json
from collections.abc import Sequence
from dataclasses import asdict

from trainer.practice.events import Event
from trainer.records.store import AttemptRow


def canonical(value: object) -> bytes:
    """Return plain data as the one JSON text that stands for it."""
    return json.dumps(value, sort_keys=True, ensure_ascii=True, separators=(",", ":")).encode("ascii")


def first_link(key: bytes, row: AttemptRow) -> str:
    """Return the link that an attempt's first event follows: what the attempt is about."""
    return hmac.digest(key, b"attempt" + canonical(asdict(row)), "sha256").hex()


def next_link(key: bytes, before: str, happened: Event) -> str:
    """Return the link of an event after the link before it."""
    told = [before, happened.number, str(happened.kind), happened.at, happened.data]
    return hmac.digest(key, b"event" + canonical(told), "sha256").hex()


def gap_after(attempts: Sequence[tuple[Sequence[Event], Sequence[str]]]) -> bool:
    """Tell whether an attempt is missing between attempts in the order in which they were begun, or cut short.

    Each tells in its first event the last link of the one before it; the latest one's own end nobody tells.
    """
    before = ""
    for events, links in attempts:
        if events[0].data.get("after", "") != before:
            return True
        before = links[-1]
    return False


def broken_at(key: bytes, row: AttemptRow, events: Sequence[Event], links: Sequence[str]) -> int | None:
    """Return the number of the first event that does not fit its chain, or None where all do."""
    link = first_link(key, row)
    for event, kept in zip(events, links, strict=True):
        link = next_link(key, link, event)
        if not hmac.compare_digest(link, kept):
            return event.number
    return None
