"""Every sentence a person reads, by id and language; other rooms return ids and numbers."""

from __future__ import annotations

from trainer.words import english

LANGUAGES = {"en": english.TEXTS}


def text(key: str, *, language: str = "en", **values: object) -> str:
    """Return a sentence by its id with values filled in; raises KeyError for an unknown id or a missing value."""
    return LANGUAGES[language][key].format(**values)


def numbers(cylinders: object) -> str:
    """Return cylinder numbers as a person writes them: `3`, `1, 3 and 5`."""
    listed = [str(number) for number in sorted(cylinders)]  # type: ignore[call-overload]  # any iterable of numbers
    return listed[0] if len(listed) == 1 else ", ".join(listed[:-1]) + " and " + listed[-1] if listed else "none"
