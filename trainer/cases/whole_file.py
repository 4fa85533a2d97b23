"""Writes a file whole: to a temporary name beside it, synchronised, then renamed."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import IO


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
