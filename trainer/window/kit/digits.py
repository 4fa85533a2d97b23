"""Digits name cylinders: one digit, or two where an engine has ten cylinders or more."""

from __future__ import annotations

from collections.abc import Sequence

WAIT_S = 0.9
"""How long a first digit waits for a second one, where both readings of it are cylinders."""


class Digits:
    """Turns digits into cylinder numbers."""

    def __init__(self) -> None:
        self.typed = ""
        self._since_s = 0.0

    def press(self, digit: str, cylinders: Sequence[int], now_s: float) -> int | None:
        """Take a digit; return the cylinder that it completes, or None while another may follow or none is named."""
        self.typed += digit
        self._since_s = now_s
        longer = [number for number in cylinders if str(number).startswith(self.typed) and str(number) != self.typed]
        if longer:
            return None
        return self._named(cylinders)

    def waited(self, cylinders: Sequence[int], now_s: float) -> int | None:
        """Return the cylinder that a lone digit names once no second one has come."""
        if self.typed and now_s - self._since_s >= WAIT_S:
            return self._named(cylinders)
        return None

    def _named(self, cylinders: Sequence[int]) -> int | None:
        typed, self.typed = self.typed, ""
        return int(typed) if int(typed) in cylinders else None
