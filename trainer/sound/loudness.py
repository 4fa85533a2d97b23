"""Loudness by ISO 532-1 (Zwicker), from a well-kept library that is an extra of this package."""

from __future__ import annotations

import numpy as np

from trainer.arrays import Floats
from trainer.errors import MissingHereError


def loudness_sone(pressure_pa: Floats, rate_hz: int) -> float:
    """Return the loudness of a steady sound in sone, free field; shape (frame,), in pascal, 48 kHz.

    Raises MissingHereError where the library is not installed.
    """
    try:
        from mosqito.sq_metrics import loudness_zwst
    except ImportError as error:
        raise MissingHereError("no_loudness") from error
    total, _specific, _bark = loudness_zwst(np.asarray(pressure_pa, dtype=float), rate_hz, field_type="free")
    return float(total)


def phon_of(sone: float) -> float:
    """Return the loudness level in phon (ISO 532-1: 40 + 10·log2 N from 1 sone, 40·N^0.35 below)."""
    return 40.0 + 10.0 * float(np.log2(sone)) if sone >= 1.0 else 40.0 * (sone + 0.0005) ** 0.35
