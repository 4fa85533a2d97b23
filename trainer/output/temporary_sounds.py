"""Paths of WAV files for a run without a sound device, in a temporary folder that is deleted when the run ends."""

from __future__ import annotations

import contextlib
import os
import re
import shutil
import tempfile
import weakref
from pathlib import Path
from types import TracebackType

from trainer.errors import MissingHereError

PREFIX = "injector-trainer-heard-"
"""A folder's name is this prefix, the id of the process that made it, and a unique suffix."""

MOST_FILES = 20
"""How many files are kept, the newest: about 100 MB."""


class TemporarySounds:
    """Gives the paths of one run's sound files, under `parent` or else the system's folder for temporary files.

    The folder is made for the first file and deleted by `close`, at the latest when the interpreter exits. A new run
    deletes the folders that killed runs left behind.
    """

    def __init__(self, parent: Path | None = None) -> None:
        self._parent = Path(tempfile.gettempdir()) if parent is None else parent
        self._folder: Path | None = None
        self._count = 0
        _delete_abandoned(self._parent)

    def __enter__(self) -> TemporarySounds:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def next_path(self) -> Path:
        """Return the path for the next file, after deleting the oldest beyond MOST_FILES; raises MissingHereError."""
        try:
            if self._folder is None:
                self._folder = Path(tempfile.mkdtemp(prefix=f"{PREFIX}{os.getpid()}-", dir=self._parent))
                self._finalizer = weakref.finalize(self, _delete, self._folder)
            self._count += 1
            _path(self._folder, self._count - MOST_FILES).unlink(missing_ok=True)
        except OSError as error:
            raise MissingHereError("file_unwritable", path=self._parent, reason=error.strerror) from error
        return _path(self._folder, self._count)

    def close(self) -> None:
        """Delete the folder with its files."""
        if self._folder is not None:
            self._finalizer()
            self._folder = None


def _path(folder: Path, number: int) -> Path:
    return folder / f"heard_{number:03d}.wav"


def _delete(folder: Path) -> None:
    shutil.rmtree(folder, ignore_errors=True)


def _delete_abandoned(parent: Path) -> None:
    """Delete the folders of killed runs: our prefix, our user as owner, and no process of that id."""
    if os.name != "posix":  # elsewhere a process cannot be asked about without disturbing it
        return
    with contextlib.suppress(OSError):
        for folder in parent.glob(f"{PREFIX}*"):
            named = re.fullmatch(rf"{PREFIX}(\d+)-\w+", folder.name)
            if named and _is_our_folder(folder) and not _is_running(int(named[1])):
                _delete(folder)


def _is_our_folder(path: Path) -> bool:
    try:
        return path.is_dir() and not path.is_symlink() and path.lstat().st_uid == os.getuid()
    except OSError:
        return False


def _is_running(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except (PermissionError, OverflowError):  # somebody else's
        return True
    return True
