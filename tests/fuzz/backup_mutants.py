"""Damages backups, restores them and uses what came back: `python -m tests.fuzz.backup_mutants COUNT [SEED]`."""

from __future__ import annotations

import gzip
import hashlib
import json
from collections.abc import Iterator
from contextlib import suppress
from functools import partial
from pathlib import Path

import numpy as np
from sqlalchemy import func, select

from tests.fuzz import uses
from tests.fuzz.figures import Figures, Mutant, counted, main
from tests.fuzz.lines import damaged_bytes, damaged_lines
from tests.fuzz.values import picked
from tests.fuzz.world import World, copied, emptied
from trainer.errors import ProblemsFoundError, UserError
from trainer.records.store.backup import KEPT, MOST_LINE, restore_backup
from trainer.records.store.store import Store

AFTERWARDS = (uses.export, uses.progress, uses.carry, uses.bundle, uses.mark, uses.practise, uses.sit)


def damage(rng: np.random.Generator, written: bytes) -> tuple[bytes, str]:
    """Return the content of a backup damaged in one way, and what was done; mostly with a sum that fits again."""
    if rng.integers(8) == 0:
        return damaged_bytes(rng, written)
    if rng.integers(40) == 0:
        return gzip.compress(b'{"form": "' + b"x" * (3 * MOST_LINE)), "one line without an end"
    *lines, _sum = gzip.decompress(written).split(b"\n")[:-1]
    lines, did = damaged_lines(rng, lines)
    body = b"".join(line + b"\n" for line in lines)
    fitting = bool(rng.integers(10))
    digest = hashlib.sha256(body if fitting else written).hexdigest()
    return gzip.compress(body + json.dumps({"sha256": digest}).encode("ascii") + b"\n"), did


def _rows(store: Store) -> int:
    with store.reading() as connection:
        return sum(connection.execute(select(func.count()).select_from(table)).scalar_one() for table in KEPT)


def used(rng: np.random.Generator, world: World, content: bytes) -> bool:
    """Restore a backup, and where that goes well use the records; tell whether it was restored."""
    path = world.folder / "damaged.gz"
    path.write_bytes(content)
    store = emptied(world)
    try:
        put_back = restore_backup(store, path)
    except (UserError, ProblemsFoundError):
        assert not _rows(store), "a refused backup left rows"
        return False
    else:
        assert _rows(store) == put_back.done
    finally:
        store.close()
    said = uses.Said()
    with suppress(uses.RefusedError):
        for use in (picked(rng, AFTERWARDS) for _use in range(2)):
            use(world, said)
    return True


def run(seed: int, count: int, world: World, folder: Path) -> Figures:
    """Damage so many backups and restore them."""
    written = world.backup.read_bytes()

    with copied(world, folder / "mutant") as copy:

        def mutants() -> Iterator[Mutant]:
            for number in range(count):
                rng = np.random.default_rng([seed, number])
                content, did = damage(rng, written)
                yield did, partial(used, rng, copy, content)

        return counted("backup", seed, mutants())


if __name__ == "__main__":
    main(run)
