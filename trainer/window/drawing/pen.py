"""A pen on a picture: points in the picture's own units, lines in pixel; drawn at twice the size and scaled down."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

import pygame

from trainer.window.drawing.typeface import Typeface
from trainer.window.kit.looks import Colour

FINE = 2
"""How many times finer a picture is drawn than shown, so that slanted and round lines are smooth."""

Point = tuple[float, float]


class Pen:
    """Draws on a surface of its own; `colours` are those of the surface that the picture lies on."""

    def __init__(
        self, size: tuple[float, float], unit: float, colours: Mapping[str, Colour], letters: Typeface
    ) -> None:
        self.unit, self.colours, self.letters = unit, colours, letters
        width, height = (max(round(side * unit * FINE), FINE) for side in size)
        self.surface = pygame.Surface((width, height))
        self.surface.fill(colours["fill"])
        self._words: list[tuple[pygame.Surface, tuple[float, float]]] = []

    def _at(self, point: Point) -> tuple[float, float]:
        return float(point[0] * self.unit * FINE), float(point[1] * self.unit * FINE)

    def px(self, pixels: float) -> int:
        """Return a width in pixel as drawn: never under one, and thicker where text is larger."""
        return max(round(pixels * FINE * max(self.letters.em / 15.0, 1.0)), 1)

    def line(self, points: Sequence[Point], role: str, width_px: float = 1.2) -> None:
        """Draw straight pieces from point to point with round corners."""
        width = self.px(width_px)
        drawn = [self._at(point) for point in points]
        for start, end in pairwise(drawn):
            pygame.draw.line(self.surface, self.colours[role], start, end, width)
        if width > 3:
            for corner in drawn[1:-1]:
                pygame.draw.circle(self.surface, self.colours[role], corner, width / 2.0)

    def box(
        self,
        edges: tuple[float, float, float, float],
        role: str,
        *,
        fill: str = "",
        round_: float = 0.8,
        width_px: float = 1.2,
    ) -> None:
        """Draw a box with rounded corners: left, top, right, bottom."""
        left, top = self._at(edges[:2])
        right, bottom = self._at(edges[2:])
        shape = pygame.Rect(round(left), round(top), round(right - left), round(bottom - top))
        radius = round(round_ * self.unit * FINE)
        if fill:
            pygame.draw.rect(self.surface, self.colours[fill], shape, border_radius=radius)
        if role:
            pygame.draw.rect(self.surface, self.colours[role], shape, self.px(width_px), border_radius=radius)

    def circle(self, centre: Point, radius: float, role: str, *, fill: str = "", width_px: float = 1.4) -> None:
        """Draw a circle, its radius in units."""
        at, size = self._at(centre), radius * self.unit * FINE
        if fill:
            pygame.draw.circle(self.surface, self.colours[fill], at, size)
        if role:
            pygame.draw.circle(self.surface, self.colours[role], at, size, self.px(width_px))

    def polygon(self, points: Sequence[Point], role: str) -> None:
        """Fill a shape."""
        pygame.draw.polygon(self.surface, self.colours[role], [self._at(point) for point in points])

    def words(
        self, text: str, at: Point, role: str, look: str = "small", *, most: float = 2.3, align: float = 0.5
    ) -> None:
        """Write a word, at most `most` units high; `align` 0 starts at the point, 0.5 is centred, 1 ends there."""
        size = max(min(round(self.letters.font(look).get_height() / 1.35), round(most * self.unit)), 6)
        drawn = self.letters.rendered(text, look, self.colours[role], size)
        x = at[0] * self.unit - drawn.get_width() * align
        self._words.append((drawn, (x, at[1] * self.unit - drawn.get_height() / 2.0)))

    def finished(self) -> pygame.Surface:
        """Return the picture at its size, words on top."""
        width, height = (side // FINE for side in self.surface.get_size())
        small = pygame.transform.smoothscale(self.surface, (width, height))
        for drawn, (x, y) in self._words:
            most = width - drawn.get_width()
            small.blit(drawn, (min(max(x, 0), max(most, 0)), y))
        return small
