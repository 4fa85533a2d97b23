"""Keeps what an exam holds in memory away from other programs of the same user, as far as the system lets it."""

from __future__ import annotations

import contextlib
import sys

PR_GET_DUMPABLE, PR_SET_DUMPABLE = 3, 4
"""From linux/prctl.h. A process that is not dumpable leaves no core file and cannot be traced, nor its memory read, by
another one without the rights of an administrator (prctl(2), ptrace(2))."""


def guard_memory() -> bool:
    """Keep this process's memory from core files and from other programs of its user; tell whether that was possible.

    It holds for this process alone and until it ends: a program that it starts begins unguarded.
    """
    with contextlib.suppress(ImportError, ValueError, OSError):
        import resource

        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    return _prctl(PR_SET_DUMPABLE, 0) == 0


def can_guard_memory() -> bool:
    """Tell whether this system can keep a process's memory to itself."""
    return _prctl(PR_GET_DUMPABLE, 0) >= 0


def guards_missing() -> tuple[str, ...]:
    """Return what this process lacks of what keeps an exam apart: `memory`, and `isolated` from the environment."""
    missing = {"memory": _prctl(PR_GET_DUMPABLE, 0) != 0, "isolated": not sys.flags.isolated}
    return tuple(name for name, lacks in missing.items() if lacks)


def _prctl(option: int, value: int) -> int:
    """Return what the system answers; -1 where it has no such call."""
    if not sys.platform.startswith("linux"):
        return -1
    import ctypes

    try:
        return int(ctypes.CDLL(None).prctl(option, value, 0, 0, 0))
    except (OSError, AttributeError):
        return -1
