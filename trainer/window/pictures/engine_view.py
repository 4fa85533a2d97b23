"""The engine from above as a node: what can be touched on it, and the places to listen from."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial

from trainer.circuit.geometry import HEIGHT, INJECTOR_RADIUS, WIDTH, Point, drawing_of
from trainer.circuit.profile import Profile
from trainer.instruments.bench import MODULE_CONNECTOR
from trainer.practice.reports.attempt_lines import listening_place_text, named
from trainer.sound.places import LEAN, contact_of, places_of
from trainer.window.kit.nodes import Box, Node, spot
from trainer.window.pictures.pictures import EnginePicture
from trainer.words import text

STAND_RADIUS = 2.2


def listening_places(profile: Profile) -> dict[str, Point]:
    """Return where each listening place is drawn; those on an injector or its cover are drawn there."""
    drawing = drawing_of(profile)
    xs = [x for x, _y in drawing.injectors.values()]
    middle = (min(xs) + max(xs)) / 2.0
    banks = {name: drawing.injectors[numbers[0]][0] for name, numbers in profile.banks.items()}
    points = {}
    for name, place in places_of(profile).items():
        if name == "front":
            points[name] = (middle, 3.4)
        elif name.startswith(LEAN):
            # under the engine, where no wire is: each label ends before the next begins
            bank_x = banks[name.removeprefix(LEAN).strip()]
            points[name] = (middle + (4.0 if bank_x > middle else -38.0 if bank_x < middle else -14.0), 61.0)
        elif contact_of(name) is None:
            points[name] = (middle + (33.0 if place.x_m > 0 else -38.0), 3.4)
    return points


def engine_node(
    picture: EnginePicture,
    *,
    injector: Callable[[int], None],
    point: Callable[[str], None] | None = None,
    stand: Callable[[str], None] | None = None,
    least: float = 16.0,
) -> Node:
    """Return the engine with its injectors, break points and listening places as spots."""
    drawing = picture.drawing
    spots: list[Node] = []
    if stand is not None:
        for name, (x, y) in picture.places.items():
            box = Box(x - STAND_RADIUS, y - STAND_RADIUS, 2 * STAND_RADIUS, 2 * STAND_RADIUS)
            label = text("spot.stand", place=listening_place_text(name))
            spots.append(spot(f"stand.{name}", label, box, partial(stand, name), chosen=name == picture.here))
    for number, (x, y) in sorted(drawing.injectors.items()):
        box = Box(x - INJECTOR_RADIUS, y - INJECTOR_RADIUS, 2 * INJECTOR_RADIUS, 2 * INJECTOR_RADIUS)
        label = text("spot.injector", number=number)
        spots.append(spot(f"injector.{number}", label, box, partial(injector, number), chosen=number in picture.marked))
    if point is not None:
        for name, edges in drawing.connectors.items():
            place = f"pass_through.{name}"
            spots.append(
                spot(f"point.{place}", text("spot.connector", name=named(name)), _box(edges), partial(point, place))
            )
        module = text("spot.module")
        spots.append(spot(f"point.{MODULE_CONNECTOR}", module, _box(drawing.module), partial(point, MODULE_CONNECTOR)))
    return Node(
        "picture", "engine", children=tuple(spots), picture=picture, size=(WIDTH, HEIGHT), weight=1.0, least=least
    )


def picture_of(profile: Profile, **shown: object) -> EnginePicture:
    """Return an engine's picture with whatever is to be shown on it."""
    return EnginePicture(drawing_of(profile), **shown)  # type: ignore[arg-type]


def _box(edges: tuple[float, float, float, float]) -> Box:
    left, top, right, bottom = edges
    return Box(left, top, right - left, bottom - top)


def peaks_by_number(profile: Profile, peaks: tuple[float, ...]) -> Mapping[int, float]:
    """Return currents by cylinder number."""
    return dict(zip(profile.cylinders, peaks, strict=True))
