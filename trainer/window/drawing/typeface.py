"""The bundled typeface: fonts by look, how wide text is, text as surfaces."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

import pygame

from trainer.window.kit.looks import LOOKS, Colour
from trainer.words.visible import visible

FONTS = Path(__file__).parent.parent / "fonts"
FILES = {
    (False, False): "B612-Regular.otf",
    (True, False): "B612-Bold.otf",
    (False, True): "B612Mono-Regular.otf",
    (True, True): "B612Mono-Bold.otf",
}
LINE = 1.32
"""Height of a line in size of its type."""

EM_PX = 15.0
"""Body text at 100 %."""


PLAIN_SIZE = (1280.0, 800.0)
"""The window that body text of EM_PX suits."""


def grown(width: float, height: float) -> float:
    """Return how much larger everything is drawn in a large window: on a projector or a screen of many pixels."""
    return max(min(width / PLAIN_SIZE[0], height / PLAIN_SIZE[1]), 1.0)


class Typeface:
    """Measures and renders text at one size; `em` is the body's size in pixel."""

    def __init__(self, scale: float) -> None:
        self.em: float = round(EM_PX * scale)
        self.width = lru_cache(maxsize=20_000)(self._width)
        self.rendered = lru_cache(maxsize=1_500)(self._rendered)
        self._fonts: dict[tuple[str, int], pygame.font.Font] = {}

    def font(self, look: str, size_px: int | None = None) -> pygame.font.Font:
        """Return the font of a look, at a size of its own where one is given."""
        shape = LOOKS[look]
        size = size_px or max(round(self.em * shape.size), 1)
        key = FILES[shape.bold, shape.mono], size
        if key not in self._fonts:
            self._fonts[key] = pygame.font.Font(FONTS / key[0], size)
        return self._fonts[key]

    def _width(self, text: str, look: str) -> float:
        return float(self.font(look).size(visible(text))[0]) if text else 0.0

    def line(self, look: str) -> float:
        """Return the height of one line."""
        return round(self.em * LOOKS[look].size * LINE)

    def _rendered(self, text: str, look: str, colour: Colour, size_px: int | None = None) -> pygame.Surface:
        return self.font(look, size_px).render(visible(text), True, colour)
