"""The solver against ngspice: the same electromechanical equations in a general-purpose simulator."""

from __future__ import annotations

import subprocess
from pathlib import Path

import numpy as np
import pytest

from tests.engines import FIELD, HARBOUR, NORTH, RIDGE, worst
from tests.spice import read_raw, run_ngspice
from trainer.circuit.drive import slots_of
from trainer.circuit.elements import INSULATION_OHM, Location, Side
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import Conditions, Fault, FaultKind, faulty_circuit
from trainer.circuit.netlist import netlist_of
from trainer.circuit.network import solve
from trainer.circuit.profile import Profile
from trainer.circuit.solve import solve_test

pytestmark = pytest.mark.needs("ngspice")

END_S = 0.006


def first_of(profile: Profile, kind: FaultKind) -> Fault:
    return next(fault for fault in single_faults(profile) if fault.kind is kind)


def first_sided(profile: Profile, kind: FaultKind) -> list[Fault]:
    """Return the first fault of a kind on each side that it has."""
    found: dict[object, Fault] = {}
    for fault in single_faults(profile):
        if fault.kind is kind:
            found.setdefault((fault.side, fault.location is Location.COIL), fault)
    return list(found.values())


CASES = [(NORTH, None, 0), (NORTH, None, 1), (HARBOUR, None, 5), (FIELD, None, 0), (RIDGE, None, 2)]
CASES += [
    pytest.param(NORTH, fault, fault.cylinders[0], marks=pytest.mark.long if number or row % 3 else ())
    for row, kind in enumerate(FaultKind) for number, fault in enumerate(first_sided(NORTH, kind))
]  # fmt: skip
CASES += [(HARBOUR, first_of(HARBOUR, kind), first_of(HARBOUR, kind).cylinders[0]) for kind in
          (FaultKind.SHORT_TO_GROUND, FaultKind.SHORT_ACROSS_PAIR, FaultKind.STUCK_RETURN_DRIVER)]  # fmt: skip
# the trip's timing is the whole error here: 377 A for 62.5 µs, then none
CASES += [(FIELD, Fault(FaultKind.SHORT_TO_GROUND, Location.PASS_THROUGH, (1,), Side.FEED, 0.2), 1)]


@pytest.mark.parametrize(
    ("profile", "fault", "number"), CASES, ids=lambda v: getattr(v, "name", None) or getattr(v, "kind", None) or str(v)
)
def test_the_first_pulse_is_the_same_in_ngspice(
    profile: Profile, fault: Fault | None, number: int, tmp_path: Path
) -> None:
    faults, conditions = ([fault], worst(fault)) if fault else ([], Conditions())
    circuit = faulty_circuit(profile, faults, conditions)
    slot = next(slot for slot in slots_of(profile) if slot.number == number)
    solved = solve_test(circuit, [slot], most_pulses=1)
    other = run_ngspice(netlist_of(circuit, slot, END_S, "test"), tmp_path)
    assert other["time"][-1] == pytest.approx(END_S, rel=1e-3), "ngspice did not reach its end time"

    pulse = solved.pulses[0]
    time_s = np.arange(len(pulse.coil_a)) * solved.step_s
    inside = time_s < END_S
    peak_a = max(np.abs(pulse.coil_a[:, 0]).max(), 1e-3)
    for column, cylinder in enumerate(profile.cylinders):
        lift_m = circuit.solenoids[cylinder].lift_m
        amps = np.interp(time_s[inside], other["time"], other[f"v(amp_{cylinder})"])
        way = np.interp(time_s[inside], other["time"], other[f"v(pos_{cylinder})"]) * 1e-3
        ours_a, ours_m = pulse.coil_a[inside, 0, column], pulse.position_m[inside, 0, column]
        assert np.sqrt(np.mean((amps - ours_a) ** 2)) < 0.01 * peak_a
        assert np.sqrt(np.mean((way - ours_m) ** 2)) < 0.02 * lift_m
        if ours_m.max() > 0.96 * lift_m:
            landed, theirs = (time_s[np.argmax(track > 0.96 * lift_m)] for track in (ours_m, way))
            assert abs(landed - theirs) <= 20e-6


def _operating_point(branches: list[tuple[str, str, float]], volts: float, folder: Path) -> dict[str, float]:
    lines = ["* tree", f"Vs n0 0 {volts}"]
    for number, (a, b, ohm) in enumerate(branches):
        lines.append(f"R{number} {a} {b} {ohm:.12g}" if ohm > 0 else f"V{number} {a} {b} 0")
    nodes = sorted({node for a, b, _ in branches for node in (a, b) if node not in ("0", "n0")})
    lines += [f"Rl{node} {node} 0 {INSULATION_OHM:.3g}" for node in nodes]
    lines += [".options gmin=1e-18 reltol=1e-9 vntol=1e-12 abstol=1e-15", ".op", ".end"]
    source, raw = folder / "op.cir", folder / "op.raw"
    source.write_text("\n".join(lines) + "\n", "utf-8")
    subprocess.run(["ngspice", "-b", "-r", str(raw), str(source)], capture_output=True, check=False, timeout=60)
    return {name: float(values[-1]) for name, values in read_raw(raw.read_bytes()).items()}


@pytest.mark.parametrize("seed", range(12))
def test_random_resistive_trees_have_ngspices_operating_point(seed: int, tmp_path: Path) -> None:
    rng = np.random.default_rng(seed)
    branches = []
    for node in range(1, 30):
        parent = int(rng.integers(0, node))
        ohm = float(10.0 ** rng.uniform(-3, 5)) if rng.random() > 0.1 else 0.0
        branches.append((f"n{parent}", f"n{node}", ohm))
        if rng.random() < 0.3:
            branches.append((f"n{node}", "0", float(10.0 ** rng.uniform(0, 6))))
    theirs = _operating_point(branches, 12.0, tmp_path)
    ours = solve(
        [(*("ground" if n == "0" else n for n in (a, b)), ohm) for a, b, ohm in branches], [{"n0": 12.0}], [{}]
    )
    for node in (f"n{n}" for n in range(1, 30)):
        assert float(ours.voltage(node)[0]) == pytest.approx(
            theirs[f"v({node})" if f"v({node})" in theirs else node], abs=12e-6
        )
