"""Time stepping of the whole actuation test: every slot and injector advances as one array.

Slots of many circuits can advance together, each with its own ports, coils and outputs. A slot that has come to rest
between pulses leaves the array; a pulse that ends at rest where it began repeats itself, but for what varies by chance.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from trainer.arrays import Floats, Integers
from trainer.circuit.drive import Reductions, Slot, shut_by, slots_of
from trainer.circuit.elements import Circuit
from trainer.circuit.family import NO_FAMILIES, Families, Last, families_of
from trainer.circuit.phases import Timing, phases_of
from trainer.circuit.solenoid import magnets_of_rows
from trainer.circuit.stepping import Row, State, state_at_rest
from trainer.errors import UnsolvableError

SAMPLE_RATE_HZ = 48_000
STEPS_PER_SAMPLE = 2
"""96 kHz: 10.4 µs; docs/decisions.md says what this costs in accuracy."""

LEAST_PULSES = 1
"""A pulse that ends at rest where it began repeats itself, but for the last fiftieth of the reservoir's voltage; any
other is solved again until two are the same."""

MOST_PULSES = 16
PERIODIC_RESIDUAL = 2e-3
"""Two pulses are the same when currents and positions differ by less than this share (RMS) of their peaks."""

FULL_RAIL_SHARE = 0.98
"""A reservoir filled so far is as good as full: a fiftieth of the voltage is a fifth of a decibel at most."""

REST_FLUX_SHARE = 0.01
"""What flux may be left, as a share of saturation, in a core that ends as it began."""

CHECK_STEPS = 24
"""How often the quiet part is asked whether a slot is at rest: every 0.25 ms."""


@dataclass(frozen=True, slots=True)
class Pulse:
    """One pulse in the slots it was solved for.

    Shapes: (step, slot, cylinder) for the coil's current and the return output's in ampere, flux linkage in weber,
    position in metre, armature acceleration in m/s² and magnetic force in newton; (step, slot, output) for the
    feeds; (step, slot) for the rail in volt.
    """

    slots: tuple[int, ...]
    coil_a: Floats
    return_a: Floats
    linkage_wb: Floats
    position_m: Floats
    acceleration_m_s2: Floats
    force_n: Floats
    feed_a: Floats
    rail_v: Floats


@dataclass(frozen=True, slots=True)
class Solved:
    """Solved slots: their pulses, what tripped in each, and the residual each ended with."""

    step_s: float
    on_steps: int
    pulses: tuple[Pulse, ...]
    tripped: tuple[frozenset[str], ...]
    residual: Floats

    def pulses_of(self, slot: int) -> list[tuple[Pulse, int]]:
        """Return the solved pulses of one slot (by index), each with the slot's place on its axis."""
        return [(pulse, pulse.slots.index(slot)) for pulse in self.pulses if slot in pulse.slots]


@dataclass(frozen=True, slots=True)
class SolvedTest(Solved):
    """The actuation test of one circuit."""

    circuit: Circuit
    slots: tuple[Slot, ...]
    families: Families = NO_FAMILIES


def solve_test(
    circuit: Circuit,
    slots: Sequence[Slot] | None = None,
    steps_per_sample: int = STEPS_PER_SAMPLE,
    most_steps: int | None = None,
    most_pulses: int = MOST_PULSES,
    least_pulses: int = LEAST_PULSES,
) -> SolvedTest:
    """Solve the actuation test of a circuit; a trip that lasts until the key is turned shuts the later slots too.

    `most_pulses` of 1 solves the first pulse only, the same as it is in the whole test. Raises UnsolvableError where
    the numbers run away, or where it takes more than `most_steps`, counted in each slot.
    """
    chosen = tuple(slots if slots is not None else slots_of(circuit.profile))
    reductions = Reductions(circuit, {})
    asked = list(chosen)
    while True:
        rows = [Row(circuit, slot, reductions) for slot in asked]
        solved = solve_rows(rows, steps_per_sample, least_pulses, most_steps, most_pulses)
        if most_steps is not None:
            most_steps -= sum(map(_steps_of, solved.pulses))
        left = left_live(circuit, chosen, asked, solved.tripped)
        if left == asked:
            families = families_in(rows, solved) if most_pulses > 1 else NO_FAMILIES
            return SolvedTest(
                solved.step_s, solved.on_steps, solved.pulses, solved.tripped, solved.residual, circuit, tuple(asked),
                families,
            )  # fmt: skip
        asked = left


def families_in(rows: Sequence[Row], solved: Solved) -> Families:
    """Return the families of the last pulses of solved slots: what the rest of each slot is made of."""
    lasts = []
    trip = rows[0].circuit.profile.module.trip
    for place, row in enumerate(rows):
        pulse, at = solved.pulses_of(place)[-1]
        shut = (
            frozenset[str]()
            if trip.until == "pulse"
            else frozenset[str]().union(*(shut_by(row.circuit.profile, output) for output in solved.tripped[place]))
        )
        lasts.append(Last(row, row.slot.live - shut, *(getattr(pulse, name)[:, at] for name in _TRACES)))
    return families_of(lasts, solved.step_s, solved.on_steps)


_TRACES = ("coil_a", "return_a", "linkage_wb", "position_m", "force_n", "rail_v")


def left_live(
    circuit: Circuit, planned: Sequence[Slot], seen: Sequence[Slot], tripped: Sequence[frozenset[str]]
) -> list[Slot]:
    """Return the slots with what trips in earlier ones leave live, as far as `seen` shows."""
    if circuit.profile.module.trip.until != "key":
        return list(seen)
    gone: frozenset[str] = frozenset()
    live, agreed = [], True
    for slot, solved, trips in zip(planned, seen, tripped, strict=True):
        live.append(replace(slot, live=slot.live - gone))
        # what a later slot did counts only once it was solved with what the earlier ones leave it
        agreed = agreed and live[-1] == solved
        if agreed:
            for output in trips:
                gone |= shut_by(circuit.profile, output)
    return live


ALIKE_SHARE = 1e-4
"""Two solutions of a slot that differ by less than this share of their largest values (−80 dB) are the same."""


def with_shared_slots(one: SolvedTest, other: SolvedTest) -> SolvedTest:
    """Return the second test with every slot that is the same in both taken from the first, bit for bit."""
    shared = {row for row in range(len(one.slots)) if _alike(one.pulses_of(row), other.pulses_of(row))}
    pulses = [replace(pulse, slots=tuple(row if row in shared else -1 for row in pulse.slots)) for pulse in one.pulses]
    pulses += [
        replace(pulse, slots=tuple(-1 if row in shared else row for row in pulse.slots)) for pulse in other.pulses
    ]
    kept = one.families.of(shared).joined(other.families.of(set(range(len(other.slots))) - shared))
    return replace(other, pulses=tuple(pulses), families=kept)


def _alike(one: Sequence[tuple[Pulse, int]], other: Sequence[tuple[Pulse, int]]) -> bool:
    if len(one) != len(other):
        return False
    for (first, row), (second, place) in zip(one, other, strict=True):
        steps = min(len(first.coil_a), len(second.coil_a))
        for name in ("coil_a", "return_a", "position_m"):
            a, b = getattr(first, name)[:steps, row], getattr(second, name)[:steps, place]
            if np.abs(a - b).max() > ALIKE_SHARE * max(float(np.abs(a).max()), 1e-12):
                return False
    return True


def solve_rows(
    rows: Sequence[Row],
    steps_per_sample: int = STEPS_PER_SAMPLE,
    least_pulses: int = 1,
    most_steps: int | None = None,
    most_pulses: int = MOST_PULSES,
) -> Solved:
    """Solve slots of circuits of one profile, so many pulses of each at least and at most; raises UnsolvableError."""
    try:
        with np.errstate(over="ignore", invalid="ignore", divide="ignore"):  # asked after each pulse, in one place
            return _Solver(rows, steps_per_sample).run(least_pulses, most_steps, most_pulses)
    except np.linalg.LinAlgError as error:
        raise UnsolvableError("engine_runs_away", profile=rows[0].circuit.profile.name) from error


def _steps_of(pulse: Pulse) -> int:
    """Return how many steps a pulse took, counted in each slot."""
    return len(pulse.coil_a) * len(pulse.slots)


_RECORDS = ("coil_a", "return_a", "linkage_wb", "position_m", "acceleration_m_s2", "force_n")


class _Solver:
    def __init__(self, rows: Sequence[Row], steps_per_sample: int) -> None:
        self.rows = list(rows)
        profile = rows[0].circuit.profile
        self.profile = profile
        self.step_s = 1.0 / (SAMPLE_RATE_HZ * steps_per_sample)
        self.on_steps = round(profile.schedule.pulse_s / self.step_s)
        self.period_steps = round(1.0 / profile.schedule.pulses_per_s / self.step_s)
        self.outputs = tuple(rows[0].circuit.feeds)
        self.magnets = magnets_of_rows([[row.circuit.solenoids[n] for n in profile.cylinders] for row in rows])
        check_steps = CHECK_STEPS * steps_per_sample // STEPS_PER_SAMPLE
        trip_at_s = profile.module.trip.delay_s - self.step_s / 4.0  # whole steps add up to a hair less
        timing = Timing(self.step_s, self.on_steps, self.period_steps, check_steps, trip_at_s)
        self._phases = phases_of(self.rows, self.magnets, timing)

    def run(self, least_pulses: int, most_steps: int | None, most_pulses: int) -> Solved:
        steps = 0
        count = len(self.rows)
        state = state_at_rest(self.rows, self.magnets)
        active = list(range(count))
        rested = set(active)
        pulses: list[Pulse] = []
        residual = np.full(count, np.inf)
        tripped: list[frozenset[str]] = [frozenset()] * count
        schedule = self.profile.schedule
        total = round(max(schedule.slot_s, schedule.together_s) * schedule.pulses_per_s)
        while active and len(pulses) < min(most_pulses, max(total, least_pulses)):
            pulse, state, at_rest, same = self._pulse(state, active)
            if not all(np.isfinite(part).all() for part in (state.linkage, state.driver, state.position, state.rail)):
                raise UnsolvableError("engine_runs_away", profile=self.profile.name)
            steps += _steps_of(pulse)
            if most_steps is not None and steps > most_steps:
                raise UnsolvableError("engine_never_rests", profile=self.profile.name)
            for place, row in enumerate(active):
                tripped[row] |= state.tripped[place]
            if pulses:
                residual[active] = self._residual(pulses[-1], pulse)
            residual[[row for row in active if row in rested and row in same]] = 0.0
            rested = at_rest
            pulses.append(pulse)
            done = [len(pulses) >= least_pulses and residual[row] < PERIODIC_RESIDUAL for row in active]
            keep = [place for place, ended in enumerate(done) if not ended]
            state = state.of(keep)
            active = [active[place] for place in keep]
        return Solved(self.step_s, self.on_steps, tuple(pulses), tuple(tripped), residual)

    def _residual(self, before: Pulse, after: Pulse) -> Floats:
        """Return how far two pulses of each row differ over their whole period, as a share of the peaks."""
        rows = [before.slots.index(slot) for slot in after.slots]
        worst = np.zeros(len(after.slots))
        lift = 2.0 * self.magnets.half_lift_m[list(after.slots)]
        for name, scale in (("coil_a", None), ("position_m", lift)):
            old, new = getattr(before, name)[:, rows], getattr(after, name)
            size = np.maximum(np.abs(new).max(axis=0), 1e-2) if scale is None else scale
            # what is at rest stays as it is, however long the stack's slowest row is followed
            steps = max(len(old), len(new))
            old, new = (np.concatenate([one, np.repeat(one[-1:], steps - len(one), axis=0)]) for one in (old, new))
            square = (new - old) ** 2
            whole = square.sum(axis=0) + (self.period_steps - steps) * square[-1]
            change = np.sqrt(whole / self.period_steps) / size
            worst = np.maximum(worst, change.max(axis=1))
        return worst

    def _pulse(self, state: State, active: list[int]) -> tuple[Pulse, State, set[int], set[int]]:
        """Solve one pulse; return it, the state before the next one, and slots.

        First those that end at rest, then those that end at rest with the same feeds on as they began with.
        """
        count, injectors = len(active), len(self.profile.cylinders)
        if self.profile.module.trip.until == "pulse":
            state.fed = [self.rows[row].slot.live for row in active]
        state.over[:] = 0.0
        fed = list(state.fed)
        records = {name: np.zeros((self.period_steps, count, injectors)) for name in _RECORDS}
        records["feed_a"] = np.zeros((self.period_steps, count, len(self.outputs)))
        records["rail_v"] = np.zeros((self.period_steps, count))
        self._phases.drive(state, active, records)
        rest_from = self._phases.settle(state, active, records)
        self._recharge(state, active, rest_from)
        arrays = {name: record[: int(rest_from.max())] for name, record in records.items()}
        full = np.array([self.rows[row].circuit.rail.supply_v * FULL_RAIL_SHARE for row in active])
        flux = np.abs(state.linkage / self.magnets.turns[active]) / self.magnets.saturation_wb[active]
        empty = flux.max(axis=1) < REST_FLUX_SHARE
        ended = (rest_from < self.period_steps) & (state.rail >= full) & empty
        at_rest = {row for row, rests in zip(active, ended, strict=True) if rests}
        # a trip that ends with the pulse happens again in the next one; another leaves the next one without its feed
        again = self.profile.module.trip.until == "pulse"
        same = {row for place, row in enumerate(active) if row in at_rest and (again or state.fed[place] == fed[place])}
        return Pulse(tuple(active), **arrays), state, at_rest, same

    def _recharge(self, state: State, active: list[int], rest_from: Integers) -> None:
        """Fill the reservoirs over the rest of the period, in closed form."""
        rails = [self.rows[row].circuit.rail for row in active]
        supply, source, reservoir = np.array([(r.supply_v, r.source_ohm, r.reservoir_f) for r in rails]).T
        fill = np.exp(-(self.period_steps - rest_from) * self.step_s / (source * reservoir))
        state.rail = supply + (state.rail - supply) * fill
