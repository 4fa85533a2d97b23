"""Limits the work that a set may cause: its cases, those of all its forms, and the engines to solve for them."""

from __future__ import annotations

from collections.abc import Iterator

from trainer.cases.drawing.random_case import temperatures_at
from trainer.cases.solved.universe_cache import UniverseKey, universe_key
from trainer.errors import Said, Sentence
from trainer.sets.case_set import CaseSet, Draw, Listed, Seeds
from trainer.sets.pack import FieldPath
from trainer.sets.set_schema import MOST_CASES

MOST_PROVED = 400
"""How many cases all forms of a set may have together: each is proved."""

MOST_UNIVERSES = 12
"""How many engines, each at each temperature, a set may need solved: four at every temperature that is drawn."""

LEARNERS_PROVED = 2
"""How many imaginary learners are proved, where each learner gets other draws."""


def form_count(case_set: CaseSet) -> int:
    """Return how many forms of a set are proved: one for all, one a version, or one for each imaginary learner."""
    if case_set.seeds is Seeds.SAME or not any(isinstance(line, Draw) for line in case_set.lines):
        return 1
    return len(set(case_set.versions)) if case_set.seeds is Seeds.VERSIONS else LEARNERS_PROVED


def limit_problems(case_set: CaseSet) -> Iterator[tuple[FieldPath, Said, Said, Said]]:
    """Yield field, what was found, what is allowed and the mend."""
    size, forms = case_set.size, form_count(case_set)
    if size > MOST_CASES:
        allowed = Sentence("file.at_most", count=MOST_CASES)
        yield ("cases",), Sentence("set.so_many_cases", n=size), allowed, Sentence("set.make_two")
    elif size * forms > MOST_PROVED:
        allowed, field = Sentence("file.at_most", count=MOST_PROVED), "versions" if case_set.versions else "cases"
        yield (field,), Sentence("set.so_many_in_forms", n=size * forms), allowed, Sentence("set.fewer_forms")
    universes = {key for line in case_set.lines for key in _universes(line)}
    if len(universes) > MOST_UNIVERSES:
        found, allowed = (
            Sentence("set.so_many_engines", n=len(universes)),
            Sentence("file.at_most", count=MOST_UNIVERSES),
        )
        yield ("cases",), found, allowed, Sentence("set.fewer_engines")


def _universes(line: Listed | Draw) -> Iterator[UniverseKey]:
    if isinstance(line, Listed):
        yield universe_key(line.case)
    elif line.shipped is not None:
        yield from map(universe_key, line.shipped)
    else:
        for profile in line.profiles:
            for level in line.difficulties:
                for temperature_c in temperatures_at(level):
                    yield profile.digest, temperature_c
