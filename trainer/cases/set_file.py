"""Set files: packed with every case and profile they name, and read from the pack alone."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator, Mapping
from pathlib import Path

from trainer.cases.case import Case
from trainer.cases.case_code import CodeError, drawn_from, short_digest
from trainer.cases.case_file import case_from
from trainer.cases.case_set import (
    CaseSet,
    DebriefOpens,
    Draw,
    Listed,
    Mode,
    Policy,
    Seeds,
    SetPack,
    Support,
)  # fmt: skip
from trainer.cases.drawing import case_of_code, drawable, is_group
from trainer.cases.forms import filled
from trainer.cases.profile_file import profile_from
from trainer.cases.set_form import DrawForm, ListedForm, PolicyForm, SetForm
from trainer.cases.set_shares import wrong_shares
from trainer.cases.shipped import case_named, case_names, finder_beside, profile_names, scenarios_folder
from trainer.cases.yaml_text import YamlText, read_text
from trainer.circuit.elements import Location
from trainer.circuit.fault_space import single_faults
from trainer.circuit.profile import PASSES, Profile
from trainer.errors import Problem, ProblemsFoundError
from trainer.words import text

Path_ = tuple[str | int, ...]


def read_set(path: Path) -> CaseSet:
    """Read a set file and everything that it names; raises ProblemsFoundError."""
    return set_of(pack_from(read_text(path), path.name, path.parent), path.name)


def pack_from(content: str, file: str, folder: Path) -> SetPack:
    """Return a set's text with the texts of its cases and profiles, looked for in a folder and among the shipped ones.

    Raises ProblemsFoundError with every name that leads nowhere.
    """
    parsed = YamlText(content, file)
    form = filled(SetForm, parsed)
    cases: dict[str, str] = {}
    profiles: dict[str, str] = {}
    problems: list[Problem] = []

    def wrong(path: Path_, found: str, allowed: str, mend: str) -> None:
        problems.append(Problem(file, parsed.line_of(list(path)), ".".join(map(str, path)), repr(found), allowed, mend))

    def add_profile(path: Path_, name: str) -> None:
        for near in (folder, folder / "profiles", folder.parent / "profiles", scenarios_folder() / "profiles"):
            if (near / f"{name}.yaml").is_file():
                profiles[name] = read_text(near / f"{name}.yaml")
                return
        wrong(path, name, ", ".join(profile_names()), text("file.name_a_profile"))

    for row, line in enumerate(form.cases):
        here: Path_ = ("cases", row)
        if isinstance(line, DrawForm):
            for place, name in enumerate(line.profiles):
                add_profile((*here, "profiles", place), name)
            for name in _pool(line, {name: case_named(name) for name in case_names()}):
                cases[name] = read_text(scenarios_folder() / "cases" / f"{name}.yaml")
            continue
        found = _case_text(line.case, folder)
        if found is None:
            profile = _profile_of_code(line.case)
            if profile is None:
                wrong(
                    (*here, "case"), line.case, text("file.a_shipped_case_a_file_or_a_case_code"), text("set.name_it")
                )
            else:
                add_profile((*here, "case"), profile)
            continue
        cases[line.case] = found
        name = YamlText(found, line.case).value.get("profile")
        if isinstance(name, str):
            add_profile((*here, "case"), name)
    if problems:
        raise ProblemsFoundError(problems)
    return SetPack(content, cases, profiles)


def _case_text(named: str, folder: Path) -> str | None:
    """Return the text of a case that a set names: a file beside it, or a shipped one; None for neither."""
    with contextlib.suppress(OSError):  # a name too long for a file is none
        for path in (folder / named, folder / f"{named}.yaml", folder / "cases" / f"{named}.yaml"):
            if path.suffix in (".yaml", ".yml") and path.is_file():
                return read_text(path)
    return read_text(scenarios_folder() / "cases" / f"{named}.yaml") if named in case_names() else None


def _profile_of_code(code: str) -> str | None:
    try:
        digest = drawn_from(code).digest
    except CodeError:
        return None
    known = ((name, finder_beside(Path())(name)) for name in profile_names())
    return next((name for name, profile in known if short_digest(profile.digest) == digest), None)


def _pool(line: DrawForm, cases: Mapping[str, Case]) -> list[str]:
    """Return which of some cases a draw from finished cases can give."""
    if line.source != "shipped":
        return []
    return [
        name for name, case in sorted(cases.items())
        if case.profile.name in line.profiles
        and case.difficulty in line.difficulty
        and case.right_answer is None
        and (line.places is None or _place_of(case) in line.places)
        and (line.kinds is None or all(fault.kind in line.kinds for fault in case.faults))
    ]  # fmt: skip


def _place_of(case: Case) -> str:
    return str(case.faults[0].location) if case.faults else PASSES


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
    problems = [
        Problem(file, parsed.line_of(list(path)), ".".join(map(str, path)), found_, allowed, mend)
        for path, found_, allowed, mend in (*_contradictions(form, lines), *wrong_shares(found))
    ]
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
    pool = tuple(cases[name] for name in _pool(line, cases)) if line.source == "shipped" else None
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
        faults = [cases[name].faults[0] for name in _pool(line, cases) if cases[name].faults]
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


Contradiction = tuple[Path_, str, str, str]


def _contradictions(form: SetForm, lines: tuple[Listed | Draw, ...]) -> Iterator[Contradiction]:
    policy = form.policy
    if policy.opens and policy.closes and policy.opens >= policy.closes:
        found, allowed = policy.closes.isoformat(), text("set.after", moment=policy.opens.isoformat())
        yield ("policy", "closes"), found, allowed, text("set.move_a_date")
    if policy.mode is Mode.EXAM:
        yield from _against_exam(policy)
    if policy.debrief is DebriefOpens.AFTER_CLOSING and policy.closes is None:
        yield ("policy", "debrief"), policy.debrief, text("set.a_closing_date"), text("set.write_closes")
    if (form.seeds is Seeds.VERSIONS) != bool(form.versions):
        yield ("seeds",), form.seeds, text("set.versions_and_seeds"), text("set.write_versions")
    if form.draw_key is None and any(isinstance(line, Draw) for line in lines):
        yield ("draw_key",), text("file.missing"), text("set.a_key"), text("set.write_a_key")
    listed = [line.case for line in form.cases if isinstance(line, ListedForm)]
    for row, line in enumerate(form.cases):
        if isinstance(line, ListedForm) and listed.index(line.case) < sum(
            isinstance(before, ListedForm) for before in form.cases[:row]
        ):
            yield ("cases", row, "case"), line.case, text("set.each_once"), text("file.leave_one_of_them_out")
    learners = [one.learner for one in form.support]
    for row, learner in enumerate(learners):
        if learner in learners[:row]:
            yield ("support", row, "learner"), learner, text("set.each_once"), text("file.leave_one_of_them_out")
    for row, (draw, made) in enumerate(zip(form.cases, lines, strict=True)):
        if isinstance(draw, DrawForm) and isinstance(made, Draw):
            yield from _against_pool(row, draw, made)


def _against_exam(policy: PolicyForm) -> Iterator[Contradiction]:
    if policy.hints:
        yield ("policy", "hints"), "true", text("set.no_hints_in_exams"), text("set.take_it_out")
    if policy.debrief is DebriefOpens.AFTER_EACH:
        allowed = f"{DebriefOpens.AFTER_SET}, {DebriefOpens.AFTER_CLOSING}"
        yield ("policy", "debrief"), policy.debrief, allowed, text("set.take_one_of_these")
    if policy.trace not in (None, "off"):
        yield ("policy", "trace"), policy.trace, "off", text("set.trace_as_support")


def _against_pool(row: int, form: DrawForm, draw: Draw) -> Iterator[Contradiction]:
    here: Path_ = ("cases", row)
    if not draw.places and not (draw.passes and draw.shipped is None):
        every = {fault.kind for engine in draw.profiles for fault in single_faults(engine)}
        allowed = ", ".join(sorted(every & set(draw.kinds or every)))
        yield (*here, "draw"), text("set.an_empty_pool"), allowed, text("set.widen_it")
    elif draw.shipped is not None and len(draw.shipped) < draw.count:
        allowed = text("file.at_most", count=len(draw.shipped))
        yield (*here, "draw"), str(draw.count), allowed, text("set.widen_it")
