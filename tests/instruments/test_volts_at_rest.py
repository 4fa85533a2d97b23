"""Proving it dead: volts at rest, after the module's time to discharge.

Discharge of a capacitor through a resistance: textbook. 60 V within 5 s of switching off: NFPA 79 and UN R100 practice.
"""

from __future__ import annotations

import numpy as np
import pytest

from tests.engines import ALL, NORTH, fault_of
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Fault, FaultKind
from trainer.instruments.bench import MODULE_CONNECTOR, Work
from trainer.instruments.bench_tests import Operation, Price
from trainer.instruments.charges import live_prices
from trainer.instruments.measuring import measured, proves_dead
from trainer.instruments.ohmmeter import AT_ONCE_S, supply_left_v
from trainer.instruments.reading import Slip
from trainer.instruments.requests import Request

UNPLUGGED = Work(unplugged=frozenset({MODULE_CONNECTOR}))
FEED_AT_MODULE = {"point": MODULE_CONNECTOR, "half": "module", "cylinder": 3, "side": Side.FEED}


def volts(*faults: Fault, work: Work = UNPLUGGED, **asked):
    return measured(NORTH, faults, work, Request("volts", **{**FEED_AT_MODULE, **asked}), 1).reading


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_a_supply_fades_by_one_time_constant_and_is_under_sixty_volts_in_five_seconds(profile) -> None:
    supply_v = profile.module.supply_v
    assert supply_left_v(profile, 0.0) == pytest.approx(supply_v)
    one, two, three = (supply_left_v(profile, after_s) for after_s in (4.0, 8.0, 12.0))
    assert one * three == pytest.approx(two**2)
    assert supply_left_v(profile, 5.0) < 60.0
    assert supply_left_v(profile, profile.module.discharge_s) < 1.0


def test_a_terminal_of_the_module_read_at_once_is_still_charged_and_dead_after_the_wait() -> None:
    at_once, waited = volts(at_once=True), volts()
    assert at_once.value == pytest.approx(supply_left_v(NORTH, AT_ONCE_S), rel=0.01)
    assert at_once.slips == (Slip.NOT_WAITED,)
    assert not proves_dead(at_once)
    assert waited.value is not None
    assert waited.value < 1.0
    assert proves_dead(waited)


def test_ohms_at_a_charged_terminal_are_no_ohms() -> None:
    asked = Request("ground", **FEED_AT_MODULE, at_once=True)
    reading = measured(NORTH, (), UNPLUGGED, asked, 1).reading
    assert {Slip.NOT_WAITED, Slip.VOLTAGE_ON_WIRE} <= set(reading.slips)


def test_a_second_battery_shows_as_volts_at_rest_most_where_it_is_and_proves_nothing_dead() -> None:
    fault = fault_of(NORTH, FaultKind.SHORT_TO_BATTERY, 5, Location.ENGINE_HARNESS)
    shown = {n: volts(fault, work=Work(), half="harness", side=Side.RETURN, cylinder=n) for n in NORTH.cylinders}
    assert max(shown, key=lambda n: shown[n].value or 0.0) == 5
    assert shown[5].value == pytest.approx(NORTH.module.battery_v, abs=1.5)
    assert not proves_dead(shown[5])
    assert proves_dead(volts(work=Work(), half="harness", side=Side.RETURN, cylinder=5))


def test_a_meter_loads_what_floats_behind_an_open_wire() -> None:
    """Ten megohm against a gigohm: a hundredth of the battery, not the battery."""
    faults = [
        fault_of(NORTH, FaultKind.SHORT_TO_BATTERY, 5, Location.UNDER_COVER),
        fault_of(NORTH, FaultKind.OPEN, 5, Location.ENGINE_HARNESS),
    ]
    work = Work(unplugged=frozenset({MODULE_CONNECTOR, "pass_through.right_rear"}))
    seen = volts(*faults, work=work, half="harness", side=Side.RETURN, cylinder=5).value
    assert seen is not None
    assert seen < 0.2


def test_probes_on_live_terminals_cost_their_preparation_and_a_clamp_does_not() -> None:
    prepared = Price(Operation.LIVE_PREPARATION)
    for what in ("drop", "supply", "dummy"):
        assert prepared in live_prices(NORTH, Request(what, cylinder=3))
    assert prepared not in live_prices(NORTH, Request("trace", cylinder=3))


def test_a_proof_is_lost_when_the_engine_is_driven_again() -> None:
    proved = measured(NORTH, (), Work(), Request("volts", cylinder=3), 1).work
    assert proved.proved_dead
    assert not measured(NORTH, (), proved, Request("trace", cylinder=3), 1).work.proved_dead
    assert np.isfinite(proved.conditions.temperature_c)
