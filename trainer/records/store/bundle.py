"""A results bundle: what one learner did in one set on one machine, in one signed file.

Lines of JSON: a head, then each attempt followed by its events, then the seal over every byte before it.
"""

from __future__ import annotations

import hmac
import json
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import Any

from trainer.cases.files.whole_file import write_bytes
from trainer.practice.attempt.event_record import EventRecord
from trainer.records.store.chain import broken_at, canonical, order_of
from trainer.records.store.json_lines import attempt_lines, attempts_in
from trainer.records.store.log_rows import UNFIT, AttemptRow
from trainer.records.store.merging import WholeAttempt
from trainer.records.store.store import Store
from trainer.sets.sealed import SetKey

FORM = "results/1"
BEGINS = b'{"form":"results/1",'
SUFFIX = ".results"
MOST_BYTES = 64_000_000
SEAL_CHARACTERS = 64


class Fate(StrEnum):
    """What became of a bundle at collecting."""

    NEW = "new"
    KNOWN = "already_there"
    CUT_SHORT = "cut_short"
    ALTERED = "altered"
    WRONG_KEY = "wrong_key"
    OTHER_SET = "other_set"
    UNREADABLE = "unreadable"
    SPECIAL = "special"
    CLOSED = "closed"
    MISSING = "missing"


@dataclass(frozen=True, slots=True)
class Bundle:
    """The content of a bundle whose seal held."""

    learner: str
    set_id: str
    attempts: tuple[WholeAttempt, ...]


class BundleError(Exception):
    """Raised for a bundle that is not taken; `fate` says why."""

    def __init__(self, fate: Fate) -> None:
        super().__init__(fate)
        self.fate = fate


def bundle_bytes(store: Store, set_id: str, set_name: str, learner: str, key: SetKey, made_at: str) -> bytes:
    """Return a learner's attempts in a set as a bundle."""
    head = {
        "form": FORM, "set_id": set_id, "set_name": set_name, "learner": learner, "store_id": store.id,
        "made_at": made_at, "salt": key.salt.hex(), "mark": key.mark,
    }  # fmt: skip
    lines = [canonical(head)]
    for row in store.in_set(set_id, learner):
        lines += attempt_lines(row, *store.logged(row.id))
    body = b"\n".join(lines) + b"\n"
    return body + canonical({"seal": _seal(key, body)}) + b"\n"


def _seal(key: SetKey, body: bytes) -> str:
    return hmac.digest(key.derived("bundle"), body, "sha256").hex()


def bundle_name(set_name: str, learner: str, store_id: str) -> str:
    """Return a bundle's file name: no name of a person in it, one for each learner, set and machine."""
    who = hmac.digest(store_id.encode("ascii"), learner.encode("utf-8"), "sha256").hex()[:12]
    return f"{set_name}_{who}{SUFFIX}"


def write_bundle(
    store: Store, folder: Path, set_id: str, set_name: str, learner: str, key: SetKey, made_at: str
) -> Path:
    """Write a learner's bundle into a folder; raises MissingHereError where that cannot be."""
    path = folder / bundle_name(set_name, learner, store.id)
    write_bytes(path, bundle_bytes(store, set_id, set_name, learner, key, made_at), make_folder=True)
    return path


def learner_claimed(content: bytes) -> str:
    """Return whose results a bundle says it holds, "" for none; nothing of it is proved."""
    try:
        return str(json.loads(content.split(b"\n", 1)[0])["learner"])[:200]
    except (ValueError, KeyError, TypeError, RecursionError):
        return ""


def salt_of(content: bytes) -> bytes | None:
    """Return the salt that a bundle's head names, None for none: its key is made from the passphrase with it."""
    try:
        return bytes.fromhex(json.loads(content.split(b"\n", 1)[0])["salt"])
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return None


def read_bundle(content: bytes, set_id: str, key: SetKey) -> Bundle:
    """Return what a bundle holds; raises BundleError where a single byte is not as it was written."""
    if not content or len(content) > MOST_BYTES:
        raise BundleError(Fate.CUT_SHORT if not content else Fate.UNREADABLE)
    beginning = content[: len(BEGINS)]
    if not BEGINS.startswith(beginning) or (len(content) > len(BEGINS) and beginning != BEGINS):
        raise BundleError(Fate.UNREADABLE)
    body, seal = _parted(content)
    head = _line(body.split(b"\n", 1)[0])
    if head.get("form") != FORM:
        raise BundleError(Fate.UNREADABLE)
    if not hmac.compare_digest(seal, canonical({"seal": _seal(key, body)})):
        if head.get("set_id") != set_id:
            raise BundleError(Fate.OTHER_SET)
        raise BundleError(Fate.ALTERED if _is_ours(body, head, key) else Fate.WRONG_KEY)
    if head["set_id"] != set_id:
        raise BundleError(Fate.OTHER_SET)
    attempts = tuple(_attempts(body, head, key))
    return Bundle(head["learner"], head["set_id"], attempts)


def _is_ours(body: bytes, head: dict[str, Any], key: SetKey) -> bool:
    """Tell whether a bundle whose seal is broken was made under a key: by its mark, or by a chain that still holds."""
    if head.get("mark") == key.mark:
        return True
    try:
        _attempts(body, head, key)
    except BundleError:
        return False
    return True


def _parted(content: bytes) -> tuple[bytes, bytes]:
    """Return what is sealed and the line of the seal; raises BundleError where the end is missing."""
    before = content.rfind(b"\n", 0, len(content) - 1)
    last = content[before + 1 :]
    length = len(canonical({"seal": "0" * SEAL_CHARACTERS})) + 1
    if before < 0 or not content.endswith(b"\n") or len(last) < length or b'"seal"' not in last:
        looks_whole = len(last) == length
        raise BundleError(Fate.ALTERED if looks_whole else Fate.CUT_SHORT)
    return content[: before + 1], last[:-1]


def _line(line: bytes) -> dict[str, Any]:
    try:
        value = json.loads(line)
    except (ValueError, RecursionError) as error:
        raise BundleError(Fate.UNREADABLE) from error
    if not isinstance(value, dict):
        raise BundleError(Fate.UNREADABLE)
    return value


def _attempts(body: bytes, head: dict[str, Any], key: SetKey) -> list[WholeAttempt]:
    """Return the attempts; one whose chain does not hold was changed before it was bundled."""
    try:
        attempts = attempts_in(body.split(b"\n")[1:-1])
    except UNFIT as error:
        raise BundleError(Fate.UNREADABLE) from error
    chain_key = key.derived("chain")
    for one in attempts:
        other = (one.row.learner, one.row.set_id) != (head["learner"], head["set_id"])
        if other or _broken(chain_key, one.row, one.events, one.links):
            raise BundleError(Fate.ALTERED)
    if order_of([(one.events, one.links) for one in attempts]) is None:
        raise BundleError(Fate.ALTERED)
    return attempts


def _broken(key: bytes, row: AttemptRow, events: Sequence[EventRecord], links: Sequence[str]) -> bool:
    return not events or broken_at(key, row, events, links) is not None
