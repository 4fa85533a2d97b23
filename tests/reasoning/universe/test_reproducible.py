"""What hypotheses expect is the same to the last bit in every process, whatever order its sets have."""

from __future__ import annotations

import os
import subprocess
import sys

EXPECTED = """
import hashlib
from tests.engines import RIDGE
from trainer.reasoning.universe.expectations import expectations_of
from trainer.reasoning.universe.hypotheses import single_hypotheses
from trainer.reasoning.universe.menu import menu_of

expectations = expectations_of(RIDGE, 20.0, single_hypotheses(RIDGE).faults[::24])
questions = [question for test in menu_of(RIDGE, 20.0) for question in test.questions]
digest = hashlib.sha256()
for one in expectations.of([q for q in questions if q.kind in ("ohms", "insulation", "codes")], 0.0).values():
    digest.update(one.values.tobytes())
for slot in expectations.equivalents.solved.values():
    digest.update(slot.sound.tobytes() + slot.seen.most_a.tobytes())
print(digest.hexdigest())
"""


def expected_with(hash_seed: int) -> str:
    environment = {**os.environ, "PYTHONHASHSEED": str(hash_seed), "PYTHONPATH": os.pathsep.join(sys.path)}
    call = [sys.executable, "-c", EXPECTED]
    return subprocess.run(call, env=environment, capture_output=True, text=True, check=True).stdout


def test_expectations_do_not_depend_on_the_order_of_sets() -> None:
    assert len({expected_with(hash_seed) for hash_seed in (1, 2)}) == 1
