"""The thresholds of the module's own test, a tenth below and above each, and what it remembers of a trip."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from tests.engines import ALL, FIELD, HARBOUR, NORTH, fault_of, solved
from trainer.circuit.codes import MOST_GROUPS, Sensed, SlotCurrents, code_of, codes_from, codes_of, known_codes
from trainer.circuit.drive import Slot, slots_of
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import Fault, FaultKind, faulty_circuit
from trainer.circuit.profile import Profile
from trainer.circuit.solve import solve_test

THRESHOLDS = ["open", "short", "uncommanded", "held", "supply"]


def seen_in(profile: Profile, slot: Slot, **of_two: float) -> SlotCurrents:
    """Return a good slot but for what is given of cylinder 2, or of the supply."""
    good = np.where([n in slot.commanded for n in profile.cylinders], profile.module.limit_a, 0.0)
    column = profile.cylinders.index(2)
    most, early, end = good.copy(), 0.1 * good, 0.0 * good
    for name, array in (("most_a", most), ("early_a", early), ("end_a", end)):
        array[column] = of_two.get(name, array[column])
    rail_v = of_two.get("rail_low_v", 0.9 * profile.module.supply_v)
    return SlotCurrents(slot, most, early, end, frozenset(), rail_v)


def codes_by(profile: Profile, threshold: str, share: float) -> set[Sensed]:
    """Return what is sensed where one quantity of cylinder 2 is a share of its threshold."""
    module = profile.module
    name, value, own = {
        "open": ("most_a", module.open_below_a, True),
        "short": ("early_a", module.short_above_a, True),
        "uncommanded": ("most_a", module.uncommanded_above_a, False),
        "held": ("end_a", module.held_above_a, True),
        "supply": ("rail_low_v", module.supply_low_share * module.supply_v, True),
    }[threshold]
    slots = [
        seen_in(profile, slot, **({name: share * value} if (slot.number == 2) is own and slot.number else {}))
        for slot in slots_of(profile)
    ]
    return {code.sensed for code in codes_from(profile, slots)}


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
@pytest.mark.parametrize("threshold", THRESHOLDS)
def test_a_tenth_beside_a_threshold_decides(profile: Profile, threshold: str) -> None:
    low = threshold in ("open", "supply")
    inside, outside = (0.9, 1.1) if low else (1.1, 0.9)
    assert codes_by(profile, threshold, outside) == set()
    wanted = {
        "open": Sensed.OPEN, "short": Sensed.OVER, "uncommanded": Sensed.UNCOMMANDED, "held": Sensed.HELD_HIGH,
        "supply": Sensed.SUPPLY_LOW,
    }[threshold]  # fmt: skip
    assert codes_by(profile, threshold, inside) == {wanted}


def with_current(profile: Profile, wanted_a: float) -> Fault:
    """Return the resistance in return 2 that lets so much current through, by Ohm's law on the sound circuit."""
    module = profile.module
    rest_ohm = profile.solenoid.coil_ohm_20c + module.source_ohm + module.feed_on_ohm + module.return_on_ohm
    ohm = module.supply_v / wanted_a - rest_ohm
    return Fault(FaultKind.ADDED_RESISTANCE, Location.ENGINE_HARNESS, (2,), Side.RETURN, ohm)


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_the_shipped_thresholds_lie_where_the_solved_currents_say(profile: Profile) -> None:
    """A resistance that leaves nine tenths of the current for an open sets its code; one that leaves more does not."""
    limit = profile.module.open_below_a
    for share, coded in ((0.9, [Sensed.OPEN]), (1.1, [])):
        test = solved(profile, with_current(profile, share * limit))
        assert [code.sensed for code in codes_of(test)] == coded
    # the background of a dead output stays well under it: nothing else tells the module that it is dead
    quiet = solved(profile, fault_of(profile, FaultKind.DEAD_RETURN_DRIVER, 2))
    row = next(row for row, slot in enumerate(quiet.slots) if slot.number == 2)
    assert quiet.pulses[0].return_a[:, row, profile.cylinders.index(2)].max() < 0.85 * limit


def held_by_feed(profile: Profile, slot: Slot, siemens: float) -> tuple[float, bool]:
    """Return what a feed with a leak to ground carries for as long as its trip asks, in ampere, and whether it trips."""
    name = profile.output_of(slot.number)
    fault = Fault(
        FaultKind.SHORT_TO_GROUND, Location.ENGINE_HARNESS, profile.wiring.outputs[name], Side.FEED, 1.0 / siemens
    )
    test = solve_test(faulty_circuit(profile, [fault]), [slot], most_pulses=1)
    carried = test.pulses[0].feed_a[: test.on_steps, 0, list(profile.wiring.outputs).index(name)]
    steps = int(np.ceil(profile.module.trip.delay_s / test.step_s)) + 1
    windows = np.lib.stride_tricks.sliding_window_view(carried, steps)
    return float(windows.min(axis=1).max()), bool(test.tripped[0])


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
@pytest.mark.parametrize(("share", "trips"), [(0.9, False), (1.1, True)])
def test_a_feed_trips_a_tenth_above_its_level_and_not_below(profile: Profile, share: float, trips: bool) -> None:
    slot = next(slot for slot in slots_of(profile) if slot.number == 2)
    never = replace(profile, module=replace(profile.module, trip=replace(profile.module.trip, current_a=1e4)))
    wanted_a = share * profile.module.trip.current_a
    siemens = 0.3
    for _ in range(6):
        siemens += (wanted_a - held_by_feed(never, slot, siemens)[0]) / profile.module.supply_v
    assert held_by_feed(never, slot, siemens)[0] == pytest.approx(wanted_a, rel=0.01)
    assert held_by_feed(profile, slot, siemens)[1] is trips


def feed_to_ground(profile: Profile, cylinder: int) -> Fault:
    feed = profile.wiring.outputs[profile.output_of(cylinder)]
    return Fault(FaultKind.SHORT_TO_GROUND, Location.ENGINE_HARNESS, feed, Side.FEED, 0.2)


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_a_feed_that_a_trip_has_shut_is_never_called_open(profile: Profile) -> None:
    # common practice, no published source: feed to ground is a group supply low, and an over-current
    codes = codes_of(solved(profile, feed_to_ground(profile, 1)))
    assert {code.sensed for code in codes} <= {Sensed.GROUP_LOW, Sensed.TRIPPED}
    assert Sensed.GROUP_LOW in {code.sensed for code in codes}


def test_a_trip_until_the_key_is_turned_names_the_group_by_its_number() -> None:
    assert [code.code for code in codes_of(solved(FIELD, feed_to_ground(FIELD, 1)))] == ["SPN 2797 FMI 4"]


def test_a_trip_in_the_burst_alone_names_no_cylinder_in_either_system() -> None:
    shorted = next(fault for fault in single_faults(NORTH) if fault.kind is FaultKind.SHORT_TO_GROUND
                   and fault.side is Side.RETURN and fault.location is Location.UNDER_COVER)  # fmt: skip
    assert [code.code for code in codes_of(solved(NORTH, shorted))] == ["P0200"]
    burst = replace(seen_in(HARBOUR, slots_of(HARBOUR)[0]), tripped=frozenset({"right"}))
    rest = [seen_in(HARBOUR, slot) for slot in slots_of(HARBOUR)[1:]]
    assert [code.code for code in codes_from(HARBOUR, [burst, *rest])] == ["SPN 2797 FMI 6"]


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_no_supply_is_the_supplys_code_and_no_open(profile: Profile) -> None:
    codes = codes_of(solved(profile, fault_of(profile, FaultKind.NO_SUPPLY, 1)))
    assert [code.sensed for code in codes] == [Sensed.SUPPLY_LOW]


@pytest.mark.parametrize(("system", "groups"), MOST_GROUPS.items())
def test_every_group_up_to_the_systems_last_has_codes_of_its_own(system: str, groups: int) -> None:
    texts = [
        code_of(system, what, None, row) for row in range(groups) for what in (Sensed.GROUP_OPEN, Sensed.GROUP_LOW)
    ]  # type: ignore[arg-type]
    assert len({code.code for code in texts if code is not None}) == 2 * groups
    assert code_of(system, Sensed.GROUP_OPEN, None, groups) is None  # type: ignore[arg-type]


def test_what_a_test_sets_is_always_a_known_code() -> None:
    for fault in (feed_to_ground(FIELD, 1), fault_of(FIELD, FaultKind.NO_SUPPLY, 1)):
        assert all(code.code in known_codes(FIELD) for code in codes_of(solved(FIELD, fault)))
