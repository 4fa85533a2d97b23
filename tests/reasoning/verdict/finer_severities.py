"""Proof of minutes: posteriors do not depend on how many severities stand for a kind.

Run as `python -m tests.reasoning.verdict.finer_severities`; every kind is given another node between every two. For each case
below the steps of its best path are taken, and the chance of the true finding, and the largest change of any
finding's, are printed with either grid. Fails where a finding moves by more than MOVED_AT_MOST.
"""

from __future__ import annotations

import itertools
import sys
from unittest.mock import patch

import numpy as np

from tests.universes import UNIVERSES
from trainer.cases.single_case.case import Case
from trainer.cases.single_case.shipped import case_named
from trainer.cases.solved.universe_cache import Universes
from trainer.circuit.elements import OPEN_OHM
from trainer.circuit.fault import SIZES, Size
from trainer.commands.call.this_machine import universe_folder
from trainer.reasoning.universe.finding import truth_of
from trainer.reasoning.verdict.belief import FindingKey, finding_key

CASES = (
    "green_pin_on_two", "thick_oil_on_eight", "crushed_under_the_cover", "stuck_with_varnish", "faint_hum_on_three",
    "bank_feed_on_the_block",
)  # fmt: skip
MOVED_AT_MOST = 0.02


def finer(size: Size) -> Size:
    """Return a kind's severities with another one between every two neighbours, at their geometric mean."""
    if size.types:
        return size

    def more(severities: tuple[float, ...]) -> tuple[float, ...]:
        nodes = sorted(amount for amount in severities if 0.0 < amount < OPEN_OHM)
        return (*severities, *(float(np.sqrt(one * other)) for one, other in itertools.pairwise(nodes)))

    return size._replace(severities=more(size.severities), shared=more(size.shared))


def beliefs(
    case: Case, universes: Universes, names: list[str] | None
) -> tuple[list[str], list[dict[FindingKey, float]]]:
    """Return the steps of a path, the case's own best one where none is given, and all findings after each."""
    reasoner = universes.reasoner(case)
    steps = names or [str(step.name) for step in reasoner.best_path]
    tests = {str(test.name): test for test in reasoner.tests}
    answers, found = {}, []
    for name in (name for name in steps if name in tests):
        answers.update(reasoner.truth_answers(tests[name].questions))
        found.append(reasoner.belief(answers).findings)
    return steps, found


def main() -> int:
    """Print each case's figures; return 1 where a finding moves too far."""
    usual = {name: beliefs(case_named(name), UNIVERSES, None) for name in CASES}
    worst = 0.0
    with patch.dict(SIZES, {kind: finer(size) for kind, size in SIZES.items()}):
        universes = Universes(universe_folder())
        for name, (steps, before) in usual.items():
            case = case_named(name)
            true = finding_key(truth_of(case.faults))
            _steps, after = beliefs(case, universes, steps)
            moved = [
                max(abs(one.get(key, 0.0) - other.get(key, 0.0)) for key in one.keys() | other.keys())
                for one, other in zip(before, after, strict=True)
            ]
            worst = max(worst, *moved)
            chances = ", ".join(
                f"{one.get(true, 0.0):.3f}/{other.get(true, 0.0):.3f}" for one, other in zip(before, after, strict=True)
            )
            print(f"{name}: the truth {chances}; largest change of any finding {max(moved):.4f}")
    print(f"largest change {worst:.4f}, asked at most {MOVED_AT_MOST}")
    return int(worst > MOVED_AT_MOST)


if __name__ == "__main__":
    sys.exit(main())
