"""Answers judged together: against the whole normal distribution, and against plain sums over a fine grid."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import multivariate_normal

from trainer.instruments.bench import Work
from trainer.reasoning.universe.questions import Expected, Prediction, Question
from trainer.reasoning.universe.severity import DEVIATION
from trainer.reasoning.verdict.joint import after_block, blocks_of, nothing_followed

SLOTS = [Question("slot", Work(), slot=number) for number in (1, 2, 3)]
OHMS = [Question("ohms", Work(), slot=number) for number in (1, 2)]


def straight(values: list[float], slope: list[float], common: list[float]) -> dict[Question, Expected]:
    """Return three slots of one hypothesis, one trait each."""
    return {
        slot: Expected((Prediction(np.array([[value]]), np.array([[rise]]), np.array([[0.5]]), np.array([[shared]])),))
        for slot, value, rise, shared in zip(SLOTS, values, slope, common, strict=True)
    }


def test_slots_of_one_test_are_judged_as_one_normal_distribution() -> None:
    """SciPy's multivariate normal has the covariance written out: noise, common offset, severity."""
    values, slope, common = [3.0, 5.0, 4.0], [0.5, 1.5, 0.0], [2.0, 2.0, 1.5]
    answer = [3.5, 6.0, 4.2]
    covariance = 1.5 * np.eye(3) + np.outer(common, common) + np.outer(slope, slope)
    wanted = multivariate_normal(values, covariance).logpdf(answer)
    answers = {slot: np.array([one]) for slot, one in zip(SLOTS, answer, strict=True)}
    told, _followed = after_block(SLOTS, straight(values, slope, common), answers, nothing_followed(1))
    assert told[0] == pytest.approx(wanted, abs=5e-3)  # one in a thousand answers is a slip


def test_a_whole_test_heard_louder_tells_nothing_and_one_slot_heard_softer_tells_much() -> None:
    expected = straight([5.0, 5.0, 5.0], [0.0, 0.0, 0.0], [3.0, 3.0, 3.0])
    louder = {slot: np.array([8.0]) for slot in SLOTS}
    even = {slot: np.array([5.0]) for slot in SLOTS}
    one = {slot: np.array([2.0 if slot is SLOTS[1] else 5.0]) for slot in SLOTS}
    told = [float(after_block(SLOTS, expected, answers, nothing_followed(1))[0][0]) for answers in (even, louder, one)]
    assert told[0] - told[1] < 0.5
    assert told[0] - told[2] > 1.5


def test_one_misheard_slot_is_a_slip_and_leaves_the_others_their_say() -> None:
    expected = straight([5.0, 5.0, 5.0], [0.0, 0.0, 0.0], [1.0, 1.0, 1.0])
    answers = {slot: np.array([60.0 if slot is SLOTS[0] else 5.0]) for slot in SLOTS}
    told = float(after_block(SLOTS, expected, answers, nothing_followed(1))[0][0])
    two = {slot: answers[slot] for slot in SLOTS[1:]}
    rest = float(after_block(SLOTS[1:], expected, two, nothing_followed(1))[0][0])
    assert told == pytest.approx(rest + np.log(1e-5), abs=1e-6)


def test_two_readings_of_one_severity_must_agree_with_each_other() -> None:
    """A fault of unknown severity expects two readings that fit one severity; a plain sum over a fine grid says how
    much."""
    values, slope = np.array([[0.0]]), np.array([[10.0]])
    expected = {one: Expected((Prediction(values, slope, np.zeros((1, 1))),)) for one in OHMS}

    def told(first: float, second: float) -> float:
        followed, whole = nothing_followed(1), 0.0
        for question, answer in zip(OHMS, (first, second), strict=True):
            logs, followed = after_block([question], expected, {question: np.array([answer])}, followed)
            whole += float(logs[0])
        return whole

    grid = np.linspace(-6.0, 6.0, 20001)
    for first, second in ((4.0, 4.0), (4.0, 6.0)):
        density = np.exp(-0.5 * grid**2 - 0.5 * (first - 10 * grid) ** 2 - 0.5 * (second - 10 * grid) ** 2)
        wanted = np.log(density.sum() * (grid[1] - grid[0]) / (2 * np.pi) ** 1.5)
        assert told(first, second) == pytest.approx(wanted, abs=5e-3)
    assert told(4.0, 4.0) > told(4.0, 9.0) + 5.0


def test_what_an_expectation_leaves_out_is_the_same_each_time_the_same_slot_is_heard() -> None:
    """SciPy's multivariate normal has it as one error that all answers share, beside the noise of each."""
    again = [Question("slot", Work(unplugged=frozenset({f"plug.{number}"})), slot=3) for number in range(10)]
    left_out = 4.0
    expected = {one: Expected((Prediction(np.array([[5.0]]), variance=np.array([[left_out]])),)) for one in again}
    heard = 5.0 + np.linspace(1.0, 2.0, len(again))
    covariance = np.eye(len(again)) + left_out
    wanted = multivariate_normal(np.full(len(again), 5.0), covariance).logpdf(heard)
    followed, whole = nothing_followed(1), 0.0
    for question, answer in zip(again, heard, strict=True):
        logs, followed = after_block([question], expected, {question: np.array([answer])}, followed)
        whole += float(logs[0])
    assert whole == pytest.approx(wanted, abs=0.02)  # one in a thousand answers is a slip


def test_a_flag_moves_a_severity_as_a_plain_sum_over_a_fine_grid_does() -> None:
    """A code that one end of a stretch sets and the other does not: its chance goes straight from one to the other."""
    question = Question("codes", Work())
    expected = {question: Expected((Prediction(np.array([[0.5]]), np.array([[DEVIATION * 0.6]])),), flags=True)}
    told, followed = after_block([question], expected, {question: np.array([1.0])}, nothing_followed(1))
    grid = np.linspace(-6.0, 6.0, 20001)
    prior = np.exp(-0.5 * grid**2)
    after = prior * (0.5 + DEVIATION * 0.6 * grid)
    assert told[0] == pytest.approx(np.log(after.sum() / prior.sum()), abs=1e-6)
    assert followed.severity[0] == pytest.approx((after * grid).sum() / after.sum(), abs=1e-3)
    spread = (after * grid**2).sum() / after.sum() - followed.severity[0] ** 2
    assert followed.variance[0] == pytest.approx(spread, abs=1e-3)


def test_slots_of_one_test_and_place_are_one_block_and_ohms_come_first() -> None:
    other_place = Question("slot", Work(), slot=1, place="probe")
    blocks = blocks_of([SLOTS[2], other_place, OHMS[1], SLOTS[0], OHMS[0], SLOTS[1]])
    assert [question.kind for question in blocks[0] + blocks[1]] == ["ohms", "ohms"]
    assert set(blocks[2:]) == {tuple(SLOTS), (other_place,)}


def test_stretches_side_by_side_cover_a_range_evenly() -> None:
    at = np.linspace(3.0, 7.0, 400)
    density = sum(np.exp(-0.5 * ((at - middle) / DEVIATION) ** 2) for middle in np.arange(-10.5, 21.0))
    assert density.max() / density.min() < 1.2
