"""Every sentence a person reads, by id and language; other rooms return ids and numbers."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from pathlib import Path

from trainer.errors import Problem, ProblemsFoundError, Said, Sentence, UserError
from trainer.words.languages import FIRST, LANGUAGES
from trainer.words.visible import visible

_SPOKEN: ContextVar[str] = ContextVar("language", default=FIRST)


def speak(language: str) -> None:
    """Speak a language from here on; only faces call it. Raises KeyError for one that there is not."""
    if language not in LANGUAGES:
        raise KeyError(language)
    _SPOKEN.set(language)


def spoken() -> str:
    """Return the language that is spoken now."""
    return _SPOKEN.get()


@contextmanager
def speaking(language: str) -> Iterator[None]:
    """Speak a language within a `with` block. Raises KeyError for one that there is not."""
    before = spoken()
    speak(language)
    try:
        yield
    finally:
        speak(before)


def text(key: str, /, **values: object) -> str:
    """Return a sentence by its id with values filled in, each on one line and with every character visible.

    `n`, a whole number, chooses between singular and plural where the sentence has both. A value may be a `Sentence`,
    or several in a tuple, which are parted by commas.
    Raises KeyError for an unknown id or a missing value.
    """
    from trainer.words.catalogue import catalogue_of  # with the standard library's reader, when a sentence is wanted

    catalogue = catalogue_of(_SPOKEN.get())
    count = values.get("n")
    sentence = catalogue.sentence(key, count if isinstance(count, int) else None)
    return catalogue.fill(sentence, {name: _seen(value) for name, value in values.items()})


def figure(value: float, form: str) -> str:
    """Return a number with the decimal mark of the language that is spoken now, in a form such as `.1f`."""
    from trainer.words.catalogue import catalogue_of

    return catalogue_of(_SPOKEN.get()).fill(f"{{value:{form}}}", {"value": value})


class Words:
    """The sentences of one beginning, by the rest of their ids: `Words("report.word")["mark"]`."""

    def __init__(self, beginning: str) -> None:
        self._beginning = beginning

    def __getitem__(self, name: str) -> str:
        return text(f"{self._beginning}.{name}")


def has(key: str) -> bool:
    """Tell whether there is a sentence with an id."""
    from trainer.words.catalogue import catalogue_of

    try:
        catalogue_of(_SPOKEN.get()).sentence(key, 1)
    except KeyError:
        return False
    return True


def said(words: Said) -> str:
    """Return words written in the language that is spoken now."""
    if isinstance(words, tuple):
        return ", ".join(said(one) for one in words)
    return text(words.key, **words.values) if isinstance(words, Sentence) else words


def _seen(value: object) -> object:
    if isinstance(value, Sentence | tuple):
        return said(value)
    return visible(str(value)) if isinstance(value, str | Path | Exception) else value


def numbers(cylinders: Iterable[int]) -> str:
    """Return cylinder numbers as a person writes them: `3`, `1, 3 and 5`."""
    return said(number_list(cylinders))


def number_list(cylinders: Iterable[int]) -> Said:
    """Return cylinder numbers as a value of a sentence that is written later."""
    listed = [str(number) for number in sorted(cylinders)]
    if len(listed) < 2:
        return listed[0] if listed else Sentence("list.none")
    return Sentence("list.and", first=", ".join(listed[:-1]), last=listed[-1])


def cylinders_named(cylinders: Iterable[int]) -> str:
    """Return cylinders in words: `cylinder 3`, `cylinders 1, 3 and 5`."""
    which = set(cylinders)
    return text("slot.cylinders", n=len(which), cylinders=numbers(which))


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


def message_parts(error: UserError, language: str | None = None) -> tuple[str, str]:
    """Return an error's message in two parts: what is wrong, and how to fix it; in the language spoken, or another."""
    with speaking(language or spoken()):
        return text(f"wrong.{error.key}", **error.values), text(f"mend.{error.key}", **error.values)


def message_of(error: UserError | ProblemsFoundError, language: str | None = None) -> str:
    """Return an error's message in one line: what is wrong and how to fix it; of a file's problems the first few."""
    if isinstance(error, ProblemsFoundError):
        return " ".join(problem_line(problem, language) for problem in error.problems[:MOST_PROBLEMS])
    return " ".join(message_parts(error, language))


MOST_PROBLEMS = 3
"""The most problems of one file that are put into one line."""


def problem_line(problem: Problem, language: str | None = None) -> str:
    """Return a problem in a file in one line: where, what was found, what is allowed, the mend."""
    with speaking(language or spoken()):
        key = "problem.line" if problem.line is not None else "problem.no_line"
        return text(key, **problem_words(problem))


def problem_words(problem: Problem) -> dict[str, str | int | None]:
    """Return a problem's fields, its sentences written in the language that is spoken now."""
    written = {name: said(getattr(problem, name)) for name in ("field", "found", "allowed", "mend")}
    return {"file": problem.file, "line": problem.line, **written}
