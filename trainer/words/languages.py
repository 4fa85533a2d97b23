"""The languages that the program speaks; each has a folder of the same name in `catalogues/`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class Language:
    """A language: what its speakers call it, and its decimal mark."""

    name: str
    decimal: str = "."


LANGUAGES: Mapping[str, Language] = {
    "en": Language("English"),
    "es": Language("Español", decimal=","),
    "de": Language("Deutsch", decimal=","),
}
"""By code (ISO 639-1), in the order in which the settings offer them."""

FIRST = "en"
"""What is spoken until somebody chooses."""


class CatalogueMissingError(Exception):
    """Raised where a language has not been compiled; its own words are in English, because there are no others."""

    def __init__(self, path: Path) -> None:
        super().__init__(
            f"The sentences of this program have not been compiled: {path} is missing or damaged. In a working copy, "
            "run: pip install -e . (or, with Babel: python -m trainer.words.build_catalogues). "
            "Otherwise, install the program again."
        )
