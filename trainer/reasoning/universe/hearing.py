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
EVEN_DB, DULL_DB = 3.0, 23.5
"""How far under its own good level a slot may lie to be called so; chosen between the shipped profiles' faults."""

THUD_FROM_DB, THUD_SHARE, SKIPS_DB = 6.0, 0.5, 20.0
"""When a slot is dull and when it is weak. Dull: at least THUD_FROM_DB under its good level, its mean frequency under
THUD_SHARE of the good slot's, an octave. A brighter slot still clicks, and is weak down to SKIPS_DB. Common
practice, no published source: a plate that does not move is dull, one that skips is weak."""

MASKED_DB = 8.0
"""A slot this far under the bed is not heard at all: from memory, for broadband sounds in broadband noise."""


def heard_as(level_dba: float, good_dba: float, bed_dba: float, brightness: float) -> Heard:
    """Return what a slot is called, from its own level, its good level at this place, and the bed.

    `brightness` is the slot's mean frequency divided by the good slot's.
    """
    under = good_dba - level_dba
    if under < -LOUDER_DB:
        return Heard.LOUDER
    if bed_dba - level_dba > MASKED_DB or under > 45.0:
        return Heard.NOTHING
    weak_db = THUD_FROM_DB if brightness < THUD_SHARE else SKIPS_DB
    for answer, limit in ((Heard.EVEN, EVEN_DB), (Heard.WEAK, weak_db), (Heard.DULL, DULL_DB)):
        if under < limit:
            return answer
    return Heard.VERY_FAINT
