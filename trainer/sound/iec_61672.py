"""Frequency weighting A of IEC 61672-1:2013, annex E, from its pole frequencies."""

from __future__ import annotations

import numpy as np

from trainer.arrays import Floats

POLES_HZ = (20.598997, 107.65265, 737.86223, 12194.217)
"""f1 to f4 of annex E."""


def a_weighting_gain(frequency_hz: Floats) -> Floats:
    """Return the linear gain of weighting A, 1 at 1 kHz; 0 at 0 Hz."""
    return _shape(np.asarray(frequency_hz, dtype=float)) / _shape(np.array(1000.0))


def a_weighting_db(frequency_hz: Floats) -> Floats:
    """Return weighting A in decibel at frequencies above 0 Hz."""
    return 20.0 * np.log10(a_weighting_gain(frequency_hz))


def _shape(frequency_hz: Floats) -> Floats:
    f1, f2, f3, f4 = POLES_HZ
    square = frequency_hz * frequency_hz
    low = (square + f1 * f1) * np.sqrt((square + f2 * f2) * (square + f3 * f3))
    return f4 * f4 * square * square / (low * (square + f4 * f4))
