"""Severities as stretches of a range: what lies between two nodes is expected there, whatever the nodes."""

from __future__ import annotations

import numpy as np
import pytest

from tests.engines import NORTH
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import LOOP_OHM, SIZES, Fault, FaultKind
from trainer.reasoning.universe.hypotheses import single_hypotheses
from trainer.reasoning.universe.severity import middles_of, severities_of


def joint(ohm: float) -> tuple[Fault, ...]:
    return (Fault(FaultKind.ADDED_RESISTANCE, Location.PASS_THROUGH, (3,), Side.RETURN, ohm),)


AMOUNTS = (5.0, 60.0, 14.0, 28.0)
ROWS = [(), *(joint(ohm) for ohm in AMOUNTS)]


def test_each_severity_reaches_to_the_next_worse_one() -> None:
    found = severities_of(ROWS)
    assert found.worse.tolist() == [0, 3, 2, 4, 2]
    assert found.before.tolist() == [0, 1, 4, 1, 3]
    assert found.after.tolist() == [0, 4, 2, 2, 2]
    lengths = np.log((np.array([14.0, 28.0, 60.0]) + LOOP_OHM) / (np.array([5.0, 14.0, 28.0]) + LOOP_OHM))
    assert found.width == pytest.approx([1.0, lengths[0], 0.0, lengths[1], lengths[2]])


def test_a_straight_line_is_followed_exactly_and_a_curve_within_what_is_said_of_it() -> None:
    found = severities_of(ROWS)
    along = np.log(np.array([1.0, *AMOUNTS]) + LOOP_OHM)[:, None]
    assert found.bend(3.0 * along)[[1, 3, 4]] == pytest.approx(0.0, abs=1e-12)
    curved = along**2
    middle = (0.5 * (along + along[found.worse])) ** 2
    away = np.abs(found.middle(curved) - middle)[[1, 3, 4]]
    assert (away > 0.0).all()
    assert (away <= found.bend(curved)[[1, 3, 4]] + 1e-12).all()  # a parabola leaves it by just that


def test_the_middle_of_a_stretch_is_half_way_along_it() -> None:
    (middle,) = middles_of(ROWS)[1]
    assert np.log(middle.amount() + LOOP_OHM) == pytest.approx(np.log((5.0 + LOOP_OHM) * (14.0 + LOOP_OHM)) / 2.0)
    assert middles_of(ROWS)[0] == ()


def test_a_fault_without_a_range_stands_for_itself() -> None:
    found = severities_of([(), joint(20.0), joint(20.0) * 2])
    values = np.array([[1.0], [2.0], [3.0]])
    assert np.array_equal(found.middle(values), values)
    assert not found.slope(values).any()
    assert not found.bend(values).any()


def test_the_share_of_a_place_and_kind_does_not_depend_on_how_many_severities_stand_for_it() -> None:
    """Every worst node only ends the stretch before it, so it has no share of its own."""
    hypotheses = single_hypotheses(NORTH)
    ranges = severities_of(hypotheses.faults)
    assert (hypotheses.prior[ranges.width == 0.0] == 0.0).all()
    shares: dict[tuple[Location, FaultKind], float] = {}
    for faults, prior in zip(hypotheses.faults, hypotheses.prior, strict=True):
        for fault in faults:
            shares[fault.location, fault.kind] = shares.get((fault.location, fault.kind), 0.0) + float(prior)
    one = shares[Location.COIL, FaultKind.SHORTED_TURNS] / shares[Location.COIL, FaultKind.OPEN]
    assert one == pytest.approx(NORTH.kinds[FaultKind.SHORTED_TURNS] / NORTH.kinds[FaultKind.OPEN])
    assert len(SIZES[FaultKind.SHORTED_TURNS].severities) > len(SIZES[FaultKind.OPEN].severities)


def test_reasoning_uses_the_severities_that_faults_are_given_and_even_steps_between_them() -> None:
    turns = SIZES[FaultKind.SHORTED_TURNS]
    grid = sorted(turns.grid_of((1,)))
    assert set(turns.severities) < set(grid)
    steps = np.diff(np.log(grid)).reshape(len(turns.severities) - 1, -1)
    assert np.allclose(steps, steps[:, :1])


def test_a_feed_that_several_share_and_coils_of_another_type_have_no_severities_between() -> None:
    assert SIZES[FaultKind.ADDED_RESISTANCE].grid_of((1, 2)) == SIZES[FaultKind.ADDED_RESISTANCE].shared
    assert SIZES[FaultKind.WRONG_COIL].grid_of((1,)) == SIZES[FaultKind.WRONG_COIL].severities
