"""The debrief: truth against finding, the score, why each slot sounded as it did, the path beside the best path."""

from __future__ import annotations

from dataclasses import dataclass

from trainer.cases.drawing.features import Features, features_of
from trainer.cases.drawing.practice_pool import Pool
from trainer.circuit.elements import Location
from trainer.circuit.fault import Fault
from trainer.circuit.fault_space import fits
from trainer.circuit.harness import circuit_of
from trainer.circuit.solve import with_shared_slots
from trainer.errors import WrongCallError
from trainer.instruments.bench_tests import BenchTest
from trainer.instruments.measuring import measured
from trainer.practice.attempt.actions import Solver
from trainer.practice.attempt.attempt import Attempt, begun
from trainer.practice.attempt.events import EngineEvent, Found, Measured
from trainer.practice.attempt.hints import next_choices
from trainer.practice.attempt.judging import judged, outcome_of
from trainer.practice.attempt.outcome import Outcome
from trainer.practice.attempt.weighing import Weighing
from trainer.reasoning.advice.planning import LEAST_BITS, Step
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.finding import Claim, fault_of, truth_of
from trainer.reasoning.verdict.explanation import SlotReason, reasons_of
from trainer.reasoning.verdict.misconceptions import Wrong
from trainer.reasoning.verdict.score import Proof, Score
from trainer.sound.render import Sound, render


@dataclass(frozen=True, slots=True)
class OtherReading:
    """A reading that was taken, and what it would have shown if the finding were true."""

    event: Measured
    display: str


@dataclass(frozen=True)
class Debrief:
    """Everything the debrief shows; sounds are rendered at the front from the attempt's own seed.

    `shown_at` is where the engine is moved and warm while the truth is played: an intermittent fault is shown at
    work. `misconception` is None where the finding names the truth. `would_tell` is the test that would have told
    most of what was left open, "" where proof was full or none would. `hidden` are the true fault that hides the other,
    and that other. `features` are what made the case hard.
    """

    truth: tuple[Claim, ...]
    claims: tuple[Claim, ...]
    score: Score
    proof: Proof
    reasons: tuple[SlotReason, ...]
    weighing: Weighing
    best_path: tuple[Step, ...]
    minutes: float
    truth_sound: Sound
    answer_sound: Sound | None
    answer_reasons: tuple[SlotReason, ...]
    other_readings: tuple[OtherReading, ...]
    shown_at: Location | None
    would_tell: BenchTest | None
    wrong: Wrong | None
    hidden: tuple[Claim, Claim] | None
    misconception: str | None
    outcome: Outcome
    features: Features


def debrief_of(attempt: Attempt, solver: Solver, reasoner: Reasoner, pool: Pool) -> Debrief:
    """Return the debrief of an attempt that has a finding, `pool` being of its engine.

    Raises ValueError for an attempt that has none.
    """
    case, judgement = attempt.case, judged(attempt, solver, reasoner)
    found, at_work = judgement.scored, judgement.at_work
    assert attempt.finding is not None
    answer = tuple(fault_of(claim) for claim in attempt.finding.claims)
    answer_sound: Sound | None = None
    answer_reasons: tuple[SlotReason, ...] = ()
    other_readings: tuple[OtherReading, ...] = ()
    sound_circuit = circuit_of(case.profile)
    if all(fits(sound_circuit, fault) for fault in answer):
        answered = with_shared_slots(at_work.solved, solver(case.profile, answer, at_work.work))
        answer_sound = render(answered, "front", case.bed, attempt.seed)
        answer_reasons = reasons_of(answered, answer_sound, at_work.good)
        other_readings = _other_readings(attempt, answer)
    return Debrief(
        truth=truth_of(case.faults),
        claims=attempt.finding.claims,
        score=found.score,
        proof=found.proof,
        reasons=at_work.reasons,
        weighing=found.weighing,
        best_path=reasoner.best_path,
        minutes=attempt.minutes,
        truth_sound=at_work.sound,
        answer_sound=answer_sound,
        answer_reasons=answer_reasons,
        other_readings=other_readings,
        shown_at=at_work.shown_at,
        would_tell=_would_tell(reasoner, found.weighing, found.proof, attempt),
        wrong=judgement.wrong,
        hidden=reasoner.hidden,
        misconception=judgement.misconception,
        outcome=outcome_of(attempt, found, judgement.misconception or ""),
        features=features_of(case, pool),
    )


def _other_readings(attempt: Attempt, answer: tuple[Fault, ...]) -> tuple[OtherReading, ...]:
    """Return every reading taken beside what it would have been on an engine with the faults that were named."""
    before = begun(attempt.case, attempt.seed).work
    readings = []
    for event in attempt.events:
        if isinstance(event, Found):
            break
        if isinstance(event, Measured):
            try:
                other = measured(attempt.case.profile, answer, before, event.request, attempt.seed).reading
            except WrongCallError:
                continue
            readings.append(OtherReading(event, other.display))
        before = event.work if isinstance(event, EngineEvent) else before
    return tuple(readings)


def _would_tell(reasoner: Reasoner, weighing: Weighing, proof: Proof, attempt: Attempt) -> BenchTest | None:
    if proof.share >= 1.0:
        return None
    choices = next_choices(attempt, reasoner, weighing)
    return next((choice.test.name for choice in choices if choice.bits > LEAST_BITS), None)
