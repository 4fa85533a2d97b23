"""Runs ngspice on a netlist and reads its binary result."""

from __future__ import annotations

import subprocess
from pathlib import Path

import numpy as np
from numpy.typing import NDArray


def run_ngspice(netlist: str, folder: Path) -> dict[str, NDArray[np.float64]]:
    """Run one transient analysis to its end; return every saved vector by name, `time` among them."""
    source, raw = folder / "case.cir", folder / "case.raw"
    source.write_text(netlist, "utf-8")
    done = subprocess.run(
        ["ngspice", "-b", "-r", str(raw), str(source)], capture_output=True, text=True, timeout=600, check=False
    )
    if not raw.exists():
        raise RuntimeError(done.stdout + done.stderr)
    return read_raw(raw.read_bytes())


def read_raw(data: bytes) -> dict[str, NDArray[np.float64]]:
    """Parse a binary raw file of one real analysis."""
    head, body = data.split(b"Binary:\n", 1)
    lines = head.decode("utf-8").splitlines()
    count = int(next(line.split(":")[1] for line in lines if line.startswith("No. Variables")))
    points = int(next(line.split(":")[1] for line in lines if line.startswith("No. Points")))
    first = lines.index("Variables:") + 1
    names = [line.split("\t")[2] for line in lines[first : first + count]]
    table = np.frombuffer(body, dtype=float, count=count * points).reshape(points, count)
    return {name: table[:, column] for column, name in enumerate(names)}
