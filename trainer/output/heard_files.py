"""The WAV files of a run that cannot play: in a temporary folder that belongs to the run and is deleted at its end."""

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
"""A folder is named by this, the number of the process that made it, and what makes it unique."""

MOST_FILES = 20
"""So many files lie there at a time, the newest: about 100 MB."""


class HeardFiles:
    """Says where the files of one run go. `parent` is the system's folder for temporary files where none is given.

    The folder is made for the first file. It is deleted by `close`, or where nobody calls that, when the interpreter
    ends; what a killed run left is deleted when the next one begins.
    """

    def __init__(self, parent: Path | None = None) -> None:
        self._parent = Path(tempfile.gettempdir()) if parent is None else parent
        self._folder: Path | None = None
        self._count = 0
        _sweep(self._parent)

    def __enter__(self) -> HeardFiles:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def next_path(self) -> Path:
        """Return the path for the next file; the oldest file goes where there are many. Raises MissingHereError."""
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


def _sweep(parent: Path) -> None:
    """Delete the folders of runs that were killed: ours by name and owner, their process dead."""
    if os.name != "posix":  # elsewhere a process cannot be asked about without disturbing it
        return
    with contextlib.suppress(OSError):
        for folder in parent.glob(f"{PREFIX}*"):
            named = re.fullmatch(rf"{PREFIX}(\d+)-\w+", folder.name)
            if named and _is_our_folder(folder) and not _runs(int(named[1])):
                _delete(folder)


def _is_our_folder(path: Path) -> bool:
    try:
        return path.is_dir() and not path.is_symlink() and path.lstat().st_uid == os.getuid()
    except OSError:
        return False


def _runs(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except (PermissionError, OverflowError):  # somebody else's
        return True
    return True
