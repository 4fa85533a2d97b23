"""Where records are kept on this machine."""

from __future__ import annotations

from pathlib import Path

import platformdirs


def data_folder(named: Path | None) -> Path:
    """Return the folder that was named, or the user's own for this program."""
    return named if named is not None else Path(platformdirs.user_data_dir("injector-ear-trainer", appauthor=False))


def universe_folder() -> Path:
    """Return where solved universes are kept: they can be thrown away at any time."""
    return Path(platformdirs.user_cache_dir("injector-ear-trainer", appauthor=False)) / "universes"
