"""Every process of the program solves with one BLAS thread, whatever the shell that started it says."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import numpy as np
import scipy.linalg
from threadpoolctl import threadpool_info

REPOSITORY = Path(__file__).parents[2]
SETTINGS = ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS", "VECLIB_MAXIMUM_THREADS")

COMMAND = """
import json, sys
from click.testing import CliRunner
from trainer.commands.entry import main
assert CliRunner().invoke(main, ["hear", "faint_hum_on_three", "--slot", "3", "-o", sys.argv[1]]).exit_code == 0
from tests.house.test_one_blas_thread import threads_after_a_solve
print(json.dumps(threads_after_a_solve()))
"""

# an argument of a job whose unpickling, in the worker's process, counts the threads there
WORKER = """
import json, sys, time
from pathlib import Path
from trainer.desk.worker import Job, ProcessWorker
from tests.house.test_one_blas_thread import write_threads

class CountedThere:
    def __reduce__(self):
        return write_threads, (sys.argv[1],)

if __name__ == "__main__":
    worker = ProcessWorker(Path(sys.argv[2]))
    told = []
    worker.ask(Job("no such work", (CountedThere(),), told.append, told.append))
    while not told:
        worker.poll()
        time.sleep(0.01)
    worker.close()
    print(Path(sys.argv[1]).read_text())
"""


def threads_after_a_solve() -> dict[str, int]:
    """Solve with NumPy and with SciPy, which may ship a BLAS library each; return the threads of each library."""
    matrix = np.eye(400) + 1e-3 * np.random.default_rng(1).normal(size=(400, 400))
    np.linalg.solve(matrix, matrix)
    scipy.linalg.solve(matrix, matrix)
    return {one["filepath"]: one["num_threads"] for one in threadpool_info()}


def write_threads(path: str) -> None:
    Path(path).write_text(json.dumps(threads_after_a_solve()), "utf-8")


def threads_in(program: str, *arguments: object) -> set[int]:
    """Run a program in a shell that asks for two threads; return the numbers of threads that it counted."""
    environment = os.environ | dict.fromkeys(SETTINGS, "2")
    call = [sys.executable, "-c", program, *map(str, arguments)]
    done = subprocess.run(
        call, cwd=REPOSITORY, env=environment, capture_output=True, text=True, check=False, timeout=120
    )
    assert done.returncode == 0, done.stderr
    return set(json.loads(done.stdout.splitlines()[-1]).values())


def test_a_command_solves_with_one_thread_even_where_the_shell_asks_for_more(tmp_path: Path) -> None:
    assert threads_in(COMMAND, tmp_path / "x.wav") == {1}


def test_the_worker_beside_the_window_solves_with_one_thread(tmp_path: Path) -> None:
    assert threads_in(WORKER, tmp_path / "threads.json", tmp_path) == {1}


def test_the_tests_solve_with_one_thread() -> None:
    assert set(threads_after_a_solve().values()) == {1}
