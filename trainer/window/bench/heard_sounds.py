"""A cache of rendered sounds, valid for as long as the engine has not changed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from trainer.circuit.faults import Fault
from trainer.instruments.bench import Work
from trainer.instruments.measuring import plugged_back
from trainer.practice.attempt.actions import ActionResult
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.events import Heard

Key = tuple[tuple[int, ...], str, Work, tuple[Fault, ...]]
CACHE_BYTES = 40_000_000
"""About five whole tests."""


@dataclass
class HeardSounds:
    """What was heard, by slots, place, work and faults; the oldest goes first."""

    _cache: dict[Key, ActionResult[Heard]] = field(default_factory=dict)

    @staticmethod
    def _key(attempt: Attempt, slots: Sequence[int] | None, place: str) -> Key:
        work = plugged_back(attempt.case.profile, attempt.work)
        return tuple(slots or ()), place, work, attempt.faults_left

    def find(self, attempt: Attempt, slots: Sequence[int] | None, place: str) -> ActionResult[Heard] | None:
        """Return what was heard before, if nothing on the engine has changed since."""
        return self._cache.get(self._key(attempt, slots, place))

    def keep(self, attempt: Attempt, slots: Sequence[int] | None, place: str, done: ActionResult[Heard]) -> None:
        """Keep what was heard; `attempt` is as the hearing left it."""
        self._cache[self._key(attempt, slots, place)] = done
        sizes = [one.sound.samples.nbytes for one in self._cache.values() if one.sound]
        while sum(sizes) > CACHE_BYTES and len(sizes) > 1:
            self._cache.pop(next(iter(self._cache)))
            sizes.pop(0)
