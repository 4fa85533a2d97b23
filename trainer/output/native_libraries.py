"""Guards against native sound libraries that print on the terminal or end the whole program."""

from __future__ import annotations

import ctypes
import os
from functools import cache

ALSA = "libasound.so.2"


@cache
def silence_c_stderr() -> None:
    """Discard the `stderr` output of C libraries from now on; the program reports errors itself.

    Sound libraries print at any time and from any thread, mostly when a sound server ends. Python's own output is not
    affected: it goes to file descriptor 2, past C's streams. Only GNU's C library documents that `stderr` can be
    assigned (its manual, "Standard Streams"); with another C library this does nothing.
    """
    if os.name != "posix":
        return
    libc = ctypes.CDLL(None)
    if not hasattr(libc, "gnu_get_libc_version"):
        return
    libc.fopen.restype = ctypes.c_void_p
    nowhere = libc.fopen(os.fsencode(os.devnull), b"w")
    if nowhere is not None:
        ctypes.c_void_p.in_dll(libc, "stderr").value = nowhere


def alsa_is_broken() -> bool:
    """Return whether ALSA is installed but its configuration names no devices.

    PortAudio 19.6 looks for the same entry when it starts, and an assertion ends the whole process where it is missing.
    """
    try:
        alsa = ctypes.CDLL(ALSA)
        top, found = ctypes.c_void_p.in_dll(alsa, "snd_config"), ctypes.c_void_p()
    except (OSError, ValueError):  # not installed, or not ALSA
        return False
    return bool(alsa.snd_config_update() < 0 or alsa.snd_config_search(top, b"pcm", ctypes.byref(found)) < 0)
