"""The compiled catalogue of one language: its sentences by id, read when the first one is wanted."""

from __future__ import annotations

import struct
from functools import cache
from gettext import GNUTranslations, NullTranslations
from pathlib import Path
from string import Formatter

from trainer.words.languages import LANGUAGES, CatalogueMissingError

FOLDER = Path(__file__).parent / "catalogues"


class _Nothing(NullTranslations):
    """What follows a catalogue: no sentence is ever its own id."""

    def gettext(self, message: str) -> str:
        """Raise KeyError."""
        raise KeyError(message)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        """Raise KeyError."""
        raise KeyError(msgid1)


class Decimals(Formatter):
    """Fills values into a sentence, with a language's own decimal mark."""

    def __init__(self, mark: str) -> None:
        self._mark = mark

    def format_field(self, value: object, format_spec: str) -> str:
        """Return one value as it is written in this language."""
        written = str(super().format_field(value, format_spec))
        return written.replace(".", self._mark) if isinstance(value, float) else written


class Catalogue:
    """The sentences of one language."""

    def __init__(self, translations: NullTranslations, decimal: str) -> None:
        self._translations, self._formatter = translations, Decimals(decimal)
        translations.add_fallback(_Nothing())

    def sentence(self, key: str, count: int | None = None) -> str:
        """Return the sentence of an id as it is written, in the form for a count; raises KeyError for no such id."""
        if count is not None:
            try:
                return self._translations.ngettext(key, key, count)
            except KeyError:  # the same in every number
                pass
        return self._translations.gettext(key)

    def fill(self, sentence: str, values: dict[str, object]) -> str:
        """Return a sentence with its values; raises KeyError for a missing one."""
        return self._formatter.vformat(sentence, (), values)


@cache
def catalogue_of(language: str) -> Catalogue:
    """Return the catalogue of a language; raises CatalogueMissingError where it has not been compiled."""
    path = compiled_path(language)
    try:
        with path.open("rb") as file:
            return Catalogue(GNUTranslations(file), LANGUAGES[language].decimal)
    except (OSError, ValueError, struct.error) as error:  # the last two: a file that is cut short
        raise CatalogueMissingError(path) from error


def compiled_path(language: str) -> Path:
    """Return where the compiled catalogue of a language is."""
    return FOLDER / f"{language}.mo"
