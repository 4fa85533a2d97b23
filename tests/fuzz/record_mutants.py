"""Damages learners' records and takes them in: `python -m tests.fuzz.record_mutants COUNT [SEED]`."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from contextlib import suppress
from functools import partial
from pathlib import Path

import numpy as np

from tests.fuzz import uses
from tests.fuzz.figures import Figures, Mutant, counted, main
from tests.fuzz.lines import damaged_bytes, damaged_lines
from tests.fuzz.values import picked
from tests.fuzz.world import LEARNER, World, copied, emptied
from trainer.errors import ProblemsFoundError
from trainer.records.store.chain import canonical
from trainer.records.store.learner_record import import_record

AFTERWARDS = (uses.progress, uses.carry, uses.practise, uses.backup)


def damage(rng: np.random.Generator, written: bytes) -> tuple[bytes, str]:
    """Return the content of a record damaged in one way, and what was done; mostly with a sum that fits again."""
    if rng.integers(8) == 0:
        return damaged_bytes(rng, written)
    *lines, _sum = written.split(b"\n")[:-1]
    lines, did = damaged_lines(rng, lines)
    body = b"".join(line + b"\n" for line in lines)
    digest = hashlib.sha256(body if rng.integers(10) else written).hexdigest()
    return body + canonical({"sha256": digest}) + b"\n", did


def used(rng: np.random.Generator, world: World, content: bytes) -> bool:
    """Take a record in, and where that goes well use what came; tell whether it was taken."""
    path = world.folder / "damaged.record"
    path.write_bytes(content)
    store = emptied(world)
    try:
        import_record(store, path, LEARNER)
    except ProblemsFoundError:
        assert not store.count(), "a refused record left events"
        return False
    finally:
        store.close()
    said = uses.Said()
    with suppress(uses.RefusedError):
        picked(rng, AFTERWARDS)(world, said)
    return True


def run(seed: int, count: int, world: World, folder: Path) -> Figures:
    """Damage so many records and take them in."""
    written = world.record.read_bytes()

    with copied(world, folder / "mutant") as copy:

        def mutants() -> Iterator[Mutant]:
            for number in range(count):
                rng = np.random.default_rng([seed, number])
                content, did = damage(rng, written)
                yield did, partial(used, rng, copy, content)

        return counted("record", seed, mutants())


if __name__ == "__main__":
    main(run)
