"""What takes time at a desk, as one worker does it: solving, sounding, reasoning; values in, values out."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from trainer.cases.universe_cache import Universes
from trainer.circuit.elements import Location
from trainer.circuit.faults import Fault
from trainer.circuit.profile import Profile
from trainer.circuit.solve import SolvedTest
from trainer.instruments.bench import Work
from trainer.instruments.measuring import Request
from trainer.output.setup_sounds import SetupSound, setup_sound
from trainer.practice import actions, repair
from trainer.practice.actions import Done, solved_work
from trainer.practice.attempt import Attempt
from trainer.practice.debrief import Debrief, debrief_of
from trainer.practice.hints import Hint, next_hint

KEPT_SOLVES = 4
"""A debrief needs three: the good engine, the truth, the answer. Each is some twenty megabytes."""

Told = Callable[[str, float], None]
"""Is told which stage the work is in, and what share of it is done; it may raise to stop the work."""


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


class Labour:
    """Does the long work of attempts; each method's first argument is told how far it is."""

    def __init__(self, universes: Universes) -> None:
        self._universes = universes
        self._solver = RememberingSolver()

    def hear(self, told: Told, attempt: Attempt, slots: Sequence[int] | None, place: str) -> Done:
        """Return a test or a replay, rendered."""
        told("sounding", 0.0)
        return actions.hear(attempt, slots, place, self._solver)

    def retest(self, told: Told, attempt: Attempt, place: str, moved: Location | None, heated: Location | None) -> Done:
        """Return the retest, rendered."""
        told("sounding", 0.0)
        return repair.retest(attempt, self._solver, place, moved=moved, heated=heated)

    def measure(self, told: Told, attempt: Attempt, request: Request, predicted: str | None) -> Done:
        """Return a reading."""
        told("measuring", 0.0)
        return actions.measure(attempt, request, predicted)

    def prepare(self, told: Told, attempt: Attempt) -> None:
        """Solve what reasoning about a case needs, ahead of the first question."""
        self._universes.reasoner(attempt.case, lambda share: told("reasoning", share))

    def hint(self, told: Told, attempt: Attempt) -> Hint:
        """Return the next hint."""
        reasoner = self._universes.reasoner(attempt.case, lambda share: told("reasoning", share))
        return next_hint(attempt, reasoner)

    def debrief(self, told: Told, attempt: Attempt) -> Debrief:
        """Return the debrief."""
        reasoner = self._universes.reasoner(attempt.case, lambda share: told("reasoning", share))
        told("sounding", 1.0)
        return debrief_of(attempt, self._solver, reasoner)

    def setup_sound(self, told: Told, wanted: SetupSound) -> object:
        """Return one sound of the set-up, float32 of shape (frame, channel)."""
        told("sounding", 0.0)
        return setup_sound(wanted)
