"""What is shown, as a tree of named nodes: screens build it, the layout places it, painters draw it, tests read it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

from trainer.words import capital, text

Kind = Literal[
    "column", "row", "flow", "scroll", "split", "text", "button", "tick", "field", "picture", "spot", "rule", "bar"
]
Surface = Literal["bench", "panel", "card"]


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle: in pixel on the screen, or in a picture's own units for what lies on it."""

    x: float
    y: float
    w: float
    h: float

    def holds(self, x: float, y: float) -> bool:
        """Tell whether a point lies inside."""
        return self.x <= x < self.x + self.w and self.y <= y < self.y + self.h

    def meets(self, other: Box) -> Box | None:
        """Return the part that two boxes share, or None."""
        left, top = max(self.x, other.x), max(self.y, other.y)
        right, bottom = min(self.x + self.w, other.x + other.w), min(self.y + self.h, other.y + other.h)
        return Box(left, top, right - left, bottom - top) if right > left and bottom > top else None

    def inside(self, margin: float) -> Box:
        """Return the box with a margin taken off on every side."""
        return Box(self.x + margin, self.y + margin, max(self.w - 2 * margin, 0.0), max(self.h - 2 * margin, 0.0))


@dataclass(frozen=True, slots=True)
class Node:
    """One thing shown.

    `name` is unique on a screen where the node can be acted on or is looked for. `act` is what Enter or a click does;
    `edit` takes a field's new text. `key` does the same from anywhere on the screen and is shown beside the label.
    `round` marks one choice of
    several. `weight` shares what room is left in a row or column; `least` is the least width (in a row) or height (of a
    picture) in em. Children of a picture lie `at` a box in the picture's units of `size`.
    """

    kind: Kind
    name: str = ""
    text: str = ""
    children: tuple[Node, ...] = ()
    act: Callable[[], None] | None = None
    edit: Callable[[str], None] | None = None
    key: str = ""
    look: str = "body"
    chosen: bool = False
    enabled: bool = True
    weight: float = 0.0
    least: float = 0.0
    gap: float = 0.5
    pad: float = 0.0
    surface: Surface | None = None
    framed: bool = False
    picture: object | None = None
    size: tuple[float, float] = (0.0, 0.0)
    at: Box | None = None
    share: float = 0.0
    round: bool = False

    @property
    def reachable(self) -> bool:
        """Whether the keyboard can come to this node."""
        return bool(self.name) and self.enabled and (self.act is not None or self.edit is not None)

    def walk(self) -> Iterator[Node]:
        """Yield this node and everything in it, in order."""
        yield self
        for child in self.children:
            yield from child.walk()


def key_cap(key: str) -> str:
    """Return a key as it is printed on a button."""
    return text(f"key.{key}") if key in ("escape", "enter", "backspace", "space") else key.upper()


def column(*children: Node | None, **options: object) -> Node:
    """Return nodes one under another; None is left out."""
    return Node("column", children=tuple(child for child in children if child), **options)  # type: ignore[arg-type]


def row(*children: Node | None, **options: object) -> Node:
    """Return nodes side by side; where their least widths do not fit, one under another."""
    return Node("row", children=tuple(child for child in children if child), **options)  # type: ignore[arg-type]


def flow(*children: Node | None, **options: object) -> Node:
    """Return nodes in reading order, as many in a line as fit."""
    return Node("flow", children=tuple(child for child in children if child), **options)  # type: ignore[arg-type]


def scroll(name: str, *children: Node | None, **options: object) -> Node:
    """Return nodes one under another that scroll where they do not fit."""
    kept = tuple(child for child in children if child)
    return Node("scroll", name, children=kept, weight=1.0, **options)  # type: ignore[arg-type]


def split(main: Node, side: Node, least: float) -> Node:
    """Return two panes side by side; narrower than `least` em, one column that scrolls."""
    return Node("split", "panes", children=(main, side), least=least, gap=1.5, weight=1.0)


def words(text: str, look: str = "body", name: str = "", **options: object) -> Node:
    """Return text that wraps."""
    return Node("text", name, text, look=look, **options)  # type: ignore[arg-type]


def lines(texts: Iterable[str], look: str = "body", name: str = "", *, gap: float = 0.25) -> Node:
    """Return texts one under another."""
    shown = (words(text, look, f"{name}.{place}" if name else "") for place, text in enumerate(texts))
    return Node("column", name, children=tuple(shown), gap=gap)


def button(
    name: str, text: str, act: Callable[[], None] | None, key: str = "", *, verbatim: bool = False, **options: object
) -> Node:
    """Return a button, disabled without an act; its label begins with a capital unless it is a file's or a person's."""
    label = text if verbatim else capital(text)
    return Node("button", name, label, act=act, key=key, enabled=act is not None, **options)  # type: ignore[arg-type]


def tick(
    name: str,
    text: str,
    chosen: bool,
    act: Callable[[], None],
    key: str = "",
    *,
    verbatim: bool = False,
    **options: object,
) -> Node:
    """Return something that is on or off; its label begins with a capital unless it is the name of a device."""
    label = text if verbatim else capital(text)
    return Node("tick", name, label, act=act, key=key, chosen=chosen, **options)  # type: ignore[arg-type]


def field(name: str, text: str, edit: Callable[[str], None], act: Callable[[], None] | None = None) -> Node:
    """Return a line to write on; Enter does `act`."""
    return Node("field", name, text, edit=edit, act=act, least=16.0)


def spot(name: str, text: str, at: Box, act: Callable[[], None] | None, *, chosen: bool = False) -> Node:
    """Return a place on a picture that can be acted on; the picture itself shows it, `text` says what it is."""
    return Node("spot", name, capital(text), act=act, at=at, chosen=chosen)


def rule() -> Node:
    """Return a thin line across."""
    return Node("rule")
