"""Makes exercises and their sounds at a desk, with what is solved kept at hand."""

from __future__ import annotations

from dataclasses import replace

from trainer.cases.single_case.shipped import profile_named
from trainer.cases.solved.universe_cache import Universes
from trainer.circuit.profile import Profile
from trainer.desk.caching_solver import CachingSolver
from trainer.practice.attempt.actions import Solver
from trainer.practice.exercises.exercise_kinds import exercise_of
from trainer.practice.exercises.exercise_types import Exercise, Sounding, Spec, render_sounding, spec_of
from trainer.sound.render import Sound

MOST_TRIES = 20
"""So many seeds are tried for an exercise of another class than the last two."""


class Exercises:
    """Makes exercises; the first of reasoning on an engine takes seconds."""

    def __init__(self, universes: Universes, solver: Solver | None = None) -> None:
        self._universes = universes
        self._solver = solver or CachingSolver()

    def make(self, spec: Spec) -> Exercise:
        """Return an exercise; raises WrongCallError for one that cannot be made here."""
        return exercise_of(spec, profile_named, self._universes.pools, self._universes.reasoner)

    def made(self, name: str, stale_class: str, probed: str) -> Exercise:
        """Return an exercise that was chosen; another seed where its class would be the third in a row.

        `probed` is the misconception that it should give an occasion for, "" for none; its class comes first.
        """
        spec = spec_of(name)
        fresh: Exercise | None = None
        for step in range(MOST_TRIES):
            exercise = self.make(replace(spec, seed=(spec.seed + step) % 2**31))
            if exercise.kind_class != stale_class:
                if not probed or probed in exercise.task.probes:
                    return exercise
                fresh = fresh or exercise
        return fresh or exercise

    def sound(self, profile: Profile, what: Sounding) -> Sound:
        """Return something to listen to, rendered."""
        return render_sounding(profile, what, self._solver)
