"""What a finding is worth: the truth's slots explained, the path weighed, proof, score, the misconception behind it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from trainer.circuit.codes import known_codes
from trainer.circuit.elements import Location
from trainer.circuit.fault import Conditions
from trainer.circuit.fault_space import comes_and_goes
from trainer.circuit.solve import SolvedTest
from trainer.instruments.bench import Work
from trainer.instruments.reading import Slip
from trainer.practice.attempt.actions import Solver
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.events import CodesRead, Heard, Hinted, Measured, Repaired, Retested
from trainer.practice.attempt.outcome import Outcome
from trainer.practice.attempt.weighing import Weighing, weighed
from trainer.reasoning.advice.prices import mending_minutes
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.finding import Claim, truth_of
from trainer.reasoning.universe.hypotheses import same_claims
from trainer.reasoning.verdict.belief import finding_key
from trainer.reasoning.verdict.explanation import SlotReason, reasons_of
from trainer.reasoning.verdict.misconceptions import Wrong, coded_cylinders, misconception_of, slots_by_number
from trainer.reasoning.verdict.score import Proof, Score, score_of
from trainer.sound.render import Sound, render


@dataclass(frozen=True)
class Scored:
    """A finding's score with what it is worked out from; nothing is heard for it."""

    truth: tuple[Claim, ...]
    score: Score
    proof: Proof
    weighing: Weighing


@dataclass(frozen=True)
class AtWork:
    """The engine while its fault shows itself, solved and heard; `good` is the same engine without a fault.

    `shown_at` is where the engine is moved and warm so that an intermittent fault shows; None where it need not be.
    """

    shown_at: Location | None
    work: Work
    solved: SolvedTest
    sound: Sound
    good: Sound
    reasons: tuple[SlotReason, ...]


@dataclass(frozen=True)
class Judged:
    """A finding judged by what was to be heard; `misconception` is None if it names the truth."""

    scored: Scored
    at_work: AtWork
    wrong: Wrong | None
    misconception: str | None


def scored(attempt: Attempt, reasoner: Reasoner) -> Scored:
    """Score an attempt's finding; raises ValueError for an attempt that has none."""
    if attempt.finding is None:
        raise ValueError("an attempt is scored by its finding")
    weighing = weighed(attempt, reasoner)
    proof = proof_of(attempt, reasoner, weighing)
    truth = truth_of(attempt.case.to_be_found)
    return Scored(truth, score_of(attempt.finding, truth, proof), proof, weighing)


def judged(attempt: Attempt, solver: Solver, reasoner: Reasoner) -> Judged:
    """Judge an attempt's finding; raises ValueError for an attempt that has none."""
    found = scored(attempt, reasoner)
    at_work = at_work_in(attempt, solver)
    assert attempt.finding is not None
    named = found.score.right or same_claims(attempt.finding.claims, found.truth)  # named, if perhaps not measured
    wrong = None if named else wrong_finding(attempt, at_work, found.weighing)
    return Judged(found, at_work, wrong, None if wrong is None else misconception_of(wrong))


def at_work_in(attempt: Attempt, solver: Solver) -> AtWork:
    """Return an attempt's engine while its fault shows itself."""
    case = attempt.case
    cold = Work(conditions=Conditions(temperature_c=case.temperature_c))
    good = render(solver(case.profile, (), cold), "front", case.bed, attempt.seed)
    at_rest = (fault.location for fault in case.faults if comes_and_goes(fault, case.profile, case.temperature_c))
    shown_at = next(at_rest, None)
    work = cold if shown_at is None else Work(conditions=replace(cold.conditions, moved=shown_at, heated=shown_at))
    solved = solver(case.profile, case.faults, work)
    sound = render(solved, "front", case.bed, attempt.seed)
    return AtWork(shown_at, work, solved, sound, good, reasons_of(solved, sound, good))


def proof_of(attempt: Attempt, reasoner: Reasoner, weighing: Weighing) -> Proof:
    """Return how well a finding was proved, and its minutes beside the best path's.

    Both paths include the right repair and a retest: where it was not made, its minutes are still to come.
    """
    assert attempt.finding is not None
    case = attempt.case
    used = attempt.minutes
    if attempt.faults_left:
        used += mending_minutes(case.profile, attempt.faults_left, attempt.work.covers_off)
    truth, claims = truth_of(case.to_be_found), attempt.finding.claims
    sided = tuple(claim for claim in truth if reasoner.side_counts(claim))
    belief = weighing.belief
    unmeasured = belief.unmeasured(claims, reasoner.inseparable)
    return Proof(
        posterior=belief.proving(claims, sided=bool(sided)),
        reachable=reasoner.everything.findings.get(finding_key(truth), 0.0),
        best_minutes=reasoner.best_minutes,
        used_minutes=used,
        alike=reasoner.alike_places,
        measured=belief.measured(claims, reasoner.inseparable),
        sided=sided,
        failed_retests=failed_retests(attempt),
        unmeasured=unmeasured,
        rival=None if unmeasured is None else belief.next_place(unmeasured, reasoner.inseparable),
    )


def failed_retests(attempt: Attempt) -> int:
    """Return how many retests showed the fault again after as many repairs as the finding names faults."""
    wanted = len(attempt.finding.claims) if attempt.finding else 0
    repairs, failed = 0, 0
    for event in attempt.events:
        repairs += isinstance(event, Repaired)
        if isinstance(event, Retested) and repairs >= wanted:
            failed += not event.proved
    return failed


def wrong_finding(attempt: Attempt, at_work: AtWork, weighing: Weighing) -> Wrong:
    """Return a wrong finding with its circumstances."""
    assert attempt.finding is not None
    known = known_codes(attempt.case.profile)
    codes = [name for event in attempt.events if isinstance(event, CodesRead) for name in event.codes]
    read = [known[name].cylinder for name in codes if name in known]
    taken = [event for event in attempt.events if isinstance(event, Measured)]
    return Wrong(
        attempt.case.profile,
        truth_of(attempt.case.to_be_found),
        attempt.finding.claims,
        slots_by_number(at_work.reasons),
        coded_cylinders(read),
        bool(taken),
        tuple(_connected(taken)),
        weighing.belief.findings.get((), 0.0),
    )


def _connected(taken: list[Measured]) -> Iterator[str]:
    """Yield the displays of readings taken with a plug on and not repeated rightly."""

    def asked(event: Measured) -> tuple[object, ...]:
        request = event.request
        return (request.what, request.point, request.half, request.cylinder, request.other, request.side)

    for place, event in enumerate(taken):
        repeated = any(asked(later) == asked(event) and not later.reading.slips for later in taken[place + 1 :])
        if Slip.STILL_CONNECTED in event.reading.slips and not repeated:
            yield event.reading.display


def outcome_of(attempt: Attempt, found: Scored, misconception: str) -> Outcome:
    """Return the result of an attempt; raises ValueError for one without a finding."""
    if attempt.finding is None:
        raise ValueError("an attempt without a finding has no outcome")
    score = found.score
    said = attempt.finding.claims
    return Outcome(
        points=round(score.points, 2),
        shares=tuple(
            round(share, 4) for share in (score.cylinders, score.location, score.kind, score.proof, score.economy)
        ),
        right=score.right,
        certainty=attempt.finding.certainty,
        places=_places(found.truth),
        said_places=_places(said),
        cylinders=_cylinders(found.truth),
        said_cylinders=_cylinders(said),
        kinds=tuple(sorted({str(claim.kind) for claim in found.truth})),
        said_kinds=tuple(sorted({str(claim.kind) for claim in said})),
        misconception=misconception,
        plays=attempt.count(Heard),
        readings=attempt.count(Measured),
        hints=attempt.count(Hinted),
        used_minutes=round(found.proof.used_minutes, 2),
        best_minutes=round(found.proof.best_minutes, 2),
        time_s=round(attempt.spent_s, 3),
    )


def _places(claims: Sequence[Claim]) -> tuple[str, ...]:
    return tuple(sorted(str(claim.location) for claim in claims))


def _cylinders(claims: Sequence[Claim]) -> tuple[int, ...]:
    return tuple(sorted({number for claim in claims for number in claim.cylinders}))
