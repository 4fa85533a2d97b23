"""Schedule reviews of missed topics: after 1 day, then after 3, 7 and 21 days as long as the answers are right.

Equal or growing gaps do about as well (Latimier, Peyre and Ramus 2021); what matters is that it comes back. A clock
that shows a time before the answer cannot hold a topic back, and a right answer then proves no gap: it counts from
there. So a clock that was set back or forward neither loses nor doubles anything, and finishes nothing early.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

GAPS_DAYS = (1.0, 3.0, 7.0, 21.0)
MOST_WAITING = 12
"""More is a backlog that nobody faces: the least pressing one makes way."""

EARLY_DAYS = 0.25
"""A revisit counts from so much before its time on: yesterday evening's miss is due this afternoon."""

SURE_FROM = 0.95


@dataclass(frozen=True, slots=True)
class Waiting:
    """A topic that was missed: how many revisits were right, when it was last answered, whether it was said sure."""

    topic: str
    stage: int
    day: float
    sure: bool

    def backwards(self, day: float) -> bool:
        """Return whether the clock shows a time before the answer itself."""
        return day < self.day - EARLY_DAYS

    def due(self, day: float) -> bool:
        """Tell whether it is time; a clock that shows a time before the answer cannot say no."""
        return self.backwards(day) or day >= self.day + GAPS_DAYS[self.stage] - EARLY_DAYS

    @property
    def order(self) -> tuple[bool, int, float, str]:
        """What comes first: sure and wrong, then what was least often right since, then the longest waiting."""
        return (not self.sure, self.stage, self.day, self.topic)


def waiting_after(
    waiting: Sequence[Waiting],
    topic: str,
    right: bool,
    certainty: float,
    day: float,
) -> tuple[Waiting, ...]:
    """Return what waits after one more answer."""
    before = next((one for one in waiting if one.topic == topic), None)
    if right and (before is None or not before.due(day)):
        return tuple(waiting)
    others = [one for one in waiting if one.topic != topic]
    if not right:
        others.append(Waiting(topic, 0, day, certainty >= SURE_FROM))
    elif before is not None and before.backwards(day):
        others.append(replace(before, day=day))
    elif before is not None and before.stage + 1 < len(GAPS_DAYS):
        others.append(replace(before, stage=before.stage + 1, day=day, sure=False))
    # what was just missed stays, whatever else has to make way for it
    pressing = sorted(others, key=lambda one: (one.topic != topic, *one.order))[:MOST_WAITING]
    return tuple(sorted(pressing, key=lambda one: one.order))


def due_now(waiting: Sequence[Waiting], day: float) -> tuple[Waiting, ...]:
    """Return what it is time for, the most pressing first."""
    return tuple(sorted((one for one in waiting if one.due(day)), key=lambda one: one.order))
