"""Compiles `step_kernel.c` into the library beside it: at installation (`.ci/build_hook.py`), or by hand.

`python -m trainer.circuit.build_kernel` builds it in a working copy. Only the standard library is imported, so that the
build needs nothing installed.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).parent
SOURCE, LIBRARY = HERE / "step_kernel.c", HERE / "step_kernel.so"
COMPILERS = ("cc", "gcc", "clang")
OPTIONS = (
    "-std=gnu11", "-O3", "-fno-math-errno",
    "-ffp-contract=off",  # the same bits on every processor
    "-Wno-psabi", "-shared", "-fPIC",
)  # fmt: skip


def source_hash() -> str:
    """Return a hash of the source and how it is compiled; the library names the one it was built from."""
    return hashlib.sha256(SOURCE.read_bytes() + repr(OPTIONS).encode("utf-8")).hexdigest()[:16]


def is_built() -> bool:
    """Return whether the library is there and was built from the source beside it."""
    return LIBRARY.is_file() and source_hash().encode("ascii") in LIBRARY.read_bytes()


def build() -> bool:
    """Build the library anew and return whether that succeeded; where it did not, none is left."""
    LIBRARY.unlink(missing_ok=True)
    compiler = next(
        (path for name in (os.environ.get("CC", ""), *COMPILERS) if name and (path := shutil.which(name))), ""
    )
    if not compiler or sys.platform == "win32":
        return False
    unfinished = LIBRARY.with_suffix(f".{os.getpid()}")
    call = [compiler, *OPTIONS, f'-DSOURCE_HASH="{source_hash()}"', "-o", str(unfinished), str(SOURCE)]
    done = subprocess.run(call, check=False, capture_output=True)
    if done.returncode:
        unfinished.unlink(missing_ok=True)
        return False
    unfinished.replace(LIBRARY)
    return True


if __name__ == "__main__":
    sys.exit(0 if build() else "No C compiler that can build it was found. The program works without it, only slower.")
