"""Solves again what is shipped solved: the universes of shipped cases and engines, and the practice pools.

It takes some minutes. Run: python -m tests.unchanged.universes
"""

from __future__ import annotations

import os
from collections.abc import Iterator

from tests.solved_cache import MADE_BY, solving_code
from trainer.cases.drawing.practice_case import TEMPERATURE_C
from trainer.cases.drawing.practice_pool import pool_file_name, pool_of
from trainer.cases.files.array_file import write_arrays
from trainer.cases.single_case.shipped import (
    SOLVED,
    SOLVED_FOLDER,
    case_named,
    case_names,
    profile_named,
    profile_names,
)
from trainer.cases.solved.universe_cache import file_name, solve_universe
from trainer.cases.solved.universe_file import arrays_of
from trainer.circuit.profile import Profile
from trainer.reasoning.case_facts import Universe, universe_of

MAKE = "python -m tests.unchanged.universes"


def profiles() -> list[Profile]:
    """Return the shipped engines."""
    return [profile_named(name) for name in profile_names()]


def universes() -> Iterator[Universe]:
    """Yield the universes that shipped cases and practice need, unsolved."""
    cases = [case_named(name) for name in case_names()]
    needed = {(case.profile.digest, case.temperature_c): case.profile for case in cases}
    needed |= {(profile.digest, TEMPERATURE_C): profile for profile in profiles()}
    for (_digest, temperature_c), profile in sorted(needed.items(), key=lambda one: (one[1].name, one[0][1])):
        yield universe_of(profile, temperature_c)


def file_names() -> set[str]:
    """Return the names of all files that are shipped."""
    return {*map(file_name, universes()), *map(pool_file_name, profiles())}


def main() -> None:
    """Solve everything, and remove the files of earlier models."""
    os.environ[SOLVED] = "none"  # what is there is not taken for solved
    for universe in universes():
        solve_universe(universe, None)
        path = SOLVED_FOLDER / file_name(universe)
        write_arrays(path, arrays_of(universe))
        print(f"{universe.profile.name}, {universe.temperature_c:g} °C: {path.stat().st_size / 1e6:.2f} MB", flush=True)
    for profile in profiles():
        (SOLVED_FOLDER / pool_file_name(profile)).unlink(missing_ok=True)
        pool_of(profile, SOLVED_FOLDER)
    current = file_names()
    for path in SOLVED_FOLDER.iterdir():
        if path.name not in current:
            path.unlink()
    MADE_BY.write_text(solving_code() + "\n", "utf-8")
    print(f"{sum(path.stat().st_size for path in SOLVED_FOLDER.iterdir()) / 1e6:.1f} MB in all")


if __name__ == "__main__":
    main()
