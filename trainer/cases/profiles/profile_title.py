"""An engine's title in the language that is spoken."""

from __future__ import annotations

from trainer.circuit.profile import Profile
from trainer.words import spoken


def title_of(profile: Profile) -> str:
    """Return an engine's title in the language that is spoken now, or as it was written where it has none."""
    translated = dict(profile.translations).get(spoken())
    return translated.title if translated else profile.title
