"""Time stepping of the whole actuation test: every slot and injector advances as one array.

A step is the linearly implicit trapezoidal rule: the ports give `v = e − Z·i`, each coil `dλ/dt = v`, each return
output its law behind its choke; the slopes dλ/di and dv/di stand on the diagonal, so the step is stable from 0 Ω to
1 GΩ. After a switch, and every 0.25 ms between pulses, a few parts of a step by implicit Euler damp what the
trapezoidal rule would let ring. The armature leaps between half steps with its losses in closed form.
docs/decisions.md says why a small dense solve stands in each step.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from trainer.circuit.drive import OutputLaw, Reductions, Slot, pulse_law, quiet_law, shut_by, slots_of, stacked
from trainer.circuit.elements import Circuit
from trainer.circuit.solenoid import magnets_of

Floats = NDArray[np.float64]

SAMPLE_RATE_HZ = 48_000
STEPS_PER_SAMPLE = 2
"""96 kHz: 10.4 µs; docs/decisions.md says what this costs in accuracy."""

SWITCH_PARTS = 4
"""How many parts the step after a switch is taken in."""

LEAST_PULSES = 3
MOST_PULSES = 16
PERIODIC_RESIDUAL = 2e-3
"""Two pulses are the same when currents and positions differ by less than this share (RMS) of their peaks."""

REST_CURRENT_A, REST_SPEED_M_S = 2e-3, 2e-4
CHECK_STEPS = 24
"""How often the quiet part is asked whether everything is at rest: every 0.25 ms."""


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
class SolvedTest:
    """The actuation test of one circuit: its slots and pulses, trips, and the residual each slot ended with."""

    circuit: Circuit
    slots: tuple[Slot, ...]
    step_s: float
    on_steps: int
    pulses: tuple[Pulse, ...]
    tripped: tuple[frozenset[str], ...]
    residual: Floats

    def pulses_of(self, slot: int) -> list[tuple[Pulse, int]]:
        """Return the solved pulses of one slot (by index), each with the slot's place on its axis."""
        return [(pulse, pulse.slots.index(slot)) for pulse in self.pulses if slot in pulse.slots]


@dataclass(slots=True)
class _State:
    """The moving part of a solve; arrays of shape (slot, cylinder), (slot,) and (slot, output)."""

    linkage: Floats
    position: Floats
    speed: Floats
    driver: Floats
    rail: Floats
    over: Floats
    fed: list[frozenset[str]]
    tripped: list[frozenset[str]]


def solve_test(
    circuit: Circuit, slots: Sequence[Slot] | None = None, steps_per_sample: int = STEPS_PER_SAMPLE
) -> SolvedTest:
    """Solve the actuation test of a circuit; a trip that lasts until the key is turned shuts the later slots too."""
    chosen = tuple(slots if slots is not None else slots_of(circuit.profile))
    solver = _Solver(circuit, chosen, steps_per_sample)
    solved = solver.run()
    if circuit.profile.module.trip.until != "key":
        return solved
    while True:
        gone: frozenset[str] = frozenset()
        live, agreed = [], True
        for slot, seen, tripped in zip(chosen, solved.slots, solved.tripped, strict=True):
            live.append(replace(slot, live=slot.live - gone))
            # what a later slot did counts only once it was solved with what the earlier ones leave it
            agreed = agreed and live[-1] == seen
            if agreed:
                for output in tripped:
                    gone |= shut_by(circuit.profile, output)
        if agreed:
            return solved
        solved = _Solver(circuit, tuple(live), steps_per_sample).run()


class _Solver:
    def __init__(self, circuit: Circuit, slots: tuple[Slot, ...], steps_per_sample: int) -> None:
        self.circuit, self.slots = circuit, slots
        profile = circuit.profile
        self.step_s = 1.0 / (SAMPLE_RATE_HZ * steps_per_sample)
        self.check_steps = CHECK_STEPS * steps_per_sample // STEPS_PER_SAMPLE
        self.on_steps = round(profile.schedule.pulse_s / self.step_s)
        self.period_steps = round(1.0 / profile.schedule.pulses_per_s / self.step_s)
        self.outputs = tuple(circuit.feeds)
        self.magnets = magnets_of([circuit.solenoids[number] for number in profile.cylinders])
        self.reductions = Reductions(circuit, {})
        self.trip_at_s = profile.module.trip.delay_s - self.step_s / 4.0  # whole steps add up to a hair less

    def run(self) -> SolvedTest:
        count, injectors = len(self.slots), len(self.circuit.profile.cylinders)
        whole = self._at_rest(count, injectors)
        active = list(range(count))
        pulses: list[Pulse] = []
        residual = np.full(count, np.inf)
        tripped: list[frozenset[str]] = [frozenset()] * count
        previous: Pulse | None = None
        schedule = self.circuit.profile.schedule
        total = round(max(schedule.slot_s, schedule.together_s) * schedule.pulses_per_s)
        while active and len(pulses) < min(MOST_PULSES, max(total, LEAST_PULSES)):
            pulse, state = self._pulse(whole, active)
            pulses.append(pulse)
            for row, slot in enumerate(active):
                tripped[slot] |= state.tripped[row]
            if previous is not None:
                residual[active] = self._residual(previous, pulse)
            done = [len(pulses) >= LEAST_PULSES and residual[slot] < PERIODIC_RESIDUAL for slot in active]
            keep = [row for row, ended in enumerate(done) if not ended]
            whole = self._kept(state, keep)
            active = [active[row] for row in keep]
            previous = pulse
        return SolvedTest(self.circuit, self.slots, self.step_s, self.on_steps, tuple(pulses), tuple(tripped), residual)

    def _at_rest(self, count: int, injectors: int) -> _State:
        magnets = self.magnets
        sink = -(magnets.preload_n / (magnets.stop + magnets.spring))
        return _State(
            linkage=np.zeros((count, injectors)),
            position=np.tile(sink, (count, 1)),
            speed=np.zeros((count, injectors)),
            driver=np.zeros((count, injectors)),
            rail=np.full(count, self.circuit.rail.supply_v),
            over=np.zeros((count, len(self.outputs))),
            fed=[slot.live for slot in self.slots],
            tripped=[frozenset()] * count,
        )

    @staticmethod
    def _kept(state: _State, rows: list[int]) -> _State:
        return _State(
            linkage=state.linkage[rows],
            position=state.position[rows],
            speed=state.speed[rows],
            driver=state.driver[rows],
            rail=state.rail[rows],
            over=state.over[rows],
            fed=[state.fed[row] for row in rows],
            tripped=[state.tripped[row] for row in rows],
        )

    def _residual(self, before: Pulse, after: Pulse) -> Floats:
        rows = [before.slots.index(slot) for slot in after.slots]
        steps = min(len(before.coil_a), len(after.coil_a))
        worst = np.zeros(len(after.slots))
        lift = 2.0 * self.magnets.half_lift_m
        for name, scale in (("coil_a", None), ("position_m", lift)):
            old, new = getattr(before, name)[:steps, rows], getattr(after, name)[:steps]
            size = np.maximum(np.abs(new).max(axis=0), 1e-2) if scale is None else scale
            change = np.sqrt(np.mean((new - old) ** 2, axis=0)) / size
            worst = np.maximum(worst, change.max(axis=1))
        return worst

    def _pulse(self, state: _State, active: list[int]) -> tuple[Pulse, _State]:
        profile = self.circuit.profile
        slots = [self.slots[slot] for slot in active]
        until = profile.module.trip.until
        if until == "pulse":
            state.fed = [slot.live for slot in slots]
        state.over[:] = 0.0
        records: dict[str, list[Floats]] = {
            name: []
            for name in (
                "coil_a",
                "return_a",
                "linkage_wb",
                "position_m",
                "acceleration_m_s2",
                "force_n",
                "feed_a",
                "rail_v",
            )
        }
        self._advance(state, pulse_law(self.circuit, slots), self.on_steps, records, feeding=True)
        quiet, law = self.period_steps - self.on_steps, quiet_law(self.circuit, slots)
        while quiet > 0 and not self._still(records):
            steps = min(self.check_steps, quiet)
            self._advance(state, law, steps, records, feeding=False)
            quiet -= steps
        rail = self.circuit.rail
        fill = np.exp(-quiet * self.step_s / (rail.source_ohm * rail.reservoir_f))
        state.rail = rail.supply_v + (state.rail - rail.supply_v) * fill
        arrays = {name: np.concatenate(parts) for name, parts in records.items()}
        return Pulse(tuple(active), **arrays), state

    def _still(self, records: dict[str, list[Floats]]) -> bool:
        if len(records["coil_a"]) < 2:
            return False
        moved = np.abs(np.diff(records["position_m"][-1][-2:], axis=0)).max() / self.step_s
        return bool(np.abs(records["coil_a"][-1][-1]).max() < REST_CURRENT_A and moved < REST_SPEED_M_S)

    def _advance(
        self, state: _State, law: OutputLaw, steps: int, records: dict[str, list[Floats]], feeding: bool
    ) -> None:
        """Take steps in one phase and record the state at the start of each."""
        count, injectors = state.linkage.shape
        stage = _Stage(self, law, state.fed if feeding else [frozenset[str]()] * count)
        trip = self.circuit.profile.module.trip
        shape = (steps, count, injectors)
        linkage, driver, position, acceleration, force = (np.empty(shape) for _ in range(5))
        feed, rail_v = np.empty((steps, count, len(self.outputs))), np.empty((steps, count))
        for step in range(steps):
            linkage[step], driver[step], position[step] = state.linkage, state.driver, state.position
            rail_v[step] = state.rail
            speed = state.speed
            parts = SWITCH_PARTS if stage.fresh else 1
            for _ in range(parts):
                force[step], fed = stage.step(state, self.step_s / parts, feeding)
            acceleration[step], feed[step] = (state.speed - speed) / self.step_s, fed
            if feeding:
                state.over += self.step_s * (0.5 + 0.5 * np.tanh((fed - trip.current_a) / trip.width_a))
                if state.over.max() > self.trip_at_s and self._trip(state):
                    stage = _Stage(self, law, state.fed)
        parts_of = {
            "coil_a": self.magnets.magnetise(linkage, position)[0], "return_a": driver, "linkage_wb": linkage,
            "position_m": position, "acceleration_m_s2": acceleration, "force_n": force,
            "feed_a": feed, "rail_v": rail_v,
        }  # fmt: skip
        for name, part in parts_of.items():
            records[name].append(part)

    def _trip(self, state: _State) -> bool:
        """Shut what each over-current trip shuts; return whether anything changed."""
        changed = False
        for row, column in np.argwhere(state.over > self.trip_at_s):
            name = self.outputs[column]
            if name in state.fed[row]:
                state.tripped[row] |= {name}
                state.fed[row] = state.fed[row] - shut_by(self.circuit.profile, name)
                changed = True
        return changed


class _Stage:
    """The equations of one phase, reduced and stacked over slots, and one step of them."""

    def __init__(self, solver: _Solver, law: OutputLaw, live: list[frozenset[str]]) -> None:
        arrays = stacked([solver.reductions.of(outputs) for outputs in live])
        self.shared, self.from_rail = arrays["shared"], arrays["rail"]
        self.constant = arrays["battery"] * solver.circuit.profile.module.battery_v
        self.law, self.magnets, self.rail = law, solver.magnets, solver.circuit.rail
        self.choke_h = solver.circuit.profile.module.return_choke_h
        count, injectors = law.ohm.shape
        self.injectors, self.size = injectors, 2 * injectors
        self.matrix = np.empty((count, self.size, self.size))
        self.current = np.empty((count, self.size, 1))
        self.inertia = np.empty((count, self.size))
        self.diagonal = self.matrix.reshape(count, self.size * self.size)[:, :: self.size + 1]
        self.before = np.zeros((count, self.size))
        self.fresh = SWITCH_PARTS

    def step(self, state: _State, step_s: float, feeding: bool) -> tuple[Floats, Floats]:
        """Advance the state; return the force in newton and the feeds' currents it began with."""
        half, law = self.injectors, self.law
        amperes, slope, by_motion, pull = self.magnets.magnetise(state.linkage, state.position)
        moved = self._move(state, pull, step_s)
        drop, bend = law.drop(state.driver)
        self.current[:, :half, 0], self.current[:, half:, 0] = amperes + by_motion * moved, state.driver
        seen = self.from_rail * state.rail[:, None] + self.constant + (self.shared @ self.current)[:, :, 0]
        left, fed = seen[:, : self.size], seen[:, self.size :]
        left[:, half:] -= drop
        # the weight of the end of the step: implicit Euler in the parts of a step after a switch, else trapezoidal
        share = 1.0 if self.fresh else 0.5
        self.inertia[:, :half] = 1.0 / (slope * (share * step_s))
        self.inertia[:, half:] = self.choke_h / (share * step_s)
        left += (1.0 - share) / share * self.before
        np.negative(self.shared[:, : self.size], out=self.matrix)
        self.diagonal += self.inertia
        self.diagonal[:, half:] += bend
        change = np.linalg.solve(self.matrix, left[:, :, None])[:, :, 0]
        self.before = change * self.inertia - (1.0 - share) / share * self.before
        self.fresh = max(self.fresh - 1, 0)
        state.linkage = state.linkage + change[:, :half] / slope
        state.driver = state.driver + change[:, half:]
        drawn = fed.sum(axis=1) if feeding else 0.0
        filling = (self.rail.supply_v - state.rail) / self.rail.source_ohm
        state.rail = state.rail + step_s / self.rail.reservoir_f * (filling - drawn)
        return pull, fed

    def _move(self, state: _State, pull: Floats, step_s: float) -> Floats:
        """Leap one step, losses in closed form; return the way in metre."""
        magnets = self.magnets
        stop, damping = magnets.stop_force_n(state.position)
        push = pull - magnets.preload_n - magnets.spring * state.position + stop
        loss = magnets.viscous + damping
        gone = -np.expm1(-step_s / magnets.mass_kg * loss)
        state.speed = state.speed + gone * (push / loss - state.speed)
        moved = step_s * state.speed
        state.position = state.position + moved
        return moved
