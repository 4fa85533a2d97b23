"""What tests share: solved engines from run to run, one folder for each state of the code; solved tests in a process."""

from __future__ import annotations

import hashlib
import shutil
from collections.abc import Callable
from functools import lru_cache
from pathlib import Path

from trainer.circuit.fault import Fault
from trainer.circuit.profile import ByContent, Profile
from trainer.circuit.solve import SolvedTest
from trainer.instruments.bench import Work

Solve = Callable[[Profile, tuple[Fault, ...], Work], SolvedTest]

REPOSITORY = Path(__file__).parents[1]
KEPT = REPOSITORY / ".test-cache"
MADE_BY = REPOSITORY / "tests" / "unchanged" / "solved_by.txt"
"""Holds the hash of the code that solved what is shipped solved."""
SOLVING = ("circuit", "sound", "instruments", "reasoning", "cases")
"""The rooms whose code decides what is kept."""


SOLVED_BY = ("circuit", "sound", "instruments", "reasoning/universe", "cases/drawing/practice_pool.py")
"""The code whose numbers are shipped."""


def solving_code() -> str:
    """Return a hash of the code that solves what is shipped solved."""
    digest = hashlib.sha256()
    for room in SOLVED_BY:
        place = REPOSITORY / "trainer" / room
        for path in sorted(place.rglob("*.py")) if place.is_dir() else [place]:
            digest.update(path.read_bytes())
    return digest.hexdigest()[:16]


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


def remembering(solve: Solve, most: int) -> Solve:
    """Return a solver that keeps its latest tests for everything in the process that asks for them again."""

    @lru_cache(maxsize=most)
    def kept(engine: ByContent, faults: tuple[Fault, ...], work: Work) -> SolvedTest:
        return solve(engine.profile, faults, work)

    return lambda profile, faults, work: kept(ByContent(profile), faults, work)
