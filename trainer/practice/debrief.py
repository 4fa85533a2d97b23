"""The debrief: truth against finding, the score, why each slot sounded as it did, the path beside the best path."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from trainer.circuit.codes import known_codes
from trainer.circuit.elements import Location
from trainer.circuit.fault_space import comes_and_goes, fits
from trainer.circuit.faults import Conditions, Fault
from trainer.circuit.harness import circuit_of
from trainer.circuit.solve import with_shared_slots
from trainer.errors import WrongCallError
from trainer.instruments.bench import Work
from trainer.instruments.measuring import measured
from trainer.instruments.reading import Slip
from trainer.practice.actions import Solver
from trainer.practice.attempt import Attempt, CardLine, begun
from trainer.practice.events import EventKind
from trainer.practice.gathered import request_of_data
from trainer.practice.hints import next_choices
from trainer.practice.weighing import Weighing, weighed
from trainer.practice.work_data import work_of
from trainer.reasoning.belief import finding_key
from trainer.reasoning.explanation import SlotReason, reasons_of
from trainer.reasoning.finding import Claim, fault_of, truth_of
from trainer.reasoning.misconceptions import Wrong, coded_cylinders, misconception_of, slots_by_number
from trainer.reasoning.planning import LEAST_BITS, Step
from trainer.reasoning.prices import mending_minutes
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.score import Proof, Score, score_of
from trainer.sound.render import Sound, render


@dataclass(frozen=True, slots=True)
class OtherReading:
    """A reading that was taken, and what it would have shown if the finding were true."""

    line: CardLine
    display: str


@dataclass(frozen=True)
class Debrief:
    """Everything the debrief shows; sounds are rendered at the front from the attempt's own seed.

    `shown_at` is where the engine is moved and warm while the truth is played: an intermittent fault is shown at
    work. `misconception` is None for a right finding. `would_tell` names the test that would have told most of what was
    left open, "" where proof was full or none would.
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
    would_tell: str
    wrong: Wrong | None
    misconception: str | None


def debrief_of(attempt: Attempt, solver: Solver, reasoner: Reasoner) -> Debrief:
    """Return the debrief of an attempt that has a finding; raises ValueError for one that has none."""
    if attempt.finding is None:
        raise ValueError("an attempt is debriefed after its finding")
    case = attempt.case
    cold = Work(conditions=Conditions(temperature_c=case.temperature_c))
    good = render(solver(case.profile, (), cold), "front", case.bed, attempt.seed)
    at_rest = (fault.location for fault in case.faults if comes_and_goes(fault, case.profile, case.temperature_c))
    shown_at = next(at_rest, None)
    shown = cold if shown_at is None else Work(conditions=replace(cold.conditions, moved=shown_at, heated=shown_at))
    solved = solver(case.profile, case.faults, shown)
    truth_sound = render(solved, "front", case.bed, attempt.seed)
    reasons = reasons_of(solved, truth_sound, good)
    weighing = weighed(attempt, reasoner)
    proof = proof_of(attempt, reasoner, weighing)
    truth = truth_of(case.to_be_found)
    score = score_of(attempt.finding, truth, proof)
    answer = tuple(fault_of(claim) for claim in attempt.finding.claims)
    answer_sound: Sound | None = None
    answer_reasons: tuple[SlotReason, ...] = ()
    other_readings: tuple[OtherReading, ...] = ()
    sound_circuit = circuit_of(case.profile)
    if all(fits(sound_circuit, fault) for fault in answer):
        answered = with_shared_slots(solved, solver(case.profile, answer, shown))
        answer_sound = render(answered, "front", case.bed, attempt.seed)
        answer_reasons = reasons_of(answered, answer_sound, good)
        other_readings = _other_readings(attempt, answer)
    wrong = None if score.right else _wrong(attempt, truth, reasons, weighing)
    return Debrief(
        truth=truth_of(case.faults),
        claims=attempt.finding.claims,
        score=score,
        proof=proof,
        reasons=reasons,
        weighing=weighing,
        best_path=reasoner.best_path,
        minutes=attempt.minutes,
        truth_sound=truth_sound,
        answer_sound=answer_sound,
        answer_reasons=answer_reasons,
        other_readings=other_readings,
        shown_at=shown_at,
        would_tell=_would_tell(reasoner, weighing, proof, attempt),
        wrong=wrong,
        misconception=None if wrong is None else misconception_of(wrong),
    )


def proof_of(attempt: Attempt, reasoner: Reasoner, weighing: Weighing) -> Proof:
    """Return how well a finding was proved, and its minutes beside the best path's.

    Both paths include the right repair and a retest: where it was not made, its minutes are still to come.
    """
    assert attempt.finding is not None
    case = attempt.case
    used = attempt.minutes
    if attempt.faults_left:
        used += mending_minutes(case.profile, attempt.faults_left, attempt.work.covers_off)
    reachable = reasoner.everything.findings.get(finding_key(truth_of(case.to_be_found)), 0.0)
    return Proof(
        posterior=weighing.belief.findings.get(finding_key(attempt.finding.claims), 0.0),
        reachable=1.0 if case.right_answer is None else reachable,
        best_minutes=sum(step.minutes for step in reasoner.best_path),
        used_minutes=used,
        alike=reasoner.alike_places,
    )


def _other_readings(attempt: Attempt, answer: tuple[Fault, ...]) -> tuple[OtherReading, ...]:
    """Return every reading taken beside what it would have been on an engine with the faults that were named."""
    before = begun(attempt.case, attempt.seed).work
    readings = []
    for line in attempt.card:
        if line.kind is EventKind.FOUND:
            break
        if line.kind is EventKind.MEASURED:
            request = request_of_data(line.data["request"])
            try:
                other = measured(attempt.case.profile, answer, before, request, attempt.seed).reading
            except WrongCallError:
                continue
            readings.append(OtherReading(line, other.display))
        before = work_of(line.data["work"]) if "work" in line.data else before
    return tuple(readings)


def _would_tell(reasoner: Reasoner, weighing: Weighing, proof: Proof, attempt: Attempt) -> str:
    if proof.share >= 1.0:
        return ""
    choices = next_choices(attempt, reasoner, weighing)
    return next((choice.test.name for choice in choices if choice.bits > LEAST_BITS), "")


def _wrong(attempt: Attempt, truth: tuple[Claim, ...], reasons: tuple[SlotReason, ...], weighing: Weighing) -> Wrong:
    """Return a wrong finding with its circumstances."""
    assert attempt.finding is not None
    known = known_codes(attempt.case.profile)
    lines = [line for line in attempt.card if line.kind in (EventKind.CODES_READ, EventKind.MEASURED)]
    read = [known[name].cylinder for line in lines for name in line.data.get("codes", ()) if name in known]
    taken = [line for line in lines if line.kind is EventKind.MEASURED]
    return Wrong(
        attempt.case.profile,
        truth,
        attempt.finding.claims,
        slots_by_number(reasons),
        coded_cylinders(read),
        bool(taken),
        tuple(_connected(taken)),
        weighing.belief.findings.get((), 0.0),
    )


def _connected(taken: list[CardLine]) -> Iterator[str]:
    """Yield the displays of readings taken with a plug on and not repeated rightly."""

    def asked(line: CardLine) -> tuple[object, ...]:
        request = line.data["request"]
        return tuple(request[name] for name in ("what", "point", "half", "cylinder", "other", "side"))

    for place, line in enumerate(taken):
        repeated = any(
            asked(later) == asked(line) and not later.data["reading"]["slips"] for later in taken[place + 1 :]
        )
        if Slip.STILL_CONNECTED in line.data["reading"]["slips"] and not repeated:
            yield str(line.data["reading"]["display"])
