"""Text in lines: how wide it is, and where a line may end."""

from __future__ import annotations

import re
from typing import Protocol


class Measure(Protocol):
    """How wide and high text is, in pixel; `em` is the height that everything else is measured in."""

    em: float

    def width(self, text: str, look: str) -> float:
        """Return the width of one line of text."""
        ...

    def line(self, look: str) -> float:
        """Return the height of one line."""
        ...


def wrapped(text: str, look: str, width: float, measure: Measure) -> tuple[str, ...]:
    """Return text in lines no wider than `width`; a word that is wider alone is broken.

    A number keeps its unit beside it.
    """
    lines: list[str] = []
    for paragraph in text.split("\n"):
        line = ""
        for word in _BREAK.split(paragraph):
            wider = f"{line} {word}" if line else word
            if measure.width(wider, look) <= width:
                line = wider
                continue
            if line:
                lines.append(line)
            *full, line = _broken(word, look, width, measure)
            lines += full
        lines.append(line)
    return tuple(lines)


_BREAK = re.compile(r" (?<!\d )| (?!(?:%|°C|[kMG]?Ω|m?A|V|dB|Hz|min|h|s)(?!\w))")
"""A space at which a line may end: none between a figure and its unit."""


def _broken(word: str, look: str, width: float, measure: Measure) -> list[str]:
    pieces = [""]
    for letter in word:
        if pieces[-1] and measure.width(pieces[-1] + letter, look) > width:
            pieces.append("")
        pieces[-1] += letter
    return pieces
