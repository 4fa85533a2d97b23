"""Whether every case of a set can be solved with what it offers, and heard."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from trainer.cases.case_proofs import inaudible, unsolvable
from trainer.cases.case_set import CaseSet, Draw, Seeds
from trainer.cases.set_drawing import items_of, version_of
from trainer.cases.universe_cache import Universes
from trainer.errors import Problem, WrongCallError
from trainer.words import text, told

MOST_TRIED = 400
PROVED_LEARNERS = ("learner 1", "learner 2")
"""Draws for each learner cannot be proved for everybody: two made-up learners stand for all."""


def set_problems(case_set: CaseSet, file: str, universes: Universes, told_: Callable[[str], None]) -> list[Problem]:
    """Return what keeps cases of a set from being worked: one problem for each case."""
    problems: list[Problem] = []
    proved: set[str] = set()
    per_learner = case_set.seeds is not Seeds.SAME and any(isinstance(line, Draw) for line in case_set.lines)
    for learner in _learners(case_set) if per_learner else PROVED_LEARNERS[:1]:
        try:
            items = items_of(case_set, learner)
        except WrongCallError as error:
            return [Problem(file, None, "cases", told(error), text("set.a_wider_pool"), text("set.widen_it"))]
        for item in items:
            if item.case.digest in proved:
                continue
            proved.add(item.case.digest)
            told_(text("set.proving", number=item.index, size=case_set.size))
            field = f"cases.{item.line}"
            if item.case.right_answer is None and unsolvable(item.case, universes) is not None:
                mend = text("set.offer_more")
                problems.append(Problem(file, None, field, text("set.unsolvable"), text("set.solvable"), mend))
            if any(inaudible(item.case)):
                mend = text("set.quieter")
                problems.append(Problem(file, None, field, text("set.inaudible"), text("set.audible"), mend))
    return problems


def _learners(case_set: CaseSet) -> Iterator[str]:
    """Yield made-up learners: two, or one for each version of the set."""
    if case_set.seeds is not Seeds.VERSIONS:
        yield from PROVED_LEARNERS
        return
    seen: set[str] = set()
    for number in range(MOST_TRIED):
        learner = f"learner {number}"
        if version_of(case_set, learner) not in seen:
            seen.add(version_of(case_set, learner))
            yield learner
