"""What a slot would be called by a trained ear beside a good slot: six answers, from levels at the listener."""

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

MASKED_DB = 8.0
"""A slot this far under the bed is not heard at all: from memory, for broadband sounds in broadband noise."""


def heard_as(level_dba: float, good_dba: float, bed_dba: float) -> Heard:
    """Return what a slot is called, from its own level, its good level at this place, and the bed."""
    under = good_dba - level_dba
    if under < -LOUDER_DB:
        return Heard.LOUDER
    if bed_dba - level_dba > MASKED_DB or under > 45.0:
        return Heard.NOTHING
    for answer, limit in ((Heard.EVEN, EVEN_DB), (Heard.WEAK, WEAK_DB), (Heard.DULL, DULL_DB)):
        if under < limit:
            return answer
    return Heard.VERY_FAINT
