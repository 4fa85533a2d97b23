"""Damages files of JSON lines: one line in its structure, or which lines there are and in what order."""

from __future__ import annotations

import numpy as np

from tests.fuzz.values import damaged_json, picked


def damaged_lines(rng: np.random.Generator, lines: list[bytes]) -> tuple[list[bytes], str]:
    """Return lines with one or two things damaged, and what was done; the last line is left to whoever seals them."""
    deeds = []
    for _deed in range(int(rng.integers(1, 3))):
        lines, did = _damaged_once(rng, lines)
        deeds.append(did)
    return lines, "; ".join(deeds)


def _damaged_once(rng: np.random.Generator, lines: list[bytes]) -> tuple[list[bytes], str]:
    place, other = (int(rng.integers(len(lines))) for _place in range(2))
    lines = list(lines)
    kind = int(rng.integers(12))
    if kind == 0 and len(lines) > 1:
        del lines[place]
        return lines, f"without line {place}"
    if kind == 1:
        lines.insert(place, lines[other])
        return lines, f"line {other} once more at {place}"
    if kind == 2:
        lines[place], lines[other] = lines[other], lines[place]
        return lines, f"lines {place} and {other} exchanged"
    if kind == 3:
        lines[place] = picked(
            rng, (b"", b"null", b"[]", b"{}", b'"x"', b"7", b"\xff\xfe", b"\x00" * 50, b"[" * 100_000)
        )
        return lines, f"line {place} is {lines[place]!r:.30}"
    if kind == 4:
        lines[place] = lines[place].replace(b":", b":" + b" " * 50_000, 1)
        return lines, f"line {place} is long"
    try:
        text, did = damaged_json(rng, lines[place].decode("utf-8"))
    except (ValueError, RecursionError):  # damaged before
        return lines, f"line {place} once more"
    lines[place] = text.encode("utf-8", "surrogatepass").replace(b"\n", b" ")
    return lines, f"line {place}: {did}"


def damaged_bytes(rng: np.random.Generator, content: bytes) -> tuple[bytes, str]:
    """Return a file's content cut, lengthened, or with bits flipped, and what was done."""
    kind, place = int(rng.integers(4)), int(rng.integers(len(content)))
    if kind == 0:
        return content[:place], f"cut at {place}"
    if kind == 1:
        return content + content[place:], f"its end from {place} once more"
    changed = bytearray(content)
    for _flip in range(int(rng.integers(1, 4))):
        place = int(rng.integers(len(content)))
        changed[place] ^= 1 << int(rng.integers(8))
    return bytes(changed), f"bits flipped, the last at {place}"
