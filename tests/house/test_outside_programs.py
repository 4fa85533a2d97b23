"""Tests that need a program from outside Python are skipped by name where it is missing, and fail in CI."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

REPOSITORY = Path(__file__).parents[2]
TESTS = """
import pytest

@pytest.mark.needs("ngspice")
@pytest.mark.parametrize("number", [1, 2])
def test_a_circuit(number): ...

@pytest.fixture
def server():
    raise RuntimeError("a fixture of a skipped test was set up")

@pytest.mark.needs("Xvfb", "xdotool")
def test_a_window(server): ...

def test_a_sum(): ...
"""


def run_without_programs(folder: Path, *options: str, ci: str = "") -> tuple[int, str]:
    """Run TESTS where no program can be found; return the exit code and what was printed."""
    (folder / "test_some.py").write_text(TESTS, "utf-8")
    call = [
        sys.executable,
        "-m",
        "pytest",
        "-p",
        "tests.outside_programs",
        "-p",
        "no:cacheprovider",
        "--strict-markers",
    ]
    environment = {**os.environ, "PATH": "", "PYTHONPATH": str(REPOSITORY), "CI": ci}
    environment["PYTEST_DISABLE_PLUGIN_AUTOLOAD"] = "1"  # those of other packages take a second to load
    done = subprocess.run(
        [*call, *options, "test_some.py"], cwd=folder, env=environment, capture_output=True, text=True, timeout=120
    )
    return done.returncode, done.stdout


@pytest.mark.parametrize("options", [(), ("-p", "xdist", "-n", "2")], ids=["one process", "two workers"])
def test_what_is_missing_is_named_test_by_test_with_the_line_that_installs_it(
    options: tuple[str, ...], tmp_path: Path
) -> None:
    code, printed = run_without_programs(tmp_path, *options)
    assert code == 0, printed
    for number in (1, 2):
        assert f"skipped for want of ngspice: test_some.py::test_a_circuit[{number}]" in printed
    assert "to run them: apt-get install ngspice\n" in printed
    assert "skipped for want of Xvfb and xdotool: test_some.py::test_a_window" in printed
    assert "as root: apt-get install ngspice xvfb xdotool\n" in printed
    assert "1 passed, 3 skipped" in printed


def test_in_ci_a_missing_program_is_a_failure(tmp_path: Path) -> None:
    code, printed = run_without_programs(tmp_path, ci="true")
    assert code == 1
    assert "ngspice not found: apt-get install ngspice" in printed
    assert "1 passed, 3 errors" in printed
