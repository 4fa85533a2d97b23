"""Every sentence a person reads, by id and language; other rooms return ids and numbers."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from contextvars import ContextVar
from pathlib import Path
from string import Formatter

from trainer.errors import Problem, ProblemsFoundError, UserError
from trainer.words import english, spanish
from trainer.words.visible import visible

TEXTS = english.TEXTS


class _Commas(Formatter):
    """Writes decimals with a comma, as Spanish does."""

    def format_field(self, value: object, format_spec: str) -> str:
        written = str(super().format_field(value, format_spec))
        return written.replace(".", ",") if isinstance(value, float) else written


LANGUAGES: Mapping[str, tuple[Mapping[str, str], Formatter]] = {
    "en": (TEXTS, Formatter()),
    "es": (spanish.TEXTS, _Commas()),
}
_SPOKEN: ContextVar[str] = ContextVar("language", default="en")


def speak(language: str) -> None:
    """Speak a language from here on; only faces call it. Raises KeyError for one that there is not."""
    if language not in LANGUAGES:
        raise KeyError(language)
    _SPOKEN.set(language)


def spoken() -> str:
    """Return the language that is spoken now."""
    return _SPOKEN.get()


def text(key: str, /, **values: object) -> str:
    """Return a sentence by its id with values filled in, each on one line and with every character visible.

    Raises KeyError for an unknown id or a missing value.
    """
    texts, formatter = LANGUAGES[_SPOKEN.get()]
    return formatter.format(texts[key], **{name: _seen(value) for name, value in values.items()})


def _seen(value: object) -> object:
    return visible(str(value)) if isinstance(value, str | Path | Exception) else value


def numbers(cylinders: Iterable[int]) -> str:
    """Return cylinder numbers as a person writes them: `3`, `1, 3 and 5`."""
    listed = [str(number) for number in sorted(cylinders)]
    if len(listed) < 2:
        return listed[0] if listed else text("list.none")
    return text("list.and", first=", ".join(listed[:-1]), last=listed[-1])


def cylinders_named(cylinders: Iterable[int]) -> str:
    """Return cylinders in words: `cylinder 3`, `cylinders 1, 3 and 5`."""
    which = set(cylinders)
    return text("slot.cylinders_out" if len(which) == 1 else "slot.cylinders_several", cylinders=numbers(which))


def capital(sentence: str) -> str:
    """Return a text with a capital at its start, as a title, a button or a sentence has it."""
    return sentence[:1].upper() + sentence[1:]


def percent(chance: float) -> str:
    """Return a probability as a person writes it; nothing is ever certain by rounding."""
    if 0.0 < chance < 0.001:
        return text("percent.under")
    if 0.999 < chance < 1.0:
        return text("percent.over")
    return text("percent.plain", percent=100.0 * chance)


def message_parts(error: UserError) -> tuple[str, str]:
    """Return an error's message in two parts: what is wrong, and how to fix it."""
    return text(f"wrong.{error.key}", **error.values), text(f"mend.{error.key}", **error.values)


def message_of(error: UserError | ProblemsFoundError) -> str:
    """Return an error's message in one line: what is wrong and how to fix it; of a file's problems the first few."""
    if isinstance(error, ProblemsFoundError):
        return " ".join(problem_line(problem) for problem in error.problems[:MOST_PROBLEMS])
    return " ".join(message_parts(error))


MOST_PROBLEMS = 3
"""The most problems of one file that are put into one line."""


def problem_line(problem: Problem) -> str:
    """Return a problem in a file in one line: where, what was found, what is allowed, the mend."""
    key = "problem.line" if problem.line is not None else "problem.no_line"
    return text(key, **{name: getattr(problem, name) for name in problem.__dataclass_fields__})
