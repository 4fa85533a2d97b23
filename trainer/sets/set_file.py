"""Reads a set from its pack alone, so that a pack gives the same set on any computer."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from trainer.cases.drawing.coded_case import case_of_code
from trainer.cases.drawing.random_case import drawable, is_group
from trainer.cases.files.validation import validated
from trainer.cases.files.yaml_text import YamlText, read_text
from trainer.cases.profiles.profile_file import profile_from
from trainer.cases.single_case.case import Case
from trainer.cases.single_case.case_file import case_from
from trainer.cases.single_case.shipped import case_names
from trainer.circuit.elements import Location
from trainer.circuit.profile import PASSES, Profile
from trainer.errors import ProblemsFoundError
from trainer.sets.case_set import CaseSet, Draw, Listed, SetPack
from trainer.sets.checks import contradictions
from trainer.sets.pack import pack_from, shipped_pool
from trainer.sets.set_schema import FORMAT, DrawLine, ListedLine, SetFile
from trainer.sets.shares import share_problems
from trainer.sets.size_limits import limit_problems


def read_set(path: Path) -> CaseSet:
    """Read a set file and everything that it names; raises ProblemsFoundError."""
    return set_of(pack_from(read_text(path), path.name, path.parent), path.name)


def set_of(pack: SetPack, file: str) -> CaseSet:
    """Return the set in a pack, using only the pack; raises ProblemsFoundError with every problem."""
    parsed = YamlText(pack.content, file)
    form = validated(SetFile, parsed, FORMAT)
    profiles = {name: profile_from(content, f"{name}.yaml") for name, content in pack.profiles.items()}

    def profile_named(name: str) -> Profile:
        if name not in profiles:
            raise KeyError(tuple(profiles))
        return profiles[name]

    cases = {name: case_from(content, name, profile_named) for name, content in pack.cases.items()}
    lines = tuple(_line(line, cases, profiles) for line in form.cases)
    found = CaseSet(
        id=pack.id,
        name=form.name,
        title=form.title,
        lines=lines,
        seeds=form.seeds,
        versions=form.versions or (),
        draw_key=form.draw_key or "",
        policy=form.policy,
        support={item.learner: item for item in form.support},
        shares=form.shares,
        pack=pack,
    )
    # count shares only in a set within the limits: in a larger one counting takes too long
    wrong = [*contradictions(form, lines), *(list(limit_problems(found)) or share_problems(found))]
    problems = [parsed.problem(path, found_, allowed, mend) for path, found_, allowed, mend in wrong]
    if problems:
        raise ProblemsFoundError(problems)
    return found


def _line(line: ListedLine | DrawLine, cases: dict[str, Case], profiles: dict[str, Profile]) -> Listed | Draw:
    if isinstance(line, ListedLine):
        if line.case in cases:
            return Listed(cases[line.case], line.weight, own=line.case not in case_names())
        return Listed(case_of_code(line.case, list(profiles.values())), line.weight, own=False)
    engines = tuple(profiles[name] for name in line.profiles)
    kinds = frozenset(line.kinds or ())
    places = _places(line, engines, cases)
    pool = tuple(cases[name] for name in shipped_pool(line, cases)) if line.source == "shipped" else None
    every = [fault for engine in engines for level in line.difficulty for fault in drawable(engine, level)]
    return Draw(
        count=line.draw,
        profiles=engines,
        places=places,
        kinds=kinds,
        difficulties=line.difficulty,
        passes=(line.places is None and not kinds) or PASSES in (line.places or ()),
        groups=any(is_group(f) and f.location in places and (not kinds or f.kind in kinds) for f in every),
        weight=line.weight,
        shipped=pool,
    )


def _places(line: DrawLine, engines: tuple[Profile, ...], cases: Mapping[str, Case]) -> tuple[Location, ...]:
    """Return the places that a draw allows and at which it finds a fault of a few cylinders."""
    wanted = [place for place in Location if line.places is None or place in line.places]
    faults = [fault for engine in engines for level in line.difficulty for fault in drawable(engine, level)]
    if line.source == "shipped":
        faults = [cases[name].faults[0] for name in shipped_pool(line, cases) if cases[name].faults]
    there = {f.location for f in faults if not is_group(f) and (not line.kinds or f.kind in line.kinds)}
    return tuple(place for place in wanted if place in there)
