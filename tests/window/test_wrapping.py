"""Lines of text: no wider than asked, and a figure keeps its unit beside it."""

from __future__ import annotations

import pytest

from trainer.window.kit.lines import wrapped


class Letters:
    """Every letter is as wide as every other."""

    em = 1.0

    def width(self, text: str, look: str) -> float:
        return float(len(text))

    def line(self, look: str) -> float:
        return self.em


@pytest.mark.parametrize(
    ("text", "width", "lines"),
    [
        ("your finding is 0.0 % likely", 19.0, ("your finding is", "0.0 % likely")),
        ("what you hear is 1.9 A through each", 20.0, ("what you hear is", "1.9 A through each")),
        ("it measures 2.6 Ω there", 15.0, ("it measures", "2.6 Ω there")),
        ("cylinders 1, 2 and 3 are as good", 20.0, ("cylinders 1, 2 and 3", "are as good")),
    ],
)
def test_a_line_never_ends_between_a_figure_and_its_unit(text: str, width: float, lines: tuple[str, ...]) -> None:
    """The figure itself would still fit on the first line; a cylinder's number has no unit and stays there."""
    assert wrapped(text, "body", width, Letters()) == lines


def test_a_word_that_is_wider_than_the_line_is_broken() -> None:
    assert wrapped("abcdefgh", "body", 3.0, Letters()) == ("abc", "def", "gh")
