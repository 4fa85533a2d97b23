"""The choices of `set make` as a draft of a set."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

from trainer.cases.case_set import DebriefOpens, Mode, Seeds
from trainer.cases.set_text import SetDraft
from trainer.cases.shipped import profile_names


def draft_from(path: Path, chosen: dict[str, Any]) -> SetDraft:
    """Return the draft that options stand for; times are this computer's own."""
    name = chosen["name"] or re.sub(r"[^a-z0-9_]+", "_", path.stem.lower()).strip("_")
    drawn = int(chosen["drawn"])
    engines = tuple(chosen["profiles"]) or (profile_names() if drawn else ())
    return SetDraft(
        name=name,
        title=chosen["title"] or name.replace("_", " "),
        cases=tuple(chosen["cases"]),
        drawn=drawn,
        profiles=engines,
        difficulty=tuple(sorted(set(chosen["difficulty"]))) or (1, 2),
        places=tuple(chosen["places"]),
        mode=Mode.EXAM if chosen["exam"] else Mode.PRACTICE,
        seeds=Seeds.SAME if chosen["same_for_all"] else Seeds.PER_LEARNER,
        opens=chosen["opens"] and chosen["opens"].astimezone(),
        closes=chosen["closes"] and chosen["closes"].astimezone(),
        tries=chosen["tries"],
        plays=chosen["plays"],
        readings=chosen["readings"],
        clock_minutes=chosen["clock_minutes"],
        certainty_weight=chosen["certainty"],
        debrief=DebriefOpens(chosen["debrief"]) if chosen["debrief"] else None,
        shuffled=chosen["shuffled"],
    )
