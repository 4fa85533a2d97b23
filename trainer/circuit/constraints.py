"""Constraints that fields of values carry in their types: what a file may give, checked where files are read.

They are plain values: `annotated_types` has the bounds of numbers and lengths, and here is what it lacks for text.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from annotated_types import Interval, Len


@dataclass(frozen=True, slots=True)
class Pattern:
    """A regular expression that a text must match."""

    regex: str


@dataclass(frozen=True, slots=True)
class OneLine:
    """A text without line breaks, as it is shown in a list."""


Name = Annotated[str, Pattern(r"^[a-z][a-z0-9_]{1,30}$")]
Line = Annotated[str, OneLine()]
Title = Annotated[str, OneLine(), Len(3, 80)]
Cylinder = Annotated[int, Interval(ge=1, le=16)]
Cylinders = Annotated[tuple[Cylinder, ...], Len(1, 16)]
Severity = Annotated[float, Interval(ge=0, le=1e9)]
"""In the unit of the fault's kind, which also has its own bounds."""
