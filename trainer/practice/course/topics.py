"""Topics under which a mistake is revisited: only those that practice can give again."""

from __future__ import annotations

from trainer.circuit.elements import Location
from trainer.circuit.profile import PASSES

CASE_CLASSES = frozenset({PASSES, "group", *(place.value for place in Location)})
PRACTISED: dict[str, tuple[str, ...]] = {
    "ear": ("which", "what", "hum"),
    "numbering": ("order", "counted", "place", "shared", "backwards"),
    "codes": ("says", "could", "old"),
    "meter": ("says", "where", "slip"),
    "reasoning": ("next", "stop"),
    "limits": ("still", "shown", "after"),
    "job_card": ("slip",),
}
"""Subjects that practice chooses from; the ear's single sounds are for the rematch."""


def review_topic(topic: str) -> str:
    """Return the topic under which a mistake is revisited, "" where practice cannot give it again."""
    kind, _colon, subject = topic.partition(":")
    if kind == "case":
        return topic if subject in CASE_CLASSES else ""
    if subject in PRACTISED.get(kind, ()):
        return topic
    return "ear:what" if kind == "ear" else ""
