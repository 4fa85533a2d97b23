"""Solves the tests that one desk needs, each once."""

from __future__ import annotations

from trainer.circuit.faults import Fault
from trainer.circuit.profile import Profile
from trainer.circuit.solve import SolvedTest
from trainer.instruments.bench import Work
from trainer.practice.attempt.actions import solved_work

KEPT_SOLVES = 4
"""A debrief needs three: the good engine, the truth, the answer. Each is some twenty megabytes."""


class RememberingSolver:
    """Solves a worked circuit once for the same profile, faults and work; keeps the latest few."""

    def __init__(self) -> None:
        self._kept: dict[tuple[str, tuple[Fault, ...], Work], SolvedTest] = {}

    def __call__(self, profile: Profile, faults: tuple[Fault, ...], work: Work) -> SolvedTest:
        """Return the solved test."""
        key = (profile.digest, faults, work)
        solved = self._kept.pop(key, None) or solved_work(profile, faults, work)
        self._kept[key] = solved
        while len(self._kept) > KEPT_SOLVES:
            self._kept.pop(next(iter(self._kept)))
        return solved
