"""Where records are kept on this machine, what time it is there, and where to say what is beside the work."""

from __future__ import annotations

import sys
from datetime import UTC, datetime
from pathlib import Path

import platformdirs

from trainer.errors import MissingHereError
from trainer.records.store import Store, opened
from trainer.words import text, told


def data_folder(named: Path | None) -> Path:
    """Return the folder that was named, or the user's own for this program."""
    return named if named is not None else Path(platformdirs.user_data_dir("injector-ear-trainer", appauthor=False))


def universe_folder() -> Path:
    """Return where solved universes are kept: they can be thrown away at any time."""
    return Path(platformdirs.user_cache_dir("injector-ear-trainer", appauthor=False)) / "universes"


def now_utc() -> str:
    """Return the time as the records keep it."""
    return datetime.now(UTC).isoformat(timespec="milliseconds")


def tell(line: str) -> None:
    """Say something beside the work, so that standard output stays the work's own."""
    sys.stderr.write(line + "\n")


def store_in(folder: Path, *, insist: bool) -> Store:
    """Open the records; a home that cannot be written is told, and then nothing is kept."""
    try:
        return opened(folder)
    except MissingHereError as error:
        if insist:
            raise
        tell(text("memory_store", reason=told(error)))
        return opened(None)
