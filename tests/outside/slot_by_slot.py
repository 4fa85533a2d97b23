"""Measures one rendered file of each kind of fault slot by slot, from its samples alone; prints a table for the docs."""

from __future__ import annotations

import numpy as np

from tests.engines import NORTH, solved
from trainer.circuit.codes import codes_of
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import FaultKind
from trainer.sound.levels import FULL_SCALE_PA, a_weighted_level_db
from trainer.sound.render import Bed, render


def main() -> None:
    """Render, measure, print."""
    print("| kind, place | all | " + " | ".join(f"{n}" for n in NORTH.cylinders) + " | codes |")
    print("| --- |" + " --- |" * (len(NORTH.cylinders) + 2))
    faults = [
        None,
        *(next(f for f in single_faults(NORTH) if f.kind is kind and 3 in f.cylinders) for kind in FaultKind),
    ]
    for fault in faults:
        test = solved(NORTH, *([fault] if fault else []))
        sound = render(test, "front", Bed(level_dba=20.0), 1)
        levels = []
        for slot in sound.slots:
            start, end = (round(t * sound.rate_hz) for t in (slot.window.start_s, slot.window.end_s))
            levels.append(
                a_weighted_level_db(sound.samples[start:end].astype(np.float64) * FULL_SCALE_PA, sound.rate_hz)
            )
        name = f"{fault.kind}, {fault.location}" if fault else "none"
        codes = ", ".join(code.code for code in codes_of(test)) or "–"
        print(f"| {name} | " + " | ".join(f"{level:.0f}" for level in levels) + f" | {codes} |")


if __name__ == "__main__":
    main()
