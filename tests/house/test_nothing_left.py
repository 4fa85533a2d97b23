"""No command leaves anything in the temporary folder, and in the home only its own records, settings and cache."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.exam_sets import SMALL

CASE = "faint_hum_on_three"

# one process for all: what counts is what lies there when the program has ended
RUN = """
import io, sys
from trainer.commands.entry import main

for line in open("calls"):
    *words, typed = line.rstrip("\\n").split("\\t")
    sys.stdin = io.StringIO(typed.replace("\\\\n", "\\n"))
    try:
        main.main(words)
    except SystemExit as end:
        print("code", int(end.code), *words, flush=True)
"""

CALLS = [
    (0, "--help"), (0, "--version"), (0, "profiles"), (0, "cases"), (0, "doctor"), (0, "draw north_v8 --seed 1"),
    (0, f"hear {CASE} -o heard.wav --slot 3"), (2, f"hear {CASE} -o heard.wav --stand roof"),
    (3, f"hear {CASE} -o no/such/folder/heard.wav --slot 3"), (1, "check bad.yaml"), (0, "set show small.yaml"),
    (0, "set make made.yaml --case faint_hum_on_three"), (0, "progress"), (0, "records list"), (0, "records roster roster.csv"),
    (0, "records carry -o me.record"), (0, "records backup all.backup"), (2, "records report none -o report.html"), (2, "dance"),
    (3, "bench"), (0, f"practice {CASE} --text --sound file", "hear 3", "leave"),
]  # fmt: skip


@pytest.fixture
def places(tmp_path: Path) -> dict[str, Path]:
    """A home, a temporary folder and a folder to work in, all new."""
    made = {name: tmp_path / name for name in ("home", "temporary", "running", "work")}
    for folder in made.values():
        folder.mkdir(mode=0o700)
    return made


def environment(places: dict[str, Path]) -> dict[str, str]:
    """As on a desktop: without a folder for what runs, PulseAudio's library makes one of its own among the temporary."""
    kept = {name: value for name, value in os.environ.items() if not name.startswith("XDG_")}
    folders = {"HOME": "home", "TMPDIR": "temporary", "XDG_RUNTIME_DIR": "running"}
    return {**kept, **{name: str(places[place]) for name, place in folders.items()}}


def test_quick_commands_leave_nothing_in_the_temporary_folder(places: dict[str, Path]) -> None:
    work = places["work"]
    (work / "small.yaml").write_text(SMALL, "utf-8")
    (work / "bad.yaml").write_text("form: case/1\n", "utf-8")
    (work / "roster.csv").write_text("learner,name,class\nann,Ann,day\n", "utf-8")
    lines = ["\t".join([*call.split(), "\\n".join([*typed, ""])]) for _code, call, *typed in CALLS]
    (work / "calls").write_text("\n".join(lines) + "\n", "utf-8")
    done = subprocess.run(
        [sys.executable, "-c", RUN], env=environment(places), cwd=work, capture_output=True, text=True, timeout=300
    )
    codes = [line.removeprefix("code ") for line in done.stdout.splitlines() if line.startswith("code ")]
    assert codes == [f"{code} {call}" for code, call, *_typed in CALLS], done.stderr
    assert "Saved to" in done.stdout  # a sound was written there, and is gone
    assert list(places["temporary"].iterdir()) == []
    assert not list(work.glob("**/*.part"))
    home = {str(path.relative_to(places["home"])) for path in places["home"].glob("*/*/*")}
    assert {path.partition("injector-ear-trainer")[1] for path in home} <= {"injector-ear-trainer"}, home


def test_charts_where_no_home_can_be_written_leave_nothing_and_say_nothing(places: dict[str, Path]) -> None:
    program = (
        "from trainer.records.papers.charts import marks_chart\n"
        "marks_chart({0: 1, 5: 2}, 50.0, {'mark': 'm', 'learners': 'l', 'marks': 'M'})\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], env={**environment(places), "HOME": "/proc/none"}, cwd=Path(__file__).parents[2],
        capture_output=True, text=True, timeout=300,
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    assert list(places["temporary"].iterdir()) == []
