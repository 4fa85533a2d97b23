"""One attempt at work: every action is computed, stored as an event, and only then becomes the attempt's state."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from trainer import __version__
from trainer.cases.case import Case
from trainer.circuit.faults import Fault
from trainer.circuit.profile import Profile
from trainer.circuit.solve import SolvedTest
from trainer.errors import WrongCallError
from trainer.instruments.bench import Work
from trainer.output.player import Played, Player
from trainer.practice.actions import Done, solved_work
from trainer.practice.attempt import Attempt, begun, finding_data, replayed, step
from trainer.practice.debrief import Debrief, debrief_of
from trainer.practice.events import Event, EventKind
from trainer.reasoning.finding import Finding
from trainer.records.store import AttemptRow, Store
from trainer.sound.render import Sound
from trainer.words import numbers

KEPT_SOLVES = 8


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


class Desk:
    """An attempt with its store and player. `now` gives the time as UTC text."""

    def __init__(self, store: Store, player: Player, now: Callable[[], str]) -> None:
        self.store, self.player, self._now = store, player, now
        self.solver = RememberingSolver()
        self.attempt: Attempt
        self.attempt_id: str

    def start(self, case: Case, row: AttemptRow) -> None:
        """Begin an attempt; it is in the store before anything is heard."""
        self.attempt, self.attempt_id = begun(case, row.seed), row.id
        first = Event(1, EventKind.STARTED, self._now(), {"version": __version__})
        self.store.begin(row, first)
        self.attempt = step(self.attempt, first)

    def resume(self, case: Case, row: AttemptRow) -> None:
        """Go on with a stored attempt."""
        self.attempt_id = row.id
        self.attempt = replayed(case, row.seed, self.store.events(row.id))

    def do(self, done: Done) -> Done:
        """Store what an action computed, then take it over; returns it for the face to show."""
        self._happen(done.kind, done.data)
        return done

    def play(self, sound: Sound) -> Played:
        """Play a sound to its end."""
        return self.player.play(sound.samples, sound.rate_hz)

    def suspect(self, ruled_out: frozenset[str]) -> None:
        """Note which places the learner has ruled out."""
        self._happen(EventKind.SUSPECTED, {"ruled_out": sorted(ruled_out)})

    def commit(self, finding: Finding) -> None:
        """Commit a finding; raises WrongCallError for a second one or one that the engine cannot have."""
        if self.attempt.finding is not None:
            raise WrongCallError("committed_already")
        allowed = set(self.attempt.case.profile.cylinders)
        for claim in finding.claims:
            if not claim.cylinders or not claim.cylinders <= allowed:
                raise WrongCallError("claim_without_cylinders", cylinders=numbers(allowed))
        self._happen(EventKind.FOUND, finding_data(finding))

    def debrief(self) -> Debrief:
        """Return the debrief; raises WrongCallError before a finding."""
        if self.attempt.finding is None:
            raise WrongCallError("finding_first")
        return debrief_of(self.attempt, self.solver)

    def close(self, points: float) -> None:
        """End the attempt with its score."""
        if not self.attempt.closed:
            self._happen(EventKind.CLOSED, {"points": round(points, 2)})

    def _happen(self, kind: EventKind, data: dict[str, Any]) -> None:
        event = Event(self.attempt.events + 1, kind, self._now(), data)
        following = step(self.attempt, event)
        self.store.append(self.attempt_id, event)
        self.attempt = following
