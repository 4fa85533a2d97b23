"""Three hints of rising strength: which kind of step is next, which one and its worth, the step worked through."""

from __future__ import annotations

from dataclasses import dataclass

from trainer.instruments.bench_tests import BenchTest
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.events import CodesRead, Heard, Hinted, Measured, Worked
from trainer.practice.attempt.evidence import all_answers, evidence_of, paid_for
from trainer.practice.attempt.weighing import Weighing, weighed
from trainer.reasoning.advice.channels import Channel
from trainer.reasoning.advice.measured import PROVED
from trainer.reasoning.advice.planning import LEAST_BITS, Choice
from trainer.reasoning.advice.repairs import Repairs, minutes_saved, repairs_in_order
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.questions import Question
from trainer.reasoning.verdict.belief import Belief, FindingKey, finding_key

STRENGTHS = 3
WORKED_FINDINGS = 3


@dataclass(frozen=True, slots=True)
class Hint:
    """One hint: its strength, the test it points to (None where nothing more is to be learned), its minutes and bits.

    `proved` says that the evidence proves a finding already.

    `findings` are the likeliest findings with their chances, and `leads` groups them by what the test would show: the
    same number, the same answer. Both are told by the strongest hint only. `saved` are the minutes of repair that the
    test saves on average; `repairs` stand in the order to make them where no test is left.
    """

    strength: int
    test: BenchTest | None
    proved: bool = False
    minutes: float = 0.0
    bits: float = 0.0
    findings: tuple[tuple[FindingKey, float], ...] = ()
    leads: tuple[int, ...] = ()
    saved: float = 0.0
    repairs: Repairs | None = None


def next_hint(attempt: Attempt, reasoner: Reasoner) -> Hint:
    """Return the next hint, a step stronger than the last one unless evidence has come in since."""
    weighing = weighed(attempt, reasoner)
    belief = weighing.belief
    findings = tuple(list(belief.findings.items())[:WORKED_FINDINGS])
    strength = _strength(attempt)
    choices = next_choices(attempt, reasoner, weighing)
    best = next((choice for choice in choices if choice.bits > LEAST_BITS), None)
    proved = reasoner.standing(belief).proves(PROVED)
    profile, faults, covers = attempt.case.profile, reasoner.hypotheses.faults, attempt.work.covers_off
    if best is None or proved:
        repairs = None if proved else repairs_in_order(profile, faults, belief.probability, covers)
        return Hint(strength, None, proved, repairs=repairs)
    if strength == 1:
        return Hint(strength, best.test.name)
    saved = minutes_saved(profile, faults, belief.probability, best.channel, covers)
    worked = strength == STRENGTHS
    return Hint(
        strength,
        best.test.name,
        minutes=best.minutes,
        bits=best.bits,
        findings=findings if worked else (),
        leads=tuple(_likeliest_outcome(best.channel, belief, key) for key, _chance in findings) if worked else (),
        saved=saved,
    )


def next_choices(attempt: Attempt, reasoner: Reasoner, weighing: Weighing) -> list[Choice]:
    """Return the tests still open in the trade's order; one whose answers are all known is not open."""
    shown = all_answers(evidence_of(attempt, reasoner))
    read = {question.work for question in shown if question.kind == "codes" and question.tested}

    def known(question: Question) -> bool:
        return question in shown or (question.kind == "codes" and question.work in read)

    done = [test.name for test in reasoner.tests if all(map(known, test.questions))]
    return reasoner.next_tests(weighing.belief, paid_for(attempt), done)


def _likeliest_outcome(channel: Channel, belief: Belief, key: FindingKey) -> int:
    """Return which of a test's outcomes the likeliest hypothesis of a finding leads to."""
    rows = [row for row, claims in enumerate(belief.hypotheses.claims) if finding_key(claims) == key]
    return int(channel.label[max(rows, key=lambda row: float(belief.probability[row]))])


def _strength(attempt: Attempt) -> int:
    """Return 1 after new evidence, else one more than the last hint, up to the strongest."""
    strength = 0
    for event in attempt.events:
        if isinstance(event, Hinted):
            strength = event.strength
        elif isinstance(event, Heard | CodesRead | Measured | Worked):
            strength = 0
    return min(strength + 1, STRENGTHS)
