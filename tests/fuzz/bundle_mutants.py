"""Damages bundles of results and collects them: `python -m tests.fuzz.bundle_mutants COUNT [SEED]`.

Most are refused, since they are signed; some are signed again by somebody who has the key, and then marked.
"""

from __future__ import annotations

import hmac
import json
from collections.abc import Iterator
from functools import partial
from pathlib import Path
from typing import Any

import numpy as np

from tests.fuzz import uses
from tests.fuzz.figures import Figures, Mutant, counted, main
from tests.fuzz.lines import damaged_bytes, damaged_lines
from tests.fuzz.values import damaged_data, picked
from tests.fuzz.world import World, copied, emptied
from tests.universes import UNIVERSES
from trainer.desk.caching_solver import CachingSolver
from trainer.practice.attempt.event_record import EventRecord
from trainer.records.class_report.collect import collect
from trainer.records.class_report.marking import mark_set
from trainer.records.store.bundle import Fate
from trainer.records.store.chain import canonical, first_link, next_link
from trainer.records.store.json_lines import attempt_lines, attempts_in
from trainer.sets.sealed import SetKey
from trainer.sets.set_access import OpenedSet

LAST = ("points", "certainty", "right", "places", "spent_s")
"""What the event that closes a case holds, and what is damaged there on purpose."""


def damage(rng: np.random.Generator, written: bytes, key: SetKey) -> tuple[bytes, str]:
    """Return the content of a bundle damaged in one way, and what was done."""
    kind = int(rng.integers(6))
    if kind < 2:
        return damaged_bytes(rng, written)
    head, *lines, _seal = written.split(b"\n")[:-1]
    if kind == 2:
        lines, did = damaged_lines(rng, [head, *lines])
        return _sealed(lines, key) if rng.integers(4) else b"\n".join([*lines, _seal, b""]), did
    lines, did = _signed_again(rng, lines, key)
    return _sealed([head, *lines], key), did


def _sealed(lines: list[bytes], key: SetKey) -> bytes:
    body = b"".join(line + b"\n" for line in lines)
    return body + canonical({"seal": hmac.digest(key.derived("bundle"), body, "sha256").hex()}) + b"\n"


def _signed_again(rng: np.random.Generator, lines: list[bytes], key: SetKey) -> tuple[list[bytes], str]:
    """Change the data of one event, and make every link and every hint at the attempt before anew."""
    attempts, chain = attempts_in(lines), key.derived("chain")
    at = int(rng.integers(len(attempts)))
    number = int(rng.integers(len(attempts[at].events)))
    made: list[bytes] = []
    did, before = "", ""
    for place, one in enumerate(attempts):
        link, events, links = first_link(chain, one.row), [], []
        for event in one.events:
            data: Any = {**event.data, "after": before} if event.number == 1 else event.data
            if (place, event.number - 1) == (at, number):
                data, did = _damaged_event(rng, data)
            events.append(EventRecord(event.number, event.kind, event.at, data))
            link = next_link(chain, link, events[-1])
            links.append(link)
        before = links[-1]
        made += attempt_lines(one.row, events, links)
    return made, f"event {number + 1} of attempt {at + 1}, signed again: {did}"


def _damaged_event(rng: np.random.Generator, data: dict[str, Any]) -> tuple[Any, str]:
    name = picked(rng, LAST)
    if name in data and rng.integers(2):
        value, did = damaged_data(rng, data[name])
        return {**data, name: value}, f"{name}: {did}"
    value, did = damaged_data(rng, data)
    return json.loads(json.dumps(value)), did


def used(world: World, content: bytes, one: OpenedSet) -> bool:
    """Collect a bundle, mark it and report; tell whether it was taken."""
    world.bundle.write_bytes(content)
    store = emptied(world)
    try:
        (taken,) = collect(store, [world.stick], one.case_set.id, [one.key])
        if taken.fate is not Fate.NEW:
            assert not store.count(), "a refused bundle left events"
            return False
        mark_set(store, one.case_set, [one.key], CachingSolver(), UNIVERSES)
    finally:
        store.close()
    uses.export(world, uses.Said())
    return True


def run(seed: int, count: int, world: World, folder: Path) -> Figures:
    """Damage so many bundles and collect them."""
    written, one = world.bundle.read_bytes(), uses.opened_set(world)

    with copied(world, folder / "mutant") as copy:

        def mutants() -> Iterator[Mutant]:
            for number in range(count):
                content, did = damage(np.random.default_rng([seed, number]), written, one.key)
                yield did, partial(used, copy, content, one)

        return counted("bundle", seed, mutants())


if __name__ == "__main__":
    main(run)
