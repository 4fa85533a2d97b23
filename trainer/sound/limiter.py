"""The limiter of the all-together burst: how much of it passes, and never less than a little over the loudest slot."""

from __future__ import annotations

from trainer.circuit.profile import Profile
from trainer.sound.paths import loudest_db

LIMITER_RATIO = 3.0
"""By how much the limiter divides what exceeds its threshold, in dB, so that the all-together burst stays bearable."""

LEAST_OVER_DB = 2.0
"""The limiter never takes a burst below this over the loudest slot of the same test, whatever the fault."""


def limiter_gain_db(level_dba: float, threshold_dba: float, loudest_dba: float) -> float:
    """Return the gain for a burst of a level, in a test whose loudest single slot has another; never above 0 dB.

    It takes (1 − 1/LIMITER_RATIO) of what exceeds the threshold, so that a weaker burst stays weaker. Where a fault
    makes a slot so loud that the burst would fall within LEAST_OVER_DB of it, the limiter takes less, or nothing.
    """
    plain_db = -max(level_dba - threshold_dba, 0.0) * (1.0 - 1.0 / LIMITER_RATIO)
    return min(0.0, max(plain_db, loudest_dba + LEAST_OVER_DB - level_dba))


def threshold_dba(profile: Profile, place: str) -> float:
    """Return the limiter's threshold at a place: the profile's is for the front of its bay, others lie as much higher.

    It goes with the loudest injector, so that no place and no room brings the threshold near the slots.
    """
    in_bay = loudest_db(profile.bay or profile, "front")
    return profile.room.limiter_threshold_dba + loudest_db(profile, place) - in_bay
