"""A solved universe as arrays, and back.

Most hypotheses expect the same of most questions. Kept answers are therefore stored as their distinct values, a number
of one for each cell of the distinct rows and columns, and which row and column each hypothesis and question has.
"""

from __future__ import annotations

import numpy as np

from trainer.arrays import Floats, Integers
from trainer.cases.files.array_file import Arrays
from trainer.circuit.codes import SlotCurrents
from trainer.circuit.drive import Slot, slots_of
from trainer.reasoning.case_facts import Universe
from trainer.reasoning.universe.questions import states_in
from trainer.reasoning.universe.slot_traits import SlotTraits, TraceMarks

_VECTORS = ("most_a", "early_a", "end_a", "coil_end_a", "return_end_a")


def arrays_of(universe: Universe) -> Arrays:
    """Return everything that is solved of a universe whose whole menu has been answered."""
    equivalents, kept = universe.expectations.equivalents, universe.expectations.kept
    slots = list(equivalents.solved.values())
    place = {key: number for number, key in enumerate(equivalents.solved)}
    by_identity = {id(traits): place[key] for key, traits in equivalents.solved.items()}
    outputs = tuple(universe.profile.wiring.outputs)
    questions = states_in(universe.menu)
    return {
        "keys": _bytes(equivalents.solved),
        "slot": np.array([one.seen.slot.number for one in slots], dtype=np.uint8),
        "live": np.array([[name in one.seen.slot.live for name in outputs] for one in slots]),
        "tripped": np.array([[name in one.seen.tripped for name in outputs] for one in slots]),
        "sound": np.array([one.sound for one in slots]),
        "trace": np.array([(t.trace.peak_a, t.trace.early_a, t.trace.dip_s, t.trace.dip_a) for t in slots]),
        "rail": np.array([(one.rail_end_v, one.rail_low_v) for one in slots]),
        **{name: np.array([_vector(one, name) for one in slots]) for name in _VECTORS},
        "test_keys": _bytes(equivalents.tests),
        "test_slots": np.array([[by_identity[id(t)] for t in test] for test in equivalents.tests.values()]),
        "widths": np.array([kept[question].shape[1] for question in questions]),
        **_distinct(np.concatenate([kept[question] for question in questions], axis=1)),
    }


def fill(universe: Universe, arrays: Arrays) -> None:
    """Replace everything solved of a universe by what arrays hold.

    Raises KeyError, ValueError or IndexError for arrays that do not fit, and leaves the universe unchanged then.
    """
    slots = _slots(universe, arrays)
    solved = dict(zip(map(bytes, arrays["keys"]), slots, strict=True))
    tests = {
        key: tuple(slots[place] for place in places)
        for key, places in zip(map(bytes, arrays["test_keys"]), arrays["test_slots"].tolist(), strict=True)
    }
    answers = arrays["values"][arrays["cells"]].take(arrays["rows"], axis=0).take(arrays["columns"], axis=1)
    edges = np.cumsum(arrays["widths"])
    if answers.shape != (len(universe.faults), edges[-1]):
        raise ValueError("another menu or other hypotheses")
    kept = dict(zip(states_in(universe.menu), np.split(answers, edges[:-1], axis=1), strict=True))
    universe.expectations.restore(solved, tests, kept)


def _slots(universe: Universe, arrays: Arrays) -> list[SlotTraits]:
    outputs = tuple(universe.profile.wiring.outputs)
    commanded = {slot.number: slot.commanded for slot in slots_of(universe.profile)}
    rows = zip(
        arrays["slot"].tolist(), arrays["live"].tolist(), arrays["tripped"].tolist(), arrays["rail"].tolist(),
        arrays["trace"].tolist(), arrays["sound"], *(arrays[name] for name in _VECTORS), strict=True,
    )  # fmt: skip
    slots = []
    for number, on, off, (rail_end_v, rail_low_v), marks, sound, most, early, end, coil, back in rows:
        live = frozenset(name for name, is_live in zip(outputs, on, strict=True) if is_live)
        tripped = frozenset(name for name, is_tripped in zip(outputs, off, strict=True) if is_tripped)
        slots.append(
            SlotTraits(
                sound=sound,
                seen=SlotCurrents(Slot(number, commanded[number], live), most, early, end, tripped, rail_low_v),
                trace=TraceMarks(*marks),
                coil_end_a=coil,
                return_end_a=back,
                rail_end_v=rail_end_v,
                rail_low_v=rail_low_v,
            )
        )
    return slots


def _bytes(keys: dict[bytes, SlotTraits] | dict[bytes, tuple[SlotTraits, ...]]) -> np.ndarray:
    return np.array([list(key) for key in keys], dtype=np.uint8)


def _vector(traits: SlotTraits, name: str) -> np.ndarray:
    return np.asarray(getattr(traits.seen if hasattr(traits.seen, name) else traits, name))


def _distinct(answers: Floats) -> Arrays:
    """Return answers of shape (hypothesis, number) as distinct values and the place of each.

    They are told apart by their 32 bits, as they are stored.
    """
    bits = np.ascontiguousarray(answers, dtype=np.float32).view(np.uint32)
    distinct_rows, rows = _places(bits)
    distinct_columns, columns = _places(np.ascontiguousarray(distinct_rows.T))
    values, cells = np.unique(distinct_columns.T, return_inverse=True)
    return {
        "values": values.view(np.float32),
        "cells": cells.reshape(distinct_columns.T.shape).astype(np.uint32),
        "rows": rows,
        "columns": columns,
    }


def _places(rows: np.ndarray) -> tuple[np.ndarray, Integers]:
    """Return the distinct rows in the order in which they come, and which of them each row is."""
    place: dict[bytes, int] = {}
    index = np.array([place.setdefault(row.tobytes(), len(place)) for row in rows])
    return np.frombuffer(b"".join(place), dtype=rows.dtype).reshape(len(place), -1), index
