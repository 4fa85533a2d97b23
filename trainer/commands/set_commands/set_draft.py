"""Makes a draft of a set from the options of `set make`."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TypedDict

from trainer.cases.single_case.shipped import profile_names
from trainer.errors import WrongCallError
from trainer.sets.case_set import DebriefOpens, Mode, Seeds
from trainer.sets.draft import SetDraft, set_name

LEAST_TITLE = 3
"""The least length of a title, in characters."""


class SetOptions(TypedDict):
    """The options of `set make` as click passes them; None and empty where an option was not given."""

    name: str | None
    title: str | None
    cases: tuple[str, ...]
    drawn: int
    profiles: tuple[str, ...]
    places: tuple[str, ...]
    difficulty: tuple[int, ...]
    exam: bool
    same_for_all: bool
    opens: datetime | None
    closes: datetime | None
    tries: int | None
    plays: int | None
    readings: int | None
    clock_minutes: float | None
    certainty: float
    debrief: str | None
    shuffled: bool


def draft_from(path: Path, options: SetOptions) -> SetDraft:
    """Return the draft of a set for a file; times are in this computer's time zone.

    Raises WrongCallError for a date that the zone cannot hold.
    """
    name = options["name"] or set_name(path.stem)
    plain = name.replace("_", " ").capitalize()
    drawn = options["drawn"]
    return SetDraft(
        name=name,
        title=options["title"] or (plain if len(plain) >= LEAST_TITLE else f"Set {plain}"),
        cases=options["cases"],
        drawn=drawn,
        profiles=options["profiles"] or (profile_names() if drawn else ()),
        difficulty=tuple(sorted(set(options["difficulty"]))) or (1, 2),
        places=options["places"],
        mode=Mode.EXAM if options["exam"] else Mode.PRACTICE,
        seeds=Seeds.SAME if options["same_for_all"] else Seeds.PER_LEARNER,
        opens=_local(options["opens"]),
        closes=_local(options["closes"]),
        tries=options["tries"],
        plays=options["plays"],
        readings=options["readings"],
        clock_minutes=options["clock_minutes"],
        certainty_weight=options["certainty"],
        debrief=DebriefOpens(options["debrief"]) if options["debrief"] else None,
        shuffled=options["shuffled"],
    )


def _local(moment: datetime | None) -> datetime | None:
    try:
        return moment and moment.astimezone()
    except (OverflowError, ValueError, OSError) as error:
        raise WrongCallError("no_date", moment=moment) from error
