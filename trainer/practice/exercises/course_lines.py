"""Practice as lines of text: what comes next and why, an exercise, what was right, and a learner's progress."""

from __future__ import annotations

import math
from collections.abc import Sequence

from trainer.practice.course.ability import Ability, right_chance
from trainer.practice.course.next_task import counted
from trainer.practice.course.practice_log import CASE, Learner, Task, abilities_on
from trainer.practice.course.skills import Skill
from trainer.practice.course.slips import FOUND_FROM
from trainer.practice.course.waiting import GAPS_DAYS, Waiting
from trainer.practice.exercises.exercise_kinds import KINDS
from trainer.practice.exercises.exercise_types import Exercise
from trainer.practice.exercises.rematch import REMATCH
from trainer.practice.reports.word_limit import MOST_WORDS, word_count
from trainer.reasoning.verdict.score import calibration
from trainer.words import capital, text

STEP_EDGES = (-1.2, -0.3, 0.6, 1.5)
"""Difficulties between the five steps that are shown, in logits."""

FEW = 8
"""Fewer answers than this say nothing yet."""

LOW, STEADY, STRONG = -1.0, 0.3, 1.5
"""From which ability on a skill is called so, in logits."""


def difficulty_step(task: Task) -> int:
    """Return how hard a task is in five steps: by the chance that a learner of middle ability gets it right."""
    chance = math.prod(float(right_chance(0.0, one.difficulty)) for one in task.demands if counted(one, task))
    logit = math.log((1.0 - chance) / chance)
    return 1 + sum(logit > edge for edge in STEP_EDGES)


def task_line(task: Task) -> str:
    """Return what a task is and how hard, without giving anything of it away."""
    return f"{capital(text(f'task.{task.kind}'))} · {text('course.difficulty', step=difficulty_step(task))}"


def why_line(why: str, about: str, kind: str) -> str:
    """Return in one line why a task was chosen; what would tell a case's fault, or an answer, is left out."""
    if not why:
        return text("why.asked")
    if why == REMATCH:
        first, second, number, count = about.split()
        names = {"first": text(f"heard.{first}"), "second": text(f"heard.{second}")}
        return text("why.rematch", number=number, count=count, **names)
    if kind == CASE:
        return text(f"why.case.{why}")
    if why in ("sure_wrong", "revisit"):
        return text(f"why.{why}", about=topic_text(about))
    return text(f"why.{why}", about=text(f"skill.{about if why == 'weakest' else KINDS[kind].skill}"))


def topic_text(topic: str) -> str:
    """Return what a miss is kept under in words."""
    kind, _colon, subject = topic.partition(":")
    return text(f"class.{subject}") if kind == CASE else f"{text(f'task.{kind}')}: {text(f'subject.{kind}.{subject}')}"


def reveal_lines(exercise: Exercise, choice: int) -> list[str]:
    """Return what was right and why, and why what was chosen is not; then the rule.

    What would make it too long to read at a glance follows under a head of its own.
    """
    chosen, right = exercise.choices[choice], exercise.choices[exercise.right]
    rule = text("course.rule", rule=exercise.rule)
    if choice == exercise.right:
        return [text("course.right"), capital(right.why), rule]
    first, why, reason = text("course.wrong", said=right.said), capital(chosen.why), capital(right.why)
    if word_count(first, why, reason, rule) <= MOST_WORDS:
        return [first, why, reason, rule]
    if word_count(first, why, rule) <= MOST_WORDS:
        return [first, why, rule, text("debrief.show"), reason]
    return [first, why, text("debrief.show"), reason, rule]


def ability_text(ability: Ability) -> str:
    """Return in plain words how able a learner is in a skill."""
    if ability.answers < FEW:
        return text("skill.beginning")
    if ability.mean < STEADY:
        return text("skill.low" if ability.mean < LOW else "skill.growing")
    return text("skill.steady" if ability.mean < STRONG else "skill.strong")


def progress_lines(learner: Learner, day: float) -> list[str]:
    """Return a learner's progress: each skill with its counts, what waits, ideas to look at again, certainty."""
    lines = [text("progress.skills")]
    for skill, ability in abilities_on(learner, day).items():
        lines.append(f"  {skill_line(skill, ability)}")
        lines.append(f"      {text(f'skill.{skill}.what')}")
    lines += waiting_lines(learner.waiting, day)
    for head, parts in (("progress.ideas", ideas_of(learner)), ("progress.certainty", sure_lines(learner))):
        if parts:
            lines += [text(head), *(f"  {one}" for one in parts)]
    return lines


def skill_line(skill: Skill, ability: Ability) -> str:
    """Return one skill with its counts, and how sure the estimate is once there is one."""
    counts = text("progress.counts", right=ability.right, count=ability.answers)
    parts = [f"{capital(text(f'skill.{skill}'))}: {counts}", ability_text(ability)]
    if ability.answers >= FEW:
        low, high = ability.interval
        parts.append(text("progress.interval", mean=ability.mean, low=low, high=high))
    return " · ".join(parts)


def waiting_lines(waiting: Sequence[Waiting], day: float) -> list[str]:
    """Return what waits to be revisited, with its time."""
    due = sum(one.due(day) for one in waiting)
    lines = [text("progress.waits", count=len(waiting), due=due)]
    for one in waiting:
        left = one.day + GAPS_DAYS[one.stage] - day
        when = text("progress.waits.now") if one.due(day) else _in_days(max(math.ceil(left), 1))
        sure = f" {text('progress.waits.sure')}" if one.sure else ""
        lines.append("  " + text("progress.waits.line", what=capital(topic_text(one.topic)), when=when) + sure)
    return lines


def _in_days(days: int) -> str:
    return text("progress.waits.day") if days == 1 else text("progress.waits.days", n=days)


def ideas_of(learner: Learner) -> list[str]:
    """Return the misconceptions that are likely held, in words."""
    held = [name for name, chance in learner.slips.items() if chance >= FOUND_FROM]
    return [capital(text(f"misconception.{name}")) for name in sorted(held)]


def certainties_of(learner: Learner) -> dict[float, tuple[int, float]]:
    """Return how often each certainty was said and the share that was right, lessons that were worked aside."""
    return calibration([(one.certainty, one.right) for one in learner.entries if not one.lesson or one.answers])


def sure_lines(learner: Learner) -> list[str]:
    """Return each certainty with how often it was said, and how often it was right."""
    return [
        text("progress.said", said=capital(text(f"certainty.{certainty}")), count=count, right=round(share * count))
        for certainty, (count, share) in certainties_of(learner).items()
    ]
