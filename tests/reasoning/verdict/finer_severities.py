"""Proof of minutes: posteriors do not depend on how many severities stand for a kind.

Run as `python -m tests.reasoning.verdict.finer_severities`, with names of engines for those only; every stretch of
severities is halved. One shipped case of every kind on every engine is taken. What is believed is compared after
hearing, after the codes, after all that is done outside, and after everything that is offered; for the cases of
ALONG_PATHS after each step of their best path too. Printed for each case: the chance of the true finding with either
grid, and which finding's chance changes most. Fails where one moves by more than EARLY_AT_MOST in one of the first
three, or by more than MOVED_AT_MOST in any other.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Iterator, Sequence
from itertools import pairwise
from operator import itemgetter
from unittest.mock import patch

from tests.universes import UNIVERSES
from trainer.cases.single_case.case import Case
from trainer.cases.single_case.shipped import case_named, case_names
from trainer.cases.solved.universe_cache import Universes
from trainer.circuit.elements import OPEN_OHM
from trainer.circuit.fault import SIZES, Size
from trainer.commands.call.this_machine import universe_folder
from trainer.reasoning.advice.trade_order import Stage, stage_of
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.finding import truth_of
from trainer.reasoning.universe.questions import Question
from trainer.reasoning.verdict.belief import FindingKey, finding_key

ALONG_PATHS = (
    "green_pin_on_two", "thick_oil_on_eight", "crushed_under_the_cover", "stuck_with_varnish", "faint_hum_on_three",
    "bank_feed_on_the_block",
)  # fmt: skip
UP_TO = (Stage.HEAR, Stage.CODES, Stage.OUTSIDE)
EARLY_AT_MOST, MOVED_AT_MOST = 0.08, 0.02
"""How far a finding may move: early, some faults sit where a plate is about to lift, and the level falls by ten decibels
within a hundredth of the severity. No grid that is affordable follows that, and a measurement makes up for it."""

Findings = dict[FindingKey, float]


def one_of_every_kind() -> list[str]:
    """Return a shipped case of every kind on every engine, those of ALONG_PATHS first, an engine at 20 °C before."""
    every = [*ALONG_PATHS, *sorted(case_names(), key=lambda name: abs(case_named(name).temperature_c - 20.0))]
    chosen = dict.fromkeys(ALONG_PATHS)
    covered = {about for name in chosen for about in _about(case_named(name))}
    for name in every:
        new = _about(case_named(name)) - covered
        if new:
            chosen[name] = None
            covered |= new
    return list(chosen)


def _about(case: Case) -> set[tuple[str, str]]:
    return {(case.profile.name, str(fault.kind)) for fault in case.faults}


def finer(size: Size) -> Size:
    """Return a kind's severities with another one to reason with between every two, in the middle of its stretch."""
    if size.types:
        return size
    more = _middles((*size.severities, *size.between), size.beside_ohm)
    shared = (*size.shared, *_middles(size.shared, size.beside_ohm))
    return size._replace(shared=shared, between=(*size.between, *more))


def _middles(severities: Sequence[float], beside: float) -> list[float]:
    ends = sorted(one + beside for one in severities if 0.0 < one < OPEN_OHM)
    return [(one * other) ** 0.5 - beside for one, other in pairwise(ends)]


def steps_of(name: str, reasoner: Reasoner) -> list[list[Question]]:
    """Return what has been asked by each step at which beliefs are compared, all but everything offered."""
    first = [
        [(test, question) for question in test.questions if question == question.first_try()] for test in reasoner.tests
    ]
    steps = [[q for asked in first for test, q in asked if stage_of(test) <= stage] for stage in UP_TO]
    if name in ALONG_PATHS:
        tests = {test.name: test for test in reasoner.tests}
        done = [tests[step.name] for step in reasoner.best_path if step.name in tests]
        steps += [[q for test in done[: count + 1] for q in test.questions] for count in range(len(done))]
    return steps


def beliefs(reasoner: Reasoner, steps: Sequence[Sequence[Question]]) -> Iterator[Findings]:
    """Yield all findings after each step, and after everything that is offered."""
    for questions in steps:
        yield reasoner.belief(reasoner.truth_answers(questions)).findings
    yield reasoner.everything.findings


def moved(one: Findings, other: Findings) -> tuple[float, FindingKey]:
    """Return the largest change of any finding, and which it is."""
    return max(
        ((abs(one.get(key, 0.0) - other.get(key, 0.0)), key) for key in one.keys() | other.keys()), key=itemgetter(0)
    )


def said(finding: FindingKey) -> str:
    """Return a finding in the program's own names."""
    return ", ".join(" ".join(map(str, claim)) for claim in finding) or "the circuit passes"


def main() -> int:
    """Print each case's figures; return 1 where a finding moves too far."""
    begun, engines = time.process_time(), sys.argv[1:]
    names = [name for name in one_of_every_kind() if not engines or case_named(name).profile.name in engines]
    usual: dict[str, tuple[list[list[Question]], list[Findings]]] = {}
    for name in names:
        reasoner = UNIVERSES.reasoner(case_named(name))
        steps = steps_of(name, reasoner)
        usual[name] = steps, list(beliefs(reasoner, steps))
    early, later = [], []
    with patch.dict(SIZES, {kind: finer(size) for kind, size in SIZES.items()}):
        universes = Universes(universe_folder())
        for name, (steps, before) in usual.items():
            case = case_named(name)
            true = finding_key(truth_of(case.faults))
            after = list(beliefs(universes.reasoner(case), steps))
            changes = list(map(moved, before, after))
            early += changes[: len(UP_TO)]
            later += changes[len(UP_TO) :]
            most, finding = max(changes, key=itemgetter(0))
            chances = ", ".join(
                f"{one.get(true, 0.0):.3f}/{other.get(true, 0.0):.3f}" for one, other in zip(before, after, strict=True)
            )
            print(f"{name}: the truth {chances}; {most:.4f} at most, of {said(finding)}", flush=True)
    worst = [max(change for change, _finding in each) for each in (early, later)]
    small = sum(change <= MOVED_AT_MOST for change, _finding in early)
    print(f"{len(names)} cases, {time.process_time() - begun:.0f} s of one core")
    print(
        f"heard, codes read, measured outside: {worst[0]:.4f} at most, allowed {EARLY_AT_MOST}; {small} of {len(early)}"
    )
    print(f"beliefs move by at most {MOVED_AT_MOST}. With everything offered, and along paths: {worst[1]:.4f} at most")
    return int(worst[0] > EARLY_AT_MOST or worst[1] > MOVED_AT_MOST)


if __name__ == "__main__":
    sys.exit(main())
