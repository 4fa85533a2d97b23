"""What to teach next: misconceptions by how often and how sure, each with two shipped cases to contrast."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from trainer.cases.single_case.case import Case
from trainer.cases.single_case.shipped import case_named, case_names
from trainer.records.class_report.sums import ClassSums, Confusion


@dataclass(frozen=True, slots=True)
class Lesson:
    """One misconception: how many wrong findings, the sum of their certainty, and two cases that tell them apart.

    `truth` and `said` are place and kind as they were most often confused; a case is "" where none is shipped.
    """

    misconception: str
    count: int
    weight: float
    truth: tuple[str, str]
    said: tuple[str, str]
    truth_case: str
    said_case: str


def lessons(sums: ClassSums) -> list[Lesson]:
    """Return lessons sorted by weight, the heaviest first, then by name."""
    confusions: dict[str, list[Confusion]] = {}
    for one in sums.confusions:
        confusions.setdefault(one.misconception, []).append(one)
    found = []
    for name, rows in confusions.items():
        commonest = max(rows, key=lambda row: (row.certainty, row.count))
        truth, said = (commonest.place, commonest.kinds), (commonest.said_place, commonest.said_kinds)
        count, weight = sum(row.count for row in rows), sum(row.certainty for row in rows)
        found.append(Lesson(name, count, weight, truth, said, *contrast(truth, said)))
    return sorted(found, key=lambda one: (-round(one.weight, 9), one.misconception))


def contrast(truth: tuple[str, str], said: tuple[str, str]) -> tuple[str, str]:
    """Return two shipped cases, one like the truth, one like what was said, on the same engine where there are."""
    cases = [case_named(name) for name in case_names()]
    firsts, seconds = list(_like(truth, cases)), list(_like(said, cases))
    for first in firsts:
        for second in seconds:
            if second.profile.name == first.profile.name and second.name != first.name:
                return first.name, second.name
    first_name = firsts[0].name if firsts else ""
    return first_name, next((one.name for one in seconds if one.name != first_name), "")


def _like(wanted: tuple[str, str], cases: Iterable[Case]) -> list[Case]:
    """Return cases with one fault of the same place and kind, else of the same place, the easiest first."""
    place, kind = wanted[0].partition("+")[0], wanted[1].partition("+")[0]
    ordered = sorted(cases, key=lambda case: (case.difficulty, case.name))
    if not place:
        return [case for case in ordered if not case.faults]
    there = [case for case in ordered if len(case.faults) == 1 and case.faults[0].location == place]
    return [case for case in there if case.faults[0].kind == kind] or there
