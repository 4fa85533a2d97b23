"""A clamp while a neighbour is driven, a lamp on an isolated wire, insulation between pins, the battery under crank.

Ohm's law for lamp and battery; what each test separates is common practice, no published source.
"""

from __future__ import annotations

import pytest

from tests.engines import ALL, HARBOUR, NORTH, fault_of
from trainer.circuit.elements import Location, Part, Side
from trainer.circuit.fault import Fault, FaultKind
from trainer.instruments.bench import MODULE_CONNECTOR, Work
from trainer.instruments.bench_tests import Operation, Price
from trainer.instruments.charges import live_prices
from trainer.instruments.measuring import measured
from trainer.instruments.on_battery import LAMP_OHM, STARTER_TIMES_BATTERY
from trainer.instruments.reading import OVER_RANGE, Reading, Slip
from trainer.instruments.requests import Request, next_driven


def read(request: Request, *faults: Fault, profile=NORTH) -> Reading:
    return measured(profile, faults, Work(), request, 1).reading


@pytest.mark.parametrize("profile", [NORTH, HARBOUR], ids=lambda one: one.name)
def test_a_clamp_beside_a_driven_neighbour_tells_open_wiring_from_a_dead_driver(profile) -> None:
    asked = Request("clamp", cylinder=3, other=next_driven(profile, 3))
    good = read(asked, profile=profile).value
    open_wire = read(asked, fault_of(profile, FaultKind.OPEN, 3), profile=profile).value
    dead_driver = read(asked, fault_of(profile, FaultKind.DEAD_RETURN_DRIVER, 3), profile=profile).value
    assert good is not None
    assert 0.5 < good <= 2.0  # the background current
    assert open_wire == 0.0
    assert dead_driver == pytest.approx(good, abs=0.2)


def test_a_clamp_is_cheap_and_nothing_is_opened_for_it() -> None:
    assert live_prices(NORTH, Request("clamp", cylinder=3, other=5)) == (Price(Operation.CLAMP),)
    assert NORTH.minutes[Operation.CLAMP] < NORTH.minutes[Operation.CURRENT_TRACE]


def test_a_lamp_finds_the_joint_that_holds_for_a_meter() -> None:
    weak = Fault(FaultKind.FAILS_UNDER_LOAD, Location.ENGINE_HARNESS, (3,), Side.RETURN, None, Part.WIRE)
    wire = {"cylinder": 3, "location": Location.ENGINE_HARNESS}
    ohms = [read(Request("wire", **wire), *faults).value for faults in ((), (weak,))]
    lamp = [read(Request("lamp", **wire), *faults) for faults in ((), (weak,))]
    assert ohms[0] == pytest.approx(ohms[1], abs=0.2)
    module = NORTH.module
    assert lamp[0].value == pytest.approx(module.battery_v / (module.battery_ohm + LAMP_OHM), rel=0.02)
    assert lamp[1].value is not None
    assert lamp[1].value < 0.8 * (lamp[0].value or 0.0)
    assert lamp[0].slips == ()


def test_a_lamp_into_the_module_is_a_slip() -> None:
    asked = Request("lamp", cylinder=3, location=Location.ENGINE_HARNESS, connected=True)
    assert Slip.LAMP_INTO_PART in read(asked).slips


def test_insulation_between_two_returns_shows_what_joins_them() -> None:
    asked = Request("insulation", MODULE_CONNECTOR, "harness", 1, 3)
    apart = Work(unplugged=frozenset({MODULE_CONNECTOR, "pass_through.right_front"}))
    joined = Fault(FaultKind.RETURN_TO_RETURN, Location.ENGINE_HARNESS, (1, 3))
    assert measured(NORTH, (), apart, asked, 1).reading.display == OVER_RANGE
    seen = measured(NORTH, (joined,), apart, asked, 1).reading
    assert seen.value is not None
    assert seen.value < 1e5
    assert Slip.INSULATION_INTO_PART in read(asked).slips  # the coils still hang on them


@pytest.mark.parametrize("profile", ALL, ids=lambda one: one.name)
def test_the_battery_under_crank_divides_between_its_own_resistance_and_the_starter(profile) -> None:
    module = profile.module
    divided = module.battery_v * STARTER_TIMES_BATTERY / (STARTER_TIMES_BATTERY + 1.0)
    assert read(Request("crank"), profile=profile).value == pytest.approx(divided, abs=0.02)
