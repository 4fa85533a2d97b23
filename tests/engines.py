"""Engines that tests share: the shipped ones, and small ones built for a single question."""

from __future__ import annotations

import csv
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

from trainer.cases.single_case.shipped import profile_named
from trainer.circuit.drive import Slot
from trainer.circuit.elements import Location
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import Conditions, Fault, FaultKind, faulty_circuit
from trainer.circuit.profile import ByContent, Connector, Profile, Schedule, Wiring
from trainer.circuit.solve import SolvedTest, solve_test

NORTH = profile_named("north_v8")
HARBOUR = profile_named("harbour_v8")
FIELD = profile_named("field_six")
RIDGE = profile_named("ridge_v6")
ALL = (NORTH, HARBOUR, FIELD, RIDGE)

DATA = Path(__file__).parent / "outside" / "data"

ONE_SLOT = Slot(1, frozenset({1}), frozenset({"only"}))


def table(name: str) -> list[dict[str, str]]:
    """Return the rows of a published table; its first line names the source."""
    lines = [line for line in (DATA / name).read_text("utf-8").splitlines() if line and not line.startswith("#")]
    return list(csv.DictReader(lines))


def worst(fault: Fault) -> Conditions:
    """Return conditions under which an intermittent fault shows: moved and warm where it is."""
    return Conditions(moved=fault.location, heated=fault.location)


def solved(profile: Profile, *faults: Fault, conditions: Conditions | None = None) -> SolvedTest:
    """Solve the whole test of a profile with faults in it, intermittent ones at work."""
    chosen = conditions or (worst(faults[0]) if faults else Conditions())
    return _solved(ByContent(profile), faults, chosen)


@lru_cache(maxsize=16)  # each is some twenty megabytes
def _solved(engine: ByContent, faults: tuple[Fault, ...], conditions: Conditions) -> SolvedTest:
    return solve_test(faulty_circuit(engine.profile, faults, conditions))


def fault_of(profile: Profile, kind: FaultKind, cylinder: int, location: Location | None = None) -> Fault:
    """Return the first fault of a kind at a cylinder that the profile allows."""
    return next(
        fault
        for fault in single_faults(profile)
        if fault.kind is kind and cylinder in fault.cylinders and location in (None, fault.location)
    )


def one_injector(**solenoid: float) -> Profile:
    """Return an engine of one injector on stiff wiring, its module without limit, clamp or trip in reach."""
    wiring = Wiring(
        outputs={"only": (1,)}, live="all", connectors={"plug": Connector((1,), "shared", 0.001, False)},
        trunk_length_m=0.001, engine_feed_mm2=10.0, engine_return_mm2=10.0, under_cover_mm2=10.0,
        under_cover_length_m={1: 0.001}, contact_ohm=1e-9,
    )  # fmt: skip
    module = replace(
        NORTH.module, source_ohm=1e-4, reservoir_f=100.0, feed_on_ohm=1e-6, return_on_ohm=1e-6, return_choke_h=1e-9,
        limit_a=500.0, limit_width_a=1.0, trip=replace(NORTH.module.trip, current_a=5000.0),
    )  # fmt: skip
    return replace(
        NORTH, name="one", digest=f"one {solenoid}", banks={"row": (1,)}, firing_order=(1,), wiring=wiring, module=module,
        schedule=Schedule(0.01, 40.0, 0.3, 0.3, 0.1, 0.0, 0.0), solenoid=replace(NORTH.solenoid, **solenoid),
    )  # fmt: skip
