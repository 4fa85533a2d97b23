"""The languages that the program speaks; each has a folder of the same name in `catalogues/`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Language:
    """A language: what its speakers call it, and its decimal mark."""

    name: str
    decimal: str = "."


LANGUAGES: Mapping[str, Language] = {
    "en": Language("English"),
    "es": Language("Español", decimal=","),
}
"""By code (ISO 639-1), in the order in which the settings offer them."""

FIRST = "en"
"""What is spoken until somebody chooses."""
