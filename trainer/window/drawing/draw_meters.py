"""Draws a cylinder's circuit with two probes on it, and a current trace."""

from __future__ import annotations

import numpy as np

from trainer.circuit.elements import Side
from trainer.instruments.bench import Pin
from trainer.window.drawing.pen import Pen, Point
from trainer.window.pictures.pictures import (
    COLUMNS_X,
    FEED_Y,
    LADDER_SIZE,
    PIN_RADIUS,
    RETURN_Y,
    LadderPicture,
    PlotPicture,
)
from trainer.words import figure, text

GROUND_AT: Point = (13.0, 27.6)
RED_HANDLE, BLACK_HANDLE = (48.0, 27.6), (62.0, 27.6)
"""Where the two probes lie when they touch nothing."""


def draw_ladder(pen: Pen, picture: LadderPicture) -> None:
    """Draw module, connectors and coil with their pins; an opened break point is a gap."""
    for side, y in ((Side.FEED, FEED_Y), (Side.RETURN, RETURN_Y)):
        for left, right in ((0, None), (1, 2), (3, 4), (5, None)):
            start = COLUMNS_X[left] if right is not None else (4.0 if left == 0 else COLUMNS_X[5])
            end = COLUMNS_X[right] if right is not None else (COLUMNS_X[0] if left == 0 else 92.0)
            pen.line([(start, y), (end, y)], "line", 1.6)
        pen.words(text(f"side.{side}"), ((COLUMNS_X[1] + COLUMNS_X[2]) / 2, y - 2.0), "muted")
    pen.line([(92.0, FEED_Y), (92.0, RETURN_Y)], "line", 1.6)
    for turn in range(4):
        y = FEED_Y + 3.0 + turn * (RETURN_Y - FEED_Y - 6.0) / 3.0
        pen.circle((92.0, y), 1.5, "marked", fill="fill", width_px=1.8)
    pen.box((1.0, FEED_Y - 3.0, 5.0, RETURN_Y + 3.0), "line", fill="fill", round_=0.6)
    for label, at in picture.labels:
        pen.words(label, at, "text")
    for column in range(0, 6, 2):
        point = picture.pins[column * 2][0].break_point
        if point not in picture.unplugged:
            for y in (FEED_Y, RETURN_Y):
                pen.line([(COLUMNS_X[column], y), (COLUMNS_X[column + 1], y)], "line", 1.6)
        else:
            middle = (COLUMNS_X[column] + COLUMNS_X[column + 1]) / 2, (FEED_Y + RETURN_Y) / 2
            pen.words(text("engine.unplugged"), middle, "touch")
    for pin, at in picture.pins:
        touched = pin in (picture.red, picture.black)
        pen.circle(at, PIN_RADIUS * 0.55, "touch" if touched else "line", fill="fill", width_px=2.2)
    _ground(pen, grounded=picture.grounded)
    _probes(pen, picture)


def _ground(pen: Pen, *, grounded: bool) -> None:
    x, y = GROUND_AT
    role = "touch" if grounded else "line"
    for place, half in enumerate((2.0, 1.3, 0.6)):
        pen.line([(x - half, y + 0.8 * place - 0.8), (x + half, y + 0.8 * place - 0.8)], role, 1.8)
    pen.words(text("probe.ground"), (x + 3.0, y), "touch" if grounded else "muted", align=0.0)


def _probes(pen: Pen, picture: LadderPicture) -> None:
    places = dict(picture.pins)
    for name, pin, home, role in (
        ("1", picture.red, RED_HANDLE, "caution"),
        ("2", picture.black, BLACK_HANDLE, "touch"),
    ):
        elsewhere = pin is not None and pin not in places
        tip = _tip(pin, places) if pin is not None else GROUND_AT if name == "2" and picture.grounded else None
        handle = home if tip is None or elsewhere else _beside(tip, name)
        if tip is not None and not elsewhere:
            pen.line([tip, handle], role, 2.2)
            pen.circle(tip, 0.5, role, fill=role)
        pen.box(
            (handle[0] - 1.6, handle[1] - 1.1, handle[0] + 1.6, handle[1] + 1.1),
            role,
            fill="fill",
            round_=0.9,
            width_px=2.0,
        )
        pen.words(name, handle, role, "bold", most=1.7)
        if elsewhere:
            assert pin is not None
            pen.words(text("probe.elsewhere", name=pin.name), (handle[0] + 2.4, handle[1]), "muted", align=0.0)


def _beside(tip: Point, name: str) -> Point:
    if tip == GROUND_AT:  # its own label lies to the right
        return tip[0] - 6.0, tip[1]
    # one above its pin and one below, so that neighbours do not hide one another
    return tip[0] + 3.0, tip[1] + (-3.2 if name == "1" else 3.2)


def _tip(pin: Pin, places: dict[Pin, Point]) -> Point:
    return places.get(pin, (LADDER_SIZE[0] / 2, LADDER_SIZE[1]))


def draw_plot(pen: Pen, picture: PlotPicture) -> None:
    """Draw a curve in its axes, with numbers on them."""
    left, top, right, bottom = 7.0, 2.0, 98.0, 34.0
    highest = max(float(picture.y.max()), 1.0) * 1.1
    widest = float(picture.x.max())
    for step in range(5):
        y = bottom - (bottom - top) * step / 4.0
        pen.line([(left, y), (right, y)], "faint", 0.8)
        pen.words(figure(highest * step / 4.0, ".1f"), (left - 0.8, y), "muted", "mono_muted", align=1.0)
    for step in range(5):
        x = left + (right - left) * step / 4.0
        pen.words(figure(widest * step / 4.0, ".1f"), (x, bottom + 2.0), "muted", "mono_muted")
    pen.words(picture.y_unit, (left - 0.8, top - 0.9), "muted", align=1.0)
    pen.words(picture.x_unit, (right, bottom + 4.2), "muted", align=1.0)
    points = [
        (left + (right - left) * float(x) / widest, bottom - (bottom - top) * max(float(y), 0.0) / highest)
        for x, y in zip(
            picture.x[:: max(len(picture.x) // 600, 1)], picture.y[:: max(len(picture.y) // 600, 1)], strict=True
        )
    ]
    assert np.isfinite(highest)
    pen.line(points, "touch", 1.8)
