"""The choices of `set make` as a draft of a set."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import Any

from trainer.cases.single_case.shipped import profile_names
from trainer.errors import WrongCallError
from trainer.sets.case_set import DebriefOpens, Mode, Seeds
from trainer.sets.text import SetDraft, set_name

LEAST_TITLE = 3


def _local(moment: datetime | None) -> datetime | None:
    try:
        return moment and moment.astimezone()
    except (OverflowError, ValueError, OSError) as error:
        raise WrongCallError("no_date", moment=moment) from error


def draft_from(path: Path, chosen: dict[str, Any]) -> SetDraft:
    """Return the draft that options stand for; times are this computer's own."""
    name = chosen["name"] or set_name(path.stem)
    plain = name.replace("_", " ").capitalize()
    drawn = int(chosen["drawn"])
    engines = tuple(chosen["profiles"]) or (profile_names() if drawn else ())
    return SetDraft(
        name=name,
        title=chosen["title"] or (plain if len(plain) >= LEAST_TITLE else f"Set {plain}"),
        cases=tuple(chosen["cases"]),
        drawn=drawn,
        profiles=engines,
        difficulty=tuple(sorted(set(chosen["difficulty"]))) or (1, 2),
        places=tuple(chosen["places"]),
        mode=Mode.EXAM if chosen["exam"] else Mode.PRACTICE,
        seeds=Seeds.SAME if chosen["same_for_all"] else Seeds.PER_LEARNER,
        opens=_local(chosen["opens"]),
        closes=_local(chosen["closes"]),
        tries=chosen["tries"],
        plays=chosen["plays"],
        readings=chosen["readings"],
        clock_minutes=chosen["clock_minutes"],
        certainty_weight=chosen["certainty"],
        debrief=DebriefOpens(chosen["debrief"]) if chosen["debrief"] else None,
        shuffled=chosen["shuffled"],
    )
