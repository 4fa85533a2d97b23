"""Collects bundles from folders into a store: each once, each told with what became of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from trainer.cases.sealed_set import SetKey
from trainer.records.bundle import MOST_BYTES, SUFFIX, Bundle, BundleError, Fate, learner_claimed, read_bundle, salt_of
from trainer.records.merging import ForkedError, merge_attempt
from trainer.records.store import Store


@dataclass(frozen=True, slots=True)
class Collected:
    """One file and what became of it; of a file that is not taken, `learner` is only what it claims."""

    file: str
    fate: Fate
    learner: str = ""
    attempts: int = 0


def bundles_in(folders: Sequence[Path]) -> Iterator[Path]:
    """Yield every bundle under folders, or files named directly, in a fixed order."""
    for folder in folders:
        if folder.is_dir():
            yield from sorted(path for path in folder.rglob(f"*{SUFFIX}") if path.is_file())
        else:
            yield folder


def collect(store: Store, folders: Sequence[Path], set_id: str, keys: Sequence[SetKey]) -> list[Collected]:
    """Merge bundles into the store; nothing on the media is written.

    `keys` are those under which results of the set may be signed.
    """
    return [_collected(store, path, set_id, keys) for path in bundles_in(folders)]


def salts_in(folders: Sequence[Path]) -> frozenset[bytes]:
    """Return the salts that bundles name, for which keys must be made from the passphrase."""
    salts = (salt_of(content) for path in bundles_in(folders) if (content := _content(path)) is not None)
    return frozenset(salt for salt in salts if salt is not None)


def _content(path: Path) -> bytes | None:
    try:
        return path.read_bytes() if path.stat().st_size <= MOST_BYTES else None
    except OSError:
        return None


def _collected(store: Store, path: Path, set_id: str, keys: Sequence[SetKey]) -> Collected:
    if not path.exists():
        return Collected(str(path), Fate.MISSING)
    content = _content(path)
    if content is None:
        return Collected(str(path), Fate.UNREADABLE)
    salt = salt_of(content)
    key = next((one for one in keys if one.salt == salt), keys[0])
    try:
        bundle = read_bundle(content, set_id, key)
        added = _merge(store, bundle)
    except BundleError as error:
        return Collected(str(path), error.fate, learner_claimed(content))
    return Collected(str(path), Fate.NEW if added else Fate.KNOWN, bundle.learner, len(bundle.attempts))


def _merge(store: Store, bundle: Bundle) -> bool:
    """Add what is not there yet, all in one transaction; tell whether anything was added."""
    try:
        with store.writing() as connection:
            added = [merge_attempt(connection, attempt) for attempt in bundle.attempts]
    except ForkedError as error:
        raise BundleError(Fate.ALTERED) from error
    store.written()
    return any(added)
