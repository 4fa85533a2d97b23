"""Draws abilities over answers: a line for each skill with its own stroke, named at its end."""

from __future__ import annotations

from trainer.window.drawing.pen import Pen
from trainer.window.state.pictures import ProgressPicture

LEFT, RIGHT, TOP, BOTTOM = 2.0, 60.0, 2.5, 30.5
ROLES = ("touch", "marked", "text", "muted", "touch", "marked")
WIDTHS_PX = (2.4, 2.4, 1.6, 1.6, 1.2, 1.2)
LEAST_APART = 4.6


def draw_progress(pen: Pen, picture: ProgressPicture) -> None:
    """Draw the lines on one scale, the middle of it as a thin line, and each name beside the end of its line."""
    span = max(picture.highest - picture.lowest, 1e-6)
    count = max((len(line) for _name, line in picture.lines), default=1)

    def point(place: int, value: float) -> tuple[float, float]:
        x = LEFT + (RIGHT - LEFT) * place / max(count - 1, 1)
        return x, BOTTOM - (BOTTOM - TOP) * (value - picture.lowest) / span

    middle = point(0, min(max(0.0, picture.lowest), picture.highest))[1]
    pen.line([(LEFT, middle), (RIGHT, middle)], "faint", 1.0)
    ends = []
    for row, (name, line) in enumerate(picture.lines):
        role, width = ROLES[row % len(ROLES)], WIDTHS_PX[row % len(WIDTHS_PX)]
        points = [point(place, value) for place, value in enumerate(line)]
        if len(points) > 1:
            pen.line(points, role, width)
        if points:
            pen.circle(points[-1], 0.7, "", fill=role)
            ends.append((points[-1], name, role))
    below = TOP - LEAST_APART
    for (x, y), name, role in sorted(ends, key=lambda end: end[0][1]):
        below = max(y, below + LEAST_APART)
        pen.line([(x + 0.8, y), (RIGHT + 1.6, below)], "faint", 1.0)
        pen.words(name, (RIGHT + 2.2, below), role, "mono", align=0.0, most=3.2)
