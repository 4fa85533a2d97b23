"""The rule by which a decisive sound counts as audible, shared by `check` and the drawing of practice cases."""

from __future__ import annotations

AUDIBLE_MARGIN_DB = 2.0
"""How far above the bed a decisive sound's level must be: common practice, no published source."""

DECISIVE_DB = 3.0
"""A slot whose level differs this much from its good level is decisive."""

SILENT_DBA = 10.0
"""Below this level a slot is silent in any bed; silence is then what the learner must notice."""
