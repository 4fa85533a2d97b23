"""A set and its rules in words."""

from __future__ import annotations

from trainer.sets.case_set import CaseSet, DebriefOpens, Listed, Mode
from trainer.words import text


def weak_spots(case_set: CaseSet) -> list[str]:
    """Return what an instructor should know of an exam before it is given: where answers could be had all the same."""
    if case_set.policy.mode is not Mode.EXAM:
        return []
    shipped = [
        str(row) for row, line in enumerate(case_set.lines, start=1) if isinstance(line, Listed) and not line.own
    ]
    lines = [text("set.weak_shipped", n=len(shipped), lines=", ".join(shipped))] if shipped else []
    if case_set.policy.debrief is DebriefOpens.AFTER_SET:
        lines.append(text("set.weak_debrief"))
    return lines


def head_lines(case_set: CaseSet, learner: str) -> list[str]:
    """Return what a learner must know before the first case."""
    policy, support = case_set.policy, case_set.support_of(learner)
    lines = [text("set.head", title=case_set.title, mode=text(f"mode.{policy.mode}"), n=case_set.size)]
    if policy.closes:
        lines.append(text("set.closes", moment=policy.closes.isoformat(timespec="minutes")))
    if policy.plays is not None:
        lines.append(text("set.plays", n=policy.plays + support.extra_plays))
    if policy.readings is not None:
        lines.append(text("set.readings", n=policy.readings + support.extra_readings))
    if policy.bench_minutes is not None:
        lines.append(text("set.bench_minutes", n=round(policy.bench_minutes)))
    if policy.clock_minutes is not None:
        lines.append(text("set.clock_minutes", n=round(policy.clock_minutes * support.extra_time)))
    if policy.certainty_weight:
        lines.append(text("set.certainty", share=round(100 * policy.certainty_weight)))
    lines.append(text(f"set.debrief.{DebriefOpens(policy.debrief)}"))
    if learner in case_set.support:
        lines.append(text("set.supported"))
    if policy.mode is Mode.EXAM:
        lines.append(text("set.evident"))
    return lines
