"""The state of the engine as plain data and back, for the event log."""

from __future__ import annotations

from typing import Any

from trainer.circuit.elements import Location
from trainer.circuit.faults import Conditions
from trainer.instruments.bench import Work


def data_of(work: Work) -> dict[str, Any]:
    """Return the work as plain data with sorted lists."""
    conditions = work.conditions
    return {
        "temperature_c": conditions.temperature_c,
        "moved": conditions.moved,
        "heated": conditions.heated,
        "reseated": sorted(conditions.reseated),
        "unplugged": sorted(work.unplugged),
        "covers_off": sorted(work.covers_off),
        "swapped": [list(pair) for pair in work.swapped],
        "replaced": sorted([location, number] for location, number in work.replaced),
        "dummy_loads": sorted(work.dummy_loads),
        "spread": sorted(work.spread),
    }


def work_of(data: dict[str, Any]) -> Work:
    """Return the work that plain data describe."""
    conditions = Conditions(
        temperature_c=data["temperature_c"],
        moved=Location(data["moved"]) if data["moved"] else None,
        heated=Location(data["heated"]) if data["heated"] else None,
        reseated=frozenset(data["reseated"]),
    )
    return Work(
        conditions=conditions,
        unplugged=frozenset(data["unplugged"]),
        covers_off=frozenset(data["covers_off"]),
        swapped=tuple((first, second) for first, second in data["swapped"]),
        replaced=frozenset((Location(location), number) for location, number in data["replaced"]),
        dummy_loads=frozenset(data["dummy_loads"]),
        spread=frozenset(data["spread"]),
    )
