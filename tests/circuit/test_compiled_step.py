"""The compiled step computes what NumPy's computes: every kind of fault, every engine, pulses and the rest between."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from tests.circuit.test_rows_alone import ARRAYS, mixed_rows
from tests.engines import ALL, NORTH, worst
from trainer.circuit import build_kernel, compiled_step
from trainer.circuit.drive import Reductions, slots_of
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import FaultKind, faulty_circuit
from trainer.circuit.harness import circuit_of
from trainer.circuit.profile import Profile
from trainer.circuit.solve import Solved, solve_rows, solve_test
from trainer.circuit.stepping import Row

WITHIN = 1e-10
"""Of the peak; measured: 1e-12 for the acceleration, 1e-13 for all else. Rounding alone is 2e-16 a step."""

pytestmark = pytest.mark.needs("a C compiler")


def by_numpy(rows: list[Row], monkeypatch: pytest.MonkeyPatch) -> Solved:
    with monkeypatch.context() as patched:
        patched.setattr(compiled_step, "available", lambda _injectors, _outputs: False)
        return solve_rows(rows)


def rows_of_every_kind(profile: Profile) -> list[Row]:
    """Return a slot of one fault of each kind that the engine can have, where it does most."""
    rows = []
    for kind in FaultKind:
        fault = next((one for one in single_faults(profile) if one.kind is kind), None)
        if fault is not None:
            circuit = faulty_circuit(profile, [fault], worst(fault))
            slot = next(slot for slot in slots_of(profile) if slot.number == fault.cylinders[0])
            rows.append(Row(circuit, slot, Reductions(circuit, {})))
    return rows


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_it_agrees_with_numpy_on_every_kind_of_fault(profile: Profile, monkeypatch: pytest.MonkeyPatch) -> None:
    assert compiled_step.available(len(profile.cylinders), len(profile.wiring.outputs))
    for rows in (rows_of_every_kind(profile), mixed_rows(profile)):
        ours, theirs = solve_rows(rows), by_numpy(rows, monkeypatch)
        assert ours.tripped == theirs.tripped
        assert [pulse.slots for pulse in ours.pulses] == [pulse.slots for pulse in theirs.pulses]
        for one, other in zip(ours.pulses, theirs.pulses, strict=True):
            for name in ARRAYS:
                mine, reference = getattr(one, name), getattr(other, name)
                assert mine.shape == reference.shape
                assert np.abs(mine - reference).max() <= WITHIN * np.abs(reference).max(), name


def test_whole_numbers_in_an_engine_are_numbers_like_others() -> None:
    """Values are bytes to the library: an engine given 110 volts as a whole number must not be read as something else."""
    whole, fraction = (
        replace(NORTH, module=replace(NORTH.module, supply_v=kind(110), source_ohm=kind(1)), digest=kind.__name__)
        for kind in (int, float)
    )
    one, other = (solve_test(circuit_of(profile), slots_of(profile)[:2]) for profile in (whole, fraction))
    assert np.array_equal(one.pulses[0].coil_a, other.pulses[0].coil_a)
    assert one.pulses[0].coil_a.max() > 1.0


def test_a_row_alone_and_in_a_group_of_four_has_the_same_bits() -> None:
    rows = mixed_rows(NORTH)
    whole = solve_rows(rows)
    for place in (0, 5, len(rows) - 1):
        alone = solve_rows([rows[place]])
        for (one, _row), (many, there) in zip(alone.pulses_of(0), whole.pulses_of(place), strict=True):
            steps = len(one.coil_a)
            assert np.array_equal(one.coil_a[:, 0], many.coil_a[:steps, there])
            assert np.array_equal(one.position_m[:, 0], many.position_m[:steps, there])


def test_numpy_can_be_asked_for() -> None:
    asked = "from trainer.circuit import compiled_step; print(compiled_step.available(8, 2))"
    told = [
        subprocess.run(
            [sys.executable, "-c", asked],
            env={**os.environ, compiled_step.CHOICE: choice},
            check=True,
            capture_output=True,
            text=True,
        ).stdout.strip()
        for choice in ("", "numpy")
    ]
    assert told == ["True", "False"]


def test_a_library_of_another_source_is_left_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    assert compiled_step._library.__wrapped__() is not None
    monkeypatch.setattr(compiled_step, "source_hash", lambda: "another source")
    assert compiled_step._library.__wrapped__() is None


def test_without_a_compiler_nothing_is_left_behind_and_nothing_fails(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    library = tmp_path / "step_kernel.so"
    monkeypatch.setattr(build_kernel, "LIBRARY", library)
    assert build_kernel.build()
    assert build_kernel.is_built()
    monkeypatch.setattr(build_kernel, "source_hash", lambda: "another source")
    assert not build_kernel.is_built()
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.delenv("CC", raising=False)
    assert not build_kernel.build()
    assert list(tmp_path.iterdir()) == []
