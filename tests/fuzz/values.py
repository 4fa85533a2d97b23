"""Values that no program expects, and plain data with one of them somewhere inside."""

from __future__ import annotations

import copy
import json
from typing import Any

import numpy as np

DEEP = 3_000
"""So many brackets inside one another are more than a parser written in recursion takes."""

HOSTILE: tuple[Any, ...] = (
    None, True, False, 0, -1, 1, 2, 7, 99, 2**31, -(2**31), 2**63 - 1, 10**30, 0.5, -0.5, 1e308, -1e308,
    float("nan"), float("inf"), "", " ", "x", "0", "-1", "1e999", "nan", "\x00", "\ufffd", "é" * 40, "a" * 3_000, "'; --",
    "{", "[]", "{}", "2026-13-45T99:99:99", "2026-01-01", "0001-01-01T00:00:00+23:59", "9999-12-31T23:59:59-23:59",
    "closed", "front", "north_v8", "P0203", "{0.__class__}", [], [1], [[]], [None], ["x"], {}, {"": None}, {"a": {"b": []}},
)  # fmt: skip


def picked(rng: np.random.Generator, among: Any) -> Any:
    """Return one of a sequence."""
    return among[int(rng.integers(len(among)))]


def _places(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """Return the path to every part of plain data, the whole included."""
    found = [path]
    if isinstance(value, dict):
        for key, part in value.items():
            found += _places(part, (*path, key))
    elif isinstance(value, list):
        for number, part in enumerate(value):
            found += _places(part, (*path, number))
    return found


def damaged_data(rng: np.random.Generator, value: Any) -> tuple[Any, str]:
    """Return plain data with one part changed, taken away or doubled, and what was done."""
    whole = [copy.deepcopy(value)]
    path = picked(rng, _places(value))
    holder: Any = whole
    for step in (0, *path)[:-1]:
        holder = holder[step]
    last = (0, *path)[-1]
    deed = picked(rng, ("set", "set", "set", "set", "drop", "add", "nest"))
    if deed == "drop" and path:
        del holder[last]
    elif deed == "add" and isinstance(holder[last], dict):
        holder[last][picked(rng, ("extra", "practice", "work", "spent_s", "minutes", "lesson"))] = picked(rng, HOSTILE)
    elif deed == "add" and isinstance(holder[last], list):
        holder[last].append(picked(rng, HOSTILE))
    elif deed == "nest":
        holder[last] = [holder[last]]
    else:
        deed, holder[last] = "set", picked(rng, HOSTILE)
    return whole[0], f"{deed} {'.'.join(map(str, path)) or 'the whole'} {holder[last]!r:.60}" if deed == "set" else (
        whole[0],
        f"{deed} {'.'.join(map(str, path)) or 'the whole'}",
    )


def damaged_json(rng: np.random.Generator, written: str) -> tuple[str, str]:
    """Return JSON text damaged in its structure or as a text, and what was done."""
    kind = int(rng.integers(10))
    if kind == 0:
        cut = int(rng.integers(len(written) + 1))
        return written[:cut], f"cut at {cut}"
    if kind == 1:
        return "[" * DEEP, "brackets"
    if kind == 2:
        place, letter = int(rng.integers(len(written) + 1)), picked(rng, '{}[]",:0eE-\\x')
        return written[:place] + letter + written[place + 1 :], f"{letter} at {place}"
    if kind == 3:
        return written.replace("0", "9" * 5_000, 1), "a number of 5,000 digits"
    value, did = damaged_data(rng, json.loads(written))
    return json.dumps(value), did
