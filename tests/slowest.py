"""Print the tests that cost most processor time, child processes included: `pytest -p tests.slowest`.

Processor time, because wall time on a shared machine says more about its neighbours than about a test.
"""

from __future__ import annotations

import os
from collections import Counter
from collections.abc import Iterator

import pytest

SHOWN = 20
PROCESSOR_S = "processor_s"

_started_s = pytest.StashKey[float]()


def _processor_s() -> float:
    now = os.times()
    return now.user + now.system + now.children_user + now.children_system


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup(item: pytest.Item) -> None:
    """Start the count before the fixtures of a test."""
    item.stash[_started_s] = _processor_s()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item: pytest.Item, call: pytest.CallInfo[None]) -> Iterator[None]:
    """Attach to the last report of a test what its set-up, call and tear-down cost together."""
    report = yield
    if call.when == "teardown":
        report.user_properties = [*report.user_properties, (PROCESSOR_S, _processor_s() - item.stash[_started_s])]
    return report


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Print the dearest tests, then the dearest files, then every folder."""
    tests: Counter[str] = Counter()
    files: Counter[str] = Counter()
    folders: Counter[str] = Counter()
    for reports in terminalreporter.stats.values():
        for report in reports:
            for name, value in getattr(report, "user_properties", ()):
                if name == PROCESSOR_S:
                    tests[report.nodeid] += value
                    file = report.nodeid.partition("::")[0]
                    files[file] += value
                    folders[file.rpartition("/")[0]] += value
    terminalreporter.section(f"processor time {sum(tests.values()):.0f} s")
    for name, seconds in [*tests.most_common(SHOWN), *files.most_common(SHOWN), *folders.most_common()]:
        terminalreporter.write_line(f"{seconds:8.1f} s  {name}")
