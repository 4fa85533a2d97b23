"""A slot as an option of a command."""

from trainer.circuit.profile import Profile
from trainer.errors import WrongCallError


def slot_number(word: str, profile: Profile) -> int:
    """Return 0 for `all` or the cylinder's number; raises WrongCallError."""
    if word == "all":
        return 0
    if word.isascii() and word.isdigit() and int(word) in profile.cylinders:
        return int(word)
    raise WrongCallError(f"There is no slot {word!r}.", f"Slots: all, 1 to {len(profile.cylinders)}.")
