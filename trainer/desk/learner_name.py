"""What a learner is called in records: one name for one person, whatever was typed around it."""

from __future__ import annotations

import unicodedata

from trainer.errors import WrongCallError
from trainer.words.visible import UNSEEN, unseen_in

MOST_CHARACTERS = 200
CONTROLS = ("Cc", "Zl", "Zp")
"""Unicode's categories of control characters and line ends; every other unseen character is a slip of copying."""


def learner_name(typed: str) -> str:
    """Return a name as records keep it: spaces around it gone, one between words, letters in one form (NFC),
    and without marks that are not seen: they would make two names of one, or show it as another.

    Raises WrongCallError for an empty or overlong name and for one with control characters.
    """
    try:
        typed.encode("utf-8")
    except UnicodeEncodeError as error:
        raise WrongCallError("learner_letters") from error
    seen = UNSEEN.sub(lambda found: found[0] if unicodedata.category(found[0]) in CONTROLS else "", typed)
    name = " ".join(unicodedata.normalize("NFC", seen).split())
    if not name:
        raise WrongCallError("learner_empty")
    if len(name) > MOST_CHARACTERS:
        raise WrongCallError("learner_long", n=MOST_CHARACTERS)
    if unseen_in(name) is not None:
        raise WrongCallError("learner_letters")
    return name
