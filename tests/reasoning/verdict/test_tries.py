"""A try that shows nothing only lowers the odds; Bayes' rule for a fault that shows itself with a stated chance."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from trainer.circuit.elements import Location
from trainer.circuit.fault import Conditions
from trainer.instruments.bench import Work
from trainer.instruments.bench_tests import BenchTest, BenchTestKind
from trainer.instruments.measuring import tried
from trainer.instruments.tries import CHANCE, GLANCE, MOVE, Effort, Try
from trainer.reasoning.advice.channels import channel_of
from trainer.reasoning.universe import questions
from trainer.reasoning.universe.questions import Expected, Prediction, Question
from trainer.reasoning.verdict.joint import after_block, blocks_of, nothing_followed, try_of

HARD = CHANCE[Effort.THOROUGH]
SHOWN, REST = 40.0, 0.0


def moved(number: int = 1, effort: Effort = Effort.THOROUGH) -> Work:
    return tried(Work(conditions=Conditions()), MOVE, Location.ENGINE_HARNESS, Try(number=number, effort=effort))


def expects(question: Question) -> Expected:
    """Two hypotheses: an intermittent fault, and none."""
    weights = tuple(chance for chance, _state in question.states())
    states = [[SHOWN], [REST]], [[REST], [REST]]
    return Expected(tuple(Prediction(np.array(one)) for one in states), weights=weights)


def odds(*asked: tuple[Question, float]) -> float:
    """Return how many times the answers multiply the odds of the intermittent fault."""
    expected = {question: expects(question) for question, _seen in asked}
    answers = {question: np.array([seen]) for question, seen in asked}
    total, followed = np.zeros(2), nothing_followed(2)
    for block in blocks_of(answers):
        told, followed = after_block(block, expected, answers, followed)
        total += told
    return float(np.exp(total[0] - total[1]))


def test_a_try_without_result_lowers_the_odds_by_the_chance_that_it_would_have_shown() -> None:
    assert odds((Question("slot", moved(), slot=3), REST)) == pytest.approx(1.0 - HARD, rel=1e-3)
    gentle = Question("slot", moved(effort=Effort.GENTLE), slot=3)
    assert odds((gentle, REST)) == pytest.approx(1.0 - CHANCE[Effort.GENTLE], rel=1e-3)


def test_another_try_lowers_them_again_but_another_look_at_the_same_try_does_not() -> None:
    first, again = Question("slot", moved(1), slot=3), Question("slot", moved(2), slot=3)
    assert odds((first, REST), (again, REST)) == pytest.approx((1.0 - HARD) ** 2, rel=1e-3)
    same = Question("trace", moved(1), slot=3)
    assert odds((first, REST), (same, REST)) == pytest.approx(1.0 - HARD, rel=1e-3)


def test_a_try_with_result_settles_it() -> None:
    assert odds((Question("slot", moved(), slot=3), SHOWN)) > 1000.0


def test_a_meter_without_capture_says_less_by_showing_nothing() -> None:
    plain = Question("ohms", moved())
    assert odds((plain, REST)) == pytest.approx(1.0 - HARD * GLANCE, rel=1e-3)
    assert odds((replace(plain, captured=True), REST)) == pytest.approx(1.0 - HARD, rel=1e-3)


def test_a_try_is_worth_less_than_a_sure_test() -> None:
    tests = [
        questions.Test(BenchTest(BenchTestKind.MOVE), (), True, (Question("slot", work, slot=3),))
        for work in (moved(), Work())
    ]
    even = np.array([0.5, 0.5])
    uncertain = channel_of(tests[0], {tests[0].questions[0]: expects(tests[0].questions[0])})
    sure = channel_of(tests[1], {tests[1].questions[0]: Expected((Prediction(np.array([[SHOWN], [REST]])),))})
    # the Z channel: with even priors it tells H(p/2) − H(p)/2 bits (Shannon 1948)
    z = entropy(HARD / 2) - entropy(HARD) / 2
    assert uncertain.bits(even) == pytest.approx(z, abs=0.02)
    assert sure.bits(even) == pytest.approx(1.0, abs=0.02)


def entropy(chance: float) -> float:
    return float(-chance * np.log2(chance) - (1.0 - chance) * np.log2(1.0 - chance))


def test_what_a_try_has_not_shown_is_worth_nothing_in_the_same_try_and_something_in_the_next() -> None:
    question = Question("ohms", moved(), captured=True)
    expected = {question: expects(question)}
    channel = channel_of(questions.Test(BenchTest(BenchTestKind.PAIRS_MOVED), (), False, (question,)), expected)
    even = np.array([0.5, 0.5])
    _logs, followed = after_block([question], expected, {question: np.array([REST])}, nothing_followed(2))
    _logs, shown = after_block([question], expected, {question: np.array([SHOWN])}, nothing_followed(2))
    weights = tuple(chance for chance, _state in question.states())
    assert channel.in_same_try(followed.tries[try_of(question, weights)], even).bits(even) < 0.01
    assert channel.in_same_try(shown.tries[try_of(question, weights)], even).bits(even) > 0.95
    assert 0.2 < channel.bits(even) < 0.8
