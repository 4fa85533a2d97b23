"""What the drawn parts of a screen show, as values; `window/drawing` turns each into lines."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from trainer.arrays import Floats
from trainer.circuit.elements import Location, Side
from trainer.circuit.geometry import Drawing, Point
from trainer.instruments.bench import Pin

LADDER_SIZE = (100.0, 30.0)
COLUMNS_X = (12.0, 19.0, 42.0, 49.0, 72.0, 79.0)
FEED_Y, RETURN_Y, PIN_RADIUS = 10.0, 22.0, 2.0
"""The drawing of one cylinder's circuit: its size, where its columns of pins and its two wires lie."""


@dataclass(frozen=True)
class Gap:
    """Where a wire is broken: a real gap in its run."""

    location: Location
    side: Side | None
    cylinders: tuple[int, ...]


@dataclass(frozen=True)
class EnginePicture:
    """The engine from above with its wiring.

    `currents_a` gives each injector's current, drawn as the width of its wires; without it all wires are thin.
    `places` are where one can listen, `here` is the chosen one.
    """

    drawing: Drawing
    marked: frozenset[int] = frozenset()
    unplugged: frozenset[str] = frozenset()
    places: Mapping[str, Point] = field(default_factory=dict)
    here: str = ""
    currents_a: Mapping[int, float] | None = None
    gaps: tuple[Gap, ...] = ()


@dataclass(frozen=True)
class StripPicture:
    """The test along time: slots as (number, start, end) in second, the outline where it is granted.

    `strength` is how visible the outline is, 0 to 1; `lit` are slots to look at; `follows` says that the playhead of
    what plays now belongs here. The outline is drawn of slots that ended before `heard_s`: the ear comes first.
    """

    slots: tuple[tuple[int, float, float], ...]
    length_s: float
    outline: Floats | None = None
    strength: float = 0.0
    marked: frozenset[int] = frozenset()
    lit: frozenset[int] | None = None
    follows: str = ""
    heard_s: float = float("inf")


@dataclass(frozen=True)
class SpectrogramPicture:
    """Bands over time in dB, shape (band, column), lowest band first; drawn between `floor_db` and `top_db`."""

    level_db: Floats
    floor_db: float
    top_db: float
    follows: str = ""
    length_s: float = 0.0


@dataclass(frozen=True)
class PlotPicture:
    """A curve: x in millisecond, y in ampere, both of shape (sample,)."""

    x: Floats
    y: Floats
    x_unit: str
    y_unit: str


@dataclass(frozen=True)
class ProgressPicture:
    """Abilities over answers: a line for each skill, named at its end; `marks` name levels of their one scale."""

    lines: tuple[tuple[str, tuple[float, ...]], ...]
    lowest: float
    highest: float
    marks: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True)
class LadderPicture:
    """One cylinder's circuit from module to injector: its pins by place, with the two probes."""

    cylinder: int
    pins: tuple[tuple[Pin, Point], ...]
    red: Pin | None
    black: Pin | None
    grounded: bool
    unplugged: frozenset[str]
    labels: tuple[tuple[str, Point], ...]
