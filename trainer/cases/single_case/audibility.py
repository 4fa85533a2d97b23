"""By which rule a sound that decides a case is called audible; `check` and the drawing of practice cases share it."""

from __future__ import annotations

AUDIBLE_MARGIN_DB = 2.0
"""How far over the bed a decisive sound must stand in its level: common practice, no published source."""

DECISIVE_DB = 3.0
"""A slot that lies this far from its good level carries the case."""

SILENT_DBA = 10.0
"""Below this there is nothing to hear in any bed, and nothing is what must be heard."""
