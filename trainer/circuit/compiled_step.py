"""The compiled step: calls `step_kernel.c` through ctypes where it was built. `stepping.py` is the reference.

Where there was no compiler at installation there is no library, and everything works, only slower. With
INJECTOR_TRAINER_STEP=numpy in the environment it is not used.
"""

from __future__ import annotations

import ctypes
import os
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np

from trainer.arrays import Floats, Integers
from trainer.circuit.build_kernel import LIBRARY, source_hash
from trainer.circuit.drive import OutputLaw, stacked
from trainer.circuit.solenoid import Magnets
from trainer.circuit.stepping import SWITCH_PARTS, Row, State

CHOICE = "INJECTOR_TRAINER_STEP"
MOST_INJECTORS, MOST_OUTPUTS = 16, 16

MAGNETS = (
    "turns", "turns_squared", "gap_scale", "motion_scale", "full_gap_m", "leakage_h", "iron_per_h", "saturation_wb",
    "mass_kg", "spring", "preload_n", "viscous", "half_lift_m", "stop", "stop_damping", "stop_width_m",
)  # fmt: skip
"""The solenoids' values in the order of the library's enumeration."""

_COUNTS = (
    "rows", "injectors", "outputs", "columns", "first", "last", "check", "doublings", "parts",
)  # fmt: skip
_VALUES = ("step_s", "choke_h", "trip_a", "trip_width_a", "trip_at_s", "rest_a", "rest_change_a", "rest_speed_m_s")
_ARRAYS = (
    "shared", "from_rail", "constant", "law_ohm", "law_offset_v", "law_swing_v", "law_centre_a", "law_width_a",
    "magnets", "supply_v", "source_ohm", "reservoir_f", "live", "column", "linkage", "position", "speed",
    "driver", "rail", "over", "ended", "coil_a", "return_a", "linkage_wb", "position_m", "acceleration_m_s2", "force_n",
    "feed_a", "rail_v",
)  # fmt: skip
RAIL = ("supply_v", "source_ohm", "reservoir_f")
COUNTED = ("column", "ended")
"""The arrays of whole numbers; all others are of 64-bit floating point."""
STATE = ("linkage", "position", "speed", "driver", "rail", "over")


class _Phase(ctypes.Structure):
    """The library's Phase."""

    _fields_ = [
        *((name, ctypes.c_int64) for name in _COUNTS),
        *((name, ctypes.c_double) for name in _VALUES),
        *((name, ctypes.c_void_p) for name in _ARRAYS),
    ]


@dataclass(frozen=True, slots=True)
class Phase:
    """Steps `first` to before `last` of a phase; `check` is how often rows are looked at for rest, 0 during a pulse.

    `trip` is level and width in ampere and seconds until the feed's trip; `rest` the limits of current in ampere, its
    change in ampere, and speed in m/s.
    """

    first: int
    last: int
    check: int
    step_s: float
    trip: tuple[float, float, float]
    rest: tuple[float, float, float]


def in_use() -> bool:
    """Return whether this process solves with the library."""
    return _library() is not None


def available(injectors: int, outputs: int) -> bool:
    """Return whether the library is in use and takes an engine of this size."""
    return injectors <= MOST_INJECTORS and outputs <= MOST_OUTPUTS and in_use()


def advance(
    rows: Sequence[Row], magnets: Magnets, law: OutputLaw, live: Sequence[frozenset[str]], phase: Phase, state: State,
    records: Mapping[str, Floats], places: Sequence[int],
) -> Integers:  # fmt: skip
    """Advance some rows through a phase, each until it trips or rests, and record every step.

    `places` are their columns in the records and the rows of the state. Return for each the step before which it ended,
    -1 where it did not.
    """
    library = _library()
    assert library is not None
    module = rows[0].circuit.profile.module
    ports = stacked([row.reductions.of(outputs) for row, outputs in zip(rows, live, strict=True)])
    rails = [row.circuit.rail for row in rows]
    picked = list(places)
    ended = np.full(len(rows), -1, dtype=np.int64)
    moving = {name: np.ascontiguousarray(getattr(state, name)[picked], dtype=np.float64) for name in STATE}
    arrays: dict[str, np.ndarray] = {
        "shared": ports["shared"], "from_rail": ports["rail"], "constant": ports["battery"] * module.battery_v,
        "law_ohm": law.ohm, "law_offset_v": law.offset_v, "law_swing_v": law.swing_v,
        "law_centre_a": law.centre_a, "law_width_a": law.width_a,
        "magnets": np.stack([getattr(magnets, name) for name in MAGNETS]),
        **{name: np.array([getattr(rail, name) for rail in rails]) for name in RAIL},
        "live": np.array([[float(name in on) for name in rows[0].circuit.feeds] for on in live]),
        "column": np.array(picked, dtype=np.int64), "ended": ended, **moving, **records,
    }  # fmt: skip
    # what the library writes is of its type already, so it writes into that and not into a copy
    arrays = {
        name: np.ascontiguousarray(array, dtype=np.int64 if name in COUNTED else np.float64)
        for name, array in arrays.items()
    }
    counts = (
        len(rows), state.linkage.shape[1], state.over.shape[1], records["coil_a"].shape[1],
        phase.first, phase.last, phase.check, magnets.doublings, SWITCH_PARTS,
    )  # fmt: skip
    values = (phase.step_s, module.return_choke_h, *phase.trip, *phase.rest)
    library.advance(ctypes.byref(_Phase(*counts, *values, *(arrays[name].ctypes.data for name in _ARRAYS))))
    for name, array in moving.items():
        getattr(state, name)[picked] = array
    return ended


@cache
def _library() -> ctypes.CDLL | None:
    """Return the library; None where it is not wanted, missing, or built from another source or for another machine."""
    if os.environ.get(CHOICE) == "numpy" or not LIBRARY.is_file():
        return None
    try:
        library = ctypes.CDLL(str(LIBRARY))
        library.source_hash.restype, library.advance.restype = ctypes.c_char_p, None
        built_from = library.source_hash()
    except (OSError, AttributeError):
        return None
    return library if built_from == source_hash().encode("ascii") else None
