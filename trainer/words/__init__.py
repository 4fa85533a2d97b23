"""Every sentence a person reads, by id; other rooms return ids and numbers."""

from __future__ import annotations

from collections.abc import Iterable

from trainer.errors import Problem, ToldError
from trainer.words import english, english_errors, english_reasoning

TEXTS = {**english.TEXTS, **english_errors.TEXTS, **english_reasoning.TEXTS}


def text(key: str, /, **values: object) -> str:
    """Return a sentence by its id with values filled in; raises KeyError for an unknown id or a missing value."""
    return TEXTS[key].format(**values)


def numbers(cylinders: Iterable[int]) -> str:
    """Return cylinder numbers as a person writes them: `3`, `1, 3 and 5`."""
    listed = [str(number) for number in sorted(cylinders)]
    return listed[0] if len(listed) == 1 else ", ".join(listed[:-1]) + " and " + listed[-1] if listed else "none"


def percent(chance: float) -> str:
    """Return a probability as a person writes it; nothing is ever certain by rounding."""
    if 0.0 < chance < 0.001:
        return text("percent.under")
    if 0.999 < chance < 1.0:
        return text("percent.over")
    return text("percent.plain", percent=100.0 * chance)


def told_apart(error: ToldError) -> tuple[str, str]:
    """Return what is wrong and how to mend it."""
    return text(f"wrong.{error.key}", **error.values), text(f"mend.{error.key}", **error.values)


def told(error: ToldError) -> str:
    """Return what is wrong and how to mend it in one line."""
    return " ".join(told_apart(error))


def problem_line(problem: Problem) -> str:
    """Return a problem in a file in one line: where, what was found, what is allowed, the mend."""
    key = "problem.line" if problem.line is not None else "problem.no_line"
    return text(key, **{name: getattr(problem, name) for name in problem.__dataclass_fields__})
