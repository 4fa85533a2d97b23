"""What holds for every test: solved engines are shared by all, and no outcome hangs on a machine's speed."""

import os
import shutil
import tempfile
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings

from tests.solved_cache import MADE_BY, remembering, solved_folder, solving_code
from trainer.cases.single_case.shipped import SOLVED, profile_named, profile_names
from trainer.circuit.build_kernel import build, is_built
from trainer.commands.call.this_machine import universe_folder
from trainer.desk import caching_solver as solver
from trainer.sets import sealed as sealed_set
from trainer.words import build_catalogues

pytest_plugins = ["tests.outside_programs"]

if "PYTEST_XDIST_WORKER" not in os.environ:  # a worker inherits it
    os.environ["XDG_CACHE_HOME"] = str(solved_folder())
    FOLDER = Path(tempfile.mkdtemp(prefix="tests-"))
    FOLDER.chmod(0o755)  # PostgreSQL runs as another user
    os.environ["TMPDIR"] = str(FOLDER)
    (FOLDER / "run").mkdir(mode=0o700)  # where a sound server's own things go
    os.environ["XDG_RUNTIME_DIR"] = str(FOLDER / "run")
    tempfile.tempdir = None
    if MADE_BY.read_text("utf-8").strip() != solving_code():  # this code may solve other numbers than those shipped
        os.environ[SOLVED] = "none"
    if not is_built():  # the source in this working copy is what is tested
        build()
    build_catalogues.build()

# processes that come and go with arrays of megabytes keep their memory, a twentieth of the time (glibc's mallopt(3))
os.environ["MALLOC_MMAP_THRESHOLD_"], os.environ["MALLOC_TRIM_THRESHOLD_"] = str(2**28), str(2**30)

# a solved test is a value: desks and workers of one process share them (twenty megabytes each)
solver.solved_work = remembering(solver.solved_work, 16)

# a third of a second a passphrase, on purpose: the same passphrase of the same set is worked out once in a run
sealed_set.key_of = cache(sealed_set.key_of)

# a window opened by a command would wait for a person: only tests of the window itself have a display
for name in ("DISPLAY", "WAYLAND_DISPLAY"):
    os.environ.pop(name, None)

# the same examples every time, and none that fails because the machine was busy
settings.register_profile("steady", deadline=None, derandomize=True)
settings.load_profile("steady")

MOST_WORKERS = 4
"""Each takes more than a gigabyte."""


def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """Return how many processes share the whole suite; a part of it runs in this one, and all of it on one core."""
    whole = config.args_source is pytest.Config.ArgsSource.TESTPATHS
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    return min(cores, MOST_WORKERS) if whole and cores > 1 else 0


def pytest_report_header() -> str:
    """Say whether engines are solved again."""
    again = "solved again, the code that solves them has changed: python -m tests.unchanged.universes"
    return f"shipped engines: {again if os.environ.get(SOLVED) else 'as shipped'}"


def pytest_sessionstart(session: pytest.Session) -> None:
    """Solve this process's share of the shipped engines, so that no two processes of a whole run solve the same one."""
    worker: dict[str, Any] | None = getattr(session.config, "workerinput", None)
    if worker is None:
        return
    from tests.universes import POOLS, solved_universe  # after the folder for what is solved was named

    number, count = int(worker["workerid"].removeprefix("gw")), worker["workercount"]
    for name in profile_names()[number::count]:
        solved_universe(profile_named(name), 20.0, universe_folder())
        POOLS(profile_named(name))


def pytest_sessionfinish(session: pytest.Session) -> None:
    """Fail a run whose tests or commands left anything in the temporary folder."""
    if "PYTEST_XDIST_WORKER" in os.environ:
        return
    left = sorted(
        path.name for path in FOLDER.iterdir() if path.name != "run" and not path.name.startswith("pytest-of-")
    )
    if left:
        print(f"\nleft in the temporary folder: {', '.join(left)}")
        session.exitstatus = pytest.ExitCode.TESTS_FAILED
    if session.exitstatus == pytest.ExitCode.OK:
        shutil.rmtree(FOLDER, ignore_errors=True)
    else:
        print(f"\nwhat the tests wrote stays in {FOLDER}")


DEAREST = (
    "practice/exercises/test_exercises.py", "window/test_every_screen.py", "window/test_real_window.py",
    "reasoning/verdict/test_misconceptions.py", "practice/exercises/test_simulated_learners.py", "commands/test_sets_and_records.py",
    "outside/test_ngspice.py", "records/class_report/test_collect.py", "outside/test_pages_in_a_browser.py",
    "reasoning/universe/test_universe.py", "sound/test_render.py", "commands/test_commands.py",
)  # fmt: skip
"""The files that take longest, from the longest on: begun first, so that no process is left alone with one at the end."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put the dearest files first; within a file the order stays."""
    rank = {name: number for number, name in enumerate(DEAREST)}
    items.sort(key=lambda item: rank.get(item.nodeid.partition("::")[0].removeprefix("tests/"), len(rank)))
