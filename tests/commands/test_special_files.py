"""Pipes and devices in the place of files, for every command that reads one: told in a line, and nothing waits."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.commands.test_commands import run
from tests.special_files import pipe, without_waiting
from trainer.desk.settings import Settings, write_settings

READERS = {
    "check": "check {pipe}.yaml",
    "check of a folder": "check {folder}",
    "practice": "practice {pipe}.yaml --text",
    "hear": "hear {pipe}.yaml -o {folder}/a.wav",
    "set show": "set show {pipe}",
    "set check": "set check {pipe}",
    "set seal": "set seal {pipe} -o {folder}/a.sealed",
    "set sit": "set sit {pipe} --learner anna --text --sound file",
    "a passphrase": "set preview {sealed} -o {folder} --passphrase-file {pipe}",
    "records collect": "records collect {folder} --set {pipe}",
    "records roster": "records roster {pipe}",
    "records restore": "records restore {pipe}",
    "records take": "records take {pipe}",
}


@pytest.mark.parametrize("words", READERS.values(), ids=READERS.keys())
@without_waiting
def test_a_pipe_in_the_place_of_a_file_is_told_in_one_line(tmp_path: Path, words: str) -> None:
    for name in ("p", "p.yaml"):
        pipe(tmp_path / name)
    sealed = tmp_path / "s.sealed"
    sealed.write_bytes(b"injector trainer sealed set 1\n" + HEAD + b"\n" + b"x" * 60)
    result = run(
        *(word.format(pipe=tmp_path / "p", folder=tmp_path, sealed=sealed) for word in words.split()),
        data=tmp_path / "data",
    )
    assert result.exit_code == 1, result.output
    told = [line for line in result.stderr.splitlines() if "the file is a pipe. Allowed: an ordinary file." in line]
    assert len(told) == 1


HEAD = (
    b'{"closes": "", "mark": "", "mode": "practice", "name": "a", "opens": "", "salt": "00", "size": 1, "title": "a"}'
)


@without_waiting
def test_a_folder_is_checked_to_its_end_whatever_lies_in_it(tmp_path: Path) -> None:
    pipe(tmp_path / "a.yaml")
    (tmp_path / "b.yaml").symlink_to("/dev/null")
    (tmp_path / "c.yaml").write_text("form: case/9")
    result = run("check", str(tmp_path))
    assert [line.partition(" is ")[2].split(".")[0] for line in result.stderr.splitlines()[:3]] == [
        "a pipe",
        "a device",
        "'case/9'",
    ]
    assert "3 problems found. 3 files read." in result.stderr


@without_waiting
def test_settings_that_are_a_pipe_or_endless_hold_nothing_up_and_are_put_aside_when_settings_are_saved(
    tmp_path: Path,
) -> None:
    settings = tmp_path / "settings.json"
    pipe(settings)
    assert run("records", "list", data=tmp_path).exit_code == 0
    assert settings.is_fifo()  # reading changes nothing
    write_settings(Settings(), settings)
    assert settings.is_file()
    assert (tmp_path / "settings.damaged.json").is_fifo()
    with settings.open("wb") as file:
        file.truncate(1_000_000_000)
    assert run("records", "list", data=tmp_path).exit_code == 0
    assert settings.stat().st_size == 1_000_000_000
    write_settings(Settings(), settings)
    assert settings.stat().st_size < 10_000
    assert (tmp_path / "settings.damaged2.json").stat().st_size == 1_000_000_000


WRITERS = {
    "hear": "hear faint_hum_on_three --slot 3 -o {pipe}",
    "inspect --netlist": "inspect faint_hum_on_three --netlist {pipe}",
    "handout": "handout faint_hum_on_three -o {pipe}",
    "set make": "set make {pipe} --case faint_hum_on_three --force",
    "records backup": "records backup {pipe}",
    "records carry": "records carry -o {pipe}",
}


@pytest.mark.parametrize("words", WRITERS.values(), ids=WRITERS.keys())
@without_waiting
def test_a_pipe_is_never_replaced_by_what_a_command_writes(tmp_path: Path, words: str) -> None:
    path = pipe(tmp_path / "p")
    result = run(*(word.format(pipe=path) for word in words.split()), data=tmp_path / "data")
    assert result.exit_code == 2, result.output
    assert f"{path} is a pipe, so nothing was written. Name an ordinary file instead." in result.stderr
    assert path.is_fifo()
