"""The WAV files of a run without sound go when the run ends, however it ends, and nobody else's go with them."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

from trainer.errors import MissingHereError
from trainer.output import temporary_sounds
from trainer.output.file_player import FilePlayer
from trainer.output.temporary_sounds import MOST_FILES, PREFIX, TemporarySounds

SOUND = np.zeros((100, 2), np.float32)
DEAD = 2**22 + 1
"""No process has this number: Linux counts up to 2**22."""


def test_the_folder_comes_with_the_first_sound_and_goes_at_the_end(tmp_path: Path) -> None:
    with TemporarySounds(tmp_path) as files:
        assert list(tmp_path.iterdir()) == []
        player = FilePlayer(files)
        for _time in range(2):
            player.start(SOUND, 48_000)
        written = player.written
        assert written is not None
        assert written.name == "heard_002.wav"
        assert written.stat().st_size > 600
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_nobody_closes_goes_with_its_owner(tmp_path: Path) -> None:
    files = TemporarySounds(tmp_path)
    files.next_path().write_bytes(b"x")
    del files
    assert list(tmp_path.iterdir()) == []


def test_a_long_sitting_keeps_the_newest_files_only(tmp_path: Path) -> None:
    with TemporarySounds(tmp_path) as files:
        for _sound in range(MOST_FILES + 5):
            last = files.next_path()
            last.write_bytes(b"x")
        names = sorted(path.name for path in last.parent.iterdir())
    assert len(names) == MOST_FILES
    assert names[0] == "heard_006.wav"


def test_what_a_killed_run_left_is_deleted_at_the_next_start_and_nothing_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    elsewhere = tmp_path / "elsewhere"
    kept = {
        f"{PREFIX}{os.getpid()}-aaaa": "its process runs",
        f"{PREFIX}1-aaaa": "its process runs and is not ours to ask",
        f"{PREFIX}{DEAD}": "another name",
        f"{PREFIX}{DEAD}-a.b": "another name",
        f"{PREFIX}x-aaaa": "no process",
        f"injector-trainer-{DEAD}-aaaa": "another prefix",
    }
    for name in (*kept, f"{PREFIX}{DEAD}-bbbb", elsewhere.name):
        (tmp_path / name).mkdir()
        (tmp_path / name / "heard_001.wav").write_bytes(b"x")
    (tmp_path / f"{PREFIX}{DEAD}-link").symlink_to(elsewhere)
    (tmp_path / f"{PREFIX}{DEAD}-file").write_bytes(b"x")
    with monkeypatch.context() as other:
        other.setattr(temporary_sounds.os, "getuid", lambda: os.geteuid() + 1)
        TemporarySounds(tmp_path)
    assert (tmp_path / f"{PREFIX}{DEAD}-bbbb").is_dir()  # somebody else's
    TemporarySounds(tmp_path)
    left = {path.name for path in tmp_path.iterdir()}
    assert left == {*kept, elsewhere.name, f"{PREFIX}{DEAD}-link", f"{PREFIX}{DEAD}-file"}
    assert (elsewhere / "heard_001.wav").is_file()


def test_a_temporary_folder_that_cannot_be_written_is_told() -> None:
    with pytest.raises(MissingHereError, match="file_unwritable"):
        FilePlayer(TemporarySounds(Path("/proc"))).start(SOUND, 48_000)


RUN = """
import signal, sys
# a suite that runs in the background, as under nohup, hands down signals that are ignored
signal.signal(signal.SIGINT, signal.default_int_handler)
signal.signal(signal.SIGHUP, signal.SIG_DFL)
from trainer.commands.call.program import Program
from trainer.commands.call.result import Result, finish
from trainer.output.temporary_sounds import TemporarySounds

def work():
    with TemporarySounds() as files:
        files.next_path().write_bytes(b"x")
        print("ready", flush=True)
        sys.stdin.read()
    return Result()

one = Program("x", invoke_without_command=True, callback=lambda: finish(work, as_json=False))
one.main([])
"""


@pytest.mark.parametrize("how", [signal.SIGTERM, signal.SIGHUP, signal.SIGINT, signal.SIGKILL, 0])
def test_a_run_that_is_ended_from_outside_leaves_nothing(tmp_path: Path, how: int) -> None:
    environment = {**os.environ, "TMPDIR": str(tmp_path)}
    with subprocess.Popen(
        [sys.executable, "-c", RUN], env=environment, stdin=subprocess.PIPE, stdout=subprocess.PIPE,
        stderr=subprocess.PIPE, text=True,
    ) as run:  # fmt: skip
        assert run.stdout is not None
        assert run.stdout.readline() == "ready\n"
        assert len(list(tmp_path.rglob("heard_001.wav"))) == 1
        if how:
            run.send_signal(how)
            told = run.stderr.read() if run.stderr else ""
        else:
            told = run.communicate("")[1]
    assert "Traceback" not in told
    expected = {signal.SIGINT: 130, signal.SIGKILL: -9, 0: 0}.get(how, 128 + how)
    assert run.returncode == expected
    if how == signal.SIGKILL:
        TemporarySounds(tmp_path)
    assert list(tmp_path.iterdir()) == []
