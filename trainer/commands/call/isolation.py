"""Restarts the program, before it holds an exam, in an interpreter that takes nothing from the environment."""

from __future__ import annotations

import contextlib
import os
import subprocess
import sys
from pathlib import Path

import trainer

IMPORT_TIMEOUT_S = 30.0


def isolate() -> None:
    """Restart this process with Python's `-I`; return where it is isolated already, or cannot be.

    `-I` leaves out PYTHONPATH, every other PYTHON variable, the current folder and the user's own packages, so none of
    them brings code into an exam. It is impossible where the program itself is found by one of those, and on Windows,
    where a process cannot be replaced by another.
    """
    if sys.flags.isolated or not can_isolate():
        return
    sys.stdout.flush()
    sys.stderr.flush()
    with contextlib.suppress(OSError):
        os.execv(sys.executable, [sys.executable, "-I", *sys.orig_argv[1:]])


def can_isolate() -> bool:
    """Return whether this process is isolated, or can be restarted isolated."""
    return bool(sys.flags.isolated) or (os.name == "posix" and _found_isolated())


def _found_isolated() -> bool:
    """Return whether an isolated interpreter finds this same program."""
    look = [sys.executable, "-I", "-c", "import trainer; print(trainer.__file__)"]
    try:
        found = subprocess.run(look, capture_output=True, text=True, timeout=IMPORT_TIMEOUT_S, check=True)
        return Path(found.stdout.strip()).samefile(trainer.__file__)
    except (OSError, subprocess.SubprocessError):
        return False
