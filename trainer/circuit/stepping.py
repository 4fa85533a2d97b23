"""One step of many actuation slots at once: the linearly implicit trapezoidal rule and the armatures' leap.

The ports give `v = e − Z·i`, each coil `dλ/dt = v`, each return output its law behind its choke; the slopes dλ/di and
dv/di stand on the diagonal, so the step is stable from 0 Ω to 1 GΩ. A few parts of the step after a switch are taken
by implicit Euler: they damp what the trapezoidal rule would let ring. The armature leaps between half steps with its
losses in closed form. docs/decisions.md says why a small dense solve stands in each step.
"""

from __future__ import annotations

from collections.abc import Sequence
from copy import copy
from dataclasses import dataclass

import numpy as np

from trainer.arrays import Floats, Integers
from trainer.circuit.drive import OutputLaw, Reductions, Slot, stacked
from trainer.circuit.elements import Circuit
from trainer.circuit.solenoid import Magnets

STEEP_OHM = 1.0
"""A law flatter than this is far from its bend."""

SWITCH_PARTS = 4
"""How many parts the step after a switch is taken in."""


@dataclass(frozen=True, slots=True)
class Row:
    """One slot of one circuit, with the circuit's reductions to ports."""

    circuit: Circuit
    slot: Slot
    reductions: Reductions


@dataclass(slots=True)
class State:
    """The moving part of a solve; arrays of shape (row, cylinder), (row,) and (row, output)."""

    linkage: Floats
    position: Floats
    speed: Floats
    driver: Floats
    rail: Floats
    over: Floats
    fed: list[frozenset[str]]
    tripped: list[frozenset[str]]

    def of(self, rows: Sequence[int]) -> State:
        """Return a copy of some rows."""
        picked = list(rows)
        return State(
            self.linkage[picked],
            self.position[picked],
            self.speed[picked],
            self.driver[picked],
            self.rail[picked],
            self.over[picked],
            [self.fed[row] for row in picked],
            [self.tripped[row] for row in picked],
        )

    def put(self, rows: Sequence[int], part: State) -> None:
        """Write some rows back; arrays that were taken from the state before keep their values."""
        picked = list(rows)
        for name in ("linkage", "position", "speed", "driver", "rail", "over"):
            whole = getattr(self, name).copy()
            whole[picked] = getattr(part, name)
            setattr(self, name, whole)
        for place, row in enumerate(picked):
            self.fed[row], self.tripped[row] = part.fed[place], part.tripped[place]


def state_at_rest(rows: Sequence[Row], magnets: Magnets) -> State:
    """Return the state before the first pulse: no current, every plate on its seat, the reservoir full."""
    outputs = len(rows[0].circuit.feeds)
    sink = -(magnets.preload_n / (magnets.stop + magnets.spring))
    zero = np.zeros_like(sink)
    return State(
        linkage=zero.copy(),
        position=sink.copy(),
        speed=zero.copy(),
        driver=zero.copy(),
        rail=np.array([row.circuit.rail.supply_v for row in rows], dtype=float),
        over=np.zeros((len(rows), outputs)),
        fed=[row.slot.live for row in rows],
        tripped=[frozenset()] * len(rows),
    )


class Stage:
    """The equations of one phase, reduced and stacked over slots, and one step of them.

    Each row switches for itself: what its neighbours in the stack do changes nothing of it.
    """

    def __init__(self, rows: Sequence[Row], magnets: Magnets, law: OutputLaw, live: Sequence[frozenset[str]]) -> None:
        arrays = stacked([row.reductions.of(outputs) for row, outputs in zip(rows, live, strict=True)])
        module = rows[0].circuit.profile.module
        self.battery_v = module.battery_v
        self.shared, self.from_rail = arrays["shared"], arrays["rail"]
        self.constant = arrays["battery"] * module.battery_v
        self.law, self.magnets, self.choke_h = law, magnets, module.return_choke_h
        self.supply_v, self.source_ohm, self.reservoir_f = (
            np.array([getattr(row.circuit.rail, name) for row in rows])
            for name in ("supply_v", "source_ohm", "reservoir_f")
        )
        self.injectors = law.ohm.shape[1]
        self.size = 2 * self.injectors
        self.before = np.zeros((len(rows), self.size))
        self.fresh = np.ones(len(rows), dtype=bool)
        self._make_room()

    def _make_room(self) -> None:
        """Allocate the arrays that every step overwrites."""
        count = len(self.fresh)
        self.matrix = np.empty((count, self.size, self.size))
        self.current = np.empty((count, self.size, 1))
        self.inertia = np.empty((count, self.size))
        self.diagonal = self.matrix.reshape(count, self.size * self.size)[:, :: self.size + 1]

    def of(self, rows: Integers) -> Stage:
        """Return a copy of some rows."""
        part = copy(self)
        for name in ("shared", "from_rail", "constant", "supply_v", "source_ohm", "reservoir_f", "before", "fresh"):
            setattr(part, name, getattr(self, name)[rows])
        part.law, part.magnets = self.law.of(rows), self.magnets.of(rows.tolist())
        part._make_room()
        return part

    def switch(self, place: int, row: Row, live: frozenset[str]) -> None:
        """Put one row on the network that other live outputs leave it."""
        arrays = stacked([row.reductions.of(live)])
        self.shared[place], self.from_rail[place] = arrays["shared"][0], arrays["rail"][0]
        self.constant[place] = arrays["battery"][0] * self.battery_v
        self.before[place] = 0.0
        self.fresh[place] = True

    def step(self, state: State, step_s: float, feeding: bool) -> tuple[Floats, Floats]:
        """Advance the state by one step, rows that have just switched in parts.

        Return the magnetic force in newton and the feeds' currents in ampere that the step's last part began with.
        """
        if not self.fresh.any():
            return self._part(state, step_s, feeding)
        if self.fresh.all():
            for _ in range(SWITCH_PARTS):
                pull, fed = self._part(state, step_s / SWITCH_PARTS, feeding)
            self.fresh[:] = False
            return pull, fed
        pull, fed = np.empty_like(state.linkage), np.empty_like(state.over)
        for rows in (np.flatnonzero(self.fresh), np.flatnonzero(~self.fresh)):
            stage, part = self.of(rows), state.of(rows.tolist())
            pull[rows], fed[rows] = stage.step(part, step_s, feeding)
            state.put(rows.tolist(), part)
            self.before[rows] = stage.before
        self.fresh[:] = False
        return pull, fed

    def _part(self, state: State, step_s: float, feeding: bool) -> tuple[Floats, Floats]:
        """Advance the state, all rows alike; return the force in newton and the feeds' currents it began with."""
        half, law = self.injectors, self.law
        amperes, slope, by_motion, pull = self.magnets.magnetise(state.linkage, state.position)
        moved = self._move(state, pull, step_s)
        drop, bend = law.drop(state.driver)
        self.current[:, :half, 0], self.current[:, half:, 0] = amperes + by_motion * moved, state.driver
        seen = self.from_rail * state.rail[:, None] + self.constant + (self.shared @ self.current)[:, :, 0]
        left, fed = seen[:, : self.size], seen[:, self.size :]
        left[:, half:] -= drop
        # the weight of the end of the step: implicit Euler in the parts of a step after a switch, else trapezoidal
        share = 1.0 if self.fresh[0] else 0.5
        self.inertia[:, :half] = 1.0 / (slope * (share * step_s))
        self.inertia[:, half:] = self.choke_h / (share * step_s)
        left += (1.0 - share) / share * self.before
        np.negative(self.shared[:, : self.size], out=self.matrix)
        self.diagonal += self.inertia
        self.diagonal[:, half:] += bend
        change = np.linalg.solve(self.matrix, left[:, :, None])[:, :, 0]
        if law.chord:
            # an output with no coil behind it would step over its clamp's bend and back again for ever
            across = (state.driver * (state.driver + change[:, half:]) < 0.0) & (bend < STEEP_OHM)
            if across.any():
                self.diagonal[:, half:] += np.where(across, law.chord_ohm(state.driver) - bend, 0.0)
                change = np.linalg.solve(self.matrix, left[:, :, None])[:, :, 0]
        self.before = change * self.inertia - (1.0 - share) / share * self.before
        state.linkage = state.linkage + change[:, :half] / slope
        state.driver = state.driver + change[:, half:]
        drawn = fed.sum(axis=1) if feeding else 0.0
        filling = (self.supply_v - state.rail) / self.source_ohm
        state.rail = state.rail + step_s / self.reservoir_f * (filling - drawn)
        return pull, fed

    def _move(self, state: State, pull: Floats, step_s: float) -> Floats:
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
