"""A long proof: one fault of every kind, place and side, in all engines, against ngspice; prints the worst of each."""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

import numpy as np

from tests.engines import ALL, worst
from tests.spice import run_ngspice
from trainer.circuit.drive import slots_of
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import faulty_circuit
from trainer.circuit.netlist import netlist_of
from trainer.circuit.solve import solve_test

END_S = 0.006


def main() -> int:
    """Compare and print; return 1 if anything is outside the limits."""
    bad = 0
    print("| engine | kind | n | current, % RMS of peak | position, % RMS of lift | landing, µs |")
    print("| --- | --- | --- | --- | --- | --- |")
    for profile in ALL:
        chosen = {(f.kind, f.location, f.side, len(f.cylinders)): f for f in reversed(single_faults(profile))}
        rows: dict[str, list[tuple[float, float, float]]] = {}
        for fault in chosen.values():
            circuit = faulty_circuit(profile, [fault], worst(fault))
            slot = next(slot for slot in slots_of(profile) if slot.number == fault.cylinders[0])
            solved = solve_test(circuit, [slot])
            pulse = solved.pulses[0]
            with tempfile.TemporaryDirectory() as folder:
                other = run_ngspice(netlist_of(circuit, slot, END_S, "proof"), Path(folder))
            time_s = np.arange(len(pulse.coil_a)) * solved.step_s
            time_s = time_s[time_s < END_S]
            peak = max(np.abs(pulse.coil_a).max(), 1e-3)
            error = [0.0, 0.0, 0.0]
            for column, number in enumerate(profile.cylinders):
                lift = circuit.solenoids[number].lift_m
                amps = np.interp(time_s, other["time"], other[f"v(amp_{number})"])
                way = np.interp(time_s, other["time"], other[f"v(pos_{number})"]) * 1e-3
                ours = pulse.position_m[: len(time_s), 0, column]
                error[0] = max(
                    error[0], 100 * np.sqrt(np.mean((amps - pulse.coil_a[: len(time_s), 0, column]) ** 2)) / peak
                )
                error[1] = max(error[1], 100 * np.sqrt(np.mean((way - ours) ** 2)) / lift)
                if ours.max() > 0.96 * lift:
                    landed, theirs = (time_s[np.argmax(track > 0.96 * lift)] for track in (ours, way))
                    error[2] = max(error[2], 1e6 * abs(landed - theirs))
            if other["time"][-1] < 0.999 * END_S or error[0] > 1.0 or error[1] > 2.0 or error[2] > 20.9:
                bad += 1
                print("OUTSIDE", profile.name, fault, error, other["time"][-1])
            rows.setdefault(fault.kind, []).append((error[0], error[1], error[2]))
        for kind, errors in rows.items():
            top = np.max(errors, axis=0)
            print(
                f"| {profile.name} | {kind} | {len(errors)} | {top[0]:.2f} | {top[1]:.2f} | {top[2]:.0f} |", flush=True
            )
    print(f"{bad} outside the limits")
    return int(bad > 0)


if __name__ == "__main__":
    sys.exit(main())
