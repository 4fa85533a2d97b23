"""Parses the slot option of a command."""

from trainer.circuit.profile import Profile
from trainer.errors import WrongCallError
from trainer.words import number_list


def slot_number(word: str, profile: Profile) -> int:
    """Return 0 for `all` or the cylinder's number; raises WrongCallError."""
    if word == "all":
        return 0
    if word.isascii() and word.isdigit() and int(word) in profile.cylinders:
        return int(word)
    raise WrongCallError("no_slot", slot=word, cylinders=number_list(profile.cylinders))
