"""Solves the tests that one desk needs, each once."""

from __future__ import annotations

from trainer.circuit.faults import Fault
from trainer.circuit.profile import Profile
from trainer.circuit.solve import SolvedTest
from trainer.instruments.bench import Work
from trainer.practice.attempt.actions import solved_work

CACHED_SOLVES = 4
"""A debrief needs three: the good engine, the truth, the answer. Each is some twenty megabytes."""


class CachingSolver:
    """Solves a worked circuit once for the same profile, faults and work; keeps the latest few."""

    def __init__(self) -> None:
        self._cache: dict[tuple[str, tuple[Fault, ...], Work], SolvedTest] = {}

    def __call__(self, profile: Profile, faults: tuple[Fault, ...], work: Work) -> SolvedTest:
        """Return the solved test."""
        key = (profile.digest, faults, work)
        solved = self._cache.pop(key, None) or solved_work(profile, faults, work)
        self._cache[key] = solved
        while len(self._cache) > CACHED_SOLVES:
            self._cache.pop(next(iter(self._cache)))
        return solved
