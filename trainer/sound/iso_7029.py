"""Hearing by age: ISO 7029:2017, table 1 (median), over ISO 389-7:2005, table 1 (free field).

Both tables as an open package (phonometry) prints them.
"""

from __future__ import annotations

from typing import Literal

import numpy as np

from trainer.arrays import Floats

FREQUENCY_HZ = np.array([125, 250, 500, 750, 1000, 1500, 2000, 3000, 4000, 6000, 8000], dtype=float)

_MEDIAN = {
    "male": (
        (2.50e-6, 1.39e-4, 4.59e-4, 5.70e-4, 7.02e-4, 1.09e-3, 1.56e-3, 2.54e-3, 3.40e-3, 4.53e-3, 5.06e-3),
        (3.841, 2.832, 2.537, 2.512, 2.494, 2.446, 2.404, 2.350, 2.325, 2.315, 2.328),
    ),
    "female": (
        (6.16e-4, 3.98e-4, 2.61e-4, 2.25e-4, 2.21e-4, 2.53e-4, 3.12e-4, 4.88e-4, 7.37e-4, 1.47e-3, 2.53e-3),
        (2.451, 2.568, 2.708, 2.775, 2.805, 2.813, 2.792, 2.728, 2.660, 2.539, 2.439),
    ),
}
"""Factor and power at each frequency."""

FREE_FIELD_DB = np.array([22.1, 11.4, 4.4, 2.4, 2.4, 2.4, -1.3, -5.8, -5.4, 4.3, 12.6])
"""What ears of 18 just hear of a tone from the front, in dB SPL (ISO 389-7)."""

AT_18 = 18.0


def median_loss_db(age: float, sex: Literal["male", "female"]) -> Floats:
    """Return how many dB more than at 18 a tone needs to be heard, at FREQUENCY_HZ: the median of healthy ears.

    Raises ValueError for an age under 18: the standard begins there.
    """
    if age < AT_18:
        raise ValueError(f"age must be 18 at least, found {age!r}")
    factor, power = (np.array(part) for part in _MEDIAN[sex])
    return np.asarray(factor * (age - AT_18) ** power)


def threshold_db(frequency_hz: Floats, age: float, sex: Literal["male", "female"]) -> Floats:
    """Return what is just heard of a tone, in dB SPL; between the table's frequencies by octaves, its ends held."""
    octaves = np.log2(np.maximum(frequency_hz, 1.0) / 1000.0)
    return np.asarray(np.interp(octaves, np.log2(FREQUENCY_HZ / 1000.0), FREE_FIELD_DB + median_loss_db(age, sex)))
