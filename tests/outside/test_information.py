"""Entropy, information, value of tests and repair order against textbook examples.

Tables: the tennis and restaurant data of the standard machine-learning textbooks, the oil wildcatter of decision
analysis (Raiffa; value 22.5 as in the literature), one-step probe choice (de Kleer and Williams 1987), repair order
(Heckerman, Breese and Rommelse 1995). All figures recomputed by hand from the stated formulas.
"""

from __future__ import annotations

import numpy as np
import pytest

from trainer.circuit.network import solve
from trainer.reasoning.advice.information import (
    best_value,
    entropy_bits,
    expected_cost,
    information_bits,
    repair_order,
    updated,
    value_with,
)
from trainer.reasoning.universe.questions import Expected


def gain(counts: list[tuple[int, int]]) -> float:
    """Return the information about yes or no in an attribute with these (yes, no) counts for each of its values."""
    table = np.array(counts, dtype=float).T
    total = table.sum(axis=1)
    return information_bits(total / total.sum(), table / total[:, None])


# 14 days, 9 yes and 5 no
TENNIS = {
    "outlook": ([(2, 3), (4, 0), (3, 2)], 0.2467),
    "humidity": ([(3, 4), (6, 1)], 0.1518),
    "wind": ([(6, 2), (3, 3)], 0.0481),
    "temperature": ([(2, 2), (4, 2), (3, 1)], 0.0292),
}


@pytest.mark.parametrize("attribute", TENNIS)
def test_the_tennis_table(attribute: str) -> None:
    counts, bits = TENNIS[attribute]
    assert entropy_bits(np.array([9, 5]) / 14) == pytest.approx(0.9403, abs=5e-5)
    assert gain(counts) == pytest.approx(bits, abs=5e-5)


def test_the_restaurant_table() -> None:
    assert gain([(0, 2), (4, 0), (2, 4)]) == pytest.approx(0.5409, abs=1e-4)  # patrons
    assert gain([(1, 1), (1, 1), (2, 2), (2, 2)]) == pytest.approx(0.0, abs=1e-12)  # type


def test_eight_equal_suspects() -> None:
    suspects = np.full(8, 1 / 8)
    half = np.array([[1.0, 0.0]] * 4 + [[0.0, 1.0]] * 4)
    one = np.array([[1.0, 0.0]] + [[0.0, 1.0]] * 7)
    assert entropy_bits(suspects) == pytest.approx(3.0)
    assert information_bits(suspects, half) == pytest.approx(1.0)
    assert information_bits(suspects, one) == pytest.approx(0.5436, abs=5e-5)


def test_a_rare_fault_and_a_good_test() -> None:
    posterior = updated(np.array([0.01, 0.99]), np.array([0.9, 0.05]))
    assert posterior[0] == pytest.approx(0.1538, abs=5e-5)


PLACES = ("connector", "under-cover", "coil", "engine harness", "module")
PRIOR = np.array([0.35, 0.25, 0.15, 0.15, 0.10])
SPLITS = [
    (("under-cover", "coil"), 0.9710),
    (("connector",), 0.9341),
    (("connector", "under-cover", "coil"), 0.8113),
    (("module",), 0.4690),
]


@pytest.mark.parametrize(("asked", "bits"), SPLITS)
def test_which_half_to_ask_for_first(asked: tuple[str, ...], bits: float) -> None:
    table = np.array([[1.0, 0.0] if place in asked else [0.0, 1.0] for place in PLACES])
    assert entropy_bits(PRIOR) == pytest.approx(2.1834, abs=5e-5)
    assert information_bits(PRIOR, table) == pytest.approx(bits, abs=5e-5)


def test_a_test_that_errs_tells_less() -> None:
    table = np.array([[0.9, 0.1] if place in ("under-cover", "coil") else [0.05, 0.95] for place in PLACES])
    assert information_bits(PRIOR, table) == pytest.approx(0.6054, abs=5e-5)


def test_the_oil_wildcatter() -> None:
    prior = np.array([0.5, 0.3, 0.2])  # dry, wet, soaking
    utility = np.array([[-70.0, 50.0, 200.0], [0.0, 0.0, 0.0]])  # drill, leave
    seismic = np.array([[0.6, 0.3, 0.1], [0.3, 0.4, 0.3], [0.1, 0.4, 0.5]])
    assert best_value(prior, utility) == pytest.approx(20.0)
    assert value_with(prior, np.eye(3), utility) == pytest.approx(55.0)  # 35 more than drilling blindly
    assert value_with(prior, seismic, utility) - 10.0 == pytest.approx(22.5)


def test_repairs_in_order_of_chance_over_cost() -> None:
    chance, cost = [0.5, 0.3, 0.2], [10.0, 3.0, 1.0]
    assert repair_order(chance, cost) == [2, 1, 0]
    assert expected_cost([2, 1, 0], chance, cost) == pytest.approx(8.4)
    assert expected_cost([0, 1, 2], chance, cost) == pytest.approx(11.7)


JOINTS = ("a", "b", "c")


def lamp_voltages(opened: str) -> dict[str, bool]:
    """Solve 12 V through three joints in a row into a lamp, one joint open; tell which nodes are live."""
    chain = ("battery", "one", "two", "three")
    branches = [
        (start, end, 1e9 if joint == opened else 0.01)
        for joint, start, end in zip(JOINTS, chain, chain[1:], strict=False)
    ]
    solution = solve([*branches, ("three", "ground", 5.0)], [{"battery": 12.0}], [{}])
    return {node: bool(solution.voltage(node)[0] > 6.0) for node in chain}


@pytest.mark.parametrize(("node", "bits"), [("battery", 0.0), ("one", 0.9183), ("two", 0.9183), ("three", 0.0)])
def test_where_to_probe_a_row_of_joints_first_by_hand(node: str, bits: float) -> None:
    """One of three joints is open, each as likely (one-step choice after de Kleer and Williams 1987).

    By hand: before the first joint it is always live and after the last always dead: nothing is told. Between, one of
    three is split from two: H(1/3) = 0.9183 bit.
    """
    table = np.array([[1.0, 0.0] if lamp_voltages(joint)[node] else [0.0, 1.0] for joint in JOINTS])
    assert information_bits(np.full(3, 1 / 3), table) == pytest.approx(bits, abs=5e-5)


# logarithmic score of a binary forecast of 0.8: true 0.2231, false 1.6094
@pytest.mark.parametrize(("seen", "score"), [(1.0, 0.2231), (0.0, 1.6094)])
def test_a_code_is_weighed_by_the_logarithmic_score(seen: float, score: float) -> None:
    expected = Expected(np.array([[0.8]]), flags=True)
    assert -float(expected.log_likelihood(np.array([seen]))[0]) == pytest.approx(score, abs=5e-5)


def test_an_outcome_that_nothing_allows_is_refused() -> None:
    with pytest.raises(ValueError, match="no hypothesis allows"):
        updated(np.array([0.5, 0.5]), np.array([0.0, 0.0]))
