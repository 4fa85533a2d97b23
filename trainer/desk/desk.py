"""One attempt at work: every action is computed, stored as an event, and only then becomes the attempt's state."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TypeVar

from trainer import __version__
from trainer.cases.drawing.features import Features
from trainer.cases.single_case.case import Case
from trainer.cases.solved.universe_cache import Universes
from trainer.circuit.elements import Location
from trainer.desk.caching_solver import CachingSolver
from trainer.errors import WrongCallError
from trainer.output.playback import PlaybackResult
from trainer.output.player import Player
from trainer.practice.attempt.actions import ActionResult
from trainer.practice.attempt.allowed import NO_LIMITS, Limits, refuse_beyond, refuse_feedback, refuse_late
from trainer.practice.attempt.attempt import Attempt, DamagedLogError, begun, replayed, step
from trainer.practice.attempt.debrief import Debrief, debrief_of
from trainer.practice.attempt.event_json import record_of
from trainer.practice.attempt.event_record import went_back
from trainer.practice.attempt.events import ClockBack, Closed, Event, Found, Hinted, Started, Suspected, Voided
from trainer.practice.attempt.hints import Hint, next_hint
from trainer.practice.attempt.outcome import Outcome
from trainer.practice.course.ended import case_entry
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.finding import Finding
from trainer.reasoning.verdict.score import Score, calibration
from trainer.records.store.chain import first_link, next_link
from trainer.records.store.log_rows import AttemptRow
from trainer.records.store.store import Store
from trainer.sound.render import Sound
from trainer.words import number_list

AnEvent = TypeVar("AnEvent", bound=Event)


class Desk:
    """An attempt with its store, player and universes. `now` gives the time as UTC text; `hints` allows help.

    In a set `limits` say what is allowed, `chain_key` signs every event, and `clock` counts seconds that no change of
    the computer's date moves.
    """

    def __init__(
        self,
        store: Store,
        player: Player,
        now: Callable[[], str],
        universes: Universes,
        *,
        hints: bool = True,
        limits: Limits = NO_LIMITS,
        chain_key: bytes | None = None,
        clock: Callable[[], float] | None = None,
    ) -> None:
        self.store, self.player, self._now = store, player, now
        self._universes, self.hints, self.limits = universes, hints, limits
        self._chain_key, self._clock, self._link = chain_key, clock, ""
        self._last_s = 0.0 if clock is None else clock()
        self._last_at = ""
        self.solver = CachingSolver()
        self._reasoner: tuple[Case, Reasoner] | None = None
        self.attempt: Attempt
        self.attempt_id: str

    def start(self, case: Case, row: AttemptRow, at: Started | None = None, last_at: str = "") -> None:
        """Begin an attempt; it is in the store before anything is heard. `at` says why, by whom and where it is begun.

        `last_at` is when the learner's last event in the same set happened.
        """
        self.attempt, self.attempt_id, self._learner = (
            begun(case, case.seed if row.set_id else row.seed),
            row.id,
            row.learner,
        )
        started = replace(at or Started(), version=__version__)
        first = record_of(started, 1, self._now())
        if self._chain_key is not None:
            self._link = next_link(self._chain_key, first_link(self._chain_key, row), first)
        self.store.begin(row, first, self._link)
        self.attempt = step(self.attempt, started)
        self._last_at = last_at
        self._look_at_clock(first.at)

    def resume(self, case: Case, row: AttemptRow) -> None:
        """Go on with a stored attempt; raises DamagedError for one whose events are damaged."""
        events, links = self.store.logged(row.id)
        try:
            self.attempt = replayed(case, case.seed if row.set_id else row.seed, events)
        except DamagedLogError as error:
            raise self.store.damaged(row.id, error.number) from error
        self.attempt_id, self._learner = row.id, row.learner
        if self._chain_key is not None:
            self._link, self._last_at = links[-1], events[-1].at

    def do(self, done: ActionResult[AnEvent]) -> ActionResult[AnEvent]:
        """Store what an action computed, then take it over; returns it for the face to show.

        Raises WrongCallError for what a set does not allow.
        """
        refuse_late(self.limits, self._now())
        refuse_beyond(self.attempt, self.limits, done.event)
        self._happen(done.event)
        return done

    def play(self, sound: Sound) -> PlaybackResult:
        """Play a sound to its end."""
        return self.player.play(sound.samples, sound.rate_hz)

    def suspect(self, ruled_out: frozenset[Location]) -> None:
        """Note which places the learner has ruled out."""
        self._happen(Suspected(ruled_out=ruled_out))

    def commit(self, finding: Finding) -> None:
        """Commit a finding; raises WrongCallError for a second one or one that the engine cannot have."""
        if self.attempt.finding is not None:
            raise WrongCallError("committed_already")
        refuse_late(self.limits, self._now())
        allowed = set(self.attempt.case.profile.cylinders)
        for claim in finding.claims:
            if not claim.cylinders or not claim.cylinders <= allowed:
                raise WrongCallError("claim_without_cylinders", cylinders=number_list(allowed))
        self._happen(Found(claims=finding.claims, certainty=finding.certainty))

    def debrief(self) -> Debrief:
        """Return the debrief; raises WrongCallError before a finding."""
        if self.attempt.finding is None:
            raise WrongCallError("finding_first")
        refuse_feedback(self.limits)
        return debrief_of(self.attempt, self.solver, self.reasoner, self._universes.pools(self.attempt.case.profile))

    @property
    def reasoner(self) -> Reasoner:
        """What can be reasoned about this case; the first call may take seconds."""
        if not self.ready_to_reason or self._reasoner is None:
            self._reasoner = (self.attempt.case, self._universes.reasoner(self.attempt.case))
        return self._reasoner[1]

    @property
    def ready_to_reason(self) -> bool:
        """Whether the reasoner of this case is at hand, so that asking it takes no time."""
        return self._reasoner is not None and self._reasoner[0] is self.attempt.case

    def hint(self) -> Hint:
        """Give the next hint, stronger each time until something new is done; raises WrongCallError where none is."""
        self.may_hint()
        return self.take_hint(next_hint(self.attempt, self.reasoner))

    def may_hint(self) -> None:
        """Raise WrongCallError where no hint is to be had."""
        if not self.hints:
            raise WrongCallError("no_hints")
        refuse_feedback(self.limits)
        if self.attempt.finding is not None:
            raise WrongCallError("hint_after_finding")

    def take_hint(self, hint: Hint) -> Hint:
        """Note a hint that was computed; returns it for the face to show."""
        self._happen(Hinted(strength=hint.strength, test=hint.test))
        return hint

    def close(self, outcome: Outcome, found: Features | None = None) -> None:
        """Close the attempt: store its outcome, and update skills where the case's features are known."""
        if not self.attempt.closed:
            refuse_feedback(self.limits)
            practice = None if found is None else case_entry(outcome, found, self.lesson)
            self._happen(Closed(outcome=outcome, practice=practice))

    @property
    def lesson(self) -> int:
        """Which lesson this attempt is, 0 for none."""
        first = self.attempt.events[0]
        return first.lesson if isinstance(first, Started) else 0

    def hand_in(self) -> None:
        """End an exam's case with its finding, not scored here; raises WrongCallError before the finding."""
        if self.attempt.finding is None:
            raise WrongCallError("finding_first")
        if not self.attempt.closed:
            self._happen(Closed())

    def void(self, reason: str) -> None:
        """End the attempt as one that does not count, for example after a failure of sound; what was done stays."""
        self._happen(Voided(reason=reason))

    def note(self, event: Event) -> None:
        """Record an event beside the work, such as leaving the window or restarting the program."""
        if not self.attempt.closed:
            self._happen(event)

    def calibration_with(self, now: Score) -> dict[float, tuple[int, float]]:
        """Return the learner's calibration over all closed attempts and the score of this one."""
        assert self.attempt.finding is not None
        closed = self.store.closings(self._learner, except_for=self.attempt_id)
        before = [(one.certainty, one.right) for one in closed]
        return calibration([*before, (self.attempt.finding.certainty, now.right)])

    def _happen(self, event: Event) -> None:
        now = self._now()
        self._look_at_clock(now)
        self._append(event, now)

    def _look_at_clock(self, now: str) -> None:
        """Record, in a set, that the computer's date went back since the last event."""
        before, self._last_at = self._last_at, now
        if self._chain_key is not None and went_back(before, now):
            self._append(ClockBack(before=before), now)

    def _append(self, event: Event, now: str) -> None:
        if self._clock is not None:
            now_s = self._clock()
            event, self._last_s = replace(event, spent_s=round(now_s - self._last_s, 3)), now_s
        following = step(self.attempt, event)
        record = record_of(event, len(self.attempt.events) + 1, now)
        link = "" if self._chain_key is None else next_link(self._chain_key, self._link, record)
        try:
            self.store.append(self.attempt_id, record, link)
        except ValueError as error:  # its place in the order is taken: the same attempt is worked elsewhere
            raise WrongCallError("worked_elsewhere") from error
        self.attempt, self._link = following, link
