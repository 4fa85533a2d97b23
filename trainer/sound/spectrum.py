"""Sound as a picture's numbers: how strong each band is over time, and the outline of a wave."""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from trainer.arrays import Floats

FRAME = 2048
"""What one column is transformed over: 43 ms, bands of 23 Hz."""


def band_levels_db(samples: Floats, rate_hz: int, columns: int, edges_hz: Floats) -> Floats:
    """Return the level of bands over time, shape (band, column), in dB re digital full scale (mean of both channels).

    `edges_hz` are the bands' borders, ascending, one more than there are bands.
    """
    mono = samples.mean(axis=1)
    starts = np.linspace(0, max(len(mono) - FRAME, 0), columns).astype(int)
    window = np.hanning(FRAME)
    padded = np.pad(mono, (0, max(FRAME - len(mono), 0)))
    frames = padded[starts[:, None] + np.arange(FRAME)] * window
    power = np.abs(np.fft.rfft(frames, axis=1)) ** 2 * (2.0 / (window**2).sum() / FRAME)
    frequency = np.fft.rfftfreq(FRAME, 1.0 / rate_hz)
    rows = []
    for low, high in pairwise(edges_hz):
        inside = (frequency >= low) & (frequency < high)
        nearest = [int(np.argmin(np.abs(frequency - (low + high) / 2.0)))]
        rows.append(power[:, inside].sum(axis=1) if inside.any() else power[:, nearest].sum(axis=1))
    return np.asarray(10.0 * np.log10(np.maximum(np.array(rows), 1e-14)))


def outline(samples: Floats, columns: int) -> Floats:
    """Return the largest amplitude of each of so many equal stretches, shape (column,)."""
    edges = np.linspace(0, len(samples), columns + 1).astype(int)
    return np.asarray(np.maximum.reduceat(np.abs(samples).max(axis=1), edges[:-1]))
