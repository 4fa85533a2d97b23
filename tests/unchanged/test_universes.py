"""What is shipped solved is current, complete and what the program computes."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from tests.solved_cache import MADE_BY, solving_code
from tests.unchanged.universes import MAKE, file_names, profiles, universes
from tests.universes import WITHIN, assert_alike
from trainer.cases.drawing import practice_pool
from trainer.cases.drawing.practice_pool import ARRAYS, pool_of
from trainer.cases.files.array_file import read_arrays
from trainer.cases.single_case.shipped import SOLVED, SOLVED_FOLDER
from trainer.cases.solved.universe_cache import file_name, solve_universe
from trainer.cases.solved.universe_file import fill
from trainer.circuit.profile import Profile
from trainer.reasoning.case_facts import Universe, universe_of


def shipped(profile: Profile, temperature_c: float) -> Universe:
    """Return a universe from its shipped file, used or not; fails where it does not fit."""
    universe = universe_of(profile, temperature_c)
    fill(universe, read_arrays(SOLVED_FOLDER / file_name(universe)))
    return universe


def test_everything_that_shipped_cases_need_is_shipped_and_nothing_else() -> None:
    assert {path.name for path in SOLVED_FOLDER.iterdir()} == file_names(), f"run: {MAKE}"


def test_what_is_shipped_was_solved_by_the_code_as_it_is() -> None:
    assert MADE_BY.read_text("utf-8").strip() == solving_code(), f"run: {MAKE}"


def test_what_is_shipped_is_small() -> None:
    assert sum(path.stat().st_size for path in SOLVED_FOLDER.iterdir()) < 10e6


def test_a_part_of_a_shipped_universe_is_what_is_solved_here(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(SOLVED, "none")
    whole = min(universes(), key=lambda one: len(one.profile.cylinders) * len(one.faults))
    part = replace(whole, menu=whole.menu[2::9])
    solve_universe(part, None)
    try:
        assert_alike(part, shipped(whole.profile, whole.temperature_c))
    except AssertionError as error:
        raise AssertionError(f"raise MODEL_VERSION and run: {MAKE}") from error


@pytest.mark.long
@pytest.mark.parametrize("number", range(len(list(universes()))))
def test_a_shipped_universe_is_what_is_solved_here(number: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(SOLVED, "none")
    universe = list(universes())[number]
    solve_universe(universe, None)
    again = shipped(universe.profile, universe.temperature_c)
    assert universe.expectations.kept.keys() == again.expectations.kept.keys()
    assert_alike(universe, again)


@pytest.mark.long
@pytest.mark.parametrize("profile", profiles(), ids=lambda one: one.name)
def test_a_shipped_pool_is_what_is_solved_here(profile: Profile, monkeypatch: pytest.MonkeyPatch) -> None:
    found = pool_of(profile, SOLVED_FOLDER)
    monkeypatch.setattr(practice_pool, "_load", lambda profile, path: None)
    solved = pool_of(profile, None)
    for name in ARRAYS:
        assert np.allclose(getattr(found, name), getattr(solved, name), rtol=WITHIN, atol=WITHIN), name
