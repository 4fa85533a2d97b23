"""Opens a set from its file, plain or sealed, and gives the keys under which its results may be signed."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path

from trainer.errors import WrongCallError
from trainer.sets.case_set import CaseSet, Mode
from trainer.sets.sealed import SetKey, is_sealed, key_of, open_key_of, salt_of_set, unseal
from trainer.sets.set_file import read_set


@dataclass(frozen=True)
class OpenedSet:
    """An opened set with the key that signs its attempts."""

    case_set: CaseSet
    key: SetKey
    sealed: bool


def open_set(path: Path, passphrase: Callable[[], str]) -> OpenedSet:
    """Open a set; calls `passphrase` only for a sealed one.

    Raises ProblemsFoundError for a faulty file and WrongCallError for a wrong passphrase or a changed file.
    """
    if is_sealed(path):
        case_set, key = unseal(path, passphrase())
        return OpenedSet(case_set, key, sealed=True)
    case_set = read_set(path)
    return OpenedSet(case_set, open_key_of(case_set.pack), sealed=False)


def keys_of(opened: OpenedSet, passphrase: Callable[[], str], salts: Iterable[bytes]) -> tuple[SetKey, ...]:
    """Return the keys under which results of a set may be signed; calls `passphrase` only where it is needed."""
    exam = opened.case_set.policy.mode is Mode.EXAM
    open_keys = () if exam else (open_key_of(opened.case_set.pack),)
    if opened.sealed:
        return (opened.key, *open_keys)
    if needs_passphrase(opened, salts):
        return (key_of(passphrase(), salt_of_set(opened.case_set)), *open_keys)
    return open_keys


def needs_passphrase(opened: OpenedSet, salts: Iterable[bytes]) -> bool:
    """Return whether results with these salts need the passphrase: always for an exam, else if it was used."""
    if opened.sealed:
        return False
    return opened.case_set.policy.mode is Mode.EXAM or salt_of_set(opened.case_set) in set(salts)


def refuse_open_exam(opened: OpenedSet, file: str) -> None:
    """Raise WrongCallError for an exam that is not sealed, so that anybody could read its answers."""
    if opened.case_set.policy.mode is Mode.EXAM and not opened.sealed:
        raise WrongCallError("exam_not_sealed", file=file)
