"""Some of many for the quick suite, the rest marked long: what .ci/long runs in full."""

from __future__ import annotations

from collections.abc import Iterable

import pytest
from _pytest.mark import ParameterSet


def thinned(values: Iterable[object], keep: int) -> list[ParameterSet]:
    """Return every value as a parameter; each `keep`-th one, from the first on, stays in the quick suite."""
    return [
        pytest.param(
            *(value if isinstance(value, tuple) else (value,)), marks=() if number % keep == 0 else (pytest.mark.long,)
        )
        for number, value in enumerate(values)
    ]
