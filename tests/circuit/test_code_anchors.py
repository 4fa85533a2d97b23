"""Where codes begin, in ohms and shares of the turns: an engine's file with other thresholds fails here.

The figures do not follow the file. The ohms are Ohm's law by hand, V / (R + about 3 Ω), between 2.4 and 2.7 A.
The shares are where the current of a closed ring passes the file's level, found by solving in steps of 0.01.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.circuit.test_codes import seen_in
from tests.engines import ALL, FIELD, HARBOUR, NORTH, RIDGE, fault_of
from trainer.circuit.codes import Sensed, codes_from, codes_of, slot_currents
from trainer.circuit.drive import slots_of
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Fault, FaultKind
from trainer.circuit.faults import faulty_circuit
from trainer.circuit.profile import Profile
from trainer.circuit.solve import solve_test

CYLINDER = 2

CARRIES_OHM = {NORTH.name: 38.0, HARBOUR.name: 34.0, FIELD.name: 37.0, RIDGE.name: 39.0}
"""The most resistance in one return that is not yet called open."""

OPEN_OHM = {NORTH.name: 41.0, HARBOUR.name: 38.0, FIELD.name: 41.0, RIDGE.name: 43.0}
"""The least that is."""

UNCODED_SHARE = {NORTH.name: 0.08, HARBOUR.name: 0.11, FIELD.name: 0.10, RIDGE.name: 0.15}
"""The largest share of shorted turns that leaves no code."""

CODED_SHARE = {NORTH.name: 0.10, HARBOUR.name: 0.12, FIELD.name: 0.12, RIDGE.name: 0.18}
"""The smallest that leaves one."""

NEVER_LIFTS_OHM = 30.0
"""The plate stays down in every engine, and yet more than 3 A flow: weak, but a circuit."""

LIFTS_OHM = {NORTH.name: 12.0, HARBOUR.name: 15.0, FIELD.name: 14.0, RIDGE.name: 19.0}
"""The most resistance in one return with which every pulse still lifts the plate (docs/model.md, 5)."""

MOST_BACKGROUND_A = 2.0
"""What flows through an injector that is not commanded, on a sound engine (docs/model.md, 7)."""

every_engine = pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)


def seen_in_own_slot(profile: Profile, fault: Fault) -> tuple[list[Sensed], bool]:
    """Return what the module senses in the slot of cylinder 2, and whether its plate lifts, by the first pulse."""
    slot = next(slot for slot in slots_of(profile) if slot.number == CYLINDER)
    test = solve_test(faulty_circuit(profile, [fault]), [slot], most_pulses=1)
    highest_m = test.pulses[0].position_m[:, 0, profile.cylinders.index(CYLINDER)].max()
    return [code.sensed for code in codes_of(test)], bool(highest_m > 0.5 * profile.solenoid.lift_m)


def in_return(ohm: float) -> Fault:
    return Fault(FaultKind.ADDED_RESISTANCE, Location.PASS_THROUGH, (CYLINDER,), Side.RETURN, ohm)


def shorted(share: float) -> Fault:
    return Fault(FaultKind.SHORTED_TURNS, Location.COIL, (CYLINDER,), None, share)


@every_engine
def test_a_circuit_that_carries_three_ampere_is_not_open_although_its_plate_stays_down(profile: Profile) -> None:
    assert seen_in_own_slot(profile, in_return(NEVER_LIFTS_OHM)) == ([], False)


@every_engine
def test_an_open_code_begins_between_two_resistances_in_ohm(profile: Profile) -> None:
    assert seen_in_own_slot(profile, in_return(CARRIES_OHM[profile.name])) == ([], False)
    assert seen_in_own_slot(profile, in_return(OPEN_OHM[profile.name])) == ([Sensed.OPEN], False)


@every_engine
def test_a_dead_output_is_open_for_all_its_background_current(profile: Profile) -> None:
    dead = fault_of(profile, FaultKind.DEAD_RETURN_DRIVER, CYLINDER)
    assert seen_in_own_slot(profile, dead) == ([Sensed.OPEN], False)


@every_engine
def test_a_code_for_too_much_current_begins_between_two_shares_of_shorted_turns(profile: Profile) -> None:
    assert seen_in_own_slot(profile, shorted(UNCODED_SHARE[profile.name])) == ([], True)
    assert seen_in_own_slot(profile, shorted(CODED_SHARE[profile.name])) == ([Sensed.OVER], True)


@every_engine
def test_a_current_that_lifts_a_plate_in_anothers_slot_is_coded_and_the_background_is_not(profile: Profile) -> None:
    own, other = (next(slot for slot in slots_of(profile) if slot.number == n) for n in (CYLINDER, 3))
    weak = solve_test(faulty_circuit(profile, [in_return(LIFTS_OHM[profile.name])]), [own], most_pulses=1)
    column = profile.cylinders.index(CYLINDER)
    assert weak.pulses[0].position_m[:, 0, column].max() > 0.5 * profile.solenoid.lift_m
    lifting_a = float(slot_currents(weak, 0, own, profile).most_a[column])
    for current_a, coded in ((lifting_a, [Sensed.UNCOMMANDED]), (MOST_BACKGROUND_A, [])):
        codes = codes_from(profile, [seen_in(profile, other, most_a=current_a)])
        assert [code.sensed for code in codes] == coded


@every_engine
@pytest.mark.parametrize(
    ("threshold", "times"),
    [
        ("open_below_a", 0.5),
        ("open_below_a", 2.0),
        ("open_below_a", 4.0),
        ("short_above_a", 0.85),
        ("short_above_a", 1.15),
    ],
)
def test_a_file_with_another_threshold_sets_other_codes(profile: Profile, threshold: str, times: float) -> None:
    """What the four tests above hold an engine's file to is tight enough to notice these."""
    value = times * getattr(profile.module, threshold)
    other = replace(profile, module=replace(profile.module, **{threshold: value}))
    faults = (
        [in_return(CARRIES_OHM[profile.name]), in_return(OPEN_OHM[profile.name])]
        if threshold == "open_below_a"
        else [shorted(UNCODED_SHARE[profile.name]), shorted(CODED_SHARE[profile.name])]
    )
    assert [seen_in_own_slot(other, f) for f in faults] != [seen_in_own_slot(profile, f) for f in faults]
