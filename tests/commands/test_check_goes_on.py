"""check reads every file of a folder, whatever is in one of them."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from trainer.cases.files import plain_file
from trainer.cases.single_case.shipped import scenarios_folder
from trainer.circuit.profile import Profile
from trainer.commands.case_commands import check_files
from trainer.commands.entry import main
from trainer.errors import WrongCallError

PROFILE = (scenarios_folder() / "profiles" / "north_v8.yaml").read_text("utf-8")
CASE = (scenarios_folder() / "cases" / "faint_hum_on_three.yaml").read_text("utf-8")
SEXAGESIMAL = CASE.replace("seed: ", "seed: " + "1:" * 50_000)


def checked(*paths: Path) -> Result:
    return CliRunner().invoke(main, ["check", "--json", *map(str, paths)])


def told(result: Result) -> dict[str, list[str]]:
    """Return what was found wrong, by file."""
    by_file: dict[str, list[str]] = {}
    for problem in json.loads(result.stdout)["problems"]:
        by_file.setdefault(Path(problem["file"]).name, []).append(problem["found"])
    return by_file


def test_a_huge_number_of_another_yaml_is_told_and_the_other_files_are_checked(tmp_path: Path) -> None:
    (tmp_path / "a_clock.yaml").write_text(SEXAGESIMAL, "utf-8")
    (tmp_path / "b_slip.yaml").write_text(PROFILE.replace("mass_kg: 0.015", "mass_kg: -1"), "utf-8")
    (tmp_path / "c_good.yaml").write_text(PROFILE, "utf-8")
    (tmp_path / "d_folder.yaml").mkdir()
    result = checked(tmp_path)
    assert result.exit_code == 1
    assert told(result).keys() == {"a_clock.yaml", "b_slip.yaml"}
    assert "3 files read" in result.stderr
    assert len(result.stderr) < 2000


def test_a_fault_of_the_program_in_one_file_is_shown_with_its_trace(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    read = check_files.profile_from

    def faulty(content: str, file: str) -> Profile:
        if file == "b.yaml":
            raise ZeroDivisionError("made for this test")
        return read(content, file)

    monkeypatch.setattr(check_files, "profile_from", faulty)
    for name in ("a", "b", "c"):
        (tmp_path / f"{name}.yaml").write_text(PROFILE if name == "b" else "form: profile/2", "utf-8")
    result = checked(tmp_path)
    assert result.exit_code == 1
    assert told(result).keys() == {"a.yaml", "b.yaml", "c.yaml"}
    assert told(result)["b.yaml"] == ["too much for this program: it stopped with a ZeroDivisionError"]
    assert result.stderr.startswith("Traceback")
    assert "ZeroDivisionError: made for this test" in result.stderr


def test_an_error_with_its_own_sentence_is_told_for_its_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(content: str, file: str) -> Profile:
        raise WrongCallError("no_profile", name="x", profiles="y")

    monkeypatch.setattr(check_files, "profile_from", refused)
    (tmp_path / "a.yaml").write_text(PROFILE, "utf-8")
    result = checked(tmp_path)
    assert told(result) == {"a.yaml": ["There is no engine profile called 'x'"]}
    assert "Traceback" not in result.stderr


def test_a_folder_too_big_to_look_through_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(plain_file, "MOST_IN_FOLDER", 3)
    for number in range(4):
        (tmp_path / f"{number}.yaml").write_text(PROFILE, "utf-8")
    result = checked(tmp_path)
    assert told(result) == {tmp_path.name: ["too many files"]}
    assert result.exit_code == 1


@pytest.mark.parametrize("named", ["nothing_here.yaml", "x" * 5000, "", "sub/\n.yaml"])
def test_a_name_that_leads_nowhere_is_told(named: str, tmp_path: Path) -> None:
    (tmp_path / "good.yaml").write_text(PROFILE, "utf-8")
    result = checked(tmp_path / "empty" if not named else tmp_path / named, tmp_path / "good.yaml")
    assert result.exit_code == 1
    assert len(json.loads(result.stdout)["problems"]) == 1
