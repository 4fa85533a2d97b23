"""Damaged records, files and settings end in a sentence or are read: the fuzzers' short runs; `.ci/long` has the long ones."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.fuzz import store_mutants
from tests.fuzz.figures import Figures

RUNS = [(store_mutants.run, 12)]


@pytest.mark.parametrize(("run", "count"), RUNS, ids=[run.__module__.rpartition(".")[2] for run, _count in RUNS])
def test_no_mutant_ends_in_a_traceback_or_loses_what_is_whole(
    tmp_path: Path, run: Callable[[int, int, Path], Figures], count: int
) -> None:
    figures = run(7, count, tmp_path)
    assert figures.refused + figures.read == count
