"""Colours and type: contrast by WCAG 2.2, every letter there, nothing by colour alone."""

from __future__ import annotations

from pathlib import Path

import pygame
import pytest

import trainer.window
from tests.words.catalogues import texts_of
from trainer.window.drawing.typeface import FILES, FONTS, Typeface
from trainer.window.kit.looks import THEMES, contrast
from trainer.words.languages import LANGUAGES
from trainer.words.visible import visible

TEXT_ROLES = ("text", "muted", "marked", "touch", "here", "caution")
SHAPE_ROLES = ("line", "faint", "marked", "touch", "here", "caution")
SURFACES = [(theme, surface) for theme in THEMES for surface in ("bench", "panel", "card")]


def test_contrast_is_that_of_the_published_formula() -> None:
    """WCAG 2.2, 'contrast ratio': 21 for black on white, 1 for a colour on itself; #777 on white is 4.48 (W3C's G18)."""
    assert contrast((0, 0, 0), (255, 255, 255)) == pytest.approx(21.0)
    assert contrast((86, 180, 233), (86, 180, 233)) == pytest.approx(1.0)
    assert contrast((0x77, 0x77, 0x77), (255, 255, 255)) == pytest.approx(4.48, abs=0.005)


@pytest.mark.parametrize(("theme", "surface"), SURFACES)
def test_text_and_shapes_stand_out(theme: str, surface: str) -> None:
    colours = THEMES[theme][surface]
    for role in TEXT_ROLES:
        assert contrast(colours[role], colours["fill"]) >= 4.5, role
    for role in SHAPE_ROLES:
        assert contrast(colours[role], colours["fill"]) >= 3.0, role
    assert contrast(colours["text"], colours["key"]) >= 4.5


@pytest.mark.parametrize("file", sorted(FILES.values()))
def test_the_bundled_type_has_every_letter_of_every_language(file: str) -> None:
    pygame.font.init()
    font = pygame.font.Font(FONTS / file, 20)
    letters = {letter for language in LANGUAGES for text in texts_of(language).values() for letter in text} - {"\n"}
    letters |= set("0123456789•→≤Ω°")
    missing = {
        letter
        for letter, metrics in zip(sorted(letters), font.metrics("".join(sorted(letters))), strict=True)
        if metrics is None
    }
    assert not missing


def test_the_licence_of_the_type_lies_beside_it() -> None:
    licence = (Path(trainer.window.__file__).parent / "fonts" / "OFL.txt").read_text("utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence
    assert "Copyright" in licence


@pytest.mark.parametrize("character", ["\0", "\x1b", "\u202e", "\u2028"])
def test_a_character_that_is_not_seen_is_drawn_as_an_escape(character: str) -> None:
    pygame.font.init()
    letters, hostile = Typeface(1.0), f"a{character}b"
    assert letters.width(hostile, "body") == letters.width(visible(hostile), "body")
    drawn = [
        pygame.image.tobytes(letters.rendered(one, "body", (0, 0, 0)), "RGBA") for one in (hostile, visible(hostile))
    ]
    assert drawn[0] == drawn[1]
