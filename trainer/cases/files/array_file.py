"""Arrays in one small file: compressed, floats rounded to 32 bits, far finer than anything is measured or heard."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import numpy as np

from trainer.cases.files.plain_file import open_plain
from trainer.cases.files.whole_file import write_whole

Arrays = dict[str, np.ndarray]


def rounded(arrays: Mapping[str, np.ndarray]) -> Arrays:
    """Return arrays as they will be read back, so that what was just computed is the same as what is read."""
    return {name: _opened(*_packed(values)) for name, values in arrays.items()}


def write_arrays(path: Path, arrays: Mapping[str, np.ndarray]) -> None:
    """Write arrays of numbers and flags; raises WrongCallError or MissingHereError where that cannot be done."""
    stored = {}
    for name, values in arrays.items():
        kind, packed = _packed(values)
        stored[f"{name}.{kind}"] = packed
    write_whole(path, lambda file: np.savez_compressed(file, allow_pickle=False, **stored), make_folder=True)


def read_arrays(path: Path) -> Arrays:
    """Return the arrays of a file, floats with 64 bits; a damaged file can raise nearly anything."""
    arrays: Arrays = {}
    with open_plain(path) as opened, np.load(opened, allow_pickle=False) as file:
        for stored in file.files:
            name, _, kind = stored.rpartition(".")
            arrays[name] = _opened(kind, file[stored])
    return arrays


def _packed(values: np.ndarray) -> tuple[str, np.ndarray]:
    """Return an array's kind, and its bytes, all first bytes before all second ones: so they compress better."""
    dtype: np.dtype[Any] = np.dtype("<f4") if values.dtype.kind == "f" else values.dtype.newbyteorder("<")
    if dtype.itemsize == 1:
        return dtype.str[1:], values
    whole = np.ascontiguousarray(values, dtype=dtype)
    return dtype.str[1:], np.moveaxis(whole[..., None].view(np.uint8), -1, 0)


def _opened(kind: str, packed: np.ndarray) -> np.ndarray:
    dtype = np.dtype(f"<{kind}")
    if dtype.itemsize == 1:
        return packed
    whole = np.ascontiguousarray(np.moveaxis(packed, 0, -1)).view(dtype)[..., 0]
    return whole.astype(np.float64) if dtype.kind == "f" else whole
