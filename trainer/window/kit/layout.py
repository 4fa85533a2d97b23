"""Places a tree of nodes: pure arithmetic on boxes, with text measured by whoever draws it.

Rows whose parts do not fit become columns, two panes become one page, and what is too high scrolls, so that nothing is
clipped or covered at any size of text or window.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from trainer.window.kit.lines import Measure, wrapped
from trainer.window.kit.nodes import Box, Node, Surface, key_cap

LEAST_PANE = 4.0
"""In em: what is left at least of a part that gives way."""

BAR = 0.8
"""In em: what a scroll bar takes."""

BUTTON_PAD, TICK_BOX, BUTTON_GAP = 0.55, 1.7, 0.6
"""In em: around a button's label, room for a tick's box, between a key and its label."""


@dataclass(frozen=True, slots=True)
class PlacedNode:
    """A node with its place; `unit` is pixel per unit of a picture, `lines` its text as wrapped."""

    node: Node
    box: Box
    clip: Box
    surface: Surface
    lines: tuple[str, ...] = ()
    unit: float = 1.0

    @property
    def visible(self) -> Box | None:
        """The part that is not scrolled away."""
        return self.box.meets(self.clip)


@dataclass
class Layout:
    """Everything placed, in the order in which it is drawn."""

    placed: list[PlacedNode] = field(default_factory=list)
    scrolls: dict[str, tuple[Box, float]] = field(default_factory=dict)
    inside: dict[str, str] = field(default_factory=dict)

    def named(self, name: str) -> PlacedNode | None:
        """Return what is placed under a name."""
        return next((one for one in self.placed if one.node.name == name), None)

    def at(self, x: float, y: float) -> PlacedNode | None:
        """Return what can be acted on at a point, the topmost."""
        for one in reversed(self.placed):
            part = one.visible
            if one.node.reachable and part and part.holds(x, y):
                return one
        return None

    def scroll_at(self, x: float, y: float) -> str | None:
        """Return the name of what scrolls at a point, the innermost."""
        names = [name for name, (box, height) in self.scrolls.items() if box.holds(x, y) and height > box.h]
        return names[-1] if names else None

    @property
    def order(self) -> list[str]:
        """The names that Tab goes through."""
        return [one.node.name for one in self.placed if one.node.reachable]


def lay_out(root: Node, width: float, height: float, measure: Measure, scrolled: Mapping[str, float]) -> Layout:
    """Place a screen in a window; `scrolled` is how far each part is scrolled, in pixel.

    Where not even the least of every part finds room, the whole screen scrolls as one page.
    """
    layout = _placed(root, Box(0.0, 0.0, width, height), measure, scrolled)
    if not any(one.clip.h == height and one.box.y + one.box.h > height + 1.0 for one in layout.placed):
        return layout
    page = Node("scroll", WHOLE, children=root.children, gap=root.gap, pad=root.pad)
    return _placed(page, Box(0.0, 0.0, width, height), measure, scrolled)


WHOLE = "window"
"""The name of a screen that scrolls as one page."""


def _placed(root: Node, screen: Box, measure: Measure, scrolled: Mapping[str, float]) -> Layout:
    work = _Work(measure, scrolled, Layout())
    work.place(root, screen, screen, "bench", "")
    return work.layout


class _Work:
    def __init__(self, measure: Measure, scrolled: Mapping[str, float], layout: Layout) -> None:
        self.measure, self.scrolled, self.layout = measure, scrolled, layout
        self.em = measure.em
        # each level of the tree asks for the sizes of everything below it; nodes are told apart as objects of the tree
        self._heights: dict[tuple[int, float], float] = {}
        self._naturals: dict[int, float] = {}

    # how high and wide

    def height(self, node: Node, width: float) -> float:
        """Return the least height of a node at a width."""
        asked = (id(node), width)
        if asked not in self._heights:
            self._heights[asked] = self._height(node, width)
        return self._heights[asked]

    def _height(self, node: Node, width: float) -> float:
        em, pad = self.em, node.pad * self.em
        inner = width - 2 * pad
        if node.kind in ("text", "button", "tick", "field"):
            count = len(wrapped(node.text, node.look, self._text_width(node, inner), self.measure))
            text = count * self.measure.line(node.look)
            return (
                text
                + 2 * pad
                + (0.0 if node.kind == "text" else 2 * BUTTON_PAD * em * (1.0 if node.kind != "tick" else 0.5))
            )
        if node.kind == "picture":
            if node.weight:
                return node.least * em
            return max(min(width, node.size[0] * em) * node.size[1] / node.size[0], node.least * em)
        if node.kind == "rule":
            return 0.5 * em
        if node.kind == "bar":
            return 0.6 * em
        if node.kind == "flow":
            return (
                sum(high for high, _row in self._rows(node, inner))
                + 2 * pad
                + self._gaps(node, len(self._rows(node, inner)))
            )
        if node.kind == "row" and (widths := self._widths(node, inner)):
            return max((self.height(c, w) for c, w in zip(node.children, widths, strict=True)), default=0.0) + 2 * pad
        if node.kind == "split" and width >= node.least * em:
            main, side = self._panes(node, width)
            return max(self.height(node.children[0], main), self.height(node.children[1], side))
        heights = [self.height(child, inner) for child in node.children]
        return sum(heights) + self._gaps(node, len(heights)) + 2 * pad

    def _gaps(self, node: Node, count: int) -> float:
        return max(count - 1, 0) * node.gap * self.em

    def _text_width(self, node: Node, width: float) -> float:
        em = self.em
        if node.kind == "text":
            return width
        key = self._key_width(node)
        room = {"button": 2 * BUTTON_PAD * em + key, "field": 2 * BUTTON_PAD * em, "tick": TICK_BOX * em + key}[
            node.kind
        ]
        return max(width - room, em)

    def _key_width(self, node: Node) -> float:
        return self.measure.width(key_cap(node.key), "small") + (0.7 + BUTTON_GAP) * self.em if node.key else 0.0

    def natural(self, node: Node) -> float:
        """Return the width that a node would like."""
        if id(node) not in self._naturals:
            self._naturals[id(node)] = self._natural(node)
        return self._naturals[id(node)]

    def _natural(self, node: Node) -> float:
        em = self.em
        if node.kind in ("text", "button", "tick", "field"):
            line = max(self.measure.width(part, node.look) for part in node.text.split("\n"))
            line = max(line, 0.0 if node.kind == "text" else node.least * em)
            return line + self._text_frame(node) + 2 * node.pad * em + 1.0
        if node.kind in ("row", "flow"):
            return (
                sum(self.natural(child) for child in node.children)
                + self._gaps(node, len(node.children))
                + 2 * node.pad * em
            )
        if node.children:
            return max(*(self.natural(child) for child in node.children), node.least * em) + 2 * node.pad * em
        return max(node.least, 4.0) * em

    def _text_frame(self, node: Node) -> float:
        return 10_000.0 - self._text_width(node, 10_000.0)

    def _widths(self, node: Node, width: float) -> list[float] | None:
        """Return the widths of a row's children, or None where they do not fit side by side."""
        least = [node_least(child, self.em) if child.weight else self.natural(child) for child in node.children]
        left = width - self._gaps(node, len(least)) - sum(least)
        if left < -0.5:
            return None
        shares = sum(child.weight for child in node.children)
        return [
            base + (left * child.weight / shares if shares else 0.0)
            for base, child in zip(least, node.children, strict=True)
        ]

    def _rows(self, node: Node, width: float) -> list[tuple[float, list[tuple[Node, float]]]]:
        rows: list[list[tuple[Node, float]]] = [[]]
        used = 0.0
        for child in node.children:
            wide = min(self.natural(child), width)
            if rows[-1] and used + wide > width + 0.5:
                rows.append([])
                used = 0.0
            rows[-1].append((child, wide))
            used += wide + node.gap * self.em
        return [(max((self.height(c, w) for c, w in one), default=0.0), one) for one in rows]

    def _panes(self, node: Node, width: float) -> tuple[float, float]:
        side = max(node.children[1].least * self.em, width * 0.3)
        return width - side - node.gap * self.em, side

    # where

    def place(self, node: Node, box: Box, clip: Box, surface: Surface, scroller: str) -> None:
        surface = node.surface or surface
        narrow = node.kind == "split" and box.w < node.least * self.em
        # what lies in something that scrolls does not scroll again
        if not scroller and (node.kind == "scroll" or narrow):
            self._scroll(node, box, clip, surface)
            return
        lines: tuple[str, ...] = ()
        if node.text:
            lines = wrapped(node.text, node.look, self._text_width(node, box.w - 2 * node.pad * self.em), self.measure)
        self._note(node, box, clip, surface, scroller, lines)
        inner = box.inside(node.pad * self.em)
        if node.kind == "picture":
            self._picture(node, box, clip, surface, scroller)
        elif node.kind == "split" and not narrow:
            main, side = self._panes(node, box.w)
            self.place(node.children[0], Box(box.x, box.y, main, box.h), clip, surface, scroller)
            self.place(node.children[1], Box(box.x + box.w - side, box.y, side, box.h), clip, surface, scroller)
        elif node.kind == "flow":
            y = inner.y
            for high, one in self._rows(node, inner.w):
                x = inner.x
                for child, wide in one:
                    self.place(child, self._level(child, Box(x, y, wide, high)), clip, surface, scroller)
                    x += wide + node.gap * self.em
                y += high + node.gap * self.em
        elif node.kind == "row" and (widths := self._widths(node, inner.w)) is not None:
            x = inner.x
            for child, wide in zip(node.children, widths, strict=True):
                self.place(child, self._level(child, Box(x, inner.y, wide, inner.h)), clip, surface, scroller)
                x += wide + node.gap * self.em
        elif node.children:
            self._column(node, inner, clip, surface, scroller)

    def _level(self, child: Node, box: Box) -> Box:
        """Return where a line of text lies in a row that is higher: in its middle."""
        if child.kind not in ("text", "button", "tick", "field"):
            return box
        high = self.height(child, box.w)
        return Box(box.x, box.y + (box.h - high) / 2, box.w, high)

    def _note(
        self, node: Node, box: Box, clip: Box, surface: Surface, scroller: str, lines: Sequence[str], unit: float = 1.0
    ) -> None:
        self.layout.placed.append(PlacedNode(node, box, clip, surface, tuple(lines), unit))
        if node.name:
            self.layout.inside[node.name] = scroller

    def _column(self, node: Node, box: Box, clip: Box, surface: Surface, scroller: str) -> None:
        heights = [self.height(child, box.w) for child in node.children]
        left = box.h - sum(heights) - self._gaps(node, len(heights))
        shares = sum(child.weight for child in node.children) if node.kind != "row" else 0.0
        y = box.y
        for child, high in zip(node.children, heights, strict=True):
            # what scrolls inside gives way where everything together is too high
            grown = max(high + (left * child.weight / shares if shares else 0.0), min(high, LEAST_PANE * self.em))
            self.place(child, Box(box.x, y, box.w, grown), clip, surface, scroller)
            y += grown + node.gap * self.em

    def _scroll(self, node: Node, box: Box, clip: Box, surface: Surface) -> None:
        part = box.meets(clip) or Box(box.x, box.y, 0.0, 0.0)
        pad = node.pad * self.em
        body = Node("column", children=node.children, gap=node.gap, pad=node.pad)
        content = max(self._height(body, box.w), box.h)
        bar = 0.0
        if content > box.h + 0.5:  # room for the bar that shows how far it is scrolled
            bar = BAR * self.em
            content = max(self._height(body, box.w - bar), box.h)
        offset = min(self.scrolled.get(node.name, 0.0), content - box.h)
        self.layout.scrolls[node.name] = (box, content)
        self._note(node, box, clip, surface, "", ())
        inner = Box(box.x + pad, box.y + pad - offset, box.w - 2 * pad - bar, content - 2 * pad)
        self._column(body, inner, part, surface, node.name)

    def _picture(self, node: Node, box: Box, clip: Box, surface: Surface, scroller: str) -> None:
        """Fit a picture's units into its box, and its children onto it."""
        unit = min(box.w / node.size[0], box.h / node.size[1])
        left, top = box.x + (box.w - unit * node.size[0]) / 2, box.y + (box.h - unit * node.size[1]) / 2
        drawn = Box(left, top, unit * node.size[0], unit * node.size[1])
        self.layout.placed[-1] = PlacedNode(node, drawn, clip, surface, (), unit)
        for child in node.children:
            at = child.at or Box(0.0, 0.0, *node.size)
            place = Box(left + at.x * unit, top + at.y * unit, at.w * unit, at.h * unit)
            self._note(child, place, clip, surface, scroller, (), unit)


def node_least(node: Node, em: float) -> float:
    """Return the least width of something that shares what is left."""
    return (node.least or 6.0) * em
