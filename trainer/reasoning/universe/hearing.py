"""What a slot would be called by a trained ear beside a good slot: six answers, by level and brightness there."""

from __future__ import annotations

from enum import StrEnum


class Heard(StrEnum):
    """The answers to "what did this slot sound like" beside a good one."""

    LOUDER = "louder"
    EVEN = "even"
    WEAK = "weak"
    DULL = "dull"
    VERY_FAINT = "very_faint"
    NOTHING = "nothing"


LOUDER_DB = 1.5
EVEN_DB, WEAK_DB, DULL_DB = 3.0, 12.0, 23.5
"""How far under its own good level a slot may lie to be called so; chosen between the shipped profiles' faults."""

THUD_FROM_DB, THUD_SHARE, SKIPS_DB = 6.0, 0.5, 20.0
"""From how far under its good level on a slot is a thud, not a soft click, if its mean frequency is under this share of
a good slot's, an octave; and down to where clicks that come now and then are weak. Common practice, no published
source: a plate which does not move is dull, one which skips is weak."""

MASKED_DB = 8.0
"""A slot this far under the bed is not heard at all: from memory, for broadband sounds in broadband noise."""


def heard_as(level_dba: float, good_dba: float, bed_dba: float, brightness: float | None = None) -> Heard:
    """Return what a slot is called, from its own level, its good level at this place, and the bed.

    `brightness` is the slot's mean frequency divided by the good slot's. Where it is not given, only the level decides
    between weak and dull.
    """
    under = good_dba - level_dba
    if under < -LOUDER_DB:
        return Heard.LOUDER
    if bed_dba - level_dba > MASKED_DB or under > 45.0:
        return Heard.NOTHING
    weak_db = WEAK_DB
    if brightness is not None:
        weak_db = THUD_FROM_DB if brightness < THUD_SHARE else SKIPS_DB
    for answer, limit in ((Heard.EVEN, EVEN_DB), (Heard.WEAK, weak_db), (Heard.DULL, DULL_DB)):
        if under < limit:
            return answer
    return Heard.VERY_FAINT
