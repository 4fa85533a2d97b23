"""Starts the program over by an interpreter that takes nothing from the environment, before it holds an exam."""

from __future__ import annotations

import contextlib
import os
import subprocess
import sys
from pathlib import Path

import trainer

LONGEST_LOOK_S = 30.0


def isolate() -> None:
    """Start this process over with Python's `-I`; return where it is so already, or where that cannot be.

    `-I` leaves PYTHONPATH, every other PYTHON variable, the present folder and the user's own packages out, so none of
    them puts code into an exam. It cannot be where the program itself is found by one of those, and on Windows, where
    a process is not replaced by another.
    """
    if sys.flags.isolated or not can_isolate():
        return
    sys.stdout.flush()
    sys.stderr.flush()
    with contextlib.suppress(OSError):
        os.execv(sys.executable, [sys.executable, "-I", *sys.orig_argv[1:]])


def can_isolate() -> bool:
    """Tell whether this process is isolated, or could be started over so."""
    return bool(sys.flags.isolated) or (os.name == "posix" and _found_isolated())


def _found_isolated() -> bool:
    """Tell whether an isolated interpreter finds this very program."""
    look = [sys.executable, "-I", "-c", "import trainer; print(trainer.__file__)"]
    try:
        found = subprocess.run(look, capture_output=True, text=True, timeout=LONGEST_LOOK_S, check=True)
        return Path(found.stdout.strip()).samefile(trainer.__file__)
    except (OSError, subprocess.SubprocessError):
        return False
