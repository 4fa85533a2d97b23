"""What is measured with the battery's own amperes: a lamp on an isolated wire, the battery while the starter turns."""

from __future__ import annotations

from collections.abc import Sequence
from typing import overload

from trainer.arrays import Floats
from trainer.circuit.elements import BATTERY, GROUND, Circuit
from trainer.circuit.fault import Fault
from trainer.circuit.harness import drawn_share
from trainer.circuit.network import Branch, solve
from trainer.circuit.profile import Profile
from trainer.instruments.bench import Pin, Work, node_of, worked_circuit
from trainer.instruments.ohmmeter import is_isolated, resting_branches
from trainer.instruments.reading import Reading, Slip
from trainer.instruments.requests import PowerDrop

LAMP_OHM = 12.0**2 / 21.0
"""A lamp of 12 V and 21 W, hot: common practice, no published source."""

STARTER_TIMES_BATTERY = 6.25
"""A turning starter's resistance beside that of the battery chosen for it: 86 % of the voltage is left, 10.9 of 12.6 V
(common practice, no published source: a good battery stays above 9.6 V)."""


@overload
def lamp_current_a(profile: Profile, ohm: float) -> float: ...
@overload
def lamp_current_a(profile: Profile, ohm: Floats) -> Floats: ...
def lamp_current_a(profile: Profile, ohm: float | Floats) -> float | Floats:
    """Return the lamp's current through a wire of some resistance under load."""
    return profile.module.battery_v / (profile.module.battery_ohm + LAMP_OHM + ohm)


def starter_branch(profile: Profile) -> Branch:
    """Return the starter that turns; the cold weakens the battery, not the starter."""
    return BATTERY, GROUND, STARTER_TIMES_BATTERY * profile.module.battery_ohm


def measure_lamp(profile: Profile, faults: Sequence[Fault], work: Work, pins: tuple[Pin, Pin]) -> Reading:
    """Measure the current of a lamp through a wire between its two ends; only a wire off at both ends is for it."""
    circuit = worked_circuit(profile, faults, work)
    a, b = (node_of(profile, pin) for pin in pins)
    branches = list(resting_branches(circuit, loaded=True).values())
    solution = solve(branches, [{"battery.source": 0.0}], [{a: 1.0, b: -1.0}])
    ohm = abs(float(solution.voltage(a)[0] - solution.voltage(b)[0]))
    value = round(lamp_current_a(profile, ohm), 2)
    slips = () if is_isolated(circuit, a) and is_isolated(circuit, b) else (Slip.LAMP_INTO_PART,)
    return Reading("lamp", value, "ampere", f"{value:.2f} A", slips)


def measure_crank(profile: Profile, faults: Sequence[Fault], work: Work) -> Reading:
    """Measure the battery's voltage at its posts while the starter turns."""
    circuit = worked_circuit(profile, faults, work)
    branches = [*resting_branches(circuit).values(), starter_branch(profile)]
    solution = solve(branches, [{"battery.source": profile.module.battery_v}], [{}])
    value = round(float(solution.voltage(BATTERY)[0]), 2)
    return Reading("battery", value, "volt", f"{value:.2f} V")


def power_drop_v(circuit: Circuit, rail_v: float, what: PowerDrop) -> float:
    """Return the voltage drop between battery and module, on the plus or the ground side, at a moment of a test.

    The module draws from the battery what its supply is filled with, at the battery's voltage (a converter without
    loss), as far as a chopping module draws it.
    """
    rail, module = circuit.rail, circuit.profile.module
    filling_a = (rail.supply_v - rail_v) / rail.source_ohm
    drawn_a = filling_a * drawn_share(circuit.profile) * rail.supply_v / module.battery_v
    return drawn_a * (circuit.power.plus_ohm if what == "plus_drop" else circuit.power.ground_ohm)
