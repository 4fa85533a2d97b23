"""Draws abilities over answers: a line for each skill with its own stroke, named at its end."""

from __future__ import annotations

from trainer.window.drawing.pen import Pen
from trainer.window.pictures.pictures import ProgressPicture

LEFT, RIGHT, TOP, BOTTOM = 2.0, 60.0, 2.5, 30.5
ROLES = ("touch", "marked", "text", "muted", "touch", "marked")
WIDTHS_PX = (2.4, 2.4, 1.6, 1.6, 1.2, 1.2)
LEAST_APART = 4.6
"""Distance between names, so that six fit."""


def draw_progress(pen: Pen, picture: ProgressPicture) -> None:
    """Draw the lines on one scale with its named levels, and each name beside the end of its line."""
    span = max(picture.highest - picture.lowest, 1e-6)
    count = max((len(line) for _name, line in picture.lines), default=1)

    def point(place: int, value: float) -> tuple[float, float]:
        x = LEFT + (RIGHT - LEFT) * place / max(count - 1, 1)
        return x, BOTTOM - (BOTTOM - TOP) * (value - picture.lowest) / span

    for name, level in picture.marks:
        y = point(0, level)[1]
        pen.line([(LEFT, y), (RIGHT, y)], "faint", 1.0)
        pen.words(name, (LEFT, y - 1.0), "muted", "mono", align=0.0, most=2.6)
    ends = []
    for row, (name, line) in enumerate(picture.lines):
        role, width = ROLES[row % len(ROLES)], WIDTHS_PX[row % len(WIDTHS_PX)]
        points = [point(place, value) for place, value in enumerate(line)]
        if len(points) > 1:
            pen.line(points, role, width)
        if points:
            pen.circle(points[-1], 0.7, "", fill=role)
            ends.append((points[-1], name, role))
    ends.sort(key=lambda end: end[0][1])
    places = _spread([end[0][1] for end in ends])
    for ((x, y), name, role), beside in zip(ends, places, strict=True):
        pen.line([(x + 0.8, y), (RIGHT + 1.6, beside)], "faint", 1.0)
        pen.words(name, (RIGHT + 2.2, beside), role, "mono", align=0.0, most=3.2)


def _spread(places: list[float]) -> list[float]:
    """Return places from top to bottom so far apart that names beside them do not touch, none below the picture."""
    spread: list[float] = []
    for y in places:
        spread.append(max(y, spread[-1] + LEAST_APART) if spread else max(y, TOP))
    limit = BOTTOM
    for row in reversed(range(len(spread))):
        spread[row] = min(spread[row], limit)
        limit = spread[row] - LEAST_APART
    return spread
