"""Set files: read from a pack alone, so that a set is the same wherever its pack is."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from trainer.cases.drawing.coded_case import case_of_code
from trainer.cases.drawing.random_case import drawable, is_group
from trainer.cases.files.forms import filled
from trainer.cases.files.yaml_text import YamlText, read_text
from trainer.cases.profiles.profile_file import profile_from
from trainer.cases.single_case.case import Case
from trainer.cases.single_case.case_file import case_from
from trainer.cases.single_case.shipped import case_names
from trainer.circuit.elements import Location
from trainer.circuit.profile import PASSES, Profile
from trainer.errors import ProblemsFoundError
from trainer.sets.bounds import beyond_limits
from trainer.sets.case_set import CaseSet, DebriefOpens, Draw, Listed, Mode, Policy, SetPack, Support
from trainer.sets.checks import contradictions
from trainer.sets.form import DrawForm, ListedForm, PolicyForm, SetForm
from trainer.sets.pack import pack_from, pool_of
from trainer.sets.shares import wrong_shares


def read_set(path: Path) -> CaseSet:
    """Read a set file and everything that it names; raises ProblemsFoundError."""
    return set_of(pack_from(read_text(path), path.name, path.parent), path.name)


def set_of(pack: SetPack, file: str) -> CaseSet:
    """Return the set that a pack holds, from nothing but the pack; raises ProblemsFoundError with every problem."""
    parsed = YamlText(pack.content, file)
    form = filled(SetForm, parsed)
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
        versions=tuple(form.versions or ()),
        draw_key=form.draw_key or "",
        policy=_policy(form.policy),
        support={item.learner: Support(**item.model_dump()) for item in form.support},
        shares=(form.shares.circuit_passes, form.shares.groups),
        pack=pack,
    )
    # shares are counted only for a set that is not too large to count them
    wrong = [*contradictions(form, lines), *(list(beyond_limits(found)) or wrong_shares(found))]
    problems = [parsed.problem(path, found_, allowed, mend) for path, found_, allowed, mend in wrong]
    if problems:
        raise ProblemsFoundError(problems)
    return found


def _line(line: ListedForm | DrawForm, cases: dict[str, Case], profiles: dict[str, Profile]) -> Listed | Draw:
    if isinstance(line, ListedForm):
        if line.case in cases:
            return Listed(cases[line.case], line.weight, own=line.case not in case_names())
        return Listed(case_of_code(line.case, list(profiles.values())), line.weight, own=False)
    engines = tuple(profiles[name] for name in line.profiles)
    kinds = frozenset(line.kinds or ())
    places = _places(line, engines, cases)
    pool = tuple(cases[name] for name in pool_of(line, cases)) if line.source == "shipped" else None
    every = [fault for engine in engines for level in line.difficulty for fault in drawable(engine, level)]
    return Draw(
        count=line.draw,
        profiles=engines,
        places=places,
        kinds=kinds,
        difficulties=tuple(line.difficulty),
        passes=(line.places is None and not kinds) or PASSES in (line.places or ()),
        groups=any(is_group(f) and f.location in places and (not kinds or f.kind in kinds) for f in every),
        weight=line.weight,
        shipped=pool,
    )


def _places(line: DrawForm, engines: tuple[Profile, ...], cases: Mapping[str, Case]) -> tuple[Location, ...]:
    """Return the places that a draw allows and at which it finds a fault of a few cylinders."""
    wanted = [place for place in Location if line.places is None or place in line.places]
    faults = [fault for engine in engines for level in line.difficulty for fault in drawable(engine, level)]
    if line.source == "shipped":
        faults = [cases[name].faults[0] for name in pool_of(line, cases) if cases[name].faults]
    there = {f.location for f in faults if not is_group(f) and (not line.kinds or f.kind in line.kinds)}
    return tuple(place for place in wanted if place in there)


def _policy(form: PolicyForm) -> Policy:
    """Fill in what a policy leaves to its mode."""
    exam = form.mode is Mode.EXAM
    return Policy(
        mode=form.mode,
        opens=form.opens,
        closes=form.closes,
        tries=form.tries if form.tries is not None or not exam else 1,
        counts=form.counts,
        plays=form.plays,
        readings=form.readings,
        bench_minutes=form.bench_minutes,
        clock_minutes=form.clock_minutes,
        hints=form.hints if form.hints is not None else not exam,
        trace=form.trace or ("off" if exam else "fading"),
        certainty_weight=form.certainty_weight,
        debrief=form.debrief or _debrief(form),
        order=form.order,
        passes_at=form.passes_at,
    )


def _debrief(form: PolicyForm) -> DebriefOpens:
    """Return when debriefs open where a set does not say: an exam's not before everybody has handed in."""
    if form.mode is not Mode.EXAM:
        return DebriefOpens.AFTER_EACH
    return DebriefOpens.AFTER_SET if form.closes is None else DebriefOpens.AFTER_CLOSING
