"""Draws the strip of slots and its playhead."""

from __future__ import annotations

import numpy as np
import pygame

from trainer.window.drawing.pen import Pen
from trainer.window.pictures.pictures import SpectrogramPicture, StripPicture
from trainer.window.pictures.sound_strip import BLOCK_BOTTOM, BLOCK_TOP, STRIP_SIZE, block_of
from trainer.words import text

MIDDLE = (BLOCK_TOP + BLOCK_BOTTOM) / 2.0
RANGE_DB = 46.0
"""From the loudest to the height of nothing: the outline is drawn in decibel, so that a hum is seen."""


def draw_strip(pen: Pen, picture: StripPicture) -> None:
    """Draw the blocks where their slots are in time, with the outline as far as it is granted."""
    for number, start, end in picture.slots:
        box = block_of(picture, start, end)
        marked = number in picture.marked
        lit = picture.lit is None or number in picture.lit
        role = "marked" if marked else "line" if lit and picture.lit is not None else "faint"
        pen.box(
            (box.x, box.y, box.x + box.w, box.y + box.h), role, fill="key", round_=0.5, width_px=2.2 if marked else 1.0
        )
        label = text("slot.short_all") if number == 0 else str(number)
        pen.words(label, (box.x + box.w / 2, BLOCK_BOTTOM + 1.5), "marked" if marked else "muted", "mono", most=2.2)
    if picture.outline is not None and picture.strength > 0.0:
        _outline(pen, picture)


def _outline(pen: Pen, picture: StripPicture) -> None:
    assert picture.outline is not None
    level = 20.0 * np.log10(np.maximum(picture.outline, 1e-9))
    height = np.clip(1.0 + (level - level.max()) / RANGE_DB, 0.0, 1.0) * (BLOCK_BOTTOM - BLOCK_TOP) * 0.48
    times = (np.arange(len(height)) + 0.5) / len(height) * picture.length_s
    fill, bright = np.array(pen.colours["key"]), np.array(pen.colours["touch"])
    strong = 0.35 + 0.65 * picture.strength
    pen.colours = {**pen.colours, "outline": _mixed(fill, bright, strong), "dim": _mixed(fill, bright, strong * 0.35)}
    scale = STRIP_SIZE[0] / picture.length_s
    wide_px = max(0.9, STRIP_SIZE[0] * pen.unit / len(height) + 0.3)
    for number, start, end in picture.slots:
        if end > picture.heard_s:
            continue
        lit = picture.lit is None or number in picture.lit
        for time, tall in zip(times, height, strict=True):
            if start <= time < end:
                x = time * scale
                pen.line([(x, MIDDLE - tall), (x, MIDDLE + tall)], "outline" if lit else "dim", wide_px)


def _mixed(first: np.ndarray, second: np.ndarray, share: float) -> tuple[int, int, int]:
    red, green, blue = (first + (second - first) * share).astype(int).tolist()
    return red, green, blue


def draw_bands(pen: Pen, picture: SpectrogramPicture) -> None:
    """Draw bands over time: the stronger, the nearer to the colour of touch."""
    share = np.clip((picture.level_db - picture.floor_db) / (picture.top_db - picture.floor_db), 0.0, 1.0)
    dark, bright = np.array(pen.colours["key"], float), np.array(pen.colours["touch"], float)
    colours = dark + (bright - dark) * share[::-1].T[:, :, None] ** 1.3
    small = pygame.surfarray.make_surface(colours.astype(np.uint8))
    pen.surface.blit(pygame.transform.smoothscale(small, pen.surface.get_size()), (0, 0))
