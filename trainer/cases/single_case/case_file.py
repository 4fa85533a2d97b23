"""Reads and checks case files against their profile, and builds the `Case`."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Annotated, Literal

from annotated_types import Interval, Len
from pydantic import Discriminator, Tag

from trainer.cases.files.validation import validated
from trainer.cases.files.yaml_text import YamlText, read_text
from trainer.cases.profiles.profile_checks import PRIOR_NAMES, prior_sum_problems, unknown_languages, with_later_places
from trainer.cases.profiles.profile_schema import MOST_NAMES
from trainer.cases.single_case.case import Case, CaseWords, StoredCode
from trainer.circuit.codes import FMI
from trainer.circuit.constraints import Name, Title
from trainer.circuit.fault import Fault
from trainer.circuit.fault_space import fits, scopes_at, sides_at
from trainer.circuit.faults import KINDS
from trainer.circuit.harness import circuit_of
from trainer.circuit.profile import Profile
from trainer.errors import Problem, ProblemsFoundError, Said, Sentence
from trainer.instruments.bench_tests import Operation, with_what_belongs
from trainer.reasoning.universe.complaint import Complaint
from trainer.sound.render import Bed
from trainer.sound.room import in_hall

FORMAT = "case/1"

SEVERITY_RANGE = {
    "none": (0.0, 1e9),
    "ohm": (0.0, 1e9),
    "degree Celsius": (-30.0, 150.0),
    "share of the turns": (0.01, 0.94),
    "share of the supply": (0.01, 1.0),
    "times the resistance": (0.1, 10.0),
    "times the source resistance": (1.0, 1000.0),
    "times the battery's resistance": (0.1, 100.0),
    "times the viscous loss": (0.01, 1e4),
    "newton at 0 °C": (0.0, 2000.0),
    "times the lift": (0.5, 4.0),
}
"""Allowed range of a severity by its unit: beyond it, the fault would be another one or could not be solved."""


@dataclass(frozen=True, slots=True)
class StaysOpen:
    """Marks a case whose evidence is not meant to decide, with the answer that is right then."""

    right_answer: Annotated[tuple[Fault, ...], Len(0, 2)]


def _evidence_kind(value: object) -> str:
    return "tagged-list" if isinstance(value, list) else "tagged-all"


Evidence = Annotated[
    Annotated[Literal["all"], Tag("tagged-all")]
    | Annotated[tuple[str, ...], Len(0, len(Operation)), Tag("tagged-list")],
    Discriminator(_evidence_kind),
]


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseFile:
    """Everything that a case file may contain: the engine by name, and `all` for every test."""

    name: Name
    title: Title
    story: Annotated[str, Len(20, 600)]
    profile: Name
    faults: Annotated[tuple[Fault, ...], Len(0, 2)]
    temperature_c: Annotated[float, Interval(ge=-30, le=120)] = 20.0
    bed: Bed = field(default_factory=Bed)
    room: Literal["bay", "hall"] = "bay"
    evidence: Evidence = "all"
    stored_codes: Annotated[tuple[StoredCode, ...], Len(0, 8)] = ()
    takeaway: Annotated[str, Len(10, 300)]
    seed: Annotated[int, Interval(ge=0, lt=2**31)]
    difficulty: Annotated[int, Interval(ge=1, le=3)]
    priors: Annotated[Mapping[str, Annotated[float, Interval(ge=0, le=1)]], Len(0, MOST_NAMES)] | None = None
    stays_open: StaysOpen | None = None
    complaint: Complaint | None = None
    translations: Annotated[Mapping[Annotated[str, Len(2, 8)], CaseWords], Len(0, 20)] | None = None


ProfileFinder = Callable[[str], Profile]
"""Returns a profile by its name; raises KeyError, whose argument lists the known names."""


def case_from(content: str, file: str, profile_named: ProfileFinder) -> Case:
    """Return the case in a file's content; raises ProblemsFoundError with every problem in it."""
    parsed = YamlText(content, file)
    form = validated(CaseFile, parsed, FORMAT)
    try:
        profile = profile_named(form.profile)
    except KeyError as error:
        allowed = ", ".join(error.args[0])
        raise ProblemsFoundError(
            [
                Problem(
                    file,
                    parsed.line_of(["profile"]),
                    "profile",
                    repr(form.profile),
                    allowed,
                    Sentence("file.name_a_profile"),
                )
            ]
        ) from error
    problems = [
        parsed.problem(path, found, allowed, mend) for path, found, allowed, mend in _contradictions(form, profile)
    ]
    if problems:
        raise ProblemsFoundError(problems)
    return Case(
        name=form.name,
        title=form.title,
        story=form.story,
        profile=in_hall(profile) if form.room == "hall" else profile,
        faults=form.faults,
        temperature_c=form.temperature_c,
        bed=form.bed,
        evidence=with_what_belongs(Operation if form.evidence == "all" else map(Operation, form.evidence)),
        stored=form.stored_codes,
        takeaway=form.takeaway,
        seed=form.seed,
        difficulty=form.difficulty,
        priors=None if form.priors is None else with_later_places(form.priors),
        right_answer=None if form.stays_open is None else form.stays_open.right_answer,
        complaint=form.complaint,
        translations=tuple((form.translations or {}).items()),
    )


def read_case(path: Path, profile_named: ProfileFinder) -> Case:
    """Read a case file; raises ProblemsFoundError."""
    return case_from(read_text(path), path.name, profile_named)


Contradiction = tuple[list[str | int], Said, Said, Said]


def _contradictions(form: CaseFile, profile: Profile) -> Iterator[Contradiction]:
    for row, item in enumerate(form.faults):
        yield from _against_profile(["faults", row], item, profile)
    for row, item in enumerate(form.stays_open.right_answer if form.stays_open else ()):
        yield from _against_profile(["stays_open", "right_answer", row], item, profile)
    if form.priors is not None:
        yield from _wrong_priors(form.priors)
    if len(form.faults) == 2:
        first, second = form.faults
        if (first.location, set(first.cylinders)) == (second.location, set(second.cylinders)):
            yield (
                ["faults", 1],
                Sentence("file.the_place_of_fault_1"),
                Sentence("file.another_place_or_cylinder"),
                Sentence("file.leave_one_of_them_out"),
            )
    yield from _wrong_codes(form.stored_codes, profile)
    for path, found, allowed, mend in unknown_languages(form.translations or ()):
        yield [*path], found, allowed, mend
    if form.evidence != "all":
        yield from _wrong_evidence(form.evidence)


def _wrong_codes(stored_codes: Sequence[StoredCode], profile: Profile) -> Iterator[Contradiction]:
    for row, stored in enumerate(stored_codes):
        if stored.cylinder not in profile.cylinders:
            allowed = Sentence("file.one_to", last=len(profile.cylinders))
            yield (
                ["stored_codes", row, "cylinder"],
                str(stored.cylinder),
                allowed,
                Sentence("file.name_a_cylinder_of_the_profile"),
            )
        if stored.sensed not in FMI:
            yield (
                ["stored_codes", row, "sensed"],
                stored.sensed,
                Sentence("file.a_code_of_one_cylinder"),
                Sentence("file.take_open_over_or_tripped"),
            )


def _wrong_evidence(evidence: Sequence[str]) -> Iterator[Contradiction]:
    for row, test in enumerate(evidence):
        if test not in set(Operation):
            mend = Sentence("file.name_a_test_of_the_list_or_write_all")
            yield ["evidence", row], repr(test), ", ".join(Operation), mend
    if Operation.ACTUATION_TEST not in evidence:
        yield (
            ["evidence"],
            Sentence("file.no_actuation_test"),
            Sentence("file.a_list_with_actuation_test"),
            Sentence("file.add_it_the_case_is_heard"),
        )


def _wrong_priors(priors: Mapping[str, float]) -> Iterator[Contradiction]:
    if set(with_later_places(priors)) != PRIOR_NAMES:
        odd = ", ".join(sorted(set(with_later_places(priors)) ^ PRIOR_NAMES))
        known = ", ".join(sorted(PRIOR_NAMES))
        yield ["priors"], Sentence("file.odd", names=odd), known, Sentence("file.price_each_once")
        return
    for path, found, allowed, mend in prior_sum_problems(priors):
        yield [*path], found, allowed, mend


def _against_profile(here: list[str | int], item: Fault, profile: Profile) -> Iterator[Contradiction]:
    unknown = [n for n in item.cylinders if n not in profile.cylinders]
    if unknown:
        yield (
            [*here, "cylinders"],
            str(unknown),
            Sentence("file.one_to", last=len(profile.cylinders)),
            Sentence("file.name_cylinders_of_the_profile"),
        )
        return
    rule = KINDS[item.kind]
    if item.location not in rule.places:
        yield [*here, "location"], item.location, ", ".join(rule.places), Sentence("file.place_for", kind=item.kind)
        return
    sides = sides_at(item.kind, item.location)
    if item.side not in sides:
        known = tuple(Sentence("file.no_side") if side is None else side for side in sides)
        mend = Sentence("file.write_the_side_or_leave_it_out_where_there_is_no")
        yield [*here, "side"], str(item.side), known, mend
        return
    scopes = scopes_at(profile, item.kind, item.location, item.side)
    if item.cylinders not in scopes:
        shown = "; ".join(",".join(map(str, scope)) for scope in scopes[:12])
        mend = Sentence("file.name_every_cylinder_behind_the_segment")
        yield [*here, "cylinders"], str(list(item.cylinders)), shown, mend
        return
    if item.part is not None and item.part not in rule.places[item.location]:
        parts = ", ".join(rule.places[item.location])
        yield [*here, "part"], item.part, parts, Sentence("file.take_one_of_these_parts")
        return
    least, most = SEVERITY_RANGE[rule.unit]
    if item.severity is not None and not least <= item.severity <= most:
        allowed = Sentence("file.from_to", least=least, most=most)
        yield [*here, "severity"], str(item.severity), allowed, Sentence("file.give", allowed=allowed)
        return
    if not fits(circuit_of(profile), item):
        yield (
            here,
            Sentence("file.kind_at", kind=item.kind, place=item.location),
            Sentence("file.a_segment_of_the_profile"),
            Sentence("file.see_the_profile_s_connectors"),
        )
