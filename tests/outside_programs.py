"""What some tests need from outside Python: how each is found, and the line that installs it.

A test that needs one carries `@pytest.mark.needs("ngspice")`. Where it is missing the test is skipped, and named at the
end of the run beside the line that installs what it needs; in CI (`CI=true`) it fails.

`python -m tests.outside_programs` prints the Debian packages that are missing here.
"""

from __future__ import annotations

import ctypes.util
import os
import shutil
from collections import defaultdict
from collections.abc import Callable, Sequence
from typing import Any

import pytest

from tests.browser import BROWSERS
from tests.postgres import server_programs
from trainer.circuit.build_kernel import COMPILERS


def _program(*names: str) -> Callable[[], bool]:
    return lambda: any(shutil.which(name) for name in names)


OUTSIDE: dict[str, tuple[Callable[[], bool], str]] = {
    "ngspice": (_program("ngspice"), "ngspice"),
    "Xvfb": (_program("Xvfb"), "xvfb"),
    "xdotool": (_program("xdotool"), "xdotool"),
    "PostgreSQL": (lambda: server_programs() is not None, "postgresql"),
    "Chromium": (_program(*BROWSERS), "chromium"),
    "Gnumeric": (_program("ssconvert"), "gnumeric"),
    "a C compiler": (_program(*COMPILERS), "gcc libc6-dev"),
    "PortAudio": (lambda: ctypes.util.find_library("portaudio") is not None, "libportaudio2"),
}
"""By name: whether it is here, and its Debian package."""

MISSING = "missing program"


def install_line(names: Sequence[str]) -> str:
    return f"apt-get install {' '.join(OUTSIDE[name][1] for name in names)}"


def in_ci() -> bool:
    return os.environ.get("CI", "").lower() not in ("", "0", "false")


def pytest_configure(config: pytest.Config) -> None:
    config.addinivalue_line("markers", "needs(*names): programs of tests/outside_programs.py that the test needs")


@pytest.hookimpl(tryfirst=True)  # before the fixtures, which start those programs
def pytest_runtest_setup(item: pytest.Item) -> None:
    asked = dict.fromkeys(name for mark in item.iter_markers("needs") for name in mark.args)
    missing = [name for name in asked if not OUTSIDE[name][0]()]
    if not missing:
        return
    told = f"{' and '.join(missing)} not found: {install_line(missing)}"
    if in_ci():
        pytest.fail(told, pytrace=False)
    item.user_properties.append((MISSING, missing))  # travels with the report, also from a pytest-xdist worker
    pytest.skip(told)


def pytest_terminal_summary(terminalreporter: Any) -> None:
    """Name every test that was skipped, by what it needs, with the line that installs that."""
    skipped: dict[tuple[str, ...], list[str]] = defaultdict(list)
    for report in terminalreporter.stats.get("skipped", []):
        for key, missing in report.user_properties:
            if key == MISSING:
                skipped[tuple(missing)].append(report.nodeid)
    if not skipped:
        return
    terminalreporter.section("Not tested on this machine")
    for names, tests in sorted(skipped.items()):
        for test in sorted(tests):
            terminalreporter.line(f"skipped for want of {' and '.join(names)}: {test}")
        terminalreporter.line(f"    {len(tests)} of them; to run them: {install_line(names)}")
    everything = [name for name in OUTSIDE if any(name in names for names in skipped)]
    terminalreporter.line(f"To run all of them on Debian, as root: {install_line(everything)}")


def main() -> None:
    """Print the Debian packages of what is missing on this machine."""
    print(*(package for found, package in OUTSIDE.values() if not found()))


if __name__ == "__main__":
    main()
