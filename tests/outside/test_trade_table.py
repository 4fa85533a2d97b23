"""Row by row against what the trade knows of each fault: common practice, no published source.

The ohm figures are those of one worked network (facts of Ohm's law): coil 3.00 Ω, 0.06 Ω engine wire, 0.04 Ω
under-cover wire, 0.01 Ω contacts, one feed a bank spliced under the cover, background 110 Ω.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from tests.engines import HARBOUR, NORTH, fault_of, solved
from trainer.circuit.codes import codes_of
from trainer.circuit.elements import GROUND, OPEN_OHM, Circuit, Element, Location, Part, Side
from trainer.circuit.fault import Conditions, Fault, FaultKind
from trainer.circuit.faults import faulty_circuit
from trainer.circuit.harness import circuit_of, module_plug_node
from trainer.circuit.profile import Profile
from trainer.instruments.bench import contacts_of
from trainer.instruments.ohmmeter import between
from trainer.sound.render import Bed, Sound, render

PLACE = Location.PASS_THROUGH


@cache
def sound_of(profile_name: str, *faults: Fault, conditions: Conditions | None = None) -> Sound:
    profile = NORTH if profile_name == NORTH.name else HARBOUR
    return render(solved(profile, *faults, conditions=conditions), "front", Bed(), 1)


def drops_db(profile: Profile, *faults: Fault, conditions: Conditions | None = None) -> list[float]:
    """Return how far each slot (all together first) lies under the good engine's."""
    good = sound_of(profile.name)
    bad = sound_of(profile.name, *faults, conditions=conditions)
    return [fine.level_dba - slot.level_dba for fine, slot in zip(good.slots, bad.slots, strict=True)]


def codes(profile: Profile, *faults: Fault) -> list[str]:
    return [code.code for code in codes_of(solved(profile, *faults))]


OPEN_3 = Fault(FaultKind.OPEN, PLACE, (3,), Side.RETURN)


def test_a_good_engine_is_even_and_has_no_code() -> None:
    for profile in (NORTH, HARBOUR):
        levels = [slot.level_dba for slot in sound_of(profile.name).slots[1:]]
        assert max(levels) - min(levels) < 4.0  # place and distance alone give a few decibel
        assert codes(profile) == []


def test_an_unplugged_injector_leaves_a_very_faint_hum_in_its_own_slot_and_a_circuit_code() -> None:
    drop = drops_db(NORTH, OPEN_3)
    assert 20.0 < drop[3] < 32.0
    assert all(abs(value) < 0.5 for slot, value in enumerate(drop[1:], start=1) if slot != 3)
    assert codes(NORTH, OPEN_3) == ["P0203"]


def test_one_missing_injector_is_not_heard_in_the_burst() -> None:
    # one of eight equal sources missing: 0.6 dB incoherent, 1.2 dB coherent before the limiter; JND about 1 dB
    assert 0.0 < drops_db(NORTH, OPEN_3)[0] < 1.0


def test_a_dead_return_driver_hums_itself_and_is_not_told_from_an_open_by_ear() -> None:
    fault = fault_of(NORTH, FaultKind.DEAD_RETURN_DRIVER, 3)
    dead, opened = drops_db(NORTH, fault), drops_db(NORTH, OPEN_3)
    assert 0.0 < opened[3] - dead[3] < 3.0  # one source more among seven
    assert np.allclose(np.delete(dead, 3), np.delete(opened, 3), atol=0.5)
    assert codes(NORTH, fault) == ["P0203"]
    # a rod on the injector itself tells: it carries what its mates carry
    on_it = [render(solved(NORTH, one), "probe 3", Bed(), 1, [3]).slots[0].level_dba for one in (fault, OPEN_3)]
    assert 14.0 < on_it[0] - on_it[1] < 22.0


def test_an_open_shared_feed_takes_the_group_and_the_other_bank_is_normal() -> None:
    fault = Fault(FaultKind.OPEN, PLACE, (1, 2, 3, 4), Side.FEED)
    drop = drops_db(HARBOUR, fault)
    assert all(value > 45.0 for value in drop[1:5])  # one feed a bank: no hum at all
    assert all(abs(value) < 0.5 for value in drop[5:])
    assert drop[0] > 1.0
    assert codes(HARBOUR, fault) == [*(f"SPN {650 + n} FMI 5" for n in (1, 2, 3, 4)), "SPN 2797 FMI 5"]


def test_with_both_feeds_on_the_other_bank_still_hums() -> None:
    drop = drops_db(NORTH, fault_of(NORTH, FaultKind.DEAD_FEED_DRIVER, 1))
    assert all(20.0 < drop[slot] < 36.0 for slot in (1, 3, 5, 7))


def test_a_small_resistance_hides_behind_the_current_limit() -> None:
    fault = Fault(FaultKind.ADDED_RESISTANCE, PLACE, (3,), Side.RETURN, 5.0)
    assert abs(drops_db(NORTH, fault)[3]) < 1.5
    assert codes(NORTH, fault) == []


def test_a_large_resistance_is_dull_louder_than_the_hum_and_without_a_code() -> None:
    for ohm in (16.0, 20.0, 25.0):
        fault = Fault(FaultKind.ADDED_RESISTANCE, PLACE, (3,), Side.RETURN, ohm)
        assert 12.0 < drops_db(NORTH, fault)[3] < drops_db(NORTH, OPEN_3)[3] - 1.0
        slot = [sound_of(NORTH.name, *faults).slots[3] for faults in ((fault,), ())]
        assert slot[0].centroid_hz < 0.5 * slot[1].centroid_hz  # an octave duller
        assert codes(NORTH, fault) == []


def test_resistance_in_a_shared_feed_is_heard_only_in_the_burst() -> None:
    fault = Fault(FaultKind.ADDED_RESISTANCE, Location.ENGINE_HARNESS, (1, 3, 5, 7), Side.FEED, 5.0)
    drop = drops_db(NORTH, fault)
    assert all(abs(value) < 2.0 for value in drop[1:])
    assert drop[0] > 1.0  # after the limiter, which lets a third of it through; a step of 1 dB is heard


def test_a_short_across_the_pair_is_silent_with_a_high_current_code() -> None:
    fault = Fault(FaultKind.SHORT_ACROSS_PAIR, PLACE, (3,))
    assert drops_db(NORTH, fault)[3] > 20.0
    assert codes(NORTH, fault) == ["P0268"]


def test_a_quarter_of_the_turns_shorted_is_weak_to_dull() -> None:
    assert drops_db(NORTH, fault_of(NORTH, FaultKind.SHORTED_TURNS, 3))[3] > 3.0


def test_a_return_to_ground_clicks_in_every_slot_of_its_bank() -> None:
    test = solved(HARBOUR, Fault(FaultKind.SHORT_TO_GROUND, Location.UNDER_COVER, (3,), Side.RETURN, 0.2))
    lifted = test.pulses[0].position_m.max(axis=0)[:, 2] > 0.5 * HARBOUR.solenoid.lift_m
    assert lifted[1:5].all()
    assert not lifted[5:].any()


def test_a_leak_of_a_kilohm_is_neither_heard_nor_coded() -> None:
    fault = Fault(FaultKind.SHORT_TO_GROUND, Location.COIL, (3,), Side.RETURN, 1000.0)
    assert all(abs(value) < 1.0 for value in drops_db(NORTH, fault))
    assert codes(NORTH, fault) == []


def test_a_stuck_output_clicks_in_every_slot_and_is_coded() -> None:
    fault = fault_of(NORTH, FaultKind.STUCK_RETURN_DRIVER, 3)
    lifted = solved(NORTH, fault).pulses[0].position_m.max(axis=0)[:, 2] > 0.5 * NORTH.solenoid.lift_m
    assert lifted.all()
    assert codes(NORTH, fault) == ["P0268"]


def test_return_to_return_in_one_bank_lifts_neither_and_has_no_code() -> None:
    fault = Fault(FaultKind.RETURN_TO_RETURN, PLACE, (1, 3), Side.RETURN, 0.1)
    drop = drops_db(NORTH, fault)
    assert drop[1] > 10.0
    assert drop[3] > 10.0
    assert codes(NORTH, fault) == []


def test_crossed_returns_in_one_bank_are_even_from_the_wrong_place() -> None:
    fault = Fault(FaultKind.CROSSED_RETURNS, Location.ENGINE_HARNESS, (3, 7), Side.RETURN)
    assert all(abs(value) < 3.0 for value in drops_db(NORTH, fault))
    moved = solved(NORTH, fault).pulses[0].position_m.max(axis=0)
    assert moved[3, 6] > 0.9 * NORTH.solenoid.lift_m > moved[3, 2]
    assert codes(NORTH, fault) == []


def test_crossed_returns_over_two_banks_are_two_opens_where_one_bank_is_fed() -> None:
    fault = Fault(FaultKind.CROSSED_RETURNS, Location.ENGINE_HARNESS, (2, 6), Side.RETURN)
    drop = drops_db(HARBOUR, fault)
    assert drop[2] > 20.0
    assert drop[6] > 20.0


def test_no_supply_is_nothing_and_no_hum() -> None:
    assert all(value > 60.0 for value in drops_db(NORTH, fault_of(NORTH, FaultKind.NO_SUPPLY, 1)))


def test_a_slow_supply_is_weak_in_the_burst_and_nearly_even_one_by_one() -> None:
    drop = drops_db(NORTH, fault_of(NORTH, FaultKind.SLOW_RECHARGE, 1))
    assert drop[0] > 2.0
    assert all(abs(value) < 2.5 for value in drop[1:])


@pytest.mark.parametrize("kind", [FaultKind.POOR_MODULE_FEED, FaultKind.POOR_MODULE_GROUND])
def test_a_module_starved_by_its_ground_or_feed_is_even_and_sets_the_supplys_code(kind: FaultKind) -> None:
    fault = Fault(kind, Location.MODULE_POWER, NORTH.cylinders)
    assert all(abs(value) < 2.5 for value in drops_db(NORTH, fault))
    assert codes(NORTH, fault) == ["P0611"]


def test_a_weak_battery_is_even_with_the_engine_standing() -> None:
    fault = Fault(FaultKind.WEAK_BATTERY, Location.MODULE_POWER, NORTH.cylinders)
    assert all(abs(value) < 2.5 for value in drops_db(NORTH, fault))
    assert codes(NORTH, fault) == []


@pytest.mark.parametrize("kind", [FaultKind.OPEN_WHEN_MOVED, FaultKind.OPEN_WHEN_HOT])
def test_an_intermittent_is_even_until_it_is_moved_or_warm(kind: FaultKind) -> None:
    fault = fault_of(NORTH, kind, 3)
    assert all(abs(value) < 0.1 for value in drops_db(NORTH, fault, conditions=Conditions()))
    assert drops_db(NORTH, fault)[3] > 20.0


def test_a_stuck_plate_is_dull_without_a_code_and_has_full_current() -> None:
    fault = fault_of(NORTH, FaultKind.STUCK_ARMATURE, 3)
    drop = drops_db(NORTH, fault)
    assert 10.0 < drop[3] < drops_db(NORTH, OPEN_3)[3]
    assert sound_of("north_v8", fault).slots[3].centroid_hz < 0.8 * sound_of("north_v8").slots[3].centroid_hz
    assert codes(NORTH, fault) == []


def test_a_slow_plate_is_softer_and_a_worn_one_louder() -> None:
    assert drops_db(NORTH, fault_of(NORTH, FaultKind.SLUGGISH_ARMATURE, 3))[3] > 3.0
    assert drops_db(NORTH, fault_of(NORTH, FaultKind.WORN_ARMATURE, 3))[3] < -0.5


def clicking(profile: Profile, *faults: Fault) -> list[set[int]]:
    """Return which injectors lift in each single slot, in numeric order."""
    lifted = solved(profile, *faults).pulses[0].position_m.max(axis=0) > 0.5 * profile.solenoid.lift_m
    return [{number for number, up in zip(profile.cylinders, row, strict=True) if up} for row in lifted[1:]]


def test_one_of_two_connectors_of_a_bank_off_leaves_its_members_a_hum() -> None:
    fault = Fault(FaultKind.OPEN, PLACE, (1, 3), Side.FEED)
    drop = drops_db(NORTH, fault)
    assert all(20.0 < drop[slot] < 36.0 for slot in (1, 3))
    assert all(abs(drop[slot]) < 0.5 for slot in (2, 4, 5, 6, 7, 8))
    assert codes(NORTH, fault) == ["P0201", "P0203"]


@pytest.mark.parametrize("profile", [NORTH, HARBOUR], ids=lambda profile: profile.name)
def test_ten_to_fourteen_ohms_are_weak_or_dull_without_a_code(profile: Profile) -> None:
    for ohm in (10.0, 12.0, 14.0):
        fault = Fault(FaultKind.ADDED_RESISTANCE, PLACE, (3,), Side.RETURN, ohm)
        assert 1.0 < drops_db(profile, fault)[3] < 24.0
        assert codes(profile, fault) == []


def test_a_few_turns_shorted_are_normal_or_slightly_weak_with_a_step_at_the_start() -> None:
    fault = Fault(FaultKind.SHORTED_TURNS, Location.COIL, (3,), None, 0.05)
    assert -0.5 < drops_db(NORTH, fault)[3] < 2.5
    assert codes(NORTH, fault) == []
    shorted, good = (solved(NORTH, *faults).pulses[0].return_a[:8, 3, 2] for faults in ((fault,), ()))
    assert (shorted - good).max() > 0.15


def test_a_feed_to_ground_takes_its_bank_and_sets_the_groups_code() -> None:
    fault = Fault(FaultKind.SHORT_TO_GROUND, PLACE, (1, 2, 3, 4), Side.FEED, 0.2)
    drop = drops_db(HARBOUR, fault)
    # the list says no hum; what is heard is the tick of the 62 µs until the trip
    assert all(value > 25.0 for value in drop[1:5])
    assert all(abs(value) < 0.5 for value in drop[5:])
    assert codes(HARBOUR, fault) == [*(f"SPN {650 + n} FMI 4" for n in (1, 2, 3, 4)), "SPN 2797 FMI 4"]


def test_a_return_at_a_heater_or_at_the_battery_clicks_in_the_others_slots() -> None:
    for fault in (
        fault_of(NORTH, FaultKind.RETURN_TO_HEATER, 8),
        Fault(FaultKind.SHORT_TO_BATTERY, PLACE, (3,), Side.RETURN, 0.2),
    ):
        (own,) = fault.cylinders
        assert all(own in slot for slot in clicking(NORTH, fault))
    assert codes(NORTH, Fault(FaultKind.SHORT_TO_BATTERY, PLACE, (3,), Side.RETURN, 0.2)) == ["P0268"]


def test_a_feed_at_the_battery_trips_as_at_ground() -> None:
    # the list says near normal, which is so of a drive at battery voltage: 110 V against 12.6 V is a short
    fault = Fault(FaultKind.SHORT_TO_BATTERY, PLACE, (1, 2, 3, 4), Side.FEED, 0.2)
    assert all(value > 25.0 for value in drops_db(HARBOUR, fault)[1:5])
    assert codes(HARBOUR, fault) == [*(f"SPN {650 + n} FMI 3" for n in (1, 2, 3, 4)), "SPN 2797 FMI 4"]


def test_returns_of_two_banks_that_touch_click_together_through_the_feed_that_is_off() -> None:
    # the list says normal, which is so where a feed that is off floats; here it holds its pins at ground, for the
    # current of a coil to run out in, and so two coils in series lie between the live feed and ground in every slot
    fault = Fault(FaultKind.RETURN_TO_RETURN, Location.ENGINE_HARNESS, (3, 7), Side.RETURN, 0.1)
    assert all({3, 7} <= slot for slot in clicking(HARBOUR, fault))
    assert codes(HARBOUR, fault) == []


@pytest.mark.parametrize("share", [0.85, 0.7, 0.6])
def test_a_supply_at_sixty_to_eighty_five_per_cent_is_nearly_even_and_low_where_it_is_measured(share: float) -> None:
    fault = Fault(FaultKind.LOW_SUPPLY, Location.DRIVE_MODULE, NORTH.cylinders, None, share)
    assert all(abs(value) < 2.0 for value in drops_db(NORTH, fault))
    lowest = [float(solved(NORTH, *faults).pulses[0].rail_v.min()) for faults in ((fault,), ())]
    assert lowest[0] < (share + 0.05) * lowest[1]
    assert codes(NORTH, fault) == ([] if share > 0.8 else ["P0611"])


# the readings

N, MATE = 3, 1


def example() -> Circuit:
    """Return the worked network: one shared feed a bank, spliced under the cover."""
    circuit = circuit_of(HARBOUR)
    returns = {number: replace(driver, off_ohm=110.0) for number, driver in circuit.returns.items()}
    elements = {}
    for name, element in circuit.elements.items():
        # the wiring's ohms of the table are per side: half of it in each half of a wire
        ohm = {
            (Location.ENGINE_HARNESS, Part.WIRE): 0.03, (Location.UNDER_COVER, Part.WIRE): 0.02,
        }.get((element.location, element.part), element.ohm)  # fmt: skip
        if element.part is Part.CONTACT:
            ohm = 0.01
        if ".trunk." in name or (element.location is Location.UNDER_COVER and element.cylinders == (1, 2, 3, 4)):
            ohm = 0.0
        if element.part is Part.WINDING:
            ohm = 3.0
        elements[name] = replace(element, ohm=ohm)
    return replace(circuit, elements=elements, returns=returns)


def at_module(circuit: Circuit, a: str, b: str, *, plugged: bool = False) -> float:
    gone = frozenset() if plugged else contacts_of(circuit.profile, "module_connector")
    return between(circuit.without(gone), a, b)[0]


FEED = module_plug_node(Side.FEED, "right")


def back(number: int) -> str:
    return module_plug_node(Side.RETURN, number)


def linked(a: str, b: str, ohm: float) -> Circuit:
    return example().with_element("fault", Element(a, b, ohm, Location.UNDER_COVER, Part.LINK))


def with_return(ohm: float) -> Circuit:
    return example().with_resistance(f"pass_through_connector.contact.return.{N}", ohm)


@pytest.mark.parametrize(
    ("what", "circuit", "a", "b", "ohm", "within"),
    [
        ("pair of a good one", example(), FEED, back(N), 3.2, 0.1),
        ("two returns of one bank: twice a coil", example(), back(N), back(MATE), 6.3, 0.15),
        ("extra 2 ohm in a return, pair", with_return(2.01), FEED, back(N), 5.2, 0.1),
        ("extra 2 ohm in a return, two returns", with_return(2.01), back(N), back(MATE), 8.3, 0.15),
        ("short across the pair under the cover", linked(f"injector_plug.feed.{N}", f"injector_plug.return.{N}", 0.0),
         FEED, back(N), 0.2, 0.06),
        ("short across the pair, two returns", linked(f"injector_plug.feed.{N}", f"injector_plug.return.{N}", 0.0),
         back(N), back(MATE), 3.3, 0.15),
        ("return to ground, pair unchanged", linked(f"injector_plug.return.{N}", GROUND, 0.1), FEED, back(N), 3.2, 0.1),
        ("return to ground, pin to ground", linked(f"injector_plug.return.{N}", GROUND, 0.1), back(N), GROUND, 0.2, 0.06),
        ("return to ground, feed pin", linked(f"injector_plug.return.{N}", GROUND, 0.1), FEED, GROUND, 3.3, 0.15),
        ("return to ground, a mate's pin", linked(f"injector_plug.return.{N}", GROUND, 0.1), back(MATE), GROUND, 6.3, 0.2),
        ("return to return, the pair", linked(f"injector_plug.return.{N}", f"injector_plug.return.{MATE}", 0.0),
         FEED, back(N), 1.7, 0.1),
        ("return to return, the two", linked(f"injector_plug.return.{N}", f"injector_plug.return.{MATE}", 0.0),
         back(N), back(MATE), 0.2, 0.06),
    ],
    ids=lambda value: value if isinstance(value, str) and " " in value else "",
)  # fmt: skip
def test_ohms_at_the_module_plug(what: str, circuit: Circuit, a: str, b: str, ohm: float, within: float) -> None:
    assert at_module(circuit, a, b) == pytest.approx(ohm, abs=within), what


def test_an_open_is_over_every_range_and_a_healthy_return_floats() -> None:
    circuit = with_return(OPEN_OHM)
    assert at_module(circuit, FEED, back(N)) > HARBOUR.meter.top_ohm
    assert at_module(example(), back(N), GROUND) > HARBOUR.meter.insulation_top_ohm


def test_with_the_module_left_connected_an_open_reads_as_the_network_behind_it() -> None:
    # the check list's slip: about 150 for the pair, about 110 from the pin to ground
    circuit = with_return(OPEN_OHM)
    assert at_module(circuit, FEED, back(N), plugged=True) == pytest.approx(148.0, abs=4.0)
    assert at_module(circuit, back(N), GROUND, plugged=True) == pytest.approx(110.0, abs=2.0)
    # from a mate's pin the list says about 30; by Ohm's law its own 110 and two more of 116 side by side give 38,
    # and 29 only while the third mate is whole (docs/decisions.md)
    assert at_module(circuit, back(MATE), GROUND, plugged=True) == pytest.approx(38.0, abs=1.0)
    assert at_module(example(), back(MATE), GROUND, plugged=True) == pytest.approx(29.0, abs=1.0)


def test_a_mating_contact_belongs_to_neither_half() -> None:
    profile = NORTH
    bad = faulty_circuit(profile, [OPEN_3], Conditions())
    unplugged = bad.without(contacts_of(profile, "pass_through.right_front") | contacts_of(profile, "module_connector"))
    engine = between(unplugged, back(3), "pass_through.engine.return.3")[0]
    cover = between(unplugged, "pass_through.cover.feed.1-3", "pass_through.cover.return.3")[0]
    assert engine < 0.1
    assert cover == pytest.approx(2.7, abs=0.1)
