"""Where tests keep solved engines from run to run: one folder for each state of the code that solves them."""

from __future__ import annotations

import hashlib
import shutil
from pathlib import Path

REPOSITORY = Path(__file__).parents[1]
KEPT = REPOSITORY / ".test-cache"
SOLVING = ("circuit", "sound", "instruments", "reasoning", "cases")
"""The rooms whose code decides what is kept."""


def solved_folder() -> Path:
    """Make and return the folder for the code as it is now; remove those of other states."""
    digest = hashlib.sha256()
    for room in SOLVING:
        for path in sorted((REPOSITORY / "trainer" / room).rglob("*.py")):
            digest.update(path.read_bytes())
    folder = KEPT / digest.hexdigest()[:16]
    for other in KEPT.glob("*"):
        if other != folder:
            shutil.rmtree(other, ignore_errors=True)
    folder.mkdir(parents=True, exist_ok=True)
    return folder
