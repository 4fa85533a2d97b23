"""Break the program in seeded places and see whether a room's own tests notice.

`python -m tests.house.mutants [--count 30] [--seed 13] [--tests FOLDER] [--at PATH:LINE]` copies the checkout, changes one operator,
comparison, constant or condition at a time, runs the tests of the room it lies in, and prints which mutants were killed.
`--tests` takes the tests of another checkout, so that two suites can be held against the same mutants;
`--at` takes only the drawn mutants of a line.

The kinds of change are those of Offutt et al. 1996, "An experimental determination of sufficient mutant operators"
(relational, logical and arithmetic operators, constants; from memory).
"""

from __future__ import annotations

import argparse
import ast
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

REPOSITORY = Path(__file__).parents[2]
OWN_TESTS = {
    "words": ("tests/words", "tests/house/test_words.py"),
}
"""Rooms whose tests do not all lie in the folder of their name."""

TEST_LIMIT_S = 900
"""A mutant that runs longer than this has hung, which a person would notice: killed."""

SWAPS: dict[type[ast.AST], str] = {
    ast.Lt: ">=", ast.LtE: ">", ast.Gt: "<=", ast.GtE: "<", ast.Eq: "!=", ast.NotEq: "==", ast.In: "not in", ast.NotIn: "in",
    ast.Is: "is not", ast.IsNot: "is", ast.Add: "-", ast.Sub: "+", ast.Mult: "/", ast.Div: "*", ast.And: "or", ast.Or: "and",
}  # fmt: skip


@dataclass(frozen=True)
class Mutant:
    """One change to one file: the characters from `start` to `end` become `becomes`."""

    path: str
    line: int
    start: int
    end: int
    was: str
    becomes: str

    @property
    def room(self) -> str:
        """Return the room that the file lies in."""
        return Path(self.path).parts[1]

    def applied(self, source: str) -> str:
        """Return the changed source."""
        return source[: self.start] + self.becomes + source[self.end :]

    def __str__(self) -> str:
        return f"{self.path}:{self.line}: {self.was} → {self.becomes}"


def mutants_of(path: Path, source: str) -> Iterator[Mutant]:
    """Yield every change that can be made in a file."""
    starts = [0]
    for line in source.splitlines(keepends=True):
        starts.append(starts[-1] + len(line))
    lines = source.splitlines(keepends=True)

    def place(line: int, byte: int) -> int:
        return starts[line - 1] + len(lines[line - 1].encode("utf-8")[:byte].decode("utf-8"))

    def swapped(left: ast.expr, operator: ast.AST, right: ast.expr) -> Mutant | None:
        start, end = place(left.end_lineno or 0, left.end_col_offset or 0), place(right.lineno, right.col_offset)
        between = source[start:end]
        was = between.strip(" ()\n")
        if type(operator) not in SWAPS or "\n" in between or "#" in between or not was:
            return None
        at = start + between.index(was)
        return Mutant(str(path), left.lineno, at, at + len(was), was, SWAPS[type(operator)])

    for node in ast.walk(ast.parse(source)):
        found: list[Mutant | None] = []
        if isinstance(node, ast.Compare):
            found = [swapped(left, operator, right) for left, operator, right
                     in zip([node.left, *node.comparators], node.ops, node.comparators, strict=False)]  # fmt: skip
        elif isinstance(node, ast.BinOp):
            found = [swapped(node.left, node.op, node.right)]
        elif isinstance(node, ast.BoolOp):
            found = [swapped(node.values[0], node.op, node.values[1])]
        elif isinstance(node, ast.Constant) and type(node.value) in (int, float):
            start, end = place(node.lineno, node.col_offset), place(node.end_lineno or 0, node.end_col_offset or 0)
            becomes = repr(node.value * 1.5) if isinstance(node.value, float) and node.value else repr(node.value + 1)
            found = [Mutant(str(path), node.lineno, start, end, source[start:end], becomes)]
        yield from (one for one in found if one is not None)


def drawn(tree: Path, count: int, seed: int) -> list[Mutant]:
    """Draw mutants over all rooms in turn, so that a small room gets as many as a large one."""
    chance = np.random.default_rng(seed)
    by_room: dict[str, list[Mutant]] = {}
    for path in sorted((tree / "trainer").glob("*/**/*.py")):
        inside = path.relative_to(tree)
        if inside.parts[1] != "words" or inside.name == "__init__.py":  # the sentences themselves hold no logic
            by_room.setdefault(inside.parts[1], []).extend(mutants_of(inside, path.read_text("utf-8")))
    rooms = [name for name, found in sorted(by_room.items()) if found]
    chosen = []
    for number in range(count):
        room = by_room[rooms[number % len(rooms)]]
        chosen.append(room.pop(int(chance.integers(len(room)))))
    return chosen


def killed(mutant: Mutant, tree: Path) -> bool:
    """Tell whether the tests of the mutant's room fail with it in a copy of the tree, which is mended afterwards."""
    path = tree / mutant.path
    source = path.read_text("utf-8")
    path.write_text(mutant.applied(source), "utf-8")
    wanted = [name for name in OWN_TESTS.get(mutant.room, (f"tests/{mutant.room}",)) if (tree / name).exists()]
    try:
        return outcome(tree, wanted, ["-m", "not long"]) != 0
    except subprocess.TimeoutExpired:
        return True
    finally:
        path.write_text(source, "utf-8")


def outcome(tree: Path, tests: Sequence[str], options: Sequence[str] = ()) -> int:
    """Run tests in a copy of the tree and return what pytest exits with: 0 passed, 1 a test failed, 2 one cannot be read.

    Raises RuntimeError where no test ran, and TimeoutExpired.
    """
    fixed = ["-q", "-x", "-p", "no:cacheprovider", "-o", "addopts="]
    call = [sys.executable, "-m", "pytest", *fixed, *options, *tests]
    done = subprocess.run(
        call,
        cwd=tree,
        env={**os.environ, "PYTHONPATH": str(tree)},
        capture_output=True,
        timeout=TEST_LIMIT_S,
        check=False,
    )
    if done.returncode not in (0, 1, 2):  # the rest proves nothing
        raise RuntimeError(f"{' '.join(call)} ended with {done.returncode}: {done.stderr.decode()}")
    return done.returncode


def copied_to(tree: Path, tests: Path = REPOSITORY / "tests") -> None:
    """Copy the checkout, with its own tests or those of another one."""
    left_out = (".git", ".venv*", ".test-cache", "tests", "__pycache__")
    shutil.copytree(REPOSITORY, tree, ignore=shutil.ignore_patterns(*left_out))
    shutil.copytree(tests, tree / "tests", ignore=shutil.ignore_patterns("__pycache__"))


def main() -> None:
    """Print each mutant with its fate, then the count."""
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--count", type=int, default=30)
    options.add_argument("--seed", type=int, default=13)
    options.add_argument("--tests", type=Path, default=REPOSITORY / "tests")
    options.add_argument("--at", action="append", metavar="PATH:LINE")
    given = options.parse_args()
    with tempfile.TemporaryDirectory(prefix="mutants-") as name:
        tree = Path(name) / "checkout"
        copied_to(tree, given.tests)
        fates = []
        for mutant in drawn(tree, given.count, given.seed):
            if given.at and f"{mutant.path}:{mutant.line}" not in given.at:
                continue
            begun = time.monotonic()
            fates.append(killed(mutant, tree))
            print(f"{'killed' if fates[-1] else 'alive '} {time.monotonic() - begun:6.1f} s  {mutant}", flush=True)
        print(f"{sum(fates)} of {len(fates)} killed")


if __name__ == "__main__":
    main()
