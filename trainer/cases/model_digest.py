"""A hash of the code that solves: what is kept on disk is good for one state of it only."""

from __future__ import annotations

import hashlib
from functools import cache
from pathlib import Path

ROOMS = ("circuit", "sound", "instruments", "reasoning")
"""The rooms whose code decides what a universe holds."""


@cache
def model_digest() -> str:
    """Return a hash of the code that solves: two programs with the same one hear, read and reason alike."""
    package = Path(__file__).parent.parent
    whole = hashlib.sha256()
    for room in ROOMS:
        for path in sorted((package / room).glob("*.py")):
            whole.update(path.read_bytes())
    return whole.hexdigest()
