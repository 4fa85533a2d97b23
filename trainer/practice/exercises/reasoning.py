"""Exercises of reasoning: which test next, and whether the evidence is enough to commit."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

import numpy as np

from trainer.cases.case import Case
from trainer.cases.practice_draw import BEDS_DBA, Axes, practice_case
from trainer.cases.practice_pool import Pool, class_of_fault
from trainer.circuit.chance import Stream
from trainer.circuit.codes import known_codes
from trainer.practice.course.skills import Skill
from trainer.practice.exercises.ear import off_slots
from trainer.practice.exercises.exercise import Choice, Exercise, Spec, asks, shuffled
from trainer.practice.exercises.ranges import aim_of
from trainer.practice.shown import claims_text, code_lines, test_text
from trainer.reasoning.belief import Belief, finding_key
from trainer.reasoning.menu import WHOLE
from trainer.reasoning.planning import LEAST_BITS, PROVED
from trainer.reasoning.planning import Choice as Next
from trainer.reasoning.questions import Test
from trainer.reasoning.reasoner import Reasoner
from trainer.words import numbers, percent, text

Reasoners = Callable[[Case], Reasoner]
"""Gives the reasoner of a case; the first on an engine takes seconds."""

OFFERED = 4
LEAST_APART = 0.3
"""In octaves of bits per minute: what is nearer to the best is as good."""


def reasoning_exercise(spec: Spec, pool: Pool, reasoners: Reasoners) -> Exercise:
    """Ask what to do next, or whether to stop; the subject says which."""
    chance = spec.chance
    audible = np.flatnonzero(pool.table(BEDS_DBA[0]).audible & ~pool.provoked)
    place = int(audible[chance.below(len(audible))])
    case = practice_case(pool.profile, Axes(int(pool.rows[place]), 1, False, True, spec.seed % 1000))
    reasoner = reasoners(case)
    make = _next if spec.subject == "next" else _stop
    begun = _begun_lines(reasoner, off_slots(pool, place, BEDS_DBA[1]) or pool.fault(place).cylinders)
    asked, shown, choices, at, difficulty = make(spec, reasoner, chance)
    fault = pool.fault(place)
    return Exercise(
        spec, pool.profile, class_of_fault(fault), asks(Skill.REASONING, difficulty, choices), asked, choices, at,
        text(f"exercise.{spec.subject}.rule"), shown=(*begun, *shown),
    )  # fmt: skip


Question = tuple[str, tuple[str, ...], tuple[Choice, ...], int, float]


def _heard_and_read(reasoner: Reasoner) -> tuple[Belief, list[Test]]:
    """Return the belief after the whole test and the codes, and those tests."""
    done = [test for test in reasoner.tests if test.name in ("hear", "codes")]
    return reasoner.belief(reasoner.truth_answers([one for test in done for one in test.questions])), done


def _begun_lines(reasoner: Reasoner, off: Sequence[int]) -> list[str]:
    """Return what a learner has so far: which slots are off, and the codes."""
    (codes,) = (test for test in reasoner.tests if test.name == "codes")
    flags = next(iter(reasoner.truth_answers(codes.questions).values()))
    named = [name for name, up in zip(known_codes(reasoner.matter.profile), flags, strict=True) if up]
    heard = text("exercise.begun.heard", cylinders=numbers(off))
    return [heard, *code_lines(reasoner.matter.profile, named)[: max(len(named), 1)]]


def _next(spec: Spec, reasoner: Reasoner, chance: Stream) -> Question:
    belief, _done = _heard_and_read(reasoner)
    order = reasoner.next_tests(belief.probability, {WHOLE, "codes"})
    telling = [one for one in order if one.test.name not in ("hear", "codes")]
    best = telling[0]
    # near rivals are hard to tell from the best, far ones are not
    apart = [one for one in telling[1:] if _distance(best, one) >= LEAST_APART]
    rates = sorted(apart, key=lambda one: abs(_distance(best, one) - _wanted(spec)))
    rivals = rates[: OFFERED - 1]
    nearest = min(_distance(best, one) for one in rivals)
    choices, at = shuffled([_offered(best, best), *(_offered(one, best) for one in rivals)], chance)
    difficulty = 1.6 - 1.3 * math.log2(1.0 + nearest)
    return text("exercise.next"), (), choices, at, difficulty


def _wanted(spec: Spec) -> float:
    """Return how many times less the rivals should tell per minute, in octaves, at the level of an exercise."""
    return max(float(2.0 ** ((1.6 - aim_of(spec)) / 1.3)) - 1.0, 0.1)


def _distance(best: Next, one: Next) -> float:
    return math.log2(max(best.rate, 1e-6) / max(one.rate, 1e-6))


def _offered(one: Next, best: Next) -> Choice:
    key = "exercise.next.best" if one is best else "exercise.next.less"
    return Choice(test_text(one.test.name), text(key, bits=one.bits, minutes=one.minutes))


def _stop(spec: Spec, reasoner: Reasoner, chance: Stream) -> Question:
    steps = [step for step in reasoner.best_path if step.name != "repair_and_retest"]
    tests = {test.name: test for test in (*reasoner.tests, *(channel.test for channel in reasoner.channels))}
    beliefs = []
    for count in range(1, len(steps) + 1):
        done = [tests[step.name] for step in steps[:count] if step.name in tests]
        beliefs.append(reasoner.belief(reasoner.truth_answers([one for test in done for one in test.questions])))
    sure_by_step = [next(iter(belief.findings.values())) for belief in beliefs]
    hard = [_hard_to_judge(sure) for sure in sure_by_step]
    # whether it is proved comes first, so that neither answer is the likelier
    proved = chance.uniform(1)[0] < 0.5
    alike = [row for row, sure in enumerate(sure_by_step) if (sure >= PROVED) == proved] or list(range(len(steps)))
    nearest = sorted(alike, key=lambda row: abs(hard[row] - aim_of(spec)))[:2]
    row = nearest[chance.below(len(nearest))]
    belief, count = beliefs[row], row + 1
    key, sure = next(iter(belief.findings.items()))
    enough = sure >= PROVED
    likeliest = next(claims for claims in reasoner.hypotheses.claims if finding_key(claims) == key)
    told = percent(sure)
    others = sum(chance_ >= LEAST_BITS for chance_ in belief.findings.values()) - 1
    choices = (
        Choice(text("exercise.stop.commit"), text("exercise.stop.commit.why", sure=told),
               "" if enough else "by_ear_alone" if count == 1 else ""),
        Choice(text("exercise.stop.on"), text("exercise.stop.on.why", sure=told, others=others)),
    )  # fmt: skip
    shown = [text("exercise.stop.done", step=test_text(step.name)) for step in steps[:count]]
    shown.append(text("exercise.stop.likeliest", finding=claims_text(likeliest)))
    return text("exercise.stop"), tuple(shown), choices, 0 if enough else 1, hard[row]


def _hard_to_judge(sure: float) -> float:
    """Return how hard it is to say whether a finding is proved: hardest near the line, from either side."""
    return 0.8 - 10.0 * (sure - PROVED) if sure >= PROVED else 0.8 - 2.5 * (PROVED - sure)
