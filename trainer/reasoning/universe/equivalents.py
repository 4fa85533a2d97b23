"""Solves each distinct slot once, however many faults lead to it.

Two circuits are the same in a slot when the coils that can click there, and the outputs that drive them, see the same
network: every other coil replaced by its copper, every other output by its background. Currents above the background
elsewhere must agree too, since they set codes; where nothing can click, the small ones as well. What they see is
compared as the currents that REFERENCE_OHM at each port would let through, in steps of ROUNDED; so 1 GΩ and 2 GΩ are
the same, and an open is the same at five places.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from hashlib import blake2b

import numpy as np

from trainer.arrays import Flags, Floats
from trainer.circuit.drive import Reductions, Slot, port_nodes, rail_branches, slots_of
from trainer.circuit.edits import EditedNetwork, edit_between
from trainer.circuit.elements import RAIL, Circuit
from trainer.circuit.network import Branch, Ports, port_columns
from trainer.circuit.solve import left_live, solve_rows
from trainer.circuit.stepping import Row
from trainer.reasoning.universe.slot_traits import SlotTraits, traits_of
from trainer.sound.traits import Ears

Key = bytes

REFERENCE_OHM = 5.0
ROUNDED, BURST_ROUNDED = 0.03, 0.06
HUM_STEP_A, HELD_FROM_A, HELD_STEP_A = 0.1, 0.01, 0.05
"""Steps in which small currents are compared where nothing clicks; from where on, and in which, the battery's are."""

CLICKS_FROM = 1.5
"""A coil can click, or push, from this many times the largest background current of the sound engine on."""

EXTRA_FROM, EXTRA_STEP_A = 1.15, 0.5
"""From how many times the background on, and in which steps, currents are compared beside a click."""

FEED_STEP_A = 8.0
"""Steps in which a feed's current is compared once it comes near its trip."""

CIRCUITS_AT_ONCE, ROWS_AT_ONCE = 300, 96
"""How many circuits are reduced, and how many slots stepped, together: more is little faster and holds more memory."""


def digest_of(*parts: object) -> bytes:
    """Return a short name of values that is the same in every run; sets are handed in sorted."""
    return blake2b(repr(parts).encode("utf-8"), digest_size=16).digest()


@dataclass(slots=True)
class Equivalents:
    """The slots solved so far, by what is seen in them; `sound` is the engine without a fault.

    `between` is called between two lots of slots; it may raise to stop the work, and what is solved is kept.
    """

    sound: Circuit
    ears: Ears
    solved: dict[Key, SlotTraits] = field(default_factory=dict)
    tests: dict[bytes, tuple[SlotTraits, ...]] = field(default_factory=dict)
    between: Callable[[], None] | None = None
    _hum_a: float | None = None
    _slow: set[Key] = field(default_factory=set)

    def tests_of(self, base: Circuit, circuits: Sequence[Circuit]) -> list[tuple[SlotTraits, ...]]:
        """Return every slot of the whole test of many circuits, each an edit of the base."""
        parts = [circuits[start : start + CIRCUITS_AT_ONCE] for start in range(0, len(circuits), CIRCUITS_AT_ONCE)]
        return [test for part in parts for test in self._tests_of(base, part)]

    def _tests_of(self, base: Circuit, circuits: Sequence[Circuit]) -> list[tuple[SlotTraits, ...]]:
        planned = slots_of(base.profile)
        reductions = [Reductions(circuit, {}) for circuit in circuits]
        asked: list[list[Slot]] = [list(planned) for _ in circuits]
        result: list[tuple[SlotTraits, ...]] = [()] * len(circuits)
        waiting = list(range(len(circuits)))
        while waiting:
            self._reduce(base, [(circuits[n], reductions[n], asked[n]) for n in waiting])
            rows = [Row(circuits[n], slot, reductions[n]) for n in waiting for slot in asked[n]]
            keys = self._keys(rows)
            self._solve(rows, keys)
            still = []
            for place, number in enumerate(waiting):
                mine = keys[place * len(planned) : (place + 1) * len(planned)]
                traits = tuple(self.solved[key] for key in mine)
                left = left_live(circuits[number], planned, asked[number], [one.seen.tripped for one in traits])
                if left == asked[number]:
                    result[number] = traits
                else:
                    asked[number] = left
                    still.append(number)
            waiting = still
        return result

    def _reduce(self, base: Circuit, work: Sequence[tuple[Circuit, Reductions, list[Slot]]]) -> None:
        """Fill in the ports that are needed, as edits of the base network."""
        ports = port_nodes(base)
        through = [f"feed.{name}.on" for name in base.feeds]
        columns = port_columns(ports, RAIL, "battery.source")
        networks: dict[frozenset[str], tuple[EditedNetwork, dict[str, Branch]]] = {}
        for circuit, reduction, slots in work:
            for live in {slot.live for slot in slots} - reduction.kept.keys():
                if live not in networks:
                    branches = rail_branches(base, live)
                    networks[live] = EditedNetwork(branches, *columns, ports, through), branches
                network, branches = networks[live]
                seen = network.outputs(edit_between(branches, rail_branches(circuit, live)))
                count = len(ports)
                reduction.kept[live] = Ports(
                    rail=seen[:count, 0], battery=seen[:count, 1], impedance_ohm=-seen[:count, 2:],
                    watched_rail=seen[count:, 0], watched_battery=seen[count:, 1], watched_port=seen[count:, 2:],
                )  # fmt: skip

    def _solve(self, rows: Sequence[Row], keys: Sequence[Key]) -> None:
        new = {key: row for key, row in zip(keys, rows, strict=True) if key not in self.solved}
        # slots that will need several pulses go together: the others need not wait for them
        order = sorted(new, key=lambda key: (new[key].circuit.rail != self.sound.rail, key in self._slow))
        for start in range(0, len(order), ROWS_AT_ONCE):
            part = order[start : start + ROWS_AT_ONCE]
            chosen = [new[key] for key in part]
            for key, traits in zip(part, traits_of(chosen, solve_rows(chosen), self.ears), strict=True):
                self.solved[key] = traits
            if self.between is not None:
                self.between()

    def _clicks_from_a(self) -> float:
        """Return from which current on a coil is taken as one that can click."""
        if self._hum_a is None:
            slots = slots_of(self.sound.profile)
            reductions = Reductions(self.sound, {})
            static = _static([Row(self.sound, slot, reductions) for slot in slots[1:]])[0]
            count = len(self.sound.profile.cylinders)
            quiet = [
                abs(current[column])
                for slot, current in zip(slots[1:], static, strict=True)
                for column, number in enumerate(self.sound.profile.cylinders[:count])
                if number not in slot.commanded
            ]
            self._hum_a = CLICKS_FROM * max([*quiet, 0.2])
        return self._hum_a

    def _keys(self, rows: Sequence[Row]) -> list[Key]:
        """Return what is seen in each slot, as a key."""
        profile = self.sound.profile
        count = len(profile.cylinders)
        static, fed = _static(rows)
        clicking = np.abs(static[:, :count]) > self._clicks_from_a()
        commanded = _commanded(rows)
        chosen = np.concatenate([clicking, commanded], axis=1)
        resting = np.concatenate([np.zeros((len(rows), count)), _output_ohm(rows)], axis=1)
        impedance, rail_v, battery_v = _stacked(rows)
        diagonal = np.where(chosen, REFERENCE_OHM, resting)
        passes = np.linalg.inv(impedance + diagonal[:, None, :] * np.eye(2 * count))
        full_a = profile.module.supply_v / REFERENCE_OHM
        rounded = np.array([BURST_ROUNDED if row.slot.number == 0 else ROUNDED for row in rows])
        seen = np.round(passes * REFERENCE_OHM / rounded[:, None, None]).astype(np.int32)
        driven = np.round((passes @ rail_v[:, :, None])[:, :, 0] / (full_a * rounded[:, None])).astype(np.int32)
        # what the battery drives by itself sets codes wherever it flows, chosen or not
        whole = impedance + resting[:, None, :] * np.eye(2 * count)
        pushed_a = np.linalg.solve(whole, battery_v[:, :, None])[:, :, 0]
        held = (np.sign(pushed_a) * np.ceil(np.maximum(np.abs(pushed_a) - HELD_FROM_A, 0.0) / HELD_STEP_A)).astype(
            np.int32
        )
        near_trip = np.where(np.abs(fed) > 0.5 * profile.module.trip.current_a, np.round(fed / FEED_STEP_A), 0.0)
        hum = np.round(static[:, :count] / HUM_STEP_A).astype(np.int32)
        background_a = EXTRA_FROM * self._clicks_from_a() / CLICKS_FROM
        above = np.sign(static) * np.maximum(np.abs(static) - background_a, 0.0)
        extra = np.round(np.where(chosen, 0.0, above) / EXTRA_STEP_A).astype(np.int32)
        keys: list[Key] = []
        for row, one in enumerate(rows):
            mine = np.flatnonzero(chosen[row])
            clicks = clicking[row]
            odd = tuple(
                (number, one.circuit.solenoids[number], one.circuit.returns[number])
                for column, number in enumerate(profile.cylinders)
                if (clicks[column] and one.circuit.solenoids[number] != self.sound.solenoids[number])
                or (
                    (clicks[column] or number in one.slot.commanded)
                    and one.circuit.returns[number] != self.sound.returns[number]
                )
            )
            pushed = held[row].tobytes() if held[row].any() else b""
            small = extra[row].tobytes() if clicks.any() else hum[row].tobytes()
            keys.append(digest_of(
                one.slot.number, sorted(one.slot.live), one.circuit.rail, odd, mine.tobytes(),
                seen[row][np.ix_(mine, mine)].tobytes(),
                driven[row][mine].tobytes(), pushed, near_trip[row].tobytes(), small,
            ))  # fmt: skip
            self._slow |= {keys[-1]} if pushed else set()
        return keys


def _commanded(rows: Sequence[Row]) -> Flags:
    cylinders = rows[0].circuit.profile.cylinders
    return np.array([[number in row.slot.commanded for number in cylinders] for row in rows])


def _output_ohm(rows: Sequence[Row]) -> Floats:
    cylinders = rows[0].circuit.profile.cylinders
    return np.array(
        [
            [
                row.circuit.returns[n].on_ohm if n in row.slot.commanded else row.circuit.returns[n].off_ohm
                for n in cylinders
            ]
            for row in rows
        ]
    )


def _stacked(rows: Sequence[Row]) -> tuple[Floats, Floats, Floats]:
    """Return impedances in ohm (row, port, port), and what rail and battery push at each port, in volt (row, port)."""
    ports = [row.reductions.of(row.slot.live) for row in rows]
    battery_v = rows[0].circuit.profile.module.battery_v
    return (
        np.array([one.impedance_ohm for one in ports]),
        np.array([one.rail * row.circuit.rail.supply_v for one, row in zip(ports, rows, strict=True)]),
        np.array([one.battery * battery_v for one in ports]),
    )


def _static(rows: Sequence[Row]) -> tuple[Floats, Floats]:
    """Return port currents and feed currents at direct current without any limit, (row, port) and (row, output)."""
    impedance, rail_v, battery_v = _stacked(rows)
    count = impedance.shape[1] // 2
    load = np.concatenate([np.zeros((len(rows), count)), _output_ohm(rows)], axis=1)
    whole = impedance + load[:, None, :] * np.eye(2 * count)
    current = np.linalg.solve(whole, (rail_v + battery_v)[:, :, None])[:, :, 0]
    ports = [row.reductions.of(row.slot.live) for row in rows]
    fed = np.array(
        [
            one.watched_rail * row.circuit.rail.supply_v
            + one.watched_battery * row.circuit.profile.module.battery_v
            + one.watched_port @ amps
            for one, row, amps in zip(ports, rows, current, strict=True)
        ]
    )
    return current, fed
