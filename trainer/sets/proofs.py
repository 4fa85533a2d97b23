"""Proves that every case of a set can be solved with its evidence, and that its decisive slots are audible."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from trainer.cases.profiles.engine_trial import engine_problem
from trainer.cases.solved.case_proofs import inaudible, unsolvable
from trainer.cases.solved.universe_cache import Universes, universe_key
from trainer.circuit.profile import Profile
from trainer.errors import Problem, Sentence, WrongCallError
from trainer.sets.case_set import CaseSet, Draw, Listed, Seeds
from trainer.sets.items import SetItem, items_of, version_of
from trainer.sets.size_limits import form_count
from trainer.words import text

MOST_TRIED = 400


def set_problems(case_set: CaseSet, file: str, universes: Universes, report: Callable[[str], None]) -> list[Problem]:
    """Return a problem for each case of a set that cannot be solved or heard; `report` takes a line for each case."""
    for row, line in enumerate(case_set.lines):
        for profile in _engines(line):
            wrong = engine_problem(profile)
            if wrong is not None:
                return [Problem(file, None, f"cases.{row}", *wrong)]
    try:
        distinct = distinct_items(case_set)
    except WrongCallError as error:
        found = Sentence(f"wrong.{error.key}", **error.values)
        return [Problem(file, None, "cases", found, Sentence("set.a_wider_pool"), Sentence("set.widen_it"))]
    problems: list[tuple[int, Problem]] = []
    # by engine and temperature, so that solved universes need not stay in memory
    for item in sorted(distinct, key=lambda item: repr(universe_key(item.case))):
        report(text("set.proving", number=item.index, size=case_set.size))
        field = f"cases.{item.line}"
        if item.case.right_answer is None and unsolvable(item.case, universes) is not None:
            mend = Sentence("set.offer_more")
            problems.append(
                (item.index, Problem(file, None, field, Sentence("set.unsolvable"), Sentence("set.solvable"), mend))
            )
        if any(inaudible(item.case)):
            mend = Sentence("set.quieter")
            found, allowed = Sentence("set.inaudible"), Sentence("set.audible")
            problems.append((item.index, Problem(file, None, field, found, allowed, mend)))
    return [problem for _index, problem in sorted(problems, key=lambda one: one[0])]


def distinct_items(case_set: CaseSet) -> tuple[SetItem, ...]:
    """Return the distinct cases in those forms of a set that `check` proves; raises WrongCallError for a small pool."""
    forms = [items_of(case_set, learner) for learner in _learners(case_set)]
    return tuple({item.case.digest: item for items in reversed(forms) for item in reversed(items)}.values())


def _engines(line: Listed | Draw) -> tuple[Profile, ...]:
    return (line.case.profile,) if isinstance(line, Listed) else line.profiles


def _learners(case_set: CaseSet) -> Iterator[str]:
    """Yield the names of imaginary learners, one for each form of the set that is proved."""
    forms = form_count(case_set)
    if case_set.seeds is not Seeds.VERSIONS or forms == 1:
        yield from (f"learner {number}" for number in range(1, forms + 1))
        return
    seen: set[str] = set()
    for number in range(MOST_TRIED):
        learner = f"learner {number}"
        if version_of(case_set, learner) not in seen:
            seen.add(version_of(case_set, learner))
            yield learner
