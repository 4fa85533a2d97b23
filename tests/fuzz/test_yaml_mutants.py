"""A hundred mutants in the suite; .ci/long tries thousands, with their engines solved."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.fuzz.yaml_mutants import Figures, mutant, told_wrong, tried
from trainer.commands.case_commands import check_files
from trainer.errors import Problem

COUNT = 100


def test_a_mutant_is_read_or_told_within_counted_work(tmp_path: Path) -> None:
    figures = Figures()
    for number in range(COUNT):
        tried(mutant(number), tmp_path, figures, trial=False)
    assert not figures.failures, "\n".join(figures.failures)
    assert figures.refused > COUNT // 2
    assert figures.valid


def test_a_mutant_is_the_same_for_the_same_number() -> None:
    assert [mutant(number) for number in range(20)] == [mutant(number) for number in range(20)]
    assert len({mutant(number).content for number in range(20)}) == 20


def test_a_fault_of_the_program_is_noticed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def faulty(*_rest: object) -> None:
        raise ZeroDivisionError("made for this test")

    monkeypatch.setattr(check_files, "YamlText", faulty)
    figures = Figures()
    tried(mutant(0), tmp_path, figures, trial=False)
    assert "mutant 0" in figures.failures[0]
    assert "ZeroDivisionError: made for this test" in figures.failures[0]


@pytest.mark.parametrize(
    ("problem", "wrong"),
    [
        (Problem("a.yaml", 3, "seed", "x", "y", "z"), None),
        (Problem("a.yaml", 3, "seed", "", "y", "z"), "a problem with an empty part"),
        (Problem("a.yaml", 30, "seed", "x", "y", "z"), "a line 30 of 20"),
        (Problem("a.yaml", None, "seed", "x" * 2000, "y", "z"), "a part of 2000 characters"),
    ],
)
def test_how_a_problem_is_told_is_looked_at(problem: Problem, wrong: str | None) -> None:
    assert told_wrong(problem, 20) == wrong
