"""Damaged records, files and settings end in a sentence or are read: short runs; `.ci/long` has the long ones."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.fuzz import backup_mutants, bundle_mutants, record_mutants, settings_mutants, store_mutants
from tests.fuzz.figures import Run, SurvivedNotError, counted
from tests.fuzz.world import World, world_in

RUNS = {
    "store": (store_mutants.run, 10),
    "backup": (backup_mutants.run, 40),
    "bundle": (bundle_mutants.run, 40),
    "record": (record_mutants.run, 60),
    "settings": (settings_mutants.run, 80),
}


@pytest.fixture(scope="module")
def world(tmp_path_factory: pytest.TempPathFactory) -> World:
    return world_in(tmp_path_factory.mktemp("fuzz") / "world")


@pytest.mark.parametrize(("run", "count"), RUNS.values(), ids=RUNS)
def test_no_mutant_ends_in_a_traceback_or_loses_what_is_whole(
    world: World, tmp_path: Path, run: Run, count: int
) -> None:
    figures = run(7, count, world, tmp_path)
    assert figures.refused + figures.read == count
    assert figures.refused
    assert figures.read


def test_a_fuzzer_stops_at_the_first_mutant_that_is_not_survived_and_names_it() -> None:
    def raises() -> bool:
        raise KeyError("a traceback")

    with pytest.raises(SurvivedNotError, match="some kind, seed 3, mutant 1: spoilt: KeyError"):
        counted("some kind", 3, [("whole", lambda: True), ("spoilt", raises), ("never used", raises)])
