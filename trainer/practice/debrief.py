"""The debrief: truth against finding, the score, why each slot sounded as it did, the path taken.

Proof and economy are plain versions: proof counts kinds of evidence, economy compares with a fixed textbook path.
They stand in until evidence is weighed by simulation.
"""

from __future__ import annotations

from dataclasses import dataclass

from trainer.cases.case import Case
from trainer.circuit.elements import Location
from trainer.circuit.fault_space import fits
from trainer.circuit.faults import Conditions
from trainer.circuit.harness import circuit_of
from trainer.instruments.bench import Work
from trainer.practice.actions import Solver
from trainer.practice.attempt import Attempt, CardLine
from trainer.practice.events import EventKind
from trainer.reasoning.explanation import SlotReason, reasons_of
from trainer.reasoning.finding import Claim, fault_of, truth_of
from trainer.reasoning.score import Score, score_of
from trainer.sound.render import Sound, render

TEXTBOOK = {
    Location.DRIVE_MODULE: ("module_ohms", "swap_returns"),
    Location.ENGINE_HARNESS: ("module_ohms", "pass_through_ohms"),
    Location.PASS_THROUGH: ("module_ohms", "pass_through_ohms"),
    Location.UNDER_COVER: ("module_ohms", "pass_through_ohms", "cover_off", "injector_ohms"),
    Location.COIL: ("module_ohms", "pass_through_ohms", "cover_off", "injector_ohms"),
    Location.ARMATURE: ("module_ohms", "current_trace"),
}
"""What a textbook path measures after the test and the codes, by where the fault is: common practice, no source."""


@dataclass(frozen=True, slots=True)
class Debrief:
    """Everything the debrief shows; sounds are rendered at the front from the attempt's own seed."""

    truth: tuple[Claim, ...]
    claims: tuple[Claim, ...]
    score: Score
    reasons: tuple[SlotReason, ...]
    path: tuple[CardLine, ...]
    minutes: float
    textbook_minutes: float
    truth_sound: Sound
    answer_sound: Sound | None
    answer_reasons: tuple[SlotReason, ...]


def plain_proof(attempt: Attempt) -> float:
    """Return a plain share of proof: heard, codes read, measured at two places or by two means, retest even."""
    kinds = {line.kind for line in attempt.card}
    places = {
        (line.data["request"]["what"], line.data["request"]["point"], line.data["request"]["half"],
         line.data["request"]["location"])
        for line in attempt.card
        if line.kind is EventKind.MEASURED
    }  # fmt: skip
    places |= {(line.data["did"], "", "", "") for line in attempt.card if line.kind is EventKind.WORKED}
    retests = [line for line in attempt.card if line.kind is EventKind.RETESTED]
    shown = bool(retests) and bool(retests[-1].data["proved"]) and not attempt.faults_left
    proved = shown or not attempt.case.faults
    steps = (EventKind.HEARD in kinds, EventKind.CODES_READ in kinds, len(places) >= 2, proved)
    return sum(steps) / len(steps)


def textbook_minutes(case: Case) -> float:
    """Return the minutes of the textbook path to a case's fault; to a clean bill where the circuit passes."""
    tests = {"actuation_test", "codes"}
    for location in [fault.location for fault in case.faults] or [Location.ENGINE_HARNESS]:
        tests |= set(TEXTBOOK[location])
    return sum(case.profile.minutes[test] for test in tests)


def debrief_of(attempt: Attempt, solver: Solver) -> Debrief:
    """Return the debrief of an attempt that has a finding; raises ValueError for one that has none."""
    if attempt.finding is None:
        raise ValueError("an attempt is debriefed after its finding")
    case = attempt.case
    work = Work(conditions=Conditions(temperature_c=case.temperature_c))
    # an intermittent fault is shown at work: moved and warm where it is
    shown = work
    if case.faults:
        place = case.faults[0].location
        conditions = Conditions(temperature_c=case.temperature_c, moved=place, heated=place)
        shown = Work(conditions=conditions)
    good = render(solver(case.profile, (), work), "front", case.bed, attempt.seed)
    solved = solver(case.profile, case.faults, shown)
    truth_sound = render(solved, "front", case.bed, attempt.seed)
    used = sum(line.minutes for line in attempt.card if line.kind not in (EventKind.REPAIRED, EventKind.RETESTED))
    par = textbook_minutes(case)
    score = score_of(attempt.finding, truth_of(case.faults), plain_proof(attempt), min(1.0, par / used) if used else 0)
    answer_sound: Sound | None = None
    answer_reasons: tuple[SlotReason, ...] = ()
    answer = tuple(fault_of(claim) for claim in attempt.finding.claims)
    sound_circuit = circuit_of(case.profile)
    if all(fits(sound_circuit, fault) for fault in answer):
        answered = solver(case.profile, answer, shown)
        answer_sound = render(answered, "front", case.bed, attempt.seed)
        answer_reasons = reasons_of(answered, answer_sound, good)
    return Debrief(
        truth=truth_of(case.faults),
        claims=attempt.finding.claims,
        score=score,
        reasons=reasons_of(solved, truth_sound, good),
        path=attempt.card,
        minutes=attempt.minutes,
        textbook_minutes=par,
        truth_sound=truth_sound,
        answer_sound=answer_sound,
        answer_reasons=answer_reasons,
    )
