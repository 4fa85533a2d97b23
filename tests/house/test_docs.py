"""What README and docs tell a person to type works."""

import re
import shlex
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from tests.exam_sets import PASSPHRASE, SMALL, sealed_set, sitting_of, small_set, work_through
from tests.universes import UNIVERSES
from trainer.cases.single_case.case_file import case_from
from trainer.cases.single_case.shipped import case_names, profile_named, profile_names
from trainer.commands.entry import main
from trainer.desk.caching_solver import CachingSolver
from trainer.records.class_report.collect import collect
from trainer.records.class_report.marking import mark_set
from trainer.records.store.learner_record import write_record
from trainer.records.store.store import open_store

REPOSITORY = Path(__file__).parents[2]
PAGES = [REPOSITORY / "README.md", *sorted((REPOSITORY / "docs").glob("*.md"))]
CALLS = sorted({
    call for page in PAGES
    for call in re.findall(r"`injector-trainer ([^`]+)`|^ *injector-trainer (.+)$", page.read_text("utf-8"), re.MULTILINE)
    for call in call if call
})  # fmt: skip
README = PAGES[0].read_text("utf-8")


@pytest.fixture(scope="module")
def class_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """What the docs' commands find: a set, sealed too, a stick with results of a learner, records with them, a roster."""
    folder = tmp_path_factory.mktemp("class")
    friday = SMALL.replace("name: first_week", "name: friday")
    (folder / "friday.yaml").write_text(friday, "utf-8")
    path, exam = sealed_set(folder, friday)
    path.rename(folder / "friday.sealed")
    station = open_store(None)
    sitting = sitting_of(exam, station)
    work_through(sitting, [True, True, True])
    sitting.bundle(folder / "stick")
    station.close()
    school = open_store(folder)
    collect(school, [folder / "stick"], exam.case_set.id, [exam.key])
    mark_set(school, exam.case_set, [exam.key], CachingSolver(), UNIVERSES)
    write_record(school, folder / "me.record", "me", "2026-01-01T00:00:00+00:00")
    school.close()
    (folder / "roster.csv").write_text("learner,name,class\nann,Ann Meyer,day class\n", "utf-8")
    return folder


@pytest.mark.parametrize("call", CALLS)
def test_every_command_in_the_docs_can_be_typed(
    call: str, class_folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copytree(class_folder, tmp_path, dirs_exist_ok=True)
    monkeypatch.chdir(tmp_path)
    words = shlex.split(call.replace("CASE", "faint_hum_on_three").replace("PROFILE", "north_v8"))
    # one is enough here: tests/cases/single_case/test_shipped.py checks them all
    case_file = REPOSITORY / "scenarios" / "cases" / "faint_hum_on_three.yaml"
    words = [str(case_file) if word == "FILE_OR_FOLDER" else word for word in words]
    if words[0] == "practice" or words[:2] == ["set", "sit"]:
        words += ["--sound", "file"]
    if words[:2] == ["set", "make"]:
        Path(words[2]).unlink()
    if words[:2] == ["set", "seal"]:
        Path(words[-1]).unlink()
    monkeypatch.setattr(
        "trainer.commands.call.set_passphrase.ask_hidden", lambda _prompt: PASSPHRASE
    )  # typed at a terminal
    result = CliRunner().invoke(main, ["--data", str(tmp_path), *words], input="leave\n")
    # what needs a screen says so where there is none
    assert result.exit_code == (3 if words[0] == "bench" else 0), result.output


def test_each_command_of_the_readme_has_a_line_of_its_own_that_fits() -> None:
    blocks = re.findall(r"```\n(.*?)```", README, re.DOTALL)
    lines = [line for block in blocks for line in block.splitlines()]
    assert sum("injector-trainer" in line for line in lines) >= 12
    assert [line for line in lines if len(line) > 80] == []
    assert re.findall(r"`injector-trainer [^`]+`", README) == []


def test_links_in_the_docs_lead_somewhere() -> None:
    for page in PAGES:
        for target in re.findall(r"\]\(([^)#]+)", page.read_text("utf-8")):
            assert (page.parent / target).exists(), f"{page.name}: {target}"


def test_the_case_and_the_set_in_the_docs_are_good() -> None:
    page = (REPOSITORY / "docs" / "writing_files.md").read_text("utf-8")
    case, case_set = re.findall(r"```yaml\n(.*?)```", page, re.DOTALL)
    assert case_from(case, "docs", profile_named).name == "my_case"
    assert small_set(case_set).case_set.size == 7


def test_the_first_paragraph_states_the_job() -> None:
    first = (REPOSITORY / "README.md").read_text("utf-8").split("\n\n")[1]
    for word in ("hum", "evidence", "apprentices", "instructors"):
        assert word in first


def test_names_in_the_docs_are_shipped() -> None:
    assert "faint_hum_on_three" in case_names()
    assert "north_v8" in profile_names()
