"""Reasoning exercises: which test next, and whether the evidence is enough to commit."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

import numpy as np

from trainer.cases.drawing.practice_case import BEDS_DBA, Axes, practice_case
from trainer.cases.drawing.practice_pool import Pool, class_of_fault
from trainer.cases.single_case.case import Case
from trainer.circuit.chance import Stream
from trainer.circuit.codes import known_codes
from trainer.errors import WrongCallError
from trainer.instruments.bench_tests import BenchTest, BenchTestKind, Operation, Price
from trainer.practice.course.skills import Skill
from trainer.practice.exercises.difficulty_ranges import aim_of
from trainer.practice.exercises.ear_exercises import off_slots
from trainer.practice.exercises.exercise_types import Choice, Exercise, Spec, question_demand, shuffled_choices
from trainer.practice.reports.attempt_lines import claims_text, code_lines, test_text
from trainer.reasoning.advice.measured import PROVED
from trainer.reasoning.advice.planning import FREE_MINUTES, LEAST_BITS, cost_of
from trainer.reasoning.advice.planning import Choice as Next
from trainer.reasoning.advice.trade_order import BEGIN
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.menu import WHOLE
from trainer.reasoning.universe.questions import Test
from trainer.reasoning.verdict.belief import Belief, finding_key
from trainer.words import numbers, percent, text

Reasoners = Callable[[Case], Reasoner]
"""Gives the reasoner of a case; the first on an engine takes seconds."""

OFFERED, MOST_TRIES = 4, 40
LEAST_APART = 0.3
"""In octaves of bits per minute: what is nearer to the best is as good."""


def reasoning_exercise(spec: Spec, pool: Pool, reasoners: Reasoners) -> Exercise:
    """Ask what to do next, or whether to stop; the subject says which."""
    chance = spec.chance
    audible = np.flatnonzero(pool.table(BEDS_DBA[0]).audible & ~pool.provoked)
    for _time in range(MOST_TRIES):
        place = int(audible[chance.below(len(audible))])
        made = _of_place(spec, pool, place, reasoners, chance)
        if made is not None:
            break
    else:
        raise WrongCallError("no_exercise", name=spec.name)
    return made


def _of_place(spec: Spec, pool: Pool, place: int, reasoners: Reasoners, chance: Stream) -> Exercise | None:
    """Return the exercise about one fault, None where it gives no question with one right answer."""
    case = practice_case(pool.profile, Axes(int(pool.rows[place]), 1, False, True, spec.seed % 1000))
    reasoner = reasoners(case)
    make = _next if spec.subject == "next" else _stop
    begun = _begun_lines(reasoner, off_slots(pool, place, BEDS_DBA[1]) or pool.fault(place).cylinders)
    question = make(spec, reasoner, chance)
    if question is None:
        return None
    asked, shown, choices, at, difficulty = question
    fault = pool.fault(place)
    return Exercise(
        spec, pool.profile, class_of_fault(fault),
        question_demand(Skill.REASONING, difficulty, choices), asked, choices, at,
        text(f"exercise.{spec.subject}.rule"), shown=(*begun, *shown),
    )  # fmt: skip


Question = tuple[str, tuple[str, ...], tuple[Choice, ...], int, float]


def _heard_and_read(reasoner: Reasoner) -> tuple[Belief, list[Test]]:
    """Return the belief after the whole test and the codes, and those tests."""
    done = [test for test in reasoner.tests if test.name.kind in BEGIN]
    return reasoner.belief(reasoner.truth_answers([one for test in done for one in test.questions])), done


def _begun_lines(reasoner: Reasoner, off: Sequence[int]) -> list[str]:
    """Return what a learner has so far: which slots are off, and the codes."""
    (codes,) = (test for test in reasoner.tests if test.name.kind is BenchTestKind.CODES)
    flags = next(iter(reasoner.truth_answers(codes.questions).values()))
    named = [name for name, up in zip(known_codes(reasoner.facts.profile), flags, strict=True) if up]
    every = len(off) == len(reasoner.facts.profile.cylinders)
    heard = text("exercise.begun.all") if every else text("exercise.begun.heard", cylinders=numbers(off))
    return [heard, *code_lines(reasoner.facts.profile, named)[: max(len(named), 1)]]


def _next(spec: Spec, reasoner: Reasoner, chance: Stream) -> Question | None:
    _belief, begun = _heard_and_read(reasoner)
    tests, path = {test.name: test for test in reasoner.tests}, _steps(reasoner)
    done = [tests[name] for name in path[: chance.below(max(len(path), 1))]]
    belief = reasoner.belief(reasoner.truth_answers([one for test in (*begun, *done) for one in test.questions]))
    minutes, paid = reasoner.facts.profile.minutes, frozenset({WHOLE, Price(Operation.CODES)})
    for test in done:
        paid = cost_of(test, paid, minutes)[1]
    order = reasoner.next_tests(belief, paid, [test.name for test in (*begun, *done)], closer=False)
    # what costs nothing is no question of minutes
    telling = [one for one in order if one.minutes > FREE_MINUTES and one.bits > LEAST_BITS]
    apart = [one for one in telling[1:] if _distance(telling[0], one) >= LEAST_APART]
    if len(apart) < OFFERED - 1:
        return None
    best = telling[0]
    # near rivals are hard to tell from the best, far ones are not
    count = 1 if spec.easiest else OFFERED - 1
    rivals = sorted(apart, key=lambda one: abs(_distance(best, one) - _wanted(spec)))[:count]
    nearest = min(_distance(best, one) for one in rivals)
    choices, at = shuffled_choices(spec, [_choice(best, best), *(_choice(one, best) for one in rivals)], chance)
    if len(choices) <= count:
        return None
    difficulty = 1.6 - 1.3 * math.log2(1.0 + nearest)
    shown = tuple(text("exercise.stop.done", step=test_text(test.name)) for test in done)
    return text("exercise.next"), shown, choices, at, difficulty


def _wanted(spec: Spec) -> float:
    """Return how many times less the rivals should tell per minute, in octaves, at the level of an exercise."""
    return max(float(2.0 ** ((1.6 - aim_of(spec)) / 1.3)) - 1.0, 0.1)


def _distance(best: Next, one: Next) -> float:
    return math.log2(max(best.rate, 1e-6) / max(one.rate, 1e-6))


def _choice(one: Next, best: Next) -> Choice:
    key = "exercise.next.best" if one is best else "exercise.next.less"
    said = text("exercise.next.choice", test=test_text(one.test.name), minutes=one.minutes)
    return Choice(one.test.name, said, text(key, bits=one.bits, minutes=one.minutes))


def _stop(spec: Spec, reasoner: Reasoner, chance: Stream) -> Question | None:
    """Evidence with what it leaves: one finding, or more than one that is likely enough to matter."""
    tests, path = {test.name: test for test in reasoner.tests}, _steps(reasoner)
    _belief, begun = _heard_and_read(reasoner)
    found = []
    for count in range(len(path) + 1):
        done = [*begun, *(tests[name] for name in path[:count])]
        belief = reasoner.belief(reasoner.truth_answers([one for test in done for one in test.questions]))
        left = sum(likely >= STILL_MATTERS for likely in belief.findings.values())
        sure = next(iter(belief.findings.values()))
        if (sure >= PROVED and left == 1) or (sure < CLEARLY_OPEN and left > 1):
            found.append((count, sure, left, tuple(belief.findings)[:NAMED]))
    # whether it is proved comes first, so that neither answer is the likelier
    proved = chance.uniform(1)[0] < 0.5
    fitting = [one for one in found if (one[1] >= PROVED) == proved]
    if not fitting:
        return None
    count, sure, left, likeliest = min(fitting, key=lambda one: abs(_hard_to_judge(one[1]) - aim_of(spec)))
    claims = {finding_key(one): claims_text(one) for one in reasoner.hypotheses.claims}
    named = sorted(claims[key] for key in likeliest)  # as many whether it is proved or not
    told = percent(sure)
    choices = (
        Choice("commit", text("exercise.stop.commit"), text("exercise.stop.commit.why", sure=told),
               "" if proved or count else "by_ear_alone"),
        Choice("on", text("exercise.stop.on"), text("exercise.stop.on.why", sure=told, others=left - 1)),
    )  # fmt: skip
    shown = [text("exercise.stop.done", step=test_text(name)) for name in path[:count]]
    shown.append(text("exercise.stop.likeliest", findings="; ".join(named)))
    return text("exercise.stop"), tuple(shown), choices, 0 if proved else 1, _hard_to_judge(sure)


CLEARLY_OPEN, STILL_MATTERS, NAMED = 0.9, 0.02, 3
"""Under this chance a finding is plainly not proved; from this on another one still matters; so many are named."""


def _steps(reasoner: Reasoner) -> list[BenchTest]:
    """Return a good path after listening and reading codes, of the menu.

    The reasoner's own best path also weighs swaps, which are solved anew for every engine that is thought of: seconds.
    """
    steps, _left = reasoner.path(ahead=False, closer=False)
    return [step.name for step in steps if step.name.kind not in BEGIN]


def _hard_to_judge(sure: float) -> float:
    """Return how hard it is to say whether a finding is proved: hardest near the line, from either side."""
    return 0.8 - 10.0 * (sure - PROVED) if sure >= PROVED else 0.8 - 2.5 * (PROVED - sure)
