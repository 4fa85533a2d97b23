"""Files that are none: pipes without an end, folders that are closed."""

from __future__ import annotations

import errno
import functools
import os
import signal
from collections.abc import Callable
from pathlib import Path

import pytest


def pipe(path: Path) -> Path:
    """Make a pipe that nobody writes into: whoever opens it waits for ever."""
    os.mkfifo(path)
    return path


def closed_folder(path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Make a folder that cannot be listed, for an administrator neither."""
    path.mkdir()
    scan = os.scandir

    def refusing(folder: str | Path) -> object:
        if Path(folder) == path:
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(folder))
        return scan(folder)

    monkeypatch.setattr(os, "scandir", refusing)
    return path


def without_waiting(test: Callable[..., None]) -> Callable[..., None]:
    """Fail a test that waits for a pipe instead of letting it hang."""

    def end(_signal: int, _frame: object) -> None:
        raise AssertionError("waited for a pipe")

    @functools.wraps(test)
    def guarded(*args: object, **named: object) -> None:
        before = signal.signal(signal.SIGALRM, end)
        signal.alarm(60)
        try:
            test(*args, **named)
        finally:
            signal.alarm(0)
            signal.signal(signal.SIGALRM, before)

    return guarded
