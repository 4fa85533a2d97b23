"""A draft of a set, and its text as a set file: used by the command and by the window's builder."""

from __future__ import annotations

import re
import secrets
from dataclasses import dataclass
from datetime import datetime

from trainer.cases.files.plain_yaml import yaml_of
from trainer.sets.case_set import DebriefOpens, Mode, Seeds


@dataclass(frozen=True, slots=True)
class SetDraft:
    """The choices of a set; None and empty leave a field to the mode."""

    name: str
    title: str
    cases: tuple[str, ...] = ()
    drawn: int = 0
    profiles: tuple[str, ...] = ()
    difficulty: tuple[int, ...] = (1, 2)
    places: tuple[str, ...] = ()
    mode: Mode = Mode.PRACTICE
    seeds: Seeds = Seeds.PER_LEARNER
    opens: datetime | None = None
    closes: datetime | None = None
    tries: int | None = None
    plays: int | None = None
    readings: int | None = None
    clock_minutes: float | None = None
    certainty_weight: float = 0.0
    debrief: DebriefOpens | None = None
    shuffled: bool = False
    passes_at: float = 60.0
    draw_key: str = ""


def set_name(words: str) -> str:
    """Return a short name made of any words: small letters, digits and underscores, from a letter on."""
    plain = re.sub(r"[^a-z0-9]+", "_", words.lower()).strip("_")
    return (plain if re.match(r"[a-z].", plain) else f"set_{plain}".strip("_"))[:31].strip("_")


def new_draw_key() -> str:
    """Return a new random key that cannot be guessed."""
    return secrets.token_hex(12)


def set_text(draft: SetDraft) -> str:
    """Return a set file's text; it is checked when it is read."""
    lines: list[dict[str, object]] = [{"case": name} for name in draft.cases]
    if draft.drawn:
        draw: dict[str, object] = {
            "draw": draft.drawn, "profiles": list(draft.profiles), "difficulty": list(draft.difficulty),
        }  # fmt: skip
        lines.append({**draw, "places": list(draft.places)} if draft.places else draw)
    policy = {
        "mode": str(draft.mode),
        "opens": draft.opens and draft.opens.isoformat(),
        "closes": draft.closes and draft.closes.isoformat(),
        "tries": draft.tries,
        "plays": draft.plays,
        "readings": draft.readings,
        "clock_minutes": draft.clock_minutes,
        "certainty_weight": draft.certainty_weight or None,
        "debrief": draft.debrief and str(draft.debrief),
        "order": "shuffled" if draft.shuffled else None,
        "passes_at": draft.passes_at,
    }
    document: dict[str, object] = {
        "form": "set/1",
        "name": draft.name,
        "title": draft.title,
        "cases": lines,
        "seeds": str(draft.seeds),
        "draw_key": draft.draw_key or new_draw_key(),
        "policy": {name: value for name, value in policy.items() if value is not None},
    }
    return yaml_of(document)
