"""What one solved slot leaves behind once its traces are dropped: sound at every place, currents, a trace's marks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.codes import SlotCurrents, slot_currents
from trainer.circuit.profile import Profile
from trainer.circuit.solenoid import magnets_of
from trainer.circuit.solve import Solved, families_in
from trainer.circuit.stepping import Row
from trainer.instruments.under_load import Trace, clean_trace, dip_of
from trainer.sound.render import family_force, force_of
from trainer.sound.traits import Ears

EARLY_S = 1e-4
"""Where the start of a trace is read: common practice, no published source."""


@dataclass(frozen=True, slots=True)
class TraceMarks:
    """What a current trace shows: its peak, the current early on, and the dip's time and depth (nought without one)."""

    peak_a: float
    early_a: float
    dip_s: float
    dip_a: float


@dataclass(frozen=True, slots=True)
class SlotTraits:
    """One slot of one circuit in numbers.

    `sound` has shape (place, trait), that of a burst before its limiter (`Ears.heard`); the currents at the end of a
    pulse have shape (cylinder,), in ampere.
    """

    sound: Floats
    seen: SlotCurrents
    trace: TraceMarks
    coil_end_a: Floats
    return_end_a: Floats
    rail_end_v: float
    rail_low_v: float


def marks_of(trace: Trace) -> TraceMarks:
    """Return the marks of a trace."""
    dip = dip_of(trace)
    early = min(int(np.searchsorted(trace.time_s, EARLY_S)), len(trace.time_s) - 1)
    time_s, depth_a = dip or (0.0, 0.0)
    return TraceMarks(float(trace.current_a.max()), float(trace.current_a[early]), time_s, depth_a)


def traits_of(rows: Sequence[Row], solved: Solved, ears: Ears) -> list[SlotTraits]:
    """Return the traits of solved slots."""
    profile = ears.profile
    powers = _mean_powers(rows, solved, ears)
    traits = []
    for row, one in enumerate(rows):
        first, place = solved.pulses_of(row)[0]
        last, at = solved.pulses_of(row)[-1]
        end = solved.on_steps - 1
        column = profile.cylinders.index(one.slot.number) if one.slot.number else 0
        trace = clean_trace(profile.meter, first.return_a[:, place, column], solved.step_s)
        traits.append(
            SlotTraits(
                sound=ears.traits(powers[row]),
                seen=slot_currents(solved, row, one.slot, profile),
                trace=marks_of(trace),
                coil_end_a=last.coil_a[end, at].copy(),
                return_end_a=last.return_a[end, at].copy(),
                rail_end_v=float(last.rail_v[end, at]),
                rail_low_v=min(float(pulse.rail_v[:, there].min()) for pulse, there in solved.pulses_of(row)),
            )
        )
    return traits


def _mean_powers(rows: Sequence[Row], solved: Solved, ears: Ears) -> list[Floats]:
    """Return each slot's mean power, shape (place, ear, band): its last pulse's family fills the rest of the slot."""
    profile = ears.profile
    magnets = [magnets_of([row.circuit.solenoids[n] for n in profile.cylinders]) for row in rows]
    families = families_in(rows, solved)
    owners, forces = [], []
    scattered: dict[int, Floats] = {}
    for row in range(len(rows)):
        for pulse, place in solved.pulses_of(row):
            forces.append(force_of(pulse, place, magnets[row], profile, solved.step_s))
            owners.append(row)
        for family in families.of_slot(row):
            column = int(families.column[family])
            varied = family_force(families, family, rows[row].circuit, solved.step_s)
            forces[-1][[column, len(profile.cylinders) + column]] = varied.mean(axis=0)
            scattered[row] = scattered.get(row, 0.0) + ears.scatter(varied, column)
    power = ears.power(np.array(forces))
    means = []
    for row, one in enumerate(rows):
        mine = [place for place, owner in enumerate(owners) if owner == row]
        count = _pulses_in(profile, one.slot.number)
        weights = np.ones(len(mine))
        weights[-1] = max(count - len(mine) + 1, 1)
        power[mine[-1]] += scattered.get(row, 0.0)
        means.append(np.tensordot(weights / weights.sum(), power[mine], axes=1))
    return means


def _pulses_in(profile: Profile, slot: int) -> int:
    schedule = profile.schedule
    return round((schedule.slot_s if slot else schedule.together_s) * schedule.pulses_per_s)
