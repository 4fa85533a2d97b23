"""Opens files named by a person: plain files only, without blocking, and at most a limited number of bytes."""

from __future__ import annotations

import os
import stat
from collections.abc import Callable, Iterable
from enum import StrEnum
from pathlib import Path
from typing import BinaryIO

from trainer.errors import THE_FILE, THE_FOLDER, Problem, ProblemsFoundError, Said, Sentence

OPENING = os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_CLOEXEC", 0) | getattr(os, "O_BINARY", 0)
"""Windows has no O_NONBLOCK, and no pipe there has a name of a plain file; only Windows has O_BINARY."""

MOST_IN_FOLDER = 20_000
"""How many files and folders are looked through under one: whoever names more has named the wrong one."""


class Unfit(StrEnum):
    """Why a file cannot be read."""

    MISSING = "missing"
    NOT_PLAIN = "not_plain"
    TOO_LARGE = "too_large"
    UNREADABLE = "unreadable"
    NOT_TEXT = "not_text"


class UnfitFileError(ProblemsFoundError):
    """Raised for a file that cannot be read; `why` is for callers that treat one reason apart."""

    def __init__(self, problem: Problem, why: Unfit) -> None:
        super().__init__([problem])
        self.why = why

    def __reduce__(self) -> tuple[type[UnfitFileError], tuple[Problem, Unfit]]:
        """Make the error picklable, so that it can pass between processes."""
        return type(self), (self.problems[0], self.why)


def open_plain(path: Path) -> BinaryIO:
    """Return an open binary file; raises UnfitFileError for anything but a plain file that can be read.

    Checks the file before opening it, because opening a device can already act on it, and again afterwards, because the
    file may have been replaced in between.
    """
    try:
        refuse_special(path, path.stat().st_mode)
        descriptor = os.open(path, OPENING)
        try:
            refuse_special(path, os.fstat(descriptor).st_mode)
            return os.fdopen(descriptor, "rb")
        except BaseException:
            os.close(descriptor)
            raise
    except (OSError, ValueError) as error:  # ValueError: a name that no file can have
        raise _unreadable(path, error) from error


def read_plain(path: Path, most_bytes: int) -> bytes:
    """Return what a plain file holds; raises UnfitFileError, also where that is more than `most_bytes`."""
    with open_plain(path) as file:
        try:
            content = file.read(most_bytes + 1)
        except OSError as error:
            raise _unreadable(path, error) from error
    if len(content) > most_bytes:
        allowed = Sentence("file.at_most_bytes", n=most_bytes)
        raise _unfit(path, Unfit.TOO_LARGE, Sentence("file.too_large"), allowed, Sentence("file.is_it_this_one"))
    return content


def decoded(path: Path, content: bytes, encoding: str = "utf-8") -> str:
    """Return a file's content as text; raises UnfitFileError for bytes that are no UTF-8."""
    try:
        return content.decode(encoding)
    except UnicodeDecodeError as error:
        raise _unfit(
            path, Unfit.NOT_TEXT, Sentence("file.not_utf_8_text"), "UTF-8", Sentence("file.save_it_as_utf_8")
        ) from error


def is_there(path: Path) -> bool:
    """Return whether a path exists; False for a name that no file can have.

    Path.exists raises for one that is too long, Path.resolve for a ring of links, each in some versions of Python.
    """
    return os.path.exists(path)  # noqa: PTH110


def is_file(path: Path) -> bool:
    """Return whether a path is a plain file; False for a name that no file can have."""
    return os.path.isfile(path)  # noqa: PTH113


def files_in(paths: Iterable[Path], suffix: str) -> tuple[list[Path], list[UnfitFileError]]:
    """Return the files that paths name: themselves, and under a folder all whose names end in `suffix`, by name.

    Pipes and devices are included, so that reading them gives the error. The second list has an error for each folder
    that cannot be read or holds more than MOST_IN_FOLDER. Links to folders are not followed, since they may form a
    ring.
    """
    files: list[Path] = []
    closed: list[UnfitFileError] = []

    def unread(error: OSError) -> None:
        closed.append(_unreadable(Path(error.filename), error, THE_FOLDER))

    for path in paths:
        if not _is_folder(path):
            files.append(path)
            continue
        found: list[Path] = []
        count = 0
        for folder, inner, names in os.walk(path, onerror=unread):
            count += len(inner) + len(names)
            if count > MOST_IN_FOLDER:
                found_many, allowed = Sentence("file.too_many_files"), Sentence("file.at_most", count=MOST_IN_FOLDER)
                mend = Sentence("file.name_a_smaller_folder")
                closed.append(_unfit(path, Unfit.TOO_LARGE, found_many, allowed, mend, THE_FOLDER))
                break
            found += [Path(folder, name) for name in names if name.endswith(suffix)]
        else:
            files += sorted(found)
    return files, closed


def _is_folder(path: Path) -> bool:
    try:
        return stat.S_ISDIR(path.stat().st_mode)
    except (OSError, ValueError):
        return False


def refuse_special(path: Path, mode: int) -> None:
    """Raise UnfitFileError unless a mode is a plain file's."""
    if not stat.S_ISREG(mode):
        mend = Sentence("file.copy_it_into_a_plain_file")
        raise _unfit(path, Unfit.NOT_PLAIN, kind_of(mode), Sentence("file.a_plain_file"), mend)


KINDS: tuple[tuple[Callable[[int], bool], str], ...] = (
    (stat.S_ISDIR, "file.a_folder"),
    (stat.S_ISFIFO, "file.a_pipe"),
    (stat.S_ISSOCK, "file.a_socket"),
)


def kind_of(mode: int) -> Sentence:
    """Return the kind of a file that is not plain, in words."""
    return Sentence(next((key for is_kind, key in KINDS if is_kind(mode)), "file.a_device"))


def _unreadable(path: Path, error: OSError | ValueError, field: Said = THE_FILE) -> UnfitFileError:
    missing = isinstance(error, FileNotFoundError)
    reason = getattr(error, "strerror", None) or type(error).__name__
    found = Sentence("file.missing") if missing else Sentence("file.unreadable", reason=reason)
    allowed, mend = Sentence("file.a_file_that_can_be_read"), Sentence("file.check_the_name_and_the_rights")
    return _unfit(path, Unfit.MISSING if missing else Unfit.UNREADABLE, found, allowed, mend, field)


def _unfit(path: Path, why: Unfit, found: Said, allowed: Said, mend: Said, field: Said = THE_FILE) -> UnfitFileError:
    return UnfitFileError(Problem(str(path), None, field, found, allowed, mend), why)
