"""Moving or warming a place shows an intermittent fault by chance: common practice, no published source.

The chances themselves are from memory; what is held here is how they behave.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from tests.engines import FIELD, NORTH
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Conditions, Fault, FaultKind
from trainer.instruments.bench import Work, worked_circuit
from trainer.instruments.bench_tests import Operation, Price, Spot
from trainer.instruments.charges import try_prices
from trainer.instruments.measuring import measured, tried
from trainer.instruments.reading import OVER_RANGE
from trainer.instruments.requests import Request
from trainer.instruments.tries import (
    CHANCE,
    HEAT,
    MOST_TRIES,
    MOVE,
    Effort,
    Try,
    provoked_by,
    shows_itself,
    tries_needed,
)

CHAFED = Fault(FaultKind.OPEN_WHEN_MOVED, Location.UNDER_COVER, (3,), Side.RETURN)
LOOSE = Fault(FaultKind.OPEN_WHEN_MOVED, Location.ENGINE_HARNESS, (3,), Side.RETURN)
SEEDS = range(2000)


@pytest.mark.parametrize("effort", Effort)
@pytest.mark.parametrize("how", [MOVE, HEAT])
def test_every_seed_shows_its_fault_within_four_tries_but_not_always_in_the_first(how, effort) -> None:
    needed = [tries_needed(seed, how, Location.PASS_THROUGH, effort) for seed in SEEDS]
    assert max(needed) <= 4 == MOST_TRIES
    assert len(set(needed)) > 2


@pytest.mark.parametrize("number", [1, 3, MOST_TRIES + 3])
def test_more_force_and_time_show_more_and_never_less(number: int) -> None:
    gentle, hard = (
        np.array([shows_itself(seed, MOVE, Location.COIL, number, effort) for seed in SEEDS])
        for effort in (Effort.GENTLE, Effort.THOROUGH)
    )
    assert (gentle <= hard).all()
    assert hard.mean() > gentle.mean() + 0.2
    # the first four are drawn so that one of them shows it: a little likelier than the stated chance
    assert CHANCE[Effort.GENTLE] - 0.03 < gentle.mean() < CHANCE[Effort.GENTLE] + 0.08


def test_a_try_without_result_leaves_the_engine_as_it_was() -> None:
    moving = Work(conditions=Conditions(moved=Location.ENGINE_HARNESS), moving=Try(shows=False))
    assert worked_circuit(NORTH, [LOOSE], moving) == worked_circuit(NORTH, [LOOSE], Work())
    shown = replace(moving, moving=Try(shows=True, number=3))
    assert worked_circuit(NORTH, [LOOSE], shown) != worked_circuit(NORTH, [LOOSE], Work())


def test_moving_wires_under_one_cover_does_nothing_under_the_other() -> None:
    at_rest = worked_circuit(NORTH, [CHAFED], Work())
    for bank, moves in ((NORTH.bank_of(3), True), (NORTH.bank_of(4), False)):
        work = tried(Work(), MOVE, Location.UNDER_COVER, Try(bank))
        assert (worked_circuit(NORTH, [CHAFED], work) != at_rest) is moves


def test_what_lies_under_a_cover_costs_the_cover_and_hard_work_twice_the_minutes() -> None:
    under = try_prices(MOVE, Spot(Location.UNDER_COVER, "left"), Try("left"))
    assert Price(Operation.COVER_OFF, "left") in under
    assert Price(Operation.COVER_OFF, "left") in try_prices(HEAT, Spot(Location.COIL, "left"), Try("left"))
    (outside,) = try_prices(MOVE, Spot(Location.PASS_THROUGH), Try())
    (gentle,) = try_prices(MOVE, Spot(Location.PASS_THROUGH), Try(effort=Effort.GENTLE))
    assert (outside.times, gentle.times) == (2, 1)


def test_a_meter_misses_what_opens_for_a_moment_unless_it_keeps_least_and_most() -> None:
    work = tried(Work(), MOVE, Location.ENGINE_HARNESS, Try())
    seen = {measured(NORTH, [LOOSE], work, Request("pair", cylinder=3), seed).reading.display for seed in range(12)}
    assert OVER_RANGE in seen
    assert len(seen) > 1
    for seed in range(12):
        reading = measured(NORTH, [LOOSE], work, Request("pair", cylinder=3, captured=True), seed).reading
        assert reading.value is None
        assert reading.display.endswith(f"… {OVER_RANGE}")
    quiet = replace(work, moving=Try(shows=False))
    reading = measured(NORTH, [LOOSE], quiet, Request("pair", cylinder=3, captured=True), 1).reading
    assert reading.value == pytest.approx(NORTH.solenoid.coil_ohm_20c, abs=0.4)


def test_what_shows_a_fault_is_movement_or_warmth() -> None:
    hot = replace(LOOSE, kind=FaultKind.OPEN_WHEN_HOT)
    steady = replace(LOOSE, kind=FaultKind.OPEN)
    assert provoked_by(LOOSE, FIELD, 20.0) == (MOVE,)
    assert provoked_by(hot, FIELD, 20.0) == (HEAT,)
    assert provoked_by(steady, FIELD, 20.0) == ()


def test_a_warm_run_warms_every_place_at_once_and_moves_none() -> None:
    ran = Work(ran_warm=True)
    for location in (Location.PASS_THROUGH, Location.UNDER_COVER):
        hot = Fault(FaultKind.OPEN_WHEN_HOT, location, (3,), Side.RETURN)
        assert worked_circuit(NORTH, [hot], ran) != worked_circuit(NORTH, [hot], Work())
    assert worked_circuit(NORTH, [LOOSE], ran) == worked_circuit(NORTH, [LOOSE], Work())
    assert ran.physical() == ran
