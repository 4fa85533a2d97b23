"""Makes characters visible that act on a terminal, turn the direction of writing or are not seen at all."""

from __future__ import annotations

import re

UNSEEN = re.compile(
    "["
    "\x00-\x1f\x7f-\x9f"  # control characters, line ends and the tab among them
    "\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180b-\u180f"  # soft hyphen, Arabic mark, fillers and separators
    "\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f"  # of no width; direction; line and paragraph; embedding; isolates
    "\u3164\ufeff\uffa0\ufff0-\ufffb"  # fillers, byte order mark, annotations
    "\ud800-\udfff"  # halves of a character
    "\U000e0000-\U000e0fff"  # tags
    "]"
    "|(?<![\u0600-\u0dff])[\u200c\u200d]"  # joiners, but where the scripts from Arabic to Sinhala need them
)


def visible(text: str, keep: str = "") -> str:
    """Return a text with every unseen character written as an escape like `\\u202e`, but those in `keep`."""
    return UNSEEN.sub(lambda found: found[0] if found[0] in keep else escaped(found[0]), text)


def escaped(character: str) -> str:
    """Return a character as it is written in escapes: `\\n`, `\\x1b`, `\\u202e`."""
    return character.encode("unicode_escape").decode("ascii")


def unseen_in(text: str, keep: str = "") -> int | None:
    """Return where the first unseen character of a text is that is not in `keep`, None where there is none."""
    return next((found.start() for found in UNSEEN.finditer(text) if found[0] not in keep), None)


AROUND = 24
"""How many characters before and after one are shown with it."""


def around(text: str, at: int) -> str:
    """Return what stands around a place in a text, to be shown in a problem."""
    return text[max(at - AROUND, 0) : at + 1 + AROUND]
