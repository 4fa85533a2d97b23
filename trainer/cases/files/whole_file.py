"""Writes files atomically: to a temporary name, synchronised, then renamed; replaces plain files only."""

from __future__ import annotations

import errno
import os
import secrets
import stat
from collections.abc import Callable
from pathlib import Path
from typing import IO

from trainer.cases.files.plain_file import kind_of
from trainer.errors import MissingHereError, WrongCallError

CREATING = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
MODE, PRIVATE_MODE = 0o666, 0o600
"""Modes of a new file, before the user's umask, and of a private one."""


def write_whole(
    path: Path, write: Callable[[IO[bytes]], None], *, make_folder: bool = False, private: bool = False
) -> None:
    """Write a file atomically through `write`.

    A file that is there keeps its mode, and a symbolic link stays a link: the file that it leads to is replaced. With
    `make_folder` the folder is made first; a `private` file can be read by nobody else.
    Raises WrongCallError for a pipe, a device or a folder, and MissingHereError where the file cannot be written.
    """
    try:
        target, mode = _replaced(path, make_folder=make_folder)
        part = target.with_name(f"{secrets.token_hex(8)}.part")
        descriptor = os.open(part, CREATING, PRIVATE_MODE if private else MODE)
        try:
            with os.fdopen(descriptor, "wb") as file:
                write(file)
                file.flush()
                os.fsync(file.fileno())
            if not private and mode not in (None, _mode_of(part.stat())):  # some media take no change of mode at all
                part.chmod(mode)
            part.replace(target)  # closed by now: Windows renames no open file
        except BaseException:
            part.unlink(missing_ok=True)
            raise
    except OSError as error:
        raise MissingHereError("file_unwritable", path=path, reason=error.strerror or error) from error


def write_bytes(path: Path, content: bytes, *, make_folder: bool = False, private: bool = False) -> None:
    """Write a file whole from its content, under the rules of `write_whole`."""

    def write(part: IO[bytes]) -> None:
        part.write(content)

    write_whole(path, write, make_folder=make_folder, private=private)


def _replaced(path: Path, *, make_folder: bool) -> tuple[Path, int | None]:
    """Return the file that is written where `path` is named, and the mode of the one there, None for a new file.

    Raises WrongCallError where something is there that is no plain file, OSError where it may not be written.
    """
    try:
        if make_folder:
            path.parent.mkdir(parents=True, exist_ok=True)
        found = path.stat()
    except FileNotFoundError:
        return _led_to(path), None
    except ValueError as error:  # a name that no file can have
        raise OSError(errno.EINVAL, os.strerror(errno.EINVAL)) from error
    target = _led_to(path)
    if not (stat.S_ISREG(found.st_mode) and target.exists() and os.path.samestat(found, target.stat())):
        raise WrongCallError("not_replaced", path=path, kind=kind_of(found.st_mode))
    if not os.access(target, os.W_OK):
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))
    return target, _mode_of(found)


def _mode_of(found: os.stat_result) -> int:
    return found.st_mode & 0o777


def _led_to(path: Path) -> Path:
    """Return where a symbolic link ends, and any other path as it is: a folder may be named through links."""
    return path.resolve() if path.is_symlink() else path
