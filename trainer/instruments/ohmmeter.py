"""Ohmmeter and insulation tester: a source in the same network between two pins, or a pin and ground."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from trainer.circuit.drive import battery_branch
from trainer.circuit.elements import GROUND, OPEN_OHM, RAIL, Circuit, feed_pin, return_pin
from trainer.circuit.faults import Fault
from trainer.circuit.network import Branch, solve
from trainer.circuit.profile import Profile
from trainer.instruments.bench import MODULE_CONNECTOR, Pin, Work, core_shorts, cylinders_at, node_of, worked_circuit
from trainer.instruments.reading import OVER_RANGE, Reading, Slip, shown_ohm

METER_CURRENT_A = 1e-3
"""What a hand-held ohmmeter sends on its low ranges: from memory."""

VOLTAGE_TOLD_V = 0.2
"""Voltage on a dead wire that a meter would notice: common practice, no published source."""


def resting_branches(circuit: Circuit) -> dict[str, Branch]:
    """Return the resting network with the key off: feeds dead, the module's outputs as the background network."""
    branches = {name: (element.a, element.b, element.ohm) for name, element in circuit.elements.items()}
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


def measure_ohm(
    profile: Profile,
    faults: Sequence[Fault],
    work: Work,
    pins: tuple[Pin, Pin | None],
    seed: int,
    *,
    nulled: bool = True,
    key_on: bool = False,
) -> Reading:
    """Measure resistance between two pins, or between a pin and engine ground (second pin None).

    A circuit that is still connected gives what a bench would give; a live one blows the meter's fuse. Raises
    KeyError for a pin that is not there.
    """
    nodes = [GROUND if pin is None else node_of(profile, pin) for pin in pins]
    if key_on:
        return Reading("ohmmeter", None, "ohm", "----", (Slip.LIVE,))
    circuit = worked_circuit(profile, faults, work)
    resistance, voltage = between(circuit, nodes[0], nodes[1])
    slips = _connected(profile, work, pins)
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
    profile: Profile, faults: Sequence[Fault], work: Work, pin: Pin, seed: int, *, key_on: bool = False
) -> Reading:
    """Measure insulation from a pin to ground at 250 V; only a wire that is off at both ends may be tested so."""
    node = node_of(profile, pin)
    if key_on:
        return Reading("insulation", None, "ohm", "----", (Slip.LIVE,))
    circuit = worked_circuit(profile, faults, work)
    slips = _connected(profile, work, (pin, None))
    if not _isolated(circuit, node):
        slips = (*slips, Slip.INSULATION_INTO_PART)
    resistance, voltage = between(circuit, node, GROUND)
    if abs(voltage) > VOLTAGE_TOLD_V:
        slips = (*slips, Slip.VOLTAGE_ON_WIRE)
    if resistance > profile.meter.insulation_top_ohm:
        return Reading("insulation", None, "ohm", OVER_RANGE, slips)
    tester = replace(profile.meter, percent=profile.meter.insulation_percent, top_ohm=profile.meter.insulation_top_ohm)
    value, display = shown_ohm(tester, resistance, seed, f"insulation {pin}")
    return Reading("insulation", value, "ohm", display, slips)


def _isolated(circuit: Circuit, node: str) -> bool:
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
