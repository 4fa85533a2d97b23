"""What README and docs tell a person to type works."""

import re
import shlex
from pathlib import Path

import pytest
from click.testing import CliRunner

from trainer.cases.case_file import case_from
from trainer.cases.shipped import case_names, profile_named, profile_names
from trainer.commands.entry import main

REPOSITORY = Path(__file__).parents[2]
PAGES = [REPOSITORY / "README.md", *sorted((REPOSITORY / "docs").glob("*.md"))]
CALLS = sorted({
    call for page in PAGES for call in re.findall(r"`injector-trainer ([^`]+)`", page.read_text("utf-8"))
})  # fmt: skip


@pytest.mark.parametrize("call", CALLS)
def test_every_command_in_the_docs_can_be_typed(call: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    words = shlex.split(call.replace("CASE", "faint_hum_on_three").replace("PROFILE", "north_v8"))
    words = [str(REPOSITORY / "scenarios") if word == "FILE_OR_FOLDER" else word for word in words]
    if words[0] == "practice":
        words += ["--sound", "file"]
    result = CliRunner().invoke(main, ["--data", str(tmp_path), *words], input="leave\n")
    # what needs a screen says so where there is none
    assert result.exit_code == (3 if words[0] == "bench" else 0), result.output


def test_links_in_the_docs_lead_somewhere() -> None:
    for page in PAGES:
        for target in re.findall(r"\]\(([^)#]+)", page.read_text("utf-8")):
            assert (page.parent / target).exists(), f"{page.name}: {target}"


def test_the_case_in_the_docs_is_a_case() -> None:
    page = (REPOSITORY / "docs" / "writing_files.md").read_text("utf-8")
    example = re.search(r"```yaml\n(.*?)```", page, re.DOTALL)
    assert example
    assert case_from(example[1], "docs", profile_named).name == "my_case"


def test_the_first_paragraph_states_the_job() -> None:
    first = (REPOSITORY / "README.md").read_text("utf-8").split("\n\n")[1]
    for word in ("hum", "evidence", "apprentices", "instructors"):
        assert word in first


def test_names_in_the_docs_are_shipped() -> None:
    assert "faint_hum_on_three" in case_names()
    assert "north_v8" in profile_names()
