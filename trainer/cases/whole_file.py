"""Writes a file whole: to a temporary name beside it, synchronised, then renamed."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import IO

from trainer.errors import MissingHereError


def write_whole(path: Path, write: Callable[[IO[bytes]], None]) -> None:
    """Write a file through `write`; nothing half-written is ever left under its name. Raises OSError."""
    with tempfile.NamedTemporaryFile(dir=path.parent, suffix=".part", delete=False) as part:
        try:
            write(part)
            part.flush()
            os.fsync(part.fileno())
            Path(part.name).replace(path)
        except BaseException:
            Path(part.name).unlink(missing_ok=True)
            raise


def write_bytes(path: Path, content: bytes, *, make_folder: bool = False) -> None:
    """Write a file whole, into a folder that is made first if that is said; raises MissingHereError if it cannot be."""

    def write(part: IO[bytes]) -> None:
        part.write(content)

    try:
        if make_folder:
            path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(path, write)
    except OSError as error:
        raise MissingHereError("file_unwritable", path=path, reason=error.strerror) from error
