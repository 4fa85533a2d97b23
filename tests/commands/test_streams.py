"""A closed, full or deserted stream gets one true sentence and its exit code, never a traceback."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

CASE = "faint_hum_on_three"


def ran(redirected: str, *words: str, typed: str = "", data: Path | None = None) -> subprocess.CompletedProcess[str]:
    """Run the program from a shell, its streams as `redirected` says."""
    options = ["--data", str(data)] if data else []
    call = [sys.executable, "-m", "trainer", *options, *words]
    return subprocess.run(
        ["bash", "-c", f'"$@" {redirected}; echo "code $?" >&2', "bash", *call],
        input=typed, capture_output=True, text=True, timeout=120,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("redirected", "words", "reason"),
    [
        ("> /dev/full", ("--help",), "No space left on device"),
        ("> /dev/full", ("profiles", "--json"), "No space left on device"),
        (">&-", ("profiles",), "it is closed"),
    ],
)
def test_an_output_that_takes_nothing_is_told_once(redirected: str, words: tuple[str, ...], reason: str) -> None:
    told, code, *more = ran(redirected, *words).stderr.splitlines()
    assert told.startswith(f"The output could not be written: {reason}.")
    assert code == "code 3"
    assert more == []


def test_a_session_whose_output_is_full_ends_with_its_records_kept(tmp_path: Path) -> None:
    done = ran("> /dev/full", "practice", CASE, "--text", "--sound", "file", typed="leave\n", data=tmp_path)
    *_files, told, code = done.stderr.splitlines()
    assert told.startswith("The output could not be written")
    assert code == "code 3"


def test_a_reader_that_has_gone_is_no_error(tmp_path: Path) -> None:
    done = ran("| true; exit ${PIPESTATUS[0]}", "profiles")
    assert done.stderr == ""
    assert done.returncode == 0
    bad = tmp_path / "bad.yaml"
    bad.write_text("form: case/1\n")
    assert ran("2> /dev/null | true; exit ${PIPESTATUS[0]}", "check", str(bad), "--json").returncode == 1


def test_a_closed_input_is_an_end_of_input(tmp_path: Path) -> None:
    done = ran("<&-", "practice", CASE, "--text", "--sound", "file", data=tmp_path)
    assert "code 0" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_closed_error_stream_loses_only_itself_and_bytes_that_are_no_text_can_be_typed(tmp_path: Path) -> None:
    assert ran("2>&-; exit $?", "dance").returncode == 2
    call = [sys.executable, "-m", "trainer", "--data", str(tmp_path), "practice", CASE, "--text", "--sound", "file"]
    environment = {**os.environ, "PYTHONIOENCODING": "utf-8:strict"}
    done = subprocess.run(
        ["bash", "-c", 'exec "$@" 2>&-', "bash", *call],
        input=b"\xff\xfe\ncodes\nleave\n", env=environment, stdout=subprocess.PIPE, timeout=120,
    )  # fmt: skip
    assert done.returncode == 0
    assert b"No code" in done.stdout


def test_no_file_is_opened_under_the_number_of_a_closed_stream(tmp_path: Path) -> None:
    """Else a stray line of a library would be written into the records."""
    program = (
        "from trainer.commands.call.streams import prepare_streams\n"
        "prepare_streams()\n"
        f"number = open({str(tmp_path / 'records')!r}, 'w').fileno()\n"
        "raise SystemExit(number)\n"
    )
    done = subprocess.run(["bash", "-c", 'exec "$@" <&- >&- 2>&-', "bash", sys.executable, "-c", program], timeout=60)
    assert done.returncode > 2


def test_a_practice_that_is_ended_by_the_system_leaves_no_sound_behind(tmp_path: Path) -> None:
    temporary = tmp_path / "temporary"
    temporary.mkdir()
    call = [
        sys.executable, "-m", "trainer", "--data", str(tmp_path / "data"),
        "practice", CASE, "--text", "--sound", "file",
    ]  # fmt: skip
    with subprocess.Popen(
        call, env={**os.environ, "TMPDIR": str(temporary)}, stdin=subprocess.PIPE, stdout=subprocess.PIPE,
        stderr=subprocess.PIPE, text=True,
    ) as run:  # fmt: skip
        assert run.stdin is not None
        assert run.stdout is not None
        assert run.stderr is not None
        run.stdin.write("hear 3\n")
        run.stdin.flush()
        written = next(line for line in run.stdout if "Saved to" in line)
        assert Path(written.split("Saved to ")[1].strip()).is_file()
        run.send_signal(signal.SIGTERM)
        assert run.wait(60) == 128 + signal.SIGTERM
        assert "Traceback" not in run.stderr.read()
    assert list(temporary.iterdir()) == []
