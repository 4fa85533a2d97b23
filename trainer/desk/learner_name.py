"""What a learner is called in records: one name for one person, whatever was typed around it."""

from __future__ import annotations

import unicodedata

from trainer.errors import WrongCallError

MOST_CHARACTERS = 200
TURNS = {chr(code) for code in (*range(0x202A, 0x202F), *range(0x2066, 0x206A), 0x200E, 0x200F, 0x061C)}
"""Marks that turn the direction of writing: a name needs none, and could be shown as another with them."""


def learner_name(typed: str) -> str:
    """Return a name as records keep it: spaces around it gone, one between words, letters in one form (NFC).

    Raises WrongCallError for an empty or overlong name and for one with control characters.
    """
    try:
        typed.encode("utf-8")
    except UnicodeEncodeError as error:
        raise WrongCallError("learner_letters") from error
    name = " ".join(unicodedata.normalize("NFC", "".join(one for one in typed if one not in TURNS)).split())
    if not name:
        raise WrongCallError("learner_empty")
    if len(name) > MOST_CHARACTERS:
        raise WrongCallError("learner_long", most=MOST_CHARACTERS)
    if any(unicodedata.category(one) == "Cc" for one in name):
        raise WrongCallError("learner_letters")
    return name
