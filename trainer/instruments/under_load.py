"""What is measured while the module drives: voltage drop, supply, current trace, current into a dummy load."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view

from trainer.arrays import Floats
from trainer.circuit.chance import Stream
from trainer.circuit.drive import battery_branch, feed_branches, port_nodes, slots_of
from trainer.circuit.elements import RAIL, Circuit
from trainer.circuit.fault import Fault
from trainer.circuit.network import solve
from trainer.circuit.profile import Meter, Profile
from trainer.circuit.solve import MOST_PULSES, SolvedTest, solve_test
from trainer.instruments.bench import Pin, Work, node_of, worked_circuit
from trainer.instruments.on_battery import power_drop_v
from trainer.instruments.reading import Reading
from trainer.instruments.requests import PowerDrop

TRACE_S = 0.004
"""How much of a pulse a current trace shows."""


@dataclass(frozen=True, slots=True)
class Trace:
    """A current trace: time in second and current in ampere, both of shape (sample,)."""

    time_s: Floats
    current_a: Floats


def solved_slot(
    profile: Profile, faults: Sequence[Fault], work: Work, slot: int, most_pulses: int = MOST_PULSES
) -> SolvedTest:
    """Solve one slot of the circuit as the work has left it."""
    chosen = [candidate for candidate in slots_of(profile) if candidate.number == slot]
    return solve_test(worked_circuit(profile, faults, work), chosen, most_pulses=most_pulses)


def node_voltages(solved: SolvedTest, step: int, number: int = -1) -> tuple[Circuit, dict[str, float]]:
    """Return every node's voltage at one step of a pulse (the last one) of the first solved slot, the pulse on."""
    circuit, slot = solved.circuit, solved.slots[0]
    pulse, row = solved.pulses_of(0)[number]
    currents = np.concatenate([pulse.coil_a[step, row], pulse.return_a[step, row]])
    injections: dict[str, float] = {}
    for (a, b), current_a in zip(port_nodes(circuit), currents, strict=True):
        injections[a] = injections.get(a, 0.0) - float(current_a)
        injections[b] = injections.get(b, 0.0) + float(current_a)
    branches = [
        *feed_branches(circuit, slot.live),
        battery_branch(circuit),
        *((e.a, e.b, e.at(loaded=True)) for e in circuit.elements.values()),
    ]
    rail_v = float(pulse.rail_v[step, row])
    sources = [{RAIL: rail_v, "battery.source": circuit.profile.module.battery_v}]
    solution = solve(branches, sources, [injections])
    return circuit, {node: float(solution.voltage(node)[0]) for node in circuit.nodes()}


def measure_drop(
    profile: Profile, faults: Sequence[Fault], work: Work, pins: tuple[Pin, Pin], cylinder: int
) -> Reading:
    """Measure the voltage drop between two pins at the end of a pulse while a cylinder is driven alone."""
    solved = solved_slot(profile, faults, work, cylinder)
    _circuit, volts = node_voltages(solved, solved.on_steps - 1)
    value = round(abs(volts[node_of(profile, pins[0])] - volts[node_of(profile, pins[1])]), 2)
    return Reading("voltmeter", value, "volt", f"{value:.2f} V")


def measure_supply(profile: Profile, faults: Sequence[Fault], work: Work) -> Reading:
    """Measure the lowest drive supply while all injectors are driven together."""
    solved = solved_slot(profile, faults, work, 0)
    lowest = min(float(pulse.rail_v[:, row].min()) for pulse, row in solved.pulses_of(0))
    return Reading("supply", round(lowest, 1), "volt", f"{lowest:.1f} V")


def measure_power_drop(profile: Profile, faults: Sequence[Fault], work: Work, what: PowerDrop) -> Reading:
    """Measure the highest voltage drop between battery and module while all injectors are driven together."""
    solved = solved_slot(profile, faults, work, 0)
    lowest = min(float(pulse.rail_v[:, row].min()) for pulse, row in solved.pulses_of(0))
    value = round(power_drop_v(solved.circuit, lowest, what), 2)
    return Reading("voltmeter", value, "volt", f"{value:.2f} V")


def measure_dummy_current(profile: Profile, faults: Sequence[Fault], work: Work, cylinder: int) -> Reading:
    """Measure the current in the return of a dummy load in place of an injector at the end of its pulse."""
    solved = solved_slot(profile, faults, work, cylinder, most_pulses=1)
    pulse, row = solved.pulses_of(0)[0]
    current_a = float(pulse.return_a[solved.on_steps - 1, row, profile.cylinders.index(cylinder)])
    return Reading("dummy_load", round(current_a, 1), "ampere", f"{current_a:.1f} A")


def measure_clamp(profile: Profile, faults: Sequence[Fault], work: Work, cylinder: int, slot: int) -> Reading:
    """Measure the current in a return, with a clamp around it, at the end of a pulse of another cylinder's slot."""
    solved = solved_slot(profile, faults, work, slot, most_pulses=1)
    pulse, row = solved.pulses_of(0)[0]
    current_a = abs(float(pulse.return_a[solved.on_steps - 1, row, profile.cylinders.index(cylinder)]))
    return Reading("clamp", round(current_a, 1), "ampere", f"{current_a:.1f} A")


def measure_trace(profile: Profile, faults: Sequence[Fault], work: Work, cylinder: int, seed: int) -> Trace:
    """Take a current trace of a return at the module: one pole at the probe's bandwidth, seeded noise."""
    solved = solved_slot(profile, faults, work, cylinder, most_pulses=1)
    pulse, row = solved.pulses_of(0)[0]
    clean = clean_trace(profile.meter, pulse.return_a[:, row, profile.cylinders.index(cylinder)], solved.step_s)
    noise = profile.meter.probe_noise_a * Stream(seed, f"trace {cylinder}").normal(len(clean.time_s))
    return Trace(clean.time_s, clean.current_a + noise)


def clean_trace(meter: Meter, current_a: Floats, step_s: float) -> Trace:
    """Return what a probe of the meter's bandwidth makes of a current, before its noise."""
    steps = min(round(TRACE_S / step_s), len(current_a))
    kept = float(np.exp(-2.0 * np.pi * meter.probe_bandwidth_hz * step_s))
    passed = ((1.0 - kept) * current_a[:steps]).tolist()
    # one pole: a library of filters takes a second and a half to import
    seen = np.fromiter(accumulate(passed, lambda before, now: now + kept * before), float)
    return Trace(np.arange(steps) * step_s, seen)


DIP_WIDTH, DIP_AHEAD, DIP_LEAST_A = 9, 40, 0.15
"""Samples a trace is smoothed over, samples within which it must turn up again, and the least dip that is reported."""


def dip_of(trace: Trace) -> tuple[float, float] | None:
    """Return time and depth of the dip that a moving armature leaves in a trace, or None where there is none."""
    smooth = np.convolve(trace.current_a, np.ones(DIP_WIDTH) / DIP_WIDTH, mode="valid")
    rising = int(np.argmax(smooth > 0.3 * smooth.max()))
    ahead = sliding_window_view(smooth, DIP_AHEAD)[rising:-1]
    here = smooth[rising : rising + len(ahead)]
    depth = np.maximum.accumulate(here) - here
    turns_up = (here <= ahead.min(axis=1) + 1e-12) & (ahead.max(axis=1) > here + DIP_LEAST_A)
    depth = np.where((depth > DIP_LEAST_A) & turns_up, depth, 0.0)
    if not len(depth) or depth.max() == 0.0:
        return None
    index = int(np.argmax(depth))
    return float(trace.time_s[rising + index + DIP_WIDTH // 2]), float(depth[index])
