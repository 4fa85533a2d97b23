"""Paints a layout: everything once when something has changed, and only the playhead while a test plays."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
import pygame

from trainer.window.drawing.draw_engine import draw_engine
from trainer.window.drawing.draw_meters import draw_ladder, draw_plot
from trainer.window.drawing.draw_progress import draw_progress
from trainer.window.drawing.draw_strip import draw_bands, draw_strip
from trainer.window.drawing.pen import Pen
from trainer.window.drawing.typeface import Typeface
from trainer.window.kit.layout import BUTTON_GAP, BUTTON_PAD, TICK_BOX, Layout, PlacedNode
from trainer.window.kit.looks import LOOKS, THEMES, Colour
from trainer.window.kit.nodes import Box, key_cap
from trainer.window.pictures.pictures import (
    EnginePicture,
    LadderPicture,
    PlotPicture,
    ProgressPicture,
    SpectrogramPicture,
    StripPicture,
)

RADIUS = 0.35
RING = 0.8


def _rect(box: Box) -> pygame.Rect:
    return pygame.Rect(
        round(box.x), round(box.y), round(box.x + box.w) - round(box.x), round(box.y + box.h) - round(box.y)
    )


def _draw_picture(pen: Pen, picture: object) -> None:
    match picture:
        case EnginePicture():
            draw_engine(pen, picture)
        case StripPicture():
            draw_strip(pen, picture)
        case SpectrogramPicture():
            draw_bands(pen, picture)
        case LadderPicture():
            draw_ladder(pen, picture)
        case PlotPicture():
            draw_plot(pen, picture)
        case ProgressPicture():
            draw_progress(pen, picture)
        case _:
            raise TypeError(f"no drawing for {type(picture).__name__}")


class Painter:
    """Paints on one surface; pictures are kept until what they show, their size or their colours change."""

    def __init__(self, letters: Typeface, theme: str) -> None:
        self.letters, self.theme = letters, THEMES[theme]
        self._pictures: dict[str, tuple[object, tuple[int, int], pygame.Surface]] = {}

    def paint(self, screen: pygame.Surface, layout: Layout, focus: str | None) -> None:
        """Paint everything."""
        screen.fill(self.theme["bench"]["fill"])
        shown = set()
        for one in layout.placed:
            part = one.visible
            if part is None and one.node.kind not in ("scroll",):
                continue
            focused = bool(focus) and one.node.name == focus
            # the ring around what the keyboard is on may stand over the edge of what scrolls
            screen.set_clip(
                _rect(one.clip).inflate(RING * self.letters.em, RING * self.letters.em) if focused else _rect(one.clip)
            )
            self._one(screen, one, focused=focused)
            shown.add(one.node.name)
        screen.set_clip(None)
        for name in set(self._pictures) - shown:
            del self._pictures[name]
        self._scroll_bars(screen, layout)

    def _one(self, screen: pygame.Surface, one: PlacedNode, *, focused: bool) -> None:
        node, colours = one.node, self.theme[one.surface]
        box = _rect(one.box)
        if node.surface is not None:
            radius = round(0.6 * self.letters.em)
            pygame.draw.rect(screen, colours["fill"], box, border_radius=radius)
            if node.framed and one.surface != "card":
                pygame.draw.rect(screen, colours["faint"], box, 1, border_radius=radius)
        if node.kind == "picture":
            self._picture(screen, one, colours)
        elif node.kind in ("text", "button", "tick", "field"):
            self._text(screen, one, colours, focused=focused)
        elif node.kind == "rule":
            middle = box.centery
            pygame.draw.line(screen, colours["faint"], (box.left, middle), (box.right, middle))
        elif node.kind == "bar":
            pygame.draw.rect(screen, colours["key"], box, border_radius=box.h // 2)
            filled = pygame.Rect(box.x, box.y, max(round(box.w * min(max(node.share, 0.02), 1.0)), box.h), box.h)
            pygame.draw.rect(screen, colours["touch"], filled, border_radius=box.h // 2)
        if focused:
            self._ring(screen, box, colours)

    def _ring(self, screen: pygame.Surface, box: pygame.Rect, colours: Mapping[str, Colour]) -> None:
        width = max(round(0.16 * self.letters.em), 2)
        ring = box.inflate(round(0.3 * self.letters.em) + 2 * width, 2 * width)
        pygame.draw.rect(
            screen, colours["fill"], ring.inflate(2, 2), 1, border_radius=round(RADIUS * self.letters.em) + width
        )
        pygame.draw.rect(screen, colours["touch"], ring, width, border_radius=round(RADIUS * self.letters.em) + width)

    def _text(self, screen: pygame.Surface, one: PlacedNode, colours: Mapping[str, Colour], *, focused: bool) -> None:
        node, em = one.node, self.letters.em
        box = _rect(one.box)
        x, y = box.x + node.pad * em, box.y + node.pad * em
        role = LOOKS[node.look].role if node.enabled else "muted"
        if node.kind in ("button", "field"):
            edge = "marked" if node.chosen else "line" if node.kind == "field" else "faint"
            pygame.draw.rect(
                screen, colours["key" if node.kind == "field" else "fill"], box, border_radius=round(RADIUS * em)
            )
            width = max(round((0.14 if node.chosen else 0.07) * em), 1)
            pygame.draw.rect(screen, colours[edge], box, width, border_radius=round(RADIUS * em))
            x += BUTTON_PAD * em
            y += BUTTON_PAD * em
        elif node.kind == "tick":
            y += BUTTON_PAD * em * 0.5
            self._tick(screen, one, colours, x, y)
            x += TICK_BOX * em
        if node.key:
            x += self._key(screen, node.key, colours, x, y, self.letters.line(node.look))
        high = self.letters.line(node.look)
        for line in one.lines:
            drawn = self.letters.rendered(line, node.look, colours[role])
            top = y + (high - drawn.get_height()) / 2
            screen.blit(drawn, (x, top))
            if node.look == "struck" and line:
                pygame.draw.line(screen, colours["muted"], (x, y + high / 2), (x + drawn.get_width(), y + high / 2))
            y += high
        if node.kind == "field" and focused:
            end = x + (self.letters.width(one.lines[-1], node.look) if one.lines else 0)
            last = y - high if one.lines else y
            pygame.draw.line(screen, colours["touch"], (end + 1, last + 2), (end + 1, last + high - 2), 2)

    def _tick(self, screen: pygame.Surface, one: PlacedNode, colours: Mapping[str, Colour], x: float, y: float) -> None:
        em = self.letters.em
        side = round(0.85 * em)
        square = pygame.Rect(round(x), round(y + (self.letters.line(one.node.look) - side) / 2), side, side)
        width = max(round(0.09 * em), 1)
        if one.node.round:
            pygame.draw.circle(screen, colours["line"], square.center, side / 2, width)
            if one.node.chosen:
                pygame.draw.circle(screen, colours["line"], square.center, side * 0.28)
            return
        pygame.draw.rect(screen, colours["line"], square, width, border_radius=round(0.15 * em))
        if one.node.chosen:
            mark = [(0.22, 0.52), (0.44, 0.74), (0.82, 0.26)]
            points = [(square.x + a * side, square.y + b * side) for a, b in mark]
            pygame.draw.lines(screen, colours["line"], False, points, max(round(0.14 * em), 2))

    def _key(
        self, screen: pygame.Surface, key: str, colours: Mapping[str, Colour], x: float, y: float, high: float
    ) -> float:
        em = self.letters.em
        drawn = self.letters.rendered(key_cap(key), "small", colours["text"])
        wide = self.letters.width(key_cap(key), "small") + 0.7 * em
        badge = pygame.Rect(round(x), round(y), round(wide), round(high))
        pygame.draw.rect(screen, colours["key"], badge, border_radius=round(0.2 * em))
        screen.blit(drawn, drawn.get_rect(center=badge.center))
        return wide + BUTTON_GAP * em

    def _picture(self, screen: pygame.Surface, one: PlacedNode, colours: Mapping[str, Colour]) -> None:
        node, box = one.node, _rect(one.box)
        kept = self._pictures.get(node.name)
        if kept is None or kept[1] != box.size or not same(kept[0], node.picture):
            pen = Pen(node.size, one.unit, colours, self.letters)
            _draw_picture(pen, node.picture)
            kept = (node.picture, box.size, pen.finished())
            self._pictures[node.name] = kept
        screen.blit(kept[2], box)

    def _scroll_bars(self, screen: pygame.Surface, layout: Layout) -> None:
        """Show how far each part is scrolled, at its right edge."""
        for name, (box, content) in layout.scrolls.items():
            if content <= box.h + 1:
                continue
            place = layout.named(name)
            colours = self.theme[place.surface if place else "bench"]
            first = next((one for one in layout.placed if layout.inside.get(one.node.name) == name), None)
            offset = box.y - first.box.y if first else 0.0
            high = max(box.h * box.h / content, 12.0)
            top = box.y + (box.h - high) * min(max(offset / (content - box.h), 0.0), 1.0)
            wide = max(round(0.3 * self.letters.em), 4)
            bar = pygame.Rect(round(box.x + box.w) - wide, round(top), wide, round(high))
            pygame.draw.rect(screen, colours["faint"], bar, border_radius=wide // 2)

    def playheads(self, screen: pygame.Surface, layout: Layout, playing: str, at_s: float) -> list[pygame.Rect]:
        """Draw where the sound is, on every strip that follows it; return what was painted over."""
        painted = []
        for one in layout.placed:
            picture = one.node.picture
            if (
                not isinstance(picture, StripPicture | SpectrogramPicture)
                or picture.follows != playing
                or not picture.length_s
            ):
                continue
            if one.visible is None:
                continue
            x = round(one.box.x + one.box.w * min(at_s / picture.length_s, 1.0))
            line = pygame.Rect(x - 1, round(one.box.y), 3, round(one.box.h)).clip(_rect(one.clip))
            pygame.draw.rect(screen, self.theme[one.surface]["text"], line)
            painted.append(line)
        return painted


def same(first: object, second: object) -> bool:
    """Tell whether two pictures show the same; arrays count as the same only where they are one."""
    if type(first) is not type(second) or first is None:
        return False
    ours, theirs = vars(first), vars(second)
    return all(_alike(ours[name], theirs[name]) for name in ours)


def _alike(first: object, second: object) -> bool:
    if first is second:
        return True
    return not isinstance(first, np.ndarray) and not isinstance(second, np.ndarray) and first == second
