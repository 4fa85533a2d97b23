"""The house plan: a room imports only from rooms below."""

from __future__ import annotations

import ast
import sys
from collections.abc import Sequence
from functools import cache
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import pytest

from tests.house.floors import FLOOR, KNOWS_ONLY, LIBRARIES, PACKAGE, SUB_ROOMS

DRAWN_TOGETHER = {("words", "errors")}
"""Words tell errors: both are on the ground, and errors import nothing."""

FILES = sorted(PACKAGE.rglob("*.py"))


@cache
def trees() -> dict[str, ast.Module]:
    return {str(path.relative_to(PACKAGE)): ast.parse(path.read_text("utf-8")) for path in FILES}


def room_of(file: str) -> str:
    return Path(file).with_suffix("").parts[0]


@cache
def ours() -> frozenset[str]:
    """Return the names of all files and folders of the package, as they are imported."""
    paths = [path.relative_to(PACKAGE.parent).with_suffix("") for path in FILES]
    return frozenset(".".join(part) for path in paths for part in (path.parts, path.parent.parts))


def imported(tree: ast.AST) -> set[str]:
    """Return our files and folders that a file imports, in whatever form: functions and type checking count."""
    found = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module, *(f"{node.module}.{alias.name}" for alias in node.names)}
    return found & ours() - {"trainer"}


def test_a_room_imports_only_from_lower_floors() -> None:
    upward = {
        file: above
        for file, tree in trees().items()
        if (above := {
            room for room in {name.split(".")[1] for name in imported(tree)}
            if room != (here := room_of(file)) and FLOOR[room] >= FLOOR[here] and (here, room) not in DRAWN_TOGETHER
        })
    }  # fmt: skip
    assert upward == {}


def test_a_room_imports_only_the_libraries_that_the_plan_gives_it() -> None:
    reaching = {}
    for file, tree in trees().items():
        outside = modules_imported(tree) - sys.stdlib_module_names - {"trainer"}
        if over := outside - libraries_of(file):
            reaching[file] = over
    assert reaching == {}


def libraries_of(file: str) -> set[str]:
    """Return what the plan gives the innermost folder of a file that it names."""
    folders = [file.removesuffix(".py"), *map(str, Path(file).parents)]
    return next(LIBRARIES[folder] for folder in folders if folder in LIBRARIES)


def test_a_sub_room_imports_only_from_those_below_it() -> None:
    upward = {}
    for file, tree in trees().items():
        room, *inner = Path(file).with_suffix("").parts
        if room not in SUB_ROOMS:
            continue
        order = (*SUB_ROOMS[room], "")
        here = inner[0] if len(inner) > 1 else ""
        above = {
            name for name in imported(tree)
            if name.startswith(f"trainer.{room}.") and order.index(sub_room_in(name, order)) > order.index(here)
        }  # fmt: skip
        if above:
            upward[file] = above
    assert upward == {}


@pytest.mark.parametrize("folder", KNOWS_ONLY)
def test_a_general_folder_knows_nothing_of_injectors(folder: str) -> None:
    known = tuple(f"trainer.{name.replace('/', '.')}." for name in KNOWS_ONLY[folder])
    reaching = {
        file: over for file, tree in trees().items() if file.startswith(f"{folder}/")
        and (over := {name for name in imported(tree) if not f"{name}.".startswith(known)})
    }  # fmt: skip
    assert reaching == {}


def sub_room_in(module: str, order: Sequence[str]) -> str:
    """Return the sub-room that a module lies in, "" for one that lies beside them."""
    name = module.split(".")[2]
    return name if name in order else ""


def test_no_files_import_one_another_in_a_circle() -> None:
    """Imports inside functions and for type checking count."""
    files = {".".join(("trainer", *Path(file).with_suffix("").parts)): tree for file, tree in trees().items()}
    try:
        TopologicalSorter({name: imported(tree) & files.keys() - {name} for name, tree in files.items()}).prepare()
    except CycleError as error:
        pytest.fail(f"in a circle: {' → '.join(error.args[1])}")


GROUND = ("circuit", "sound", "instruments", "reasoning")
OUTSIDE = {"os", "pathlib", "time", "datetime", "random", "sounddevice", "pygame", "sqlalchemy", "yaml"}


KERNEL = ("circuit/build_kernel.py", "circuit/compiled_step.py")
"""What compiles and loads the kernel: a part of the program beside its source, as an extension module would be."""


def test_the_lower_floors_know_no_files_clock_device_or_global_chance() -> None:
    reaching = {
        file: found
        for file, tree in trees().items()
        if room_of(file) in GROUND and file not in KERNEL and (found := modules_imported(tree) & OUTSIDE)
    }  # fmt: skip
    assert reaching == {}


def modules_imported(tree: ast.AST) -> set[str]:
    imported = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            imported |= {alias.name.split(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            imported.add(node.module.split(".")[0])
    return imported


def test_only_the_code_that_edits_elements_asks_for_a_kind_of_fault() -> None:
    allowed = {"circuit/faults.py", "circuit/fault_space.py", "cases/drawing/random_case.py"}
    asking = {
        f"{file}:{node.lineno}: {ast.unparse(node)}"
        for file, tree in trees().items()
        if file not in allowed
        for node in ast.walk(tree)
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id == "FaultKind"
    }  # fmt: skip
    assert asking == set()


def test_files_stay_small_enough_to_hold_in_the_head() -> None:
    long = {str(p.relative_to(PACKAGE)): n for p in FILES if (n := len(p.read_text("utf-8").splitlines())) > 350}
    assert not long
