"""Keeps the all-together burst bearable: above a threshold in dB(A) a third of the excess passes.

It acts on the slot's whole level, so it never touches a slot below the threshold, whatever the fault, and it keeps
the order of bursts: a weaker burst stays weaker.
"""

from __future__ import annotations

RATIO = 3.0


def limiter_gain_db(level_dba: float, threshold_dba: float) -> float:
    """Return the gain for a slot of a level: 0 up to the threshold, then taking (1 − 1/RATIO) of the excess."""
    return -max(level_dba - threshold_dba, 0.0) * (1.0 - 1.0 / RATIO)
