"""The universe on disk: the same numbers again; damage, other programs and full disks lose nothing."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

import trainer.cases.solved.universe_cache as cache
from tests.engines import RIDGE
from tests.universes import assert_alike, solved_universe
from trainer.cases.drawing.practice_pool import POOL_PREFIX
from trainer.cases.files.array_file import read_arrays, write_arrays
from trainer.cases.solved.universe_cache import file_name, solve_universe
from trainer.cases.solved.universe_file import arrays_of
from trainer.commands.call.this_machine import universe_folder
from trainer.reasoning.case_facts import Universe, universe_of
from trainer.reasoning.universe.questions import states_in


def small_universe() -> Universe:
    """Return a universe with every fifth test of its menu: enough to be stopped on the way, and solved in a second."""
    whole = universe_of(RIDGE, 20.0)
    return replace(whole, menu=whole.menu[::5])


def solved_in(folder: Path | None) -> Universe:
    universe = small_universe()
    solve_universe(universe, folder)
    return universe


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Universe]:
    """A folder and a universe that was solved into it, stopped on the way and gone on with."""
    folder = tmp_path_factory.mktemp("universes")
    universe = small_universe()
    shares = []

    def stop_early(share: float) -> None:
        shares.append(share)
        if len(shares) == 3:
            raise InterruptedError

    with pytest.raises(InterruptedError):
        solve_universe(universe, folder, stop_early)
    assert shares == sorted(shares)
    assert universe.expectations.equivalents.solved
    assert not list(folder.iterdir())
    solve_universe(universe, folder)
    return folder, universe


def test_what_is_read_back_is_what_was_solved(kept) -> None:
    folder, first = kept
    again = solved_in(folder)
    assert again.expectations.kept.keys() == first.expectations.kept.keys()
    for question, values in first.expectations.kept.items():
        assert np.array_equal(again.expectations.kept[question], values)
    assert again.expectations.equivalents.solved.keys() == first.expectations.equivalents.solved.keys()
    for key, slot in first.expectations.equivalents.solved.items():
        other = again.expectations.equivalents.solved[key]
        assert np.array_equal(other.sound, slot.sound)
        assert np.array_equal(other.return_end_a, slot.return_end_a)
        assert (other.trace, other.rail_low_v) == (slot.trace, slot.rail_low_v)
        assert (other.seen.slot, other.seen.tripped) == (slot.seen.slot, slot.seen.tripped)


def test_a_question_that_is_off_the_menu_is_answered_alike_by_what_was_solved_and_what_was_read(kept) -> None:
    folder, first = kept
    again = solved_in(folder)
    work = states_in(first.menu)[0].work
    pairs = zip(first.expectations.tests(work), again.expectations.tests(work), strict=True)
    assert all(
        np.array_equal(one.sound, other.sound)
        for those, these in pairs
        for one, other in zip(those, these, strict=True)
    )


def test_floats_are_stored_with_32_bits_and_everything_else_as_it_is(tmp_path: Path) -> None:
    arrays = {
        "floats": np.array([[np.pi, -0.0], [1e-9, np.inf]]),
        "flags": np.array([True, False]),
        "counts": np.arange(300),
    }
    write_arrays(tmp_path / "x.npz", arrays)
    read = read_arrays(tmp_path / "x.npz")
    assert read.keys() == arrays.keys()
    assert read["floats"].dtype == np.float64
    assert np.array_equal(read["floats"], arrays["floats"].astype(np.float32).astype(np.float64))
    assert np.signbit(read["floats"][0, 1])
    assert np.array_equal(read["flags"], arrays["flags"])
    assert np.array_equal(read["counts"], arrays["counts"])


def count_questions(monkeypatch: pytest.MonkeyPatch, solved: Universe, counts: list[object]) -> None:
    """Count questions in the place of solving them; what is then kept is that of another universe."""
    monkeypatch.setattr(
        type(solved.expectations), "of", lambda self, questions, bed: counts.append(len(list(questions)))
    )
    monkeypatch.setattr(cache, "arrays_of", lambda universe: arrays_of(solved))


def test_a_shipped_universe_is_neither_solved_nor_cached(kept, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder, first = kept
    monkeypatch.setattr(cache, "solved_folder", lambda: folder)
    counts: list[object] = []
    count_questions(monkeypatch, first, counts)
    for own in (tmp_path, None):
        universe = solved_in(own)
        assert universe.expectations.kept.keys() == first.expectations.kept.keys()
    assert counts == []
    assert list(tmp_path.iterdir()) == []


def test_a_damaged_shipped_file_is_ignored(kept, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder, first = kept
    shipped, own = tmp_path / "shipped", tmp_path / "own"
    shipped.mkdir()
    (whole,) = folder.glob("*.npz")
    damaged = whole.read_bytes()[:-1000]
    (shipped / whole.name).write_bytes(damaged)
    monkeypatch.setattr(cache, "solved_folder", lambda: shipped)
    counts: list[object] = []
    count_questions(monkeypatch, first, counts)
    solved_in(own)
    assert sum(counts) == len(states_in(first.menu))  # type: ignore[arg-type]
    assert (own / whole.name).is_file()
    assert (shipped / whole.name).read_bytes() == damaged


@pytest.mark.parametrize("harm", ["cut short", "a byte changed", "emptied", "another thing altogether"])
def test_a_damaged_file_is_solved_anew_and_is_right(
    kept, harm: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder, first = kept
    (whole,) = folder.glob("*.npz")
    data = bytearray(whole.read_bytes())
    if harm == "cut short":
        data = data[: len(data) // 2]
    elif harm == "a byte changed":
        data[len(data) // 3] ^= 0xFF
    elif harm == "emptied":
        data = bytearray()
    else:
        data = bytearray(b"form: case/1\n")
    (tmp_path / whole.name).write_bytes(data)
    solved = []
    monkeypatch.setattr(cache, "_save", lambda arrays, path: solved.append(path))
    count_questions(monkeypatch, first, solved)
    universe = solved_in(tmp_path)
    asked = len(states_in(universe.menu))
    # it was not believed: every question was asked, and the file written again
    assert sum(solved[:-1]) == asked
    assert solved[-1] == tmp_path / whole.name


def test_work_that_was_stopped_goes_on_from_where_it_was(kept) -> None:
    _folder, universe = kept
    at_one_go = solved_universe(RIDGE, 20.0, universe_folder())
    assert universe.expectations.equivalents.solved.keys() <= at_one_go.expectations.equivalents.solved.keys()
    assert_alike(universe, at_one_go)


def test_another_program_or_profile_has_another_file(kept, monkeypatch: pytest.MonkeyPatch) -> None:
    folder, first = kept
    name = file_name(first)
    assert (folder / name).is_file()
    assert file_name(universe_of(RIDGE, 20.0)) != name  # another menu
    monkeypatch.setattr(cache, "MODEL_VERSION", "another")
    assert file_name(first) != name


def test_a_folder_that_cannot_be_written_keeps_nothing_and_says_nothing(kept, tmp_path: Path) -> None:
    _folder, first = kept
    blocked = tmp_path / "file"
    blocked.write_text("not a folder")
    cache._save(arrays_of(first), blocked / "x.npz")
    assert blocked.read_text() == "not a folder"
    assert not list(tmp_path.glob("*.part"))


def test_only_the_universes_used_last_stay_on_disk(kept, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    _folder, first = kept
    monkeypatch.setattr(cache, "MOST_FILES", 2)
    for age, name in enumerate(("old", "older", "oldest"), start=1):
        (tmp_path / f"{name}.npz").write_bytes(b"")
        os.utime(tmp_path / f"{name}.npz", (1e9 - age, 1e9 - age))
    cache._save(arrays_of(first), tmp_path / "new.npz")
    assert {path.stem for path in tmp_path.iterdir()} == {"new", "old"}


def test_pools_of_practice_are_not_thrown_away_by_newer_universes(tmp_path: Path) -> None:
    pools = [tmp_path / f"{POOL_PREFIX}{number}.npz" for number in range(4)]
    universes = [tmp_path / f"{number}.npz" for number in range(cache.MOST_FILES + 3)]
    for second, path in enumerate([*pools, *universes]):
        path.write_bytes(b"")
        os.utime(path, (second, second))
    cache._delete_oldest(tmp_path)
    assert all(path.exists() for path in pools)
    assert [path for path in universes if path.exists()] == universes[3:]
