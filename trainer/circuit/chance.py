"""Seeded chance that stays the same on every computer and library version.

NumPy may change how its generators make numbers from raw bits, but not the bits of PCG64 or SeedSequence; so the
numbers are made from the raw bits here.
"""

from __future__ import annotations

import numpy as np

from trainer.arrays import Floats, Floats32


class Stream:
    """Chance for one purpose; another purpose never shifts it."""

    def __init__(self, seed: int, purpose: str) -> None:
        self._bits = np.random.PCG64(np.random.SeedSequence([seed, *purpose.encode("utf-8")]))

    def uniform(self, count: int) -> Floats:
        """Return numbers from 0 up to 1, shape (count,)."""
        raw = np.asarray(self._bits.random_raw(count), dtype=np.uint64)
        return (raw >> np.uint64(11)).astype(np.float64) * 2.0**-53

    def normal(self, count: int) -> Floats:
        """Return numbers of mean 0 and deviation 1 (Box and Muller), shape (count,)."""
        pairs = -(-count // 2)
        first, second = self.uniform(pairs), self.uniform(pairs)
        radius = np.sqrt(-2.0 * np.log1p(-first))
        both = np.concatenate([radius * np.cos(2 * np.pi * second), radius * np.sin(2 * np.pi * second)])
        return np.asarray(both[:count])

    def bytes(self, count: int) -> Floats32:
        """Return whole numbers from 0 to 255, shape (count,): cheap chance for noise."""
        raw = np.asarray(self._bits.random_raw(-(-count // 8)), dtype="<u8")
        return raw.view(np.uint8)[:count].astype(np.float32)

    def below(self, count: int) -> int:
        """Return one whole number from 0 up to count."""
        return int(self.uniform(1)[0] * count)
