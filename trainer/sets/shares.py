"""Counts the circuit-passes and group faults of a set, and spreads the missing ones over its draws."""

from __future__ import annotations

import math
from collections.abc import Iterator

from trainer.cases.drawing.random_case import is_group
from trainer.cases.single_case.case import Case
from trainer.errors import Said, Sentence
from trainer.sets.case_set import CaseSet, Draw, Listed

MIXED_FROM = 4
"""A set of fewer cases is a lesson on one topic and needs no mix."""


def has_group_fault(case: Case) -> bool:
    """Return whether a case has a group fault."""
    return any(is_group(fault) for fault in case.faults)


def required_shares(case_set: CaseSet) -> tuple[int, int]:
    """Return how many circuit-passes and how many group faults a set must hold."""
    if case_set.size < MIXED_FROM:
        return 0, 0
    shares, size = case_set.shares, case_set.size
    return math.ceil(shares.circuit_passes * size - 1e-9), math.ceil(shares.groups * size - 1e-9)


def listed_shares(case_set: CaseSet) -> tuple[int, int]:
    """Return how many circuit-passes and group faults are listed by name."""
    listed = [line.case for line in case_set.lines if isinstance(line, Listed)]
    return sum(not case.faults for case in listed), sum(has_group_fault(case) for case in listed)


def drawn_shares(case_set: CaseSet) -> dict[int, tuple[int, int]]:
    """Return, for each line that draws, how many circuit-passes and group faults it must give.

    What the listed cases lack is spread over the draws that allow it, at most what each can take.
    """
    draws = {row: line for row, line in enumerate(case_set.lines) if isinstance(line, Draw)}
    (want_passes, want_groups), (has_passes, has_groups) = required_shares(case_set), listed_shares(case_set)
    passes = _spread(want_passes - has_passes, {row: _passes_in(draw) for row, draw in draws.items()})
    left = {row: min(draw.count - passes.get(row, 0), _groups_in(draw)) for row, draw in draws.items()}
    groups = _spread(want_groups - has_groups, left)
    return {row: (passes.get(row, 0), groups.get(row, 0)) for row in draws}


def _passes_in(draw: Draw) -> int:
    if not draw.passes:
        return 0
    return draw.count if draw.shipped is None else min(draw.count, sum(not case.faults for case in draw.shipped))


def _groups_in(draw: Draw) -> int:
    if not draw.groups:
        return 0
    return draw.count if draw.shipped is None else min(draw.count, sum(has_group_fault(case) for case in draw.shipped))


def _spread(count: int, room: dict[int, int]) -> dict[int, int]:
    given = dict.fromkeys(room, 0)
    while count > 0 and any(given[row] < room[row] for row in room):
        row = min((one for one in room if given[one] < room[one]), key=lambda one: given[one] / room[one])
        given[row] += 1
        count -= 1
    return given


def share_problems(case_set: CaseSet) -> Iterator[tuple[tuple[str | int, ...], Said, Said, Said]]:
    """Yield a problem where a set has too few circuit-passes or group faults."""
    drawn = drawn_shares(case_set).values()
    rows = zip(("circuit_passes", "groups"), required_shares(case_set), listed_shares(case_set), (0, 1), strict=True)
    for name, want, has, place in rows:
        given = has + sum(one[place] for one in drawn)
        if given < want:
            found = Sentence("set.so_many_of", count=given, n=case_set.size)
            yield ("shares", name), found, Sentence("set.at_least", count=want), Sentence("set.add_or_say", name=name)
