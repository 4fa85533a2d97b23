"""Takes the pictures of every screen again, at three sizes and two sizes of text: python -m tests.unchanged.screens

They are made without a display, from the same nodes that a person sees, and kept with few colours so that they stay small.
"""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from pathlib import Path

os.environ.setdefault("SDL_VIDEODRIVER", "dummy")
os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")

import pygame
from PIL import Image

from tests.window.every_screen import every_screen
from tests.window_hands import Hands
from trainer.desk.settings import Settings
from trainer.window.drawing.paint import Painter
from trainer.window.drawing.typeface import Typeface, grown
from trainer.window.kit.layout import lay_out
from trainer.window.kit.nodes import Node

FOLDER = Path(__file__).parents[2] / "assets_generated" / "screens"
SIZES = ((1024, 600), (1280, 800), (1920, 1080))
SCALES = (1.0, 2.0)
COLOURS = 64
README_SIZE, README_SCALE = (1280, 800), 1.0


def screens() -> Iterator[tuple[str, Node, str, Hands]]:
    """Yield every screen's name, nodes, what the keyboard is on, and the hands that went there.

    The files that a screen speaks of lie nowhere.
    """
    pygame.font.init()
    with tempfile.TemporaryDirectory() as folder:
        hands = Hands(settings=Settings(), measure=Typeface(1.0), folder=Path(folder))
        for name in every_screen(hands):
            hands.shell.notice = ""
            hands.shell.touch()
            order = hands.layout.order
            yield name, hands.shell.root(), hands.shell.focus or order[0], hands


def picture(root: Node, focus: str, size: tuple[int, int], scale: float, theme: str = "dark") -> Image.Image:
    """Return one screen as a picture."""
    letters = Typeface(scale * grown(*size))
    surface = pygame.Surface(size)
    Painter(letters, theme).paint(surface, lay_out(root, *size, letters, {}), focus)
    return Image.frombytes("RGB", size, pygame.image.tobytes(surface, "RGB"))


def file_name(name: str, size: tuple[int, int], scale: float, theme: str = "dark") -> str:
    """Return the name of a picture's file."""
    plain = name.replace(", ", "_").replace(" ", "_")
    return f"{plain}_{size[0]}x{size[1]}_{scale:.0%}{'_light' if theme == 'light' else ''}.png".replace("%", "")


def main() -> None:
    """Write every picture anew."""
    FOLDER.mkdir(parents=True, exist_ok=True)
    for path in FOLDER.glob("*.png"):
        path.unlink()
    for name, root, focus, _hands in screens():
        for size in SIZES:
            for scale in SCALES:
                keep(picture(root, focus, size, scale), file_name(name, size, scale))
        if name in ("bench, heard", "debrief, open"):
            keep(picture(root, focus, README_SIZE, 1.0, "light"), file_name(name, README_SIZE, 1.0, "light"))


def with_few_colours(image: Image.Image) -> Image.Image:
    """Return a picture as it is kept: a tenth of the size."""
    return image.quantize(COLOURS, dither=Image.Dither.NONE)


def keep(image: Image.Image, name: str) -> None:
    with_few_colours(image).save(FOLDER / name, optimize=True)


if __name__ == "__main__":
    main()
