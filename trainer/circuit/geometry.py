"""The wiring as drawable geometry: the engine from above, its front at the top, and the run of every wire.

Places are points on a plane of WIDTH by HEIGHT units, x to the engine's right as seen from the driver's seat, y to the
rear. Runs lie in lanes of their own, so that no two wires are drawn over one another along their length.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from trainer.circuit.elements import Location, Side
from trainer.circuit.harness import feed_scope
from trainer.circuit.profile import Connector, Profile

Point = tuple[float, float]

WIDTH, HEIGHT = 100.0, 68.0
TOP, BOTTOM = 12.0, 50.0
"""Between which the injectors of a bank lie."""

BANK_HALF, INJECTOR_RADIUS, PIN_STEP = 6.5, 2.7, 1.4
MODULE_LEFT, MODULE_RIGHT, MODULE_TOP, MODULE_BOTTOM = 84.0, 98.5, 11.0, 54.0
RIGHT_LANES, LEFT_LANES, UNDER_LANES = (69.5, 82.0), (3.0, 17.5), (58.5, 66.5)
MIDDLE_X, RIGHT_BANK_X, LEFT_BANK_X = 44.0, 60.0, 28.0


@dataclass(frozen=True, slots=True)
class Run:
    """One wire as drawn: where it runs, its side, the cylinders that share it, and its points from the module on."""

    location: Location
    side: Side
    cylinders: tuple[int, ...]
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Drawing:
    """An engine's wiring drawn.

    `banks` are boxes (left, top, right, bottom) by name, `connectors` likewise; `module_pins` and `through_pins` are
    points by side and name, the latter inside their connector's name; injectors are centres by number.
    """

    injectors: Mapping[int, Point]
    banks: Mapping[str, tuple[float, float, float, float]]
    connectors: Mapping[str, tuple[float, float, float, float]]
    module: tuple[float, float, float, float]
    module_pins: Mapping[tuple[Side, str], Point]
    through_pins: Mapping[str, Mapping[tuple[Side, tuple[int, ...]], Point]]
    runs: tuple[Run, ...]


def drawing_of(profile: Profile) -> Drawing:
    """Return the drawing of a profile's wiring."""
    centres = _bank_centres(profile)
    injectors = {
        number: (centres[bank], _spread(TOP, BOTTOM, len(numbers), place))
        for bank, numbers in profile.banks.items()
        for place, number in enumerate(numbers)
    }
    banks = {name: (x - BANK_HALF, TOP - 5.5, x + BANK_HALF, BOTTOM + 4.2) for name, x in centres.items()}
    pins = {name: _through_pins(connector, injectors) for name, connector in profile.wiring.connectors.items()}
    connectors = {name: _around(list(points.values())) for name, points in pins.items()}
    module_pins = _module_pins(profile)
    module = (MODULE_LEFT, MODULE_TOP, MODULE_RIGHT, MODULE_BOTTOM)
    runs = (*_engine_runs(profile, pins, module_pins), *_cover_runs(profile, pins, injectors))
    return Drawing(injectors, banks, connectors, module, module_pins, pins, runs)


def cut_in_two(points: tuple[Point, ...], gap: float) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """Return a run with a gap of twice `gap` in the middle of its longest piece."""
    lengths = [math.dist(a, b) for a, b in pairwise(points)]
    place = lengths.index(max(lengths))
    (ax, ay), (bx, by) = points[place], points[place + 1]
    share = min(gap / max(lengths[place], 1e-6), 0.4)
    before = (ax + (bx - ax) * (0.5 - share), ay + (by - ay) * (0.5 - share))
    after = (ax + (bx - ax) * (0.5 + share), ay + (by - ay) * (0.5 + share))
    return (*points[: place + 1], before), (after, *points[place + 1 :])


def _bank_centres(profile: Profile) -> dict[str, float]:
    if len(profile.banks) == 1:
        return dict.fromkeys(profile.banks, MIDDLE_X)
    return dict(zip(profile.banks, (RIGHT_BANK_X, LEFT_BANK_X), strict=True))


def _spread(first: float, last: float, count: int, place: int) -> float:
    return (first + last) / 2.0 if count == 1 else first + (last - first) * place / (count - 1)


def _outward(centre_x: float) -> float:
    """Return +1 where a bank's outer edge is on the right, -1 on the left."""
    return 1.0 if centre_x >= MIDDLE_X else -1.0


def _feed_scopes(connector: Connector) -> list[tuple[int, ...]]:
    return [connector.injectors] if connector.feed_pins == "shared" else [(n,) for n in connector.injectors]


def _through_pins(connector: Connector, injectors: Mapping[int, Point]) -> dict[tuple[Side, tuple[int, ...]], Point]:
    centres = [injectors[number] for number in connector.injectors]
    x = centres[0][0] + _outward(centres[0][0]) * BANK_HALF
    middle = sum(y for _x, y in centres) / len(centres)
    names = [(Side.FEED, scope) for scope in _feed_scopes(connector)]
    names += [(Side.RETURN, (number,)) for number in connector.injectors]
    top = middle - PIN_STEP * (len(names) - 1) / 2.0
    return {name: (x, top + PIN_STEP * place) for place, name in enumerate(names)}


def _around(points: Sequence[Point]) -> tuple[float, float, float, float]:
    x = points[0][0]
    ys = [y for _x, y in points]
    return x - 1.5, min(ys) - 1.2, x + 1.5, max(ys) + 1.2


def _module_pins(profile: Profile) -> dict[tuple[Side, str], Point]:
    names = [(Side.FEED, output) for output in profile.wiring.outputs]
    names += [(Side.RETURN, str(number)) for number in profile.cylinders]
    return {
        name: (MODULE_LEFT, _spread(MODULE_TOP + 7.0, MODULE_BOTTOM - 3.0, len(names), place))
        for place, name in enumerate(names)
    }


Pins = Mapping[str, Mapping[tuple[Side, tuple[int, ...]], Point]]


def _engine_runs(profile: Profile, pins: Pins, module_pins: Mapping[tuple[Side, str], Point]) -> list[Run]:
    """Return the engine harness: each return on its own, each output's trunk to its splice and on to its connectors."""
    wires = [(side, scope, point) for name in profile.wiring.connectors for (side, scope), point in pins[name].items()]
    lanes = {id(wire): place / max(len(wires) - 1, 1) for place, wire in enumerate(wires)}
    runs, spliced = [], dict[str, Point]()
    for wire in wires:
        side, scope, end = wire
        output = profile.output_of(scope[0])
        start = module_pins[Side.FEED, output] if side is Side.FEED else module_pins[Side.RETURN, str(scope[0])]
        points = _way(start, end, lanes[id(wire)])
        if side is Side.FEED:
            if output not in spliced:
                # the splice lies on the first way, a little before the module's end of its lane
                lane_x = points[1][0]
                spliced[output] = (lane_x + 0.45 * (start[0] - lane_x), start[1])
                runs.append(
                    Run(Location.ENGINE_HARNESS, side, profile.wiring.outputs[output], (start, spliced[output]))
                )
            points = (spliced[output], *points[1:])
        runs.append(Run(Location.ENGINE_HARNESS, side, scope, points))
    return runs


def _way(start: Point, end: Point, lane: float) -> tuple[Point, ...]:
    """Return the way from a module pin to a connector's pin, in a lane between 0 and 1."""
    lane_x = RIGHT_LANES[1] + (RIGHT_LANES[0] - RIGHT_LANES[1]) * lane
    if end[0] >= MIDDLE_X:
        return start, (lane_x, start[1]), (lane_x, end[1]), end
    left_x = LEFT_LANES[1] + (LEFT_LANES[0] - LEFT_LANES[1]) * lane
    under_y = UNDER_LANES[0] + (UNDER_LANES[1] - UNDER_LANES[0]) * lane
    return start, (lane_x, start[1]), (lane_x, under_y), (left_x, under_y), (left_x, end[1]), end


def _cover_runs(profile: Profile, pins: Pins, injectors: Mapping[int, Point]) -> list[Run]:
    """Return the wires under the covers: shared feeds to their branch, then each injector's two."""
    runs = []
    for name, connector in profile.wiring.connectors.items():
        points = pins[name]
        inward = -_outward(injectors[connector.injectors[0]][0])
        for place, number in enumerate(connector.injectors):
            x, y = injectors[number]
            plugs = {
                Side.FEED: (x - inward * INJECTOR_RADIUS, y - 0.9),
                Side.RETURN: (x - inward * INJECTOR_RADIUS, y + 0.9),
            }
            lane_x = points[Side.RETURN, (number,)][0] + inward * (2.1 + 0.35 * place)
            scope = feed_scope(profile, number)
            feed = points[Side.FEED, scope]
            if len(scope) > 1:
                branch = (feed[0] + inward * 1.8, feed[1])
                if number == scope[0]:
                    runs.append(Run(Location.UNDER_COVER, Side.FEED, scope, (feed, branch)))
                feed = branch
            runs.append(_under(Side.FEED, number, feed, plugs[Side.FEED], feed[0] if len(scope) > 1 else lane_x))
            runs.append(_under(Side.RETURN, number, points[Side.RETURN, (number,)], plugs[Side.RETURN], lane_x))
    return runs


def _under(side: Side, number: int, start: Point, end: Point, lane_x: float) -> Run:
    return Run(Location.UNDER_COVER, side, (number,), (start, (lane_x, start[1]), (lane_x, end[1]), end))
