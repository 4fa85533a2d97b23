"""A learner's record moves as a file: whole, once, theirs; a bad file changes nothing."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

import numpy as np
import pytest

from tests.desk_hands import clock
from tests.universes import POOLS, UNIVERSES
from trainer.cases.single_case.shipped import profile_named
from trainer.desk.exercise_maker import Exercises
from trainer.desk.learner_course import Course
from trainer.errors import ProblemsFoundError
from trainer.practice.exercises.exercise_types import Spec
from trainer.records.store.learner_record import ImportResult, import_record, record_name, write_record
from trainer.records.store.store import Store, open_store
from trainer.words import problem_line


def practised(store: Store, who: str = "anna", count: int = 4, *, first: int = 0) -> Course:
    course = Course(store, who, clock(), np.random.default_rng(1))
    exercises = Exercises(UNIVERSES)
    for seed in range(first, first + count):
        exercise = exercises.make(Spec("numbering", "north_v8", "order", 1, seed))
        choice = exercise.right if seed % 2 else (exercise.right + 1) % len(exercise.choices)
        course.answer(course.begin(exercise), exercise, choice, 0.95)
    return course


def everything(store: Store) -> list[object]:
    with store.engine.connect() as connection:
        return [
            connection.exec_driver_sql(f"select * from {name} order by 1").fetchall() for name in ("attempt", "event")
        ]


def test_a_record_goes_on_elsewhere_where_it_was_left(tmp_path: Path) -> None:
    here, there = open_store(tmp_path / "here"), open_store(tmp_path / "there")
    course = practised(here)
    path = tmp_path / record_name("anna")
    assert write_record(here, path, "anna", "2026-01-01T00:00:00+00:00") == 4
    assert import_record(there, path, "anna") == ImportResult(new=4, known=0, longer=0)
    moved = Course(there, "anna", clock(), np.random.default_rng(1))
    assert moved.state.entries == course.state.entries
    assert moved.state.waiting == course.state.waiting
    before = everything(there)
    assert import_record(there, path, "anna") == ImportResult(new=0, known=4, longer=0)
    assert everything(there) == before


def test_what_was_done_on_both_machines_is_there_once(tmp_path: Path) -> None:
    here, there = open_store(tmp_path / "here"), open_store(tmp_path / "there")
    practised(here, count=3)
    path = tmp_path / "anna.record"
    write_record(here, path, "anna", "")
    import_record(there, path, "anna")
    practised(there, count=2, first=10)
    write_record(there, path, "anna", "")
    assert import_record(here, path, "anna") == ImportResult(new=2, known=3, longer=0)
    assert len(here.practised("anna")) == len(there.practised("anna")) == 5


def test_the_name_of_a_file_is_plain_on_every_machine() -> None:
    assert record_name("Ána López").startswith("ana_lopez_")
    assert record_name("Анна").startswith("learner_")
    assert record_name("Анна") != record_name("Нина")


def lines_of(path: Path) -> list[str]:
    return path.read_text("ascii").splitlines()


def resealed(path: Path, lines: list[str]) -> None:
    body = ("\n".join(lines[:-1]) + "\n").encode("ascii")
    path.write_bytes(
        body + json.dumps({"sha256": hashlib.sha256(body).hexdigest()}, separators=(",", ":")).encode() + b"\n"
    )


def cut(path: Path) -> None:
    path.write_bytes(path.read_bytes()[:-40])


def flipped(path: Path) -> None:
    content = bytearray(path.read_bytes())
    content[len(content) // 2] ^= 1
    path.write_bytes(bytes(content))


def empty(path: Path) -> None:
    path.write_bytes(b"")


def something_else(path: Path) -> None:
    path.write_text("form: case/1\nname: x\n")


def of_somebody_else(path: Path) -> None:
    lines = lines_of(path)
    resealed(path, [line.replace('"anna"', '"bruno"') for line in lines])


def one_attempt_of_another(path: Path) -> None:
    lines = lines_of(path)
    resealed(path, [lines[0], *(line.replace('"anna"', '"bruno"') for line in lines[1:])])


def with_a_hole(path: Path) -> None:
    lines = lines_of(path)
    resealed(path, [line for row, line in enumerate(lines) if row != 2])


def with_an_unknown_field(path: Path) -> None:
    lines = lines_of(path)
    resealed(path, [line.replace('"case_name"', '"case_nom"') for line in lines])


def with_a_list_for_data(path: Path) -> None:
    lines = lines_of(path)
    resealed(
        path, [lines[0], lines[1], json.dumps({"number": 1, "kind": "started", "at": "x", "data": [1]}), *lines[3:]]
    )


def with_a_number_for_text(path: Path) -> None:
    lines = lines_of(path)
    resealed(path, [line.replace('"seed":0', '"seed":"zero"') for line in lines])


def of_a_set(path: Path) -> None:
    lines = lines_of(path)
    resealed(path, [line.replace('"set_id":""', '"set_id":"abc"') for line in lines])


def with_half_a_letter(path: Path) -> None:
    lines = lines_of(path)
    resealed(path, [line.replace('"why":""', '"why":"\\ud800"') for line in lines])


def with_a_name_beyond_all_names(path: Path) -> None:
    lines = lines_of(path)
    resealed(path, [line.replace('"case_name":"', '"case_name":"' + "n" * 5000) for line in lines])


def with_a_list_for_an_attempt(path: Path) -> None:
    lines = lines_of(path)
    resealed(path, [lines[0], '{"attempt":[1]}', *lines[2:]])


BAD = [with_half_a_letter, with_a_name_beyond_all_names, with_a_list_for_an_attempt,
       cut, flipped, empty, something_else, of_somebody_else, one_attempt_of_another, with_a_hole, with_an_unknown_field,
       with_a_list_for_data, with_a_number_for_text, of_a_set]  # fmt: skip


@pytest.mark.parametrize("spoil", BAD, ids=lambda one: one.__name__)
def test_a_bad_file_is_refused_with_its_reason_and_the_present_record_stays(tmp_path: Path, spoil: object) -> None:
    here, there = open_store(tmp_path / "here"), open_store(tmp_path / "there")
    practised(here)
    practised(there, count=2, first=20)
    path = tmp_path / "anna.record"
    write_record(here, path, "anna", "")
    spoil(path)  # type: ignore[operator]
    before = everything(there)
    with pytest.raises(ProblemsFoundError) as refused:
        import_record(there, path, "anna")
    told = problem_line(refused.value.problems[0])
    assert "anna.record" in told
    assert "nothing was changed here" in told
    assert everything(there) == before


@pytest.mark.parametrize("path", ["nowhere.record", "/dev/full", "no\0path", "x" * 5000, "."])
def test_a_path_that_leads_to_no_file_is_told(path: str) -> None:
    with pytest.raises(ProblemsFoundError):
        import_record(open_store(None), Path(path), "anna")


@pytest.mark.parametrize(("old", "new"), [
    ('"certainty":0.95', '"certainty":1' + "0" * 400), ('"kind":"numbering"', '"kind":"juggling"'),
    ('"topic":"numbering:order"', '"topic":7'), ('"answers":[[', '"answers":[[[['),
])  # fmt: skip
def test_what_another_version_kept_of_a_task_comes_along_unread(tmp_path: Path, old: str, new: str) -> None:
    """One such entry must not hold a whole record back; it comes back whole where that version is."""
    here, there = open_store(tmp_path / "here"), open_store(tmp_path / "there")
    practised(here)
    path = tmp_path / "anna.record"
    write_record(here, path, "anna", "")
    lines = lines_of(path)
    row = next(row for row, line in enumerate(lines) if old in line)
    if new.endswith("[[[["):
        lines[row] = lines[row].replace('"answers":[[', '"answers":[["x",[', 1).replace("]]", "]]]", 1)
    else:
        lines[row] = lines[row].replace(old, new)
    resealed(path, lines)
    assert import_record(there, path, "anna").new == 4
    moved = Course(there, "anna", clock(), np.random.default_rng(1))
    assert len(moved.state.entries) >= 3
    assert moved.next([POOLS(profile_named("north_v8"))]).task.name
    assert there.closings("anna") == []


def test_of_an_attempt_worked_apart_on_both_machines_the_one_here_stays_and_the_rest_is_taken(tmp_path: Path) -> None:
    here, there = open_store(tmp_path / "here"), open_store(tmp_path / "there")
    practised(here, count=1)
    path = tmp_path / "anna.record"
    write_record(here, path, "anna", "")
    import_record(there, path, "anna")
    with here.engine.begin() as connection:
        connection.exec_driver_sql("update event set at = '2030-01-01T00:00:00+00:00' where number = 2")
    write_record(here, path, "anna", "")
    practised(here, count=2, first=30)
    write_record(here, path, "anna", "")
    before = everything(there)
    assert import_record(there, path, "anna") == ImportResult(new=2, known=0, longer=0, apart=1)
    assert all(row in everything(there)[1] for row in before[1])


def test_nothing_is_added_to_somebody_elses_attempt(tmp_path: Path) -> None:
    here, there = open_store(tmp_path / "here"), open_store(tmp_path / "there")
    practised(there, "bruno", 1)
    path = tmp_path / "anna.record"
    write_record(there, path, "bruno", "")
    lines = [line.replace('"bruno"', '"anna"') for line in lines_of(path)]
    resealed(path, lines)
    before = everything(there)
    assert import_record(there, path, "anna").apart == 1
    assert everything(there) == before
    here.close()
