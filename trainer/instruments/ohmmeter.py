"""Ohmmeter and insulation tester: a source in the same network between two pins, or a pin and ground."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from trainer.circuit.drive import battery_branch
from trainer.circuit.elements import GROUND, OPEN_OHM, RAIL, Circuit, feed_pin, return_pin
from trainer.circuit.fault import Fault
from trainer.circuit.network import Branch, solve
from trainer.circuit.profile import DISCHARGED_V, Profile
from trainer.instruments.bench import MODULE_CONNECTOR, Pin, Work, core_shorts, cylinders_at, node_of, worked_circuit
from trainer.instruments.reading import OVER_RANGE, Reading, Slip, shown_ohm

METER_CURRENT_A = 1e-3
"""What a hand-held ohmmeter sends on its low ranges: from memory."""

VOLTAGE_TOLD_V = 0.2
"""Voltage on a dead wire that a meter would notice: common practice, no published source."""


def resting_branches(circuit: Circuit, *, loaded: bool = False) -> dict[str, Branch]:
    """Return the resting network with the key off: feeds dead, the module's outputs as the background network.

    `loaded` gives joints the resistance that amperes meet.
    """
    branches = {name: (element.a, element.b, element.at(loaded)) for name, element in circuit.elements.items()}
    for n, short in zip(circuit.profile.cylinders, core_shorts(circuit), strict=True):
        branches[f"core.{n}"] = short
        branches[f"output.{n}"] = (return_pin(n), GROUND, circuit.returns[n].off_ohm)
    for name in circuit.feeds:
        branches[f"feed.{name}"] = (RAIL, feed_pin(name), OPEN_OHM)
    branches["battery"] = battery_branch(circuit)
    return branches


def quiet_branches(circuit: Circuit) -> list[Branch]:
    """Return the resting network's branches without their names."""
    return list(resting_branches(circuit).values())


def between(circuit: Circuit, a: str, b: str) -> tuple[float, float]:
    """Return resistance in ohm and open-circuit voltage in volt between two nodes of the resting network."""
    battery_v = circuit.profile.module.battery_v
    sources = [{"battery.source": 0.0}, {"battery.source": battery_v}]
    injections = [{a: 1.0, b: -1.0}, {}]
    solution = solve(quiet_branches(circuit), sources, injections)
    across = solution.voltage(a) - solution.voltage(b)
    return float(across[0]), float(across[1])


FEED_LEAK_OHM = 22_000.0
"""What a feed output that is off lets through of a supply that is still charged: from memory."""

VOLTMETER_OHM = 1e7
"""The input of a hand-held meter on volts: common practice, no published source."""

AT_ONCE_S = 3.0
"""How long after key off somebody reads who does not wait: from memory."""

DEAD_BELOW_V = 1.0
"""Under this a terminal is called dead: common practice, no published source."""


def supply_left_v(profile: Profile, after_s: float) -> float:
    """Return a module's supply some seconds after key off: one time constant, by the profile's time to discharge."""
    module = profile.module
    fading_s = module.discharge_s / np.log(module.supply_v / DISCHARGED_V)
    return float(module.supply_v * np.exp(-after_s / fading_s))


def resting_voltage(circuit: Circuit, a: str, b: str, after_s: float) -> float:
    """Return the voltage between two nodes some seconds after key off: what a battery feeds, and what is still charged.

    The supply is behind the leakage of its feed outputs.
    """
    branches = resting_branches(circuit)
    for name in circuit.feeds:
        branches[f"feed.{name}"] = (RAIL, feed_pin(name), FEED_LEAK_OHM)
    branches["meter"] = (a, b, VOLTMETER_OHM)
    profile = circuit.profile
    sources = {"battery.source": profile.module.battery_v, RAIL: supply_left_v(profile, after_s)}
    solution = solve(list(branches.values()), [sources], [{}])
    return float(solution.voltage(a)[0] - solution.voltage(b)[0])


def measure_volts(
    profile: Profile, faults: Sequence[Fault], work: Work, pins: tuple[Pin, Pin | None], *, at_once: bool = False
) -> Reading:
    """Measure volts at rest between a pin and ground, key off, after the time to discharge or without waiting."""
    nodes = [GROUND if pin is None else node_of(profile, pin) for pin in pins]
    circuit = worked_circuit(profile, faults, work)
    after_s = AT_ONCE_S if at_once else profile.module.discharge_s
    value = round(abs(resting_voltage(circuit, nodes[0], nodes[1], after_s)), 2)
    return Reading("voltmeter", value, "volt", f"{value:.2f} V", (Slip.NOT_WAITED,) if at_once else ())


def measure_ohm(
    profile: Profile,
    faults: Sequence[Fault],
    work: Work,
    pins: tuple[Pin, Pin | None],
    seed: int,
    *,
    nulled: bool = True,
    key_on: bool = False,
    at_once: bool = False,
) -> Reading:
    """Measure resistance between two pins, or between a pin and engine ground (second pin None).

    A circuit that is still connected gives what a bench would give, and so does one that is still charged; on a live
    one the meter shows nothing that means anything. Raises KeyError for a pin that is not there.
    """
    nodes = [GROUND if pin is None else node_of(profile, pin) for pin in pins]
    if key_on:
        return Reading("ohmmeter", None, "ohm", "----", (Slip.LIVE,))
    circuit = worked_circuit(profile, faults, work)
    resistance, voltage = between(circuit, nodes[0], nodes[1])
    slips = _connected(profile, work, pins)
    if at_once:
        voltage = resting_voltage(circuit, nodes[0], nodes[1], AT_ONCE_S)
        slips = (*slips, Slip.NOT_WAITED)
    if abs(voltage) > VOLTAGE_TOLD_V:
        slips = (*slips, Slip.VOLTAGE_ON_WIRE)
    seen = abs(resistance + voltage / METER_CURRENT_A)
    if not nulled:
        seen += profile.meter.lead_ohm
        slips = (*slips, Slip.NOT_NULLED)
    value, display = shown_ohm(profile.meter, seen, seed, f"{pins} {sorted(work.unplugged)}")
    return Reading("ohmmeter", value, "ohm", display, slips)


def _connected(profile: Profile, work: Work, pins: tuple[Pin, Pin | None]) -> tuple[Slip, ...]:
    """Note a measurement on a circuit that still hangs on the module or was not opened where it is probed."""
    opened = all(pin is None or pin.break_point in work.unplugged for pin in pins)
    # past an opened connector the module is cut off; before it only its own plug does that
    hangs = any(pin is not None and _hangs_on_module(profile, work, pin) for pin in pins)
    return () if opened and not hangs else (Slip.STILL_CONNECTED,)


def _hangs_on_module(profile: Profile, work: Work, pin: Pin) -> bool:
    if MODULE_CONNECTOR in work.unplugged or pin.break_point == MODULE_CONNECTOR:
        return False
    if pin.half == "harness":
        through = profile.connector_name_of(cylinders_at(profile, pin.break_point)[0])
        return f"pass_through.{through}" not in work.unplugged
    return pin.half == "engine"


def measure_insulation(
    profile: Profile,
    faults: Sequence[Fault],
    work: Work,
    pins: tuple[Pin, Pin | None],
    seed: int,
    *,
    key_on: bool = False,
) -> Reading:
    """Measure insulation from a pin to ground, or to another pin, at 250 V; only wires off at both ends are for it."""
    nodes = [GROUND if pin is None else node_of(profile, pin) for pin in pins]
    if key_on:
        return Reading("insulation", None, "ohm", "----", (Slip.LIVE,))
    circuit = worked_circuit(profile, faults, work)
    slips = _connected(profile, work, pins)
    if not all(is_isolated(circuit, node) for node in nodes if node != GROUND):
        slips = (*slips, Slip.INSULATION_INTO_PART)
    resistance, voltage = between(circuit, nodes[0], nodes[1])
    if abs(voltage) > VOLTAGE_TOLD_V:
        slips = (*slips, Slip.VOLTAGE_ON_WIRE)
    if resistance > profile.meter.insulation_top_ohm:
        return Reading("insulation", None, "ohm", OVER_RANGE, slips)
    tester = replace(profile.meter, percent=profile.meter.insulation_percent, top_ohm=profile.meter.insulation_top_ohm)
    value, display = shown_ohm(tester, resistance, seed, f"insulation {pins[0] if pins[1] is None else pins}")
    return Reading("insulation", value, "ohm", display, slips)


def is_isolated(circuit: Circuit, node: str) -> bool:
    """Tell whether no coil, heater or module output can be reached from a node through metal."""
    branches = [branch for branch in quiet_branches(circuit) if branch[2] < 1e6]
    parts = {return_pin(n) for n in circuit.profile.cylinders} | {feed_pin(name) for name in circuit.feeds}
    parts |= {a for a, _b, _ohm in core_shorts(circuit)} | {"heater"}
    reached, waiting = {node}, [node]
    while waiting:
        here = waiting.pop()
        for a, b, _ohm in branches:
            for other in (b,) if a == here else (a,) if b == here else ():
                if other not in reached and other != GROUND:
                    reached.add(other)
                    waiting.append(other)
    return not reached & parts
