"""What a fuzzer counts, and how it stops: at the first mutant that the program does not survive."""

from __future__ import annotations

import sys
import tempfile
import time
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path

from tests.fuzz.world import World, world_in

Mutant = tuple[str, Callable[[], bool]]
"""What was damaged, and what a person does with it: true where it was read, false where it was refused."""


@dataclass(frozen=True, slots=True)
class Figures:
    """How many mutants there were, how many were refused with a sentence and how many read, and the CPU time in s."""

    kind: str
    mutants: int
    refused: int
    read: int
    seconds: float

    @property
    def line(self) -> str:
        """The figures in one line."""
        return (
            f"{self.kind}: {self.mutants} mutants, {self.refused} refused, {self.read} read, 0 tracebacks, "
            f"{self.seconds:.1f} s of processor time"
        )


Run = Callable[[int, int, World, Path], Figures]
"""A fuzzer: seed, how many mutants of what in the world, and a folder to work in."""


class SurvivedNotError(AssertionError):
    """Raised for a mutant that ended in a traceback, lost something or cost too much; says which one it was."""


def counted(kind: str, seed: int, mutants: Iterable[Mutant]) -> Figures:
    """Use every mutant and count.

    Raises SurvivedNotError with seed and description at the first that raises anything.
    """
    begun = time.process_time()
    refused = read = 0
    for number, (described, use) in enumerate(mutants):
        try:
            good = use()
        except Exception as error:
            raise SurvivedNotError(f"{kind}, seed {seed}, mutant {number}: {described}: {error!r}") from error
        read += good
        refused += not good
    return Figures(kind, refused + read, refused, read, time.process_time() - begun)


def main(run: Run, seed: int = 20261126) -> None:
    """Run a fuzzer from the command line: `python -m tests.fuzz.NAME COUNT [SEED]`."""
    count = int(sys.argv[1])
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        world = world_in(folder / "world")
        print(run(int(sys.argv[2]) if len(sys.argv) > 2 else seed, count, world, folder).line, flush=True)
