"""The command that says for whom cases are fair: its table, its document, and what it says of names that lead nowhere."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from tests.exam_sets import SMALL
from tests.loud_bays import bed_that_hides_it_from, by_listener, with_fan
from trainer.cases.single_case.shipped import case_named, case_names, scenarios_folder
from trainer.cases.solved.fairness import Fairness, SlotForListener, Told
from trainer.commands.case_commands.named_cases import cases_named
from trainer.commands.case_commands.show_fairness import cell_of
from trainer.commands.entry import main
from trainer.sound.listeners import LISTENERS

HUM, PASSES = "faint_hum_on_three", "misfire_without_a_circuit"
ENGINE = (scenarios_folder() / "profiles" / "north_v8.yaml").read_text("utf-8")
CASE = (scenarios_folder() / "cases" / f"{HUM}.yaml").read_text("utf-8")
BED = next(line for line in CASE.splitlines() if line.startswith("bed:"))


def run(*words: str) -> Result:
    return CliRunner().invoke(main, ["fair", *words])


@pytest.fixture(scope="module")
def loud(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A case file with a fan that hides the hum from a phone and not from good headphones."""
    level_dba = bed_that_hides_it_from(case_named(HUM), "phone")
    path = tmp_path_factory.mktemp("loud") / "loud.yaml"
    bay = f"bed: {{kind: ventilation, level_dba: {level_dba}}}"
    path.write_text(CASE.replace(BED, bay).replace(f"name: {HUM}", "name: loud"), "utf-8")
    return path


def test_the_table_has_a_row_for_a_case_a_column_for_a_listener_and_a_sum_for_each(loud: Path) -> None:
    result = run(HUM, str(loud), PASSES)
    assert result.exit_code == 0
    head, *rows = result.stdout.splitlines()[:4]
    assert head.split("  ")[0] == "Case"
    starts = [head.index(name) for name in ("Good headphones", "Phone speaker", "Age 60, laptop speaker")]
    assert [row.split()[0] for row in rows] == [HUM, "loud", PASSES]
    cells = [[row[start:].split("  ")[0] for start in starts[:2]] for row in rows]
    assert cells == [["fair", "fair"], ["fair", "slot 3 is lost"], ["fair", "fair"]]
    assert "good headphones: 3 of 3 cases are fair" in result.stdout
    assert "phone speaker: 2 of 3 cases are fair" in result.stdout
    assert len([line for line in result.stdout.splitlines() if "cases are fair" in line]) == len(LISTENERS)
    assert result.stdout.endswith("ears of an age. It is not a test of anybody's hearing.\n")
    assert "Listening to case 3 of 3." in result.stderr


@pytest.mark.parametrize(("lost", "alike", "says"), [
    ((), (), "fair"), ((2,), (), "slot 2 is lost"), ((1, 2), (), "slots 1 and 2 are lost"),
    ((1, 2, 3), (), "every slot is lost"), ((), (3,), "slot 3 sounds good"), ((), (1, 3), "slots 1 and 3 sound good"),
    ((), (1, 2, 3), "every slot sounds good"), ((2,), (3,), "slot 2 is lost, slot 3 sounds good"),
])  # fmt: skip
def test_a_cell_names_the_slots_in_words(lost: tuple[int, ...], alike: tuple[int, ...], says: str) -> None:
    told = {
        **dict.fromkeys((1, 2, 3), Told.APART),
        **dict.fromkeys(lost, Told.LOST),
        **dict.fromkeys(alike, Told.ALIKE),
    }
    slots = tuple(SlotForListener(slot, one, 30.0, 60.0) for slot, one in told.items())
    assert cell_of(Fairness("phone", slots), (1, 2, 3)) == says


def test_the_document_says_the_same_with_levels(loud: Path) -> None:
    document = json.loads(run("--json", str(loud)).stdout)
    assert document.keys() == {"cases", "listeners", "note"}
    (row,) = document["cases"]
    assert row.keys() == {"case", "profile", "bed_dba", "listeners"}
    assert (row["case"], row["profile"]) == ("loud", "north_v8")
    expected = by_listener(with_fan(case_named(HUM), row["bed_dba"]))
    for one in row["listeners"]:
        assert one.keys() == {"listener", "fair", "slots"}
        assert one["fair"] is expected[one["listener"]].fair
        (slot,) = one["slots"]
        assert slot.keys() == {"slot", "told", "level_dba", "good_dba"}
        assert slot["level_dba"] == expected[one["listener"]].slots[0].level_dba
    sums = {one["listener"]: (one["fair"], one["cases"]) for one in document["listeners"]}
    assert sums.keys() == LISTENERS.keys()
    assert (sums["good_headphones"], sums["phone"]) == ((1, 1), (0, 1))
    assert "not a test of anybody's hearing" in document["note"]


def test_a_folder_gives_its_cases_and_those_of_its_sets(tmp_path: Path) -> None:
    (tmp_path / "a_case.yaml").write_text(CASE, "utf-8")
    (tmp_path / "b_engine.yaml").write_text(ENGINE, "utf-8")
    (tmp_path / "c_set.yaml").write_text(SMALL, "utf-8")
    found = cases_named([tmp_path, Path(PASSES), Path(str(case_named(HUM).number))])
    assert [case.name for case in found] == [HUM, "first_week_1", "first_week_2", "first_week_3", PASSES, HUM]
    assert found[1].faults == found[0].faults


def test_nothing_named_is_every_shipped_case() -> None:
    assert [case.name for case in cases_named([])] == list(case_names())


@pytest.mark.parametrize(
    ("named", "content", "told"),
    [
        ("nowhere.yaml", None, "the file is missing"),
        ("faint_hum_on_thre", None, "did you mean faint_hum_on_three"),
        ("engine.yaml", ENGINE, "the file is an engine profile. Allowed: a case, a set, or a folder with them"),
        ("other.yaml", "form: case/9\n", "form is 'case/9'. Allowed: case/1, set/1"),
        ("half.yaml", "form: case/1\nname: x\n", "story"),
    ],
)
def test_a_name_that_gives_no_case_is_told_in_a_sentence(
    named: str, content: str | None, told: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    if content is not None:
        Path(named).write_text(content, "utf-8")
    result = run(named)
    assert (result.exit_code, result.stdout) == (1, "")
    assert told in result.stderr
    assert "To fix it: " in result.stderr
    assert "Traceback" not in result.output


def test_a_folder_without_a_case_is_told_and_every_bad_name_is(tmp_path: Path) -> None:
    (tmp_path / "engine.yaml").write_text(ENGINE, "utf-8")
    result = run("--json", str(tmp_path), "nothing_like_it", PASSES)
    assert result.exit_code == 1
    problems = json.loads(result.stdout)["problems"]
    assert [(one["field"], one["found"]) for one in problems] == [
        ("the folder", "without a case or a set"),
        ("the case", "unknown"),
    ]
