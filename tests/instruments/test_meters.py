"""Meters: accuracy as handbooks state it, and wrong use answered as a bench would."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from tests.engines import FIELD, HARBOUR, NORTH, RIDGE, fault_of
from trainer.circuit.elements import Location, Side
from trainer.circuit.faults import Fault, FaultKind
from trainer.instruments.bench import Work, break_points
from trainer.instruments.measuring import Request, measured
from trainer.instruments.reading import Slip, accuracy_ohm, display_ohm, shown_ohm
from trainer.instruments.under_load import dip_of, measure_trace

OPEN_3 = Fault(FaultKind.OPEN, Location.PASS_THROUGH, (3,), Side.RETURN)


def read(request: Request, *faults: Fault, profile=NORTH, work: Work | None = None):
    return measured(profile, faults, work or Work(), request, 1)


# worked examples of the form ±(% of reading + counts): 0.6 Ω ±(0.9 % + 2) at 0.1 Ω steps is ±0.205 Ω
@pytest.mark.parametrize(("counts", "limit"), [(2, 0.2054), (3, 0.3054)])
def test_accuracy_is_percent_of_reading_plus_counts(counts: int, limit: float) -> None:
    meter = replace(NORTH.meter, percent=0.9, counts=counts, step_ohm=0.1)
    assert accuracy_ohm(meter, 0.6) == pytest.approx(limit, abs=1e-4)


@pytest.mark.parametrize("seed", range(20))
@pytest.mark.parametrize("ohm", [0.3, 2.7, 150.0, 4.7e3, 2.2e6])
def test_a_reading_lies_within_the_meters_accuracy(seed: int, ohm: float) -> None:
    value, _display = shown_ohm(NORTH.meter, ohm, seed, "x")
    assert value is not None
    assert abs(value - ohm) <= accuracy_ohm(NORTH.meter, ohm)


def test_over_range_shows_ol_and_displays_have_the_digits_of_their_range() -> None:
    assert shown_ohm(NORTH.meter, 1e9, 1, "x") == (None, "OL")
    assert display_ohm(3.2, 0.1) == "3.2 Ω"
    assert display_ohm(4700.0, 1.0) == "4.700 kΩ"
    assert display_ohm(2.2e6, 1000.0) == "2.200 MΩ"


def test_leads_add_their_resistance_until_they_are_nulled() -> None:
    nulled = read(Request("pair", cylinder=3)).reading
    raw = read(Request("pair", cylinder=3, nulled=False)).reading
    assert nulled.value is not None
    assert raw.value is not None
    assert raw.value - nulled.value == pytest.approx(NORTH.meter.lead_ohm, abs=0.11)
    assert raw.slips == (Slip.NOT_NULLED,)


def test_measured_while_connected_gives_a_wrong_number_and_a_slip() -> None:
    apart = read(Request("pair", cylinder=3), OPEN_3).reading
    hanging = read(Request("pair", cylinder=3, connected=True), OPEN_3).reading
    assert apart.display == "OL"
    assert hanging.value is not None
    assert hanging.value < 200.0
    assert Slip.STILL_CONNECTED in hanging.slips
    assert apart.slips == ()


def test_ohms_on_a_live_circuit_blow_the_fuse() -> None:
    reading = read(Request("pair", cylinder=3, key_on=True)).reading
    assert reading.value is None
    assert reading.slips == (Slip.LIVE,)


def test_voltage_with_the_key_off_spoils_ohms() -> None:
    fault = fault_of(NORTH, FaultKind.SHORT_TO_BATTERY, 5, Location.ENGINE_HARNESS)
    reading = read(Request("ground", cylinder=5), fault).reading
    assert Slip.VOLTAGE_ON_WIRE in reading.slips


def test_an_insulation_tester_through_an_injector_is_a_slip() -> None:
    through = read(Request("insulation", cylinder=3)).reading
    assert Slip.INSULATION_INTO_PART in through.slips
    assert through.display == "OL"
    alone = read(
        Request("insulation", cylinder=3), work=Work(unplugged=frozenset({"pass_through.right_front"}))
    ).reading
    assert alone.slips == ()


def test_a_pushed_probe_spreads_the_terminal_and_the_next_reading_shows_it() -> None:
    first = read(Request("pair", cylinder=3, firm=True))
    assert Slip.PROBE_PUSHED in first.reading.slips
    assert first.work.spread
    later = read(
        Request("pair", point="pass_through.right_front", half="engine", cylinder=3),
        work=replace(first.work, unplugged=frozenset()),
    )
    assert later.reading.display == "OL" or later.reading.value is not None


def test_a_milliampere_does_not_see_a_joint_that_fails_under_load() -> None:
    fault = Fault(FaultKind.FAILS_UNDER_LOAD, Location.ENGINE_HARNESS, (1,), Side.RETURN, 60.0)
    wire = Request("wire", cylinder=1, location=Location.ENGINE_HARNESS)
    assert read(wire, fault).reading.value == pytest.approx(0.0, abs=0.21)
    drop = Request("drop", cylinder=1, location=Location.ENGINE_HARNESS)
    good, bad = read(drop).reading.value, read(drop, fault).reading.value
    assert good is not None
    assert bad is not None
    assert good < 1.0 < 20.0 < bad


def test_supply_under_load_shows_a_slow_one() -> None:
    good = read(Request("supply")).reading.value
    bad = read(Request("supply"), fault_of(NORTH, FaultKind.SLOW_RECHARGE, 1)).reading.value
    assert good is not None
    assert bad is not None
    assert good > 85.0
    assert bad < 0.7 * good


@pytest.mark.parametrize("profile", [NORTH, HARBOUR, FIELD, RIDGE], ids=lambda p: p.name)
def test_a_moving_plate_leaves_a_dip_and_a_stuck_one_none(profile) -> None:
    good = dip_of(measure_trace(profile, [], Work(), 3, 1))
    stuck = dip_of(measure_trace(profile, [fault_of(profile, FaultKind.STUCK_ARMATURE, 3)], Work(), 3, 1))
    slow = dip_of(measure_trace(profile, [fault_of(profile, FaultKind.SLUGGISH_ARMATURE, 3)], Work(), 3, 1))
    assert good is not None
    assert 0.2e-3 < good[0] < 1.2e-3
    assert stuck is None
    assert slow is None or slow[0] > good[0]


def test_a_swap_moves_a_dead_output_and_leaves_a_bad_wire() -> None:
    from trainer.circuit.codes import codes_of
    from trainer.practice.attempt.actions import solved_work

    swapped = Work(swapped=((1, 3),))
    dead = fault_of(NORTH, FaultKind.DEAD_RETURN_DRIVER, 3)
    lifted = solved_work(NORTH, (dead,), swapped).pulses[0].position_m.max(axis=0) > 0.5 * NORTH.solenoid.lift_m
    assert not lifted[3].any()  # slot 3 still drives the dead output: silent with the other injector too
    assert lifted[1, 2]  # and injector 3 clicks from output 1
    wire = solved_work(NORTH, (OPEN_3,), swapped)
    assert [code.code for code in codes_of(wire)] == ["P0201"]  # the code has moved to where the wire went


def test_known_good_parts_take_the_fault_away_and_nothing_else() -> None:
    from trainer.circuit.codes import codes_of
    from trainer.practice.attempt.actions import solved_work

    lent = Work(replaced=frozenset({(Location.COIL, 6)}))
    turns = fault_of(NORTH, FaultKind.SHORTED_TURNS, 6)
    assert (
        np.abs(
            solved_work(NORTH, (turns,), lent).pulses[0].coil_a - solved_work(NORTH, (), Work()).pulses[0].coil_a
        ).max()
        < 1e-6
    )
    assert [code.code for code in codes_of(solved_work(NORTH, (OPEN_3,), lent))] == ["P0203"]


def test_every_break_point_of_every_engine_can_be_measured() -> None:
    for profile in (NORTH, HARBOUR, FIELD, RIDGE):
        for point in break_points(profile):
            cylinder = int(point.split(".")[1]) if point.startswith("injector_plug") else next(
                n for n in profile.cylinders if point == "module_connector" or profile.connector_name_of(n) in point
            )  # fmt: skip
            half = {"m": "harness", "p": "cover", "i": "injector"}[point[0]]
            reading = read(Request("pair", point, half, cylinder), profile=profile).reading
            assert reading.value == pytest.approx(profile.solenoid.coil_ohm_20c, abs=0.5)


def test_a_wire_that_is_off_at_both_ends_is_measured_without_a_slip() -> None:
    for location in (Location.ENGINE_HARNESS, Location.UNDER_COVER):
        assert read(Request("wire", cylinder=1, location=location)).reading.slips == ()


def test_a_dummy_load_takes_the_place_of_the_injector_and_its_faults() -> None:
    sound = read(Request("dummy", cylinder=3)).reading.value
    for kind in (FaultKind.SHORT_TO_GROUND, FaultKind.SHORT_ACROSS_PAIR, FaultKind.SHORTED_TURNS):
        coil = fault_of(NORTH, kind, 3, Location.COIL)
        assert read(Request("dummy", cylinder=3), coil).reading.value == pytest.approx(sound, abs=0.11)
