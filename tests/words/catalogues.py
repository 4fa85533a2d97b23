"""The catalogues as translators write them, for tests."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from babel.messages.catalog import Message

from trainer.words.build_catalogues import FOLDER, id_of, read

DOMAINS = tuple(sorted(path.stem for path in (FOLDER / "en").glob("*.po")))


@cache
def messages(path: Path) -> tuple[Message, ...]:
    """Return the messages of one catalogue in their order, its header left out."""
    return tuple(message for message in read(path) if message.id)


def forms(message: Message) -> tuple[str, ...]:
    """Return what a message says: one sentence, or one for each plural form."""
    return (message.string,) if isinstance(message.string, str) else tuple(message.string)


def forms_of(language: str, *domains: str) -> dict[str, tuple[str, ...]]:
    """Return every sentence of a language by its id, or those of some domains."""
    return {
        id_of(message): forms(message)
        for domain in domains or DOMAINS
        for message in messages(FOLDER / language / f"{domain}.po")
    }


def texts_of(language: str, *domains: str) -> dict[str, str]:
    """Return every sentence of a language by its id; a singular is under `id[0]`, the plural under the id itself."""
    return {
        key if number == len(said) - 1 else f"{key}[{number}]": sentence
        for key, said in forms_of(language, *domains).items()
        for number, sentence in enumerate(said)
    }


TEXTS = texts_of("en")
