"""Collect bundles from folders into a store, each once, and say what became of each."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from trainer.cases.files.plain_file import Unfit, UnfitFileError, files_in, read_plain
from trainer.records.store.bundle import (
    MOST_BYTES,
    SUFFIX,
    Bundle,
    BundleError,
    Fate,
    learner_claimed,
    read_bundle,
    salt_of,
)
from trainer.records.store.merging import ForkedError, merge_attempt
from trainer.records.store.store import Store
from trainer.sets.sealed import SetKey


@dataclass(frozen=True, slots=True)
class Collected:
    """One file and what became of it; of a file that is not taken, `learner` is only what it claims."""

    file: str
    fate: Fate
    learner: str = ""
    attempts: int = 0


def collect(store: Store, folders: Sequence[Path], set_id: str, keys: Sequence[SetKey]) -> list[Collected]:
    """Merge bundles into the store, from folders or named directly; nothing on the media is written.

    `keys` are those under which results of the set may be signed.
    """
    bundles, closed = files_in(folders, SUFFIX)
    unread = [Collected(error.problems[0].file, FATES[error.why]) for error in closed]
    return [*(_collected(store, path, set_id, keys) for path in bundles), *unread]


def salts_in(folders: Sequence[Path]) -> frozenset[bytes]:
    """Return the salts that bundles name, for which keys must be made from the passphrase."""
    salts = set()
    for path in files_in(folders, SUFFIX)[0]:
        with suppress(UnfitFileError):  # told when it is collected
            salts.add(salt_of(read_plain(path, MOST_BYTES)))
    return frozenset(salt for salt in salts if salt is not None)


FATES = {
    Unfit.MISSING: Fate.MISSING,
    Unfit.NOT_PLAIN: Fate.SPECIAL,
    Unfit.TOO_LARGE: Fate.UNREADABLE,  # larger than any bundle
    Unfit.UNREADABLE: Fate.CLOSED,
}


def _collected(store: Store, path: Path, set_id: str, keys: Sequence[SetKey]) -> Collected:
    try:
        content = read_plain(path, MOST_BYTES)
    except UnfitFileError as error:
        return Collected(str(path), FATES[error.why])
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
