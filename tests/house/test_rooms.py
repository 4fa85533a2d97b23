"""The house plan: a room imports only from rooms below."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[2] / "trainer"
FLOOR = {
    "words": 0, "errors": 0, "circuit": 1, "sound": 2, "instruments": 2, "reasoning": 3, "cases": 4, "practice": 5,
    "records": 6, "output": 6, "desk": 7, "window": 8, "terminal": 8, "commands": 9, "__main__": 10, "__init__": 0,
}  # fmt: skip
DRAWN_TOGETHER = {("words", "errors")}
"""Words tell errors: both are on the ground, and errors import nothing."""

FILES = sorted(PACKAGE.rglob("*.py"))


def room_of(path: Path) -> str:
    parts = path.relative_to(PACKAGE).with_suffix("").parts
    return parts[0]


def rooms_imported(tree: ast.AST) -> Iterator[str]:
    for node in ast.walk(tree):
        names = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module:
            names = [node.module] if node.module != "trainer" else []
        for name in names:
            if name.startswith("trainer."):
                yield name.split(".")[1]


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_a_room_imports_only_from_lower_floors(path: Path) -> None:
    here = room_of(path)
    tree = ast.parse(path.read_text("utf-8"))
    above = {
        room for room in rooms_imported(tree)
        if room != here and FLOOR[room] >= FLOOR[here] and (here, room) not in DRAWN_TOGETHER
    }  # fmt: skip
    assert not above, f"{here} (floor {FLOOR[here]}) may not import {sorted(above)}"


GROUND = ("circuit", "sound", "instruments", "reasoning")


@pytest.mark.parametrize("path", [p for p in FILES if room_of(p) in GROUND], ids=lambda p: str(p.relative_to(PACKAGE)))
def test_the_lower_floors_know_no_files_clock_device_or_global_chance(path: Path) -> None:
    imported = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            imported |= {alias.name.split(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            imported.add(node.module.split(".")[0])
    assert not imported & {"os", "pathlib", "time", "datetime", "random", "sounddevice", "pygame", "sqlalchemy", "yaml"}


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_only_the_code_that_edits_elements_asks_for_a_kind_of_fault(path: Path) -> None:
    allowed = {"circuit/faults.py", "circuit/fault_space.py", "cases/drawing.py"}
    if str(path.relative_to(PACKAGE)) in allowed:
        return
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id == "FaultKind":
            raise AssertionError(f"{path} names {ast.unparse(node)}")


def test_files_stay_small_enough_to_hold_in_the_head() -> None:
    long = {str(p.relative_to(PACKAGE)): n for p in FILES if (n := len(p.read_text("utf-8").splitlines())) > 350}
    assert not long
