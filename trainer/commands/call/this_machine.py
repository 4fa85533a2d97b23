"""The program's folders on this machine, the solved universes kept there, and the time."""

from __future__ import annotations

from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import platformdirs

if TYPE_CHECKING:
    from trainer.cases.solved.universe_cache import Universes

PROGRAM = "injector-ear-trainer"


def data_folder(named: Path | None) -> Path:
    """Return the named folder, or the user's data folder for this program."""
    return named if named is not None else Path(platformdirs.user_data_dir(PROGRAM, appauthor=False))


def universe_folder() -> Path:
    """Return the folder of the solved universes: a cache that can be deleted at any time."""
    return Path(platformdirs.user_cache_dir(PROGRAM, appauthor=False)) / "universes"


@cache
def universes() -> Universes:
    """Return the solved universes, cached in that folder: one object for everything a process does."""
    from trainer.cases.solved.universe_cache import Universes

    return Universes(universe_folder())


def now_utc() -> str:
    """Return the time as the records store it: UTC, ISO 8601, to the millisecond."""
    return datetime.now(UTC).isoformat(timespec="milliseconds")
