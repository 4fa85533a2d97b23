"""Register every kind of exercise: its subjects, how one is made, and the tasks that could come next."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from trainer.cases.drawing.practice_pool import Pool
from trainer.circuit.profile import PASSES, Profile
from trainer.errors import WrongCallError
from trainer.practice.course.practice_log import Task
from trainer.practice.course.skills import Skill, demand
from trainer.practice.course.slips import accident_of
from trainer.practice.exercises.code_exercises import code_exercise
from trainer.practice.exercises.difficulty_ranges import aim_of
from trainer.practice.exercises.ear_exercises import ANSWERS, what_it_sounds_like, which_slot, whose_hum
from trainer.practice.exercises.exercise_types import Exercise, Spec, spec_of, topic_of
from trainer.practice.exercises.job_card_exercises import find_the_slip
from trainer.practice.exercises.limit_exercises import limit_exercise
from trainer.practice.exercises.meter_exercises import meter_exercise
from trainer.practice.exercises.numbering_exercises import NUMBERS, numbering
from trainer.practice.exercises.reasoning_exercises import Reasoners, reasoning_exercise
from trainer.reasoning.universe.hearing import Heard


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of exercise: its skill, what it can be about, and which misconceptions each of those can show."""

    skill: Skill
    subjects: Mapping[str, tuple[str, ...]]


KINDS: Mapping[str, Kind] = {
    "ear": Kind(Skill.HEARING, {
        "which": ("firing_order", "counted_burst", "one_for_group"), "what": (), "hum": ("hum_for_circuit",),
        **{str(one): ("hum_for_circuit",) if one is Heard.VERY_FAINT else () for one in (
            Heard.EVEN, Heard.WEAK, Heard.DULL, Heard.VERY_FAINT, Heard.NOTHING)},
    }),
    "numbering": Kind(Skill.NUMBERING, {
        "order": ("firing_order", "counted_burst"), "counted": ("firing_order", "counted_burst"),
        "place": ("firing_order",), "shared": ("one_for_group",),
        "backwards": (),
    }),
    "codes": Kind(Skill.CODES, {"says": ("code_for_location",), "could": (), "old": ("code_of_another",)}),
    "meter": Kind(Skill.MEASURING, {"says": (), "where": ("wrong_side",), "slip": ("measured_connected",)}),
    "reasoning": Kind(Skill.REASONING, {"next": (), "stop": ("by_ear_alone",)}),
    "limits": Kind(Skill.LIMITS, {"still": ("insisted",), "shown": (), "after": ("insisted", "not_shown")}),
    "job_card": Kind(Skill.REASONING, {"slip": ()}),
}  # fmt: skip


def exercise_of(
    spec: Spec, profiles: Callable[[str], Profile], pools: Callable[[Profile], Pool], reasoners: Reasoners
) -> Exercise:
    """Make an exercise; raises WrongCallError for a kind, subject or engine that there is not."""
    if not _known(spec):
        raise WrongCallError("no_exercise", name=spec.name)
    try:
        profile = profiles(spec.profile)
    except (KeyError, FileNotFoundError) as error:
        raise WrongCallError("no_exercise", name=spec.name) from error
    if spec.kind == "numbering":
        return numbering(spec, profile)
    if spec.kind == "meter":
        return meter_exercise(spec, profile)
    pool = pools(profile)
    if spec.kind == "ear":
        return _of_the_ear(spec, pool)
    if spec.kind == "reasoning":
        return reasoning_exercise(spec, pool, reasoners)
    return {"codes": code_exercise, "limits": limit_exercise, "job_card": find_the_slip}[spec.kind](spec, pool)


def _of_the_ear(spec: Spec, pool: Pool) -> Exercise:
    if spec.subject == "which":
        return which_slot(spec, pool)
    if spec.subject == "hum":
        return whose_hum(spec, pool)
    return what_it_sounds_like(spec, pool, None if spec.subject == "what" else Heard(spec.subject))


def exists(name: str, engines: Sequence[str]) -> bool:
    """Return whether an exercise's name is valid for one of these engines."""
    try:
        spec = spec_of(name)
    except WrongCallError:
        return False
    return _known(spec) and spec.profile in engines


def _known(spec: Spec) -> bool:
    return spec.kind in KINDS and spec.subject in KINDS[spec.kind].subjects


def choices_ahead(spec: Spec) -> int:
    """Return how many choices an exercise has, as far as known before it is made."""
    if (spec.kind, spec.subject) == ("reasoning", "stop"):
        return 2
    if spec.kind == "ear" and spec.subject not in ("which", "hum"):
        return len(ANSWERS)
    return 2 if spec.easiest else 4


def task_ahead(spec: Spec) -> Task:
    """Return an exercise as a task to choose from, before it is made; its level is its difficulty."""
    kind, choices = KINDS[spec.kind], choices_ahead(spec)
    probes = kind.subjects[spec.subject]
    tagged = min(TAGGED.get((spec.kind, spec.subject), 1), choices - 1)
    return Task(
        kind=spec.kind,
        name=spec.name,
        topic=topic_of(spec),
        kind_class=FIXED_CLASS.get((spec.kind, spec.subject), FIXED_CLASS.get((spec.kind, ""), "")),
        demands=(demand(kind.skill, aim_of(spec), round(1.0 / choices, 2)),),
        probes=probes,
        accident=accident_of(tagged, choices - 1),
    )


FIXED_CLASS = {("numbering", ""): NUMBERS, ("limits", ""): PASSES, ("meter", "slip"): PASSES}
"""The class of exercises that are about one thing only; all others are about a fault that is not drawn yet."""

TAGGED = {("ear", "hum"): 2, ("codes", "says"): 3, ("codes", "old"): 2, ("limits", "still"): 3, ("limits", "after"): 2}
"""How many of three wrong choices show a misconception, where it is not one."""
