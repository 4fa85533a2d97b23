"""The best path as lines of text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from trainer.instruments.bench_tests import BenchTestKind
from trainer.practice.reports.attempt_lines import test_text
from trainer.reasoning.advice.planning import Step
from trainer.reasoning.universe.finding import Claim
from trainer.words import capital, percent, text


def path_lines(path: Sequence[Step], truth: Sequence[Claim]) -> Iterator[str]:
    """Yield a path's steps; where it leads to a fault and ends without a repair, say that it does not prove it."""
    for step in path:
        yield text(
            "debrief.best_step",
            minutes=step.minutes,
            test=capital(test_text(step.name)),
            bits=step.bits,
            percent=percent(step.belief),
        )
    if ends_open(path, truth):
        yield text("debrief.best_open")


def ends_open(path: Sequence[Step], truth: Sequence[Claim]) -> bool:
    """Tell whether a path to a fault ends without its repair."""
    return bool(truth) and path[-1].name.kind is not BenchTestKind.REPAIR_AND_RETEST
