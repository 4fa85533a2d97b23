"""What a joint burns: no pin survives more than some 20 W for long (common practice, no published source)."""

from __future__ import annotations

import numpy as np
import pytest

from tests.engines import ALL, NORTH, solved, worst
from trainer.arrays import Floats
from trainer.cases.drawing.random_case import BURNS_AWAY_OHM, drawable
from trainer.cases.single_case.shipped import case_named, case_names
from trainer.circuit.drive import port_nodes, pulse_law, rail_branches, shut_by
from trainer.circuit.elements import OPEN_OHM, RAIL, Location, Part, Side
from trainer.circuit.fault import Fault, FaultKind
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import KINDS, faulty_circuit
from trainer.circuit.network import Branch, Solution, port_columns, solve
from trainer.circuit.profile import Profile
from trainer.circuit.solve import SolvedTest, solve_test
from trainer.instruments.on_battery import power_drop_v

MOST_W = 20.0
EVERY = 8
"""One step in so many is looked at: 83 µs apart."""

MOST_ON_THE_WAY_W = 25.0
"""What a joint burns for a while as it goes from good to open: grid points of a severity that no case is drawn at."""

BY_CURRENT_OHM = 1.0
"""Up to here a contact's power is its current squared times this; beyond, the voltage across it squared over this.

Either way the small difference of two large numbers is left out: of two nearly equal voltages, or of the currents at a
node beside an open contact.
"""


def contact_watts(test: SolvedTest) -> dict[str, float]:
    """Return what each contact burns, averaged over the whole test with its pauses.

    The model's limiter is a cycle average: it takes the drive's voltage away and draws the whole current all the time.
    A chopping module draws it for the share of the time that the voltage left over is of the rail, so a feed that
    several injectors share carries Σ i·d on average, and beside it what each adds by coming and going, i²·d·(1 − d).
    """
    circuit, profile, schedule = test.circuit, test.circuit.profile, test.circuit.profile.schedule
    length = {slot.number: schedule.slot_s if slot.number else schedule.together_s for slot in test.slots}
    whole_s = sum(length.values()) + schedule.pause_s * len(length)
    numbers = profile.cylinders
    watts: dict[str, float] = {}
    for row, slot in enumerate(test.slots):
        pulse, place = test.pulses_of(row)[-1]
        steps = np.arange(0, test.on_steps, EVERY)
        shut = slot.live - frozenset[str]().union(*(shut_by(profile, output) for output in test.tripped[row]))
        # a tripped feed is on for as long as it carries more than the trip's level
        over = pulse.feed_a[steps, place].max(axis=1, keepdims=True) > profile.module.trip.current_a
        branches = rail_branches(circuit, slot.live)
        coil_a, return_a, rail_v = (one[steps, place] for one in (pulse.coil_a, pulse.return_a, pulse.rail_v))
        ways = port_columns(port_nodes(circuit), RAIL, "battery.source")
        driven, tripped = (solve(list(rail_branches(circuit, live).values()), *ways) for live in (slot.live, shut))
        battery_v = np.full((len(steps), 1), profile.module.battery_v)
        drive = np.concatenate([rail_v[:, None], battery_v, coil_a, return_a], axis=1)
        law = pulse_law([(circuit, slot)])
        taken_v = law.swing_v * (1.0 + np.tanh((return_a - law.centre_a) / law.width_a))
        duty = np.clip(1.0 - taken_v / np.maximum(rail_v[:, None], 1.0), 0.0, 1.0)
        pulses = round(length[slot.number] * schedule.pulses_per_s)
        for place_of, (name, branch) in enumerate(branches.items()):
            element = circuit.elements.get(name)
            if element is None or element.part is not Part.CONTACT:
                continue
            through, after = (current_in(branch, place_of, one) for one in (driven, tripped))
            square = (
                np.where(over[:, 0], drive @ through, drive @ after) ** 2
                if test.tripped[row]
                else (drive @ through) ** 2
            )
            behind = [numbers.index(number) for number in element.cylinders]
            drawn = coil_a[:, behind]
            whole_a = np.maximum(drawn.sum(axis=1), 1e-3)
            # a feed that carries its coils' currents and no short's
            if element.side is Side.FEED and np.sqrt(square).max() < 1.3 * whole_a.max():
                share = duty[:, behind]
                chopped = (drawn * share).sum(axis=1) ** 2 + (drawn**2 * share * (1.0 - share)).sum(axis=1)
                square = square * np.minimum(chopped / whole_a**2, 1.0)
            energy_j = float((square * branch[2]).sum()) * EVERY * test.step_s
            watts[name] = watts.get(name, 0.0) + energy_j * pulses / whole_s
    return watts


def current_in(branch: Branch, row: int, solution: Solution) -> Floats:
    """Return the current of one branch in every column, in ampere."""
    a, b, ohm = branch
    return solution.current_a[row] if ohm <= BY_CURRENT_OHM else (solution.voltage(a) - solution.voltage(b)) / ohm


def hottest_w(profile: Profile, fault: Fault) -> float:
    # the third pulse: the first one finds the reservoir fuller than the rest do
    test = solve_test(faulty_circuit(profile, [fault], worst(fault)), least_pulses=3)
    return max(contact_watts(test).values())


def joint_of(ohm: float, location: Location = Location.PASS_THROUGH) -> Fault:
    return Fault(FaultKind.ADDED_RESISTANCE, location, (3,), Side.RETURN, ohm, Part.CONTACT)


def test_a_single_joint_burns_most_where_it_halves_the_current_and_twenty_watts_where_cases_are_drawn() -> None:
    joint = [hottest_w(NORTH, joint_of(ohm)) for ohm in (0.4, 5.0, 7.5, 14.0, 28.0, 60.0)]
    assert joint[0] < joint[1] < joint[2] < MOST_W < joint[3] < MOST_ON_THE_WAY_W
    assert MOST_W > joint[4] > joint[5]


def test_a_joint_burns_the_same_at_every_place_of_one_line_and_what_its_outputs_current_says() -> None:
    burnt, at_output = {}, []
    for location in (Location.ENGINE_HARNESS, Location.PASS_THROUGH, Location.UNDER_COVER):
        test = solve_test(faulty_circuit(NORTH, [joint_of(28.0, location)]), least_pulses=3)
        burnt[location] = max(contact_watts(test).values())
        schedule, column, joules, whole_s = NORTH.schedule, NORTH.cylinders.index(3), 0.0, 0.0
        for row, slot in enumerate(test.slots):
            pulse, place = test.pulses_of(row)[-1]
            square = pulse.return_a[: test.on_steps : EVERY, place, column] ** 2
            length_s = schedule.slot_s if slot.number else schedule.together_s
            joules += float(square.sum()) * EVERY * test.step_s * 28.0 * round(length_s * schedule.pulses_per_s)
            whole_s += length_s + schedule.pause_s
        at_output.append(joules / whole_s)
    # 28 ohm come on top of a sound contact's 8 milliohm
    assert list(burnt.values()) == pytest.approx(at_output, rel=1e-3)
    assert max(burnt.values()) == pytest.approx(min(burnt.values()), rel=1e-3)


def test_an_open_contact_burns_next_to_nothing() -> None:
    fault = Fault(FaultKind.OPEN, Location.PASS_THROUGH, (3,), Side.RETURN, None, Part.CONTACT)
    watts = contact_watts(solve_test(faulty_circuit(NORTH, [fault]), least_pulses=3))
    # the rail and the clamp across a gigohm, without a pause
    most_v = NORTH.module.supply_v + NORTH.module.clamp_v
    assert 0.0 < watts["pass_through_connector.contact.return.3"] <= most_v**2 / OPEN_OHM


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_a_contact_on_a_feed_that_touches_the_battery_bears_what_flows_between_pulses(profile: Profile) -> None:
    """A feed that is off holds its pins at ground: the battery feeds it all the time, through the touch and a contact."""
    module = profile.module
    (touch_ohm,) = KINDS[FaultKind.SHORT_TO_BATTERY].severities
    steady_a = module.battery_v / (touch_ohm + module.feed_off_ohm)
    assert steady_a**2 * profile.wiring.contact_ohm < MOST_W


def joints(profile: Profile) -> list[Fault]:
    """Return one fault of every kind, severity, place, side, part and size of group."""
    faults = {
        (f.kind, f.amount(), f.location, f.side, f.part, len(f.cylinders)): f
        for f in reversed(single_faults(profile, "grid"))
    }
    return list(faults.values())


def test_no_shipped_case_has_a_contact_that_burns_away() -> None:
    cases = [case_named(name) for name in case_names()]
    burnt_w = {
        case.name: hottest_w(case.profile, fault)
        for case in cases
        for fault in case.faults
        if fault.kind in (FaultKind.ADDED_RESISTANCE, FaultKind.BURNT_PIN, FaultKind.FAILS_UNDER_LOAD)
    }
    assert len(burnt_w) > 5
    assert {name: watts for name, watts in burnt_w.items() if watts > MOST_W} == {}


@pytest.mark.long
@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_no_pin_burns_more_than_it_survives_with_any_fault_that_stands_for_its_kind(profile: Profile) -> None:
    burnt_w = {fault: hottest_w(profile, fault) for fault in joints(profile)}
    drawn = {(f.kind, f.amount(), f.location, f.part, len(f.cylinders)) for f in drawable(profile, 3)}
    cases_w = {
        fault: watts
        for fault, watts in burnt_w.items()
        if (fault.kind, fault.amount(), fault.location, fault.part, len(fault.cylinders)) in drawn
    }
    assert len(cases_w) > 20
    assert {fault: watts for fault, watts in cases_w.items() if watts > MOST_W} == {}
    assert {fault: watts for fault, watts in burnt_w.items() if watts > MOST_ON_THE_WAY_W} == {}
    # what is over it is a contact of one injector on its way to open, and nothing else
    least_ohm, most_ohm = BURNS_AWAY_OHM
    for fault in (fault for fault, watts in burnt_w.items() if watts > MOST_W):
        assert fault.part is Part.CONTACT, fault
        assert len(fault.cylinders) == 1, fault
        assert least_ohm < fault.amount() < most_ohm, fault


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
@pytest.mark.parametrize("kind", [FaultKind.POOR_MODULE_FEED, FaultKind.POOR_MODULE_GROUND])
def test_a_joint_before_the_module_burns_twenty_watts_at_most(profile: Profile, kind: FaultKind) -> None:
    what = "plus_drop" if kind is FaultKind.POOR_MODULE_FEED else "ground_drop"
    for ohm in KINDS[kind].severities:
        test = solved(profile, Fault(kind, Location.MODULE_POWER, profile.cylinders, None, ohm))
        schedule, joules, whole_s = profile.schedule, 0.0, 0.0
        for row, slot in enumerate(test.slots):
            length_s = schedule.slot_s if slot.number else schedule.together_s
            pulse, place = test.pulses_of(row)[-1]
            drops_v = [power_drop_v(test.circuit, rail_v, what) for rail_v in pulse.rail_v[::EVERY, place].tolist()]
            # what is solved ends where the slot rests: until the next pulse it burns less
            joules += length_s * float(np.mean(np.square(drops_v))) / ohm
            whole_s += length_s + schedule.pause_s
        assert joules / whole_s < MOST_W, ohm
