"""Proof of minutes: codes and levels of every hypothesis of an engine, shared slots against the test solved alone.

Run as `python -m tests.reasoning.universe.every_hypothesis_alone`; it prints one line for each engine and fails on a difference
of codes in more than SHARE_ALLOWED of the hypotheses.
"""

from __future__ import annotations

import sys

import numpy as np

from tests.engines import ALL, worst
from trainer.circuit.codes import codes_from, codes_of
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import with_faults
from trainer.circuit.harness import circuit_of
from trainer.circuit.solve import solve_test
from trainer.reasoning.universe.equivalents import Equivalents
from trainer.sound.render import Bed, render
from trainer.sound.traits import LEVEL, ears_of

SHARE_ALLOWED = 0.01
HEARD_FROM_DBA = 15.0


def main() -> int:
    """Print each engine's figures; return 1 where codes differ too often."""
    failed = False
    for profile in ALL:
        base = circuit_of(profile)
        faults = single_faults(profile, "grid")[::4]
        circuits = [with_faults(base, [fault], worst(fault)) for fault in faults]
        ears = ears_of(profile, ("front",))
        shared = Equivalents(base, ears).tests_of(base, circuits)
        away, odd = [], []
        for fault, circuit, test in zip(faults, circuits, shared, strict=True):
            alone = solve_test(circuit)
            if codes_from(profile, [slot.seen for slot in test]) != codes_of(alone):
                odd.append(fault)
            sound = render(alone, "front", Bed(), 5)
            expected_dba = ears.heard([traits.sound for traits in test])[:, 0, LEVEL]
            away += [
                abs(float(level_dba) - slot.level_dba)
                for level_dba, slot in zip(expected_dba, sound.slots, strict=True)
                if slot.level_dba > HEARD_FROM_DBA
            ]
        print(f"{profile.name}: {len(faults)} hypotheses, level off by {np.median(away):.2f} dB (median), "
              f"{np.quantile(away, 0.99):.2f} dB (99 %), {max(away):.2f} dB (most); codes differ in {len(odd)}")  # fmt: skip
        for fault in odd[:5]:
            print("   ", fault)
        failed |= len(odd) > SHARE_ALLOWED * len(faults)
    return int(failed)


if __name__ == "__main__":
    sys.exit(main())
