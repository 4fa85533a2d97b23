"""Where records are kept on this machine."""

from __future__ import annotations

from pathlib import Path

import platformdirs


def data_folder(named: Path | None) -> Path:
    """Return the folder that was named, or the user's own for this program."""
    return named if named is not None else Path(platformdirs.user_data_dir("injector-ear-trainer", appauthor=False))
