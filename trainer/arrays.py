"""Array types by element; the docstrings of functions state axes and units."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.floating]
"""Of any width: 64 bits where currents and beliefs are computed, 32 where sound is rendered."""
Floats32 = NDArray[np.float32]
Complex = NDArray[np.complex128]
Complex64 = NDArray[np.complex64]
Integers = NDArray[np.int_]
Flags = NDArray[np.bool_]
