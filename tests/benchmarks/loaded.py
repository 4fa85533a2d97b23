"""`inspect` from an empty cache, idle and beside two busy neighbours: one BLAS thread against as many as there are cores.

`python -m tests.benchmarks.loaded [ROUNDS]` prints each figure as a JSON line; the ways are run in turn, round by round.
A quiet machine is needed for true figures: the load at the start is printed with them.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from statistics import median

from tests.benchmarks.__main__ import tell
from trainer.cases.single_case.shipped import SOLVED

CASE = "faint_hum_on_three"
NEIGHBOURS = 2
ROUNDS = 3
LONGEST_S = 300.0

RUN = f"""
import trainer
import os, sys
if sys.argv[1] != "1":
    os.environ["OPENBLAS_NUM_THREADS"] = sys.argv[1]
from click.testing import CliRunner
from trainer.commands.entry import main
done = CliRunner().invoke(main, ["inspect", {CASE!r}])
assert done.exit_code == 0, done.output
"""

BUSY = f"import time; end = time.monotonic() + {LONGEST_S}\nwhile time.monotonic() < end: pass"


@dataclass(frozen=True)
class Cost:
    wall_s: float
    cpu_s: float


@contextmanager
def neighbours(count: int) -> Iterator[None]:
    """Keep so many processes busy; they end by themselves should this one be killed."""
    busy = [subprocess.Popen([sys.executable, "-c", BUSY]) for _number in range(count)]
    try:
        yield
    finally:
        for one in busy:
            one.kill()
            one.wait()


def inspected(threads: int) -> Cost:
    """Run `inspect` in a fresh process with an empty cache folder."""
    with tempfile.TemporaryDirectory() as folder:
        start = time.perf_counter()
        process = subprocess.Popen(
            [sys.executable, "-c", RUN, str(threads)], env={**os.environ, "XDG_CACHE_HOME": folder, SOLVED: "none"}
        )
        _pid, status, used = os.wait4(process.pid, 0)
        wall_s = time.perf_counter() - start
        process.returncode = os.waitstatus_to_exitcode(status)
    assert process.returncode == 0
    return Cost(wall_s, used.ru_utime + used.ru_stime)


def main() -> None:
    """Print median wall and CPU times, each beside its idle time, and the two ways beside each other."""
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else ROUNDS
    cores = os.cpu_count() or 1
    print(json.dumps({"what": "load of the machine before", "value": os.getloadavg()[0], "cores": cores}), flush=True)
    costs: dict[tuple[int, int], list[Cost]] = {}
    for _round in range(rounds):
        for count in (0, NEIGHBOURS):
            for threads in (1, cores):
                with neighbours(count):
                    costs.setdefault((threads, count), []).append(inspected(threads))
    for name in ("wall_s", "cpu_s"):
        at = {key: median(getattr(cost, name) for cost in found) for key, found in costs.items()}
        for threads in (1, cores):
            tell(f"inspect cold, {threads} BLAS threads, {NEIGHBOURS} busy neighbours, {name}", at[threads, NEIGHBOURS], "s",
                 "the same, idle", at[threads, 0], at[threads, NEIGHBOURS] / at[threads, 0])  # fmt: skip
        tell(f"inspect cold, {NEIGHBOURS} busy neighbours, 1 BLAS thread, {name}", at[1, NEIGHBOURS], "s",
             f"{cores} BLAS threads", at[cores, NEIGHBOURS], at[cores, NEIGHBOURS] / at[1, NEIGHBOURS])  # fmt: skip


if __name__ == "__main__":
    main()
