"""The two phases of a pulse for many slots at once: driven by the module, then left until each slot is at rest.

Both are done by NumPy (`stepping.py`), or by the compiled step with the same results.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from trainer.arrays import Floats, Integers
from trainer.circuit import compiled_step
from trainer.circuit.drive import OutputLaw, pulse_law, quiet_law, shut_by
from trainer.circuit.solenoid import Magnets
from trainer.circuit.stepping import Row, Stage, State

REST_CURRENT_A, REST_CHANGE_A, REST_SPEED_M_S = 2e-3, 2e-5, 2e-4
"""A slot is at rest when each coil's current is small, or has not changed for two checks, and no plate moves."""

Records = Mapping[str, Floats]
"""What a pulse is recorded in, by the names of the fields of `Pulse`; the first axes are (step, slot)."""


@dataclass(frozen=True, slots=True)
class Timing:
    """A pulse in steps: how long one is, how many the drive is on, a whole period, and between two looks for rest.

    `trip_at_s` is how long too much current must flow in a feed before it is shut.
    """

    step_s: float
    on_steps: int
    period_steps: int
    check_steps: int
    trip_at_s: float


class Phases:
    """Steps through both phases by NumPy."""

    def __init__(self, rows: Sequence[Row], magnets: Magnets, timing: Timing) -> None:
        self._rows, self._magnets, self._timing = rows, magnets, timing
        self._profile = rows[0].circuit.profile
        self._outputs = tuple(rows[0].circuit.feeds)

    def drive(self, state: State, active: Sequence[int], records: Records) -> None:
        """Take every active row through its pulse; one that trips goes on with the feeds that are left."""
        steps = range(self._timing.on_steps)
        self._advance(state, active, self._pulse_law(active), records, range(len(active)), steps, feeding=True)

    def settle(self, state: State, active: Sequence[int], records: Records) -> Integers:
        """Follow every active row after its pulse; return the step from which each is at rest, or the period's end."""
        timing = self._timing
        waiting, step = list(range(len(active))), timing.on_steps
        rest_from = np.full(len(active), timing.period_steps)
        while step < timing.period_steps and waiting:
            until = min(step + timing.check_steps, timing.period_steps)
            part, there = state.of(waiting), [active[place] for place in waiting]
            self._advance(part, there, self._quiet_law(there), records, waiting, range(step, until), feeding=False)
            state.put(waiting, part)
            step = until
            still = self._still(records, waiting, step)
            _hold(records, still, step)
            rest_from[still] = step
            waiting = [place for place in waiting if place not in still]
        return rest_from

    def _pulse_law(self, active: Sequence[int]) -> OutputLaw:
        return pulse_law([(self._rows[row].circuit, self._rows[row].slot) for row in active])

    def _quiet_law(self, active: Sequence[int]) -> OutputLaw:
        return quiet_law([self._rows[row].circuit for row in active])

    def _still(self, records: Records, places: list[int], step: int) -> list[int]:
        before = max(step - 1 - 2 * self._timing.check_steps, 0)
        moved = np.abs(records["position_m"][step - 1, places] - records["position_m"][step - 2, places]).max(axis=1)
        current = np.abs(records["coil_a"][step - 1, places])
        change = np.abs(records["coil_a"][step - 1, places] - records["coil_a"][before, places])
        settled = ((current < REST_CURRENT_A) | (change < REST_CHANGE_A)).all(axis=1)
        at_rest_now = settled & (moved / self._timing.step_s < REST_SPEED_M_S)
        return [place for place, still in zip(places, at_rest_now, strict=True) if still]

    def _advance(
        self, state: State, active: Sequence[int], law: OutputLaw, records: Records, places: Sequence[int],
        steps: range, *, feeding: bool,
    ) -> None:  # fmt: skip
        """Take steps in one phase and record the state at the start of each."""
        rows, magnets, step_s = [self._rows[row] for row in active], self._magnets.of(active), self._timing.step_s
        stage = Stage(rows, magnets, law, state.fed if feeding else [frozenset[str]()] * len(rows))
        trip = self._profile.module.trip
        shape = (len(steps), *state.linkage.shape)
        linkage, driver, position, acceleration, force = (np.empty(shape) for _ in range(5))
        feed, rail_v = np.empty((*shape[:2], len(self._outputs))), np.empty(shape[:2])
        for place in range(len(steps)):
            linkage[place], driver[place], position[place] = state.linkage, state.driver, state.position
            rail_v[place] = state.rail
            speed = state.speed
            force[place], fed = stage.step(state, step_s, feeding)
            acceleration[place], feed[place] = (state.speed - speed) / step_s, fed
            if feeding:
                state.over += step_s * (0.5 + 0.5 * np.tanh((fed - trip.current_a) / trip.width_a))
                if state.over.max() > self._timing.trip_at_s:
                    for row in self._trip(state):
                        stage.switch(row, rows[row], state.fed[row])
        parts_of = {
            "coil_a": magnets.magnetise(linkage, position)[0], "return_a": driver, "linkage_wb": linkage,
            "position_m": position, "acceleration_m_s2": acceleration, "force_n": force,
            "feed_a": feed, "rail_v": rail_v,
        }  # fmt: skip
        for name, part in parts_of.items():
            records[name][steps.start : steps.stop, list(places)] = part

    def _trip(self, state: State) -> list[int]:
        """Shut what each over-current trip shuts; return the rows in which anything changed."""
        changed: dict[int, None] = {}
        for row, column in np.argwhere(state.over > self._timing.trip_at_s):
            name = self._outputs[column]
            if name in state.fed[row]:
                state.tripped[row] |= {name}
                state.fed[row] = state.fed[row] - shut_by(self._profile, name)
                changed[int(row)] = None
        return list(changed)


class CompiledPhases(Phases):
    """Steps through both phases by the compiled step."""

    def drive(self, state: State, active: Sequence[int], records: Records) -> None:
        """Take every active row through its pulse: one that trips is stopped, and taken on with the feeds left."""
        law, on_steps = self._pulse_law(active), self._timing.on_steps
        waiting = {0: list(range(len(active)))}
        while waiting:
            first = min(waiting)
            places = waiting.pop(first)
            live = [state.fed[place] for place in places]
            ended = self._step(state, active, law, records, places, live, (first, on_steps, 0))
            if (ended >= 0).any():
                self._trip(state)
            for place, step in zip(places, ended.tolist(), strict=True):
                if 0 <= step < on_steps:
                    waiting.setdefault(step, []).append(place)

    def settle(self, state: State, active: Sequence[int], records: Records) -> Integers:
        """Follow every active row after its pulse; return the step from which each is at rest, or the period's end."""
        timing, places = self._timing, list(range(len(active)))
        steps = (timing.on_steps, timing.period_steps, timing.check_steps)
        law, live = self._quiet_law(active), [frozenset[str]()] * len(active)
        ended = self._step(state, active, law, records, places, live, steps)
        rest_from = np.where(ended < 0, timing.period_steps, ended)
        for step in np.unique(rest_from[rest_from < timing.period_steps]):
            _hold(records, np.flatnonzero(rest_from == step).tolist(), int(step))
        return rest_from

    def _step(
        self, state: State, active: Sequence[int], law: OutputLaw, records: Records, places: Sequence[int],
        live: Sequence[frozenset[str]], steps: tuple[int, int, int],
    ) -> Integers:  # fmt: skip
        trip = self._profile.module.trip
        phase = compiled_step.Phase(
            *steps, self._timing.step_s, (trip.current_a, trip.width_a, self._timing.trip_at_s),
            (REST_CURRENT_A, REST_CHANGE_A, REST_SPEED_M_S),
        )  # fmt: skip
        there = [active[place] for place in places]
        rows, magnets, laws = [self._rows[row] for row in there], self._magnets.of(there), law.of(np.array(places))
        return compiled_step.advance(rows, magnets, laws, live, phase, state, records, places)


def phases_of(rows: Sequence[Row], magnets: Magnets, timing: Timing) -> Phases:
    """Return the compiled phases where they are to be had, else NumPy's."""
    profile = rows[0].circuit.profile
    compiled = compiled_step.available(len(profile.cylinders), len(profile.wiring.outputs))
    return (CompiledPhases if compiled else Phases)(rows, magnets, timing)


def _hold(records: Records, places: Sequence[int], step: int) -> None:
    """Let rows that rest stay as they are from a step on; acceleration stays nought."""
    for name, record in records.items():
        if name != "acceleration_m_s2":
            record[step:, list(places)] = record[step - 1, list(places)]
