"""How much of the sound a learner may see: much at first, less the more is heard rightly."""

from __future__ import annotations

from collections.abc import Sequence

LATEST = 10
"""How many of the latest cases count."""

FIRST_SHOWN = 3
"""So many cases are begun with the whole outline."""

FULL_BELOW, GONE_FROM = 0.5, 0.9
"""Shares of right findings between which the outline fades; a trace beside the audio raised later audio-only scores
(Watsjold 2021, Perspect. Med. Educ. 3/2021), and it must go before an exam."""


def trace_strength(right: Sequence[bool]) -> float:
    """Return how visible the outline on the strip is, 0 to 1, after findings that were right or wrong, oldest first."""
    if len(right) < FIRST_SHOWN:
        return 1.0
    latest = right[-LATEST:]
    share = sum(latest) / len(latest)
    return min(max((GONE_FROM - share) / (GONE_FROM - FULL_BELOW), 0.0), 1.0)
