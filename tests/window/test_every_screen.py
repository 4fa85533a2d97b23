"""Every screen at every size: nothing clipped or covered, everything reachable by keyboard, words that fit."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from functools import cache
from itertools import product
from pathlib import Path

import pytest
from _pytest.mark import ParameterSet

os.environ.setdefault("SDL_VIDEODRIVER", "dummy")
os.environ.setdefault("SDL_AUDIODRIVER", "dummy")
os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")

import pygame

from tests.window.every_screen import every_screen, wrong_with
from tests.window_hands import Hands
from trainer import words
from trainer.desk.settings import Settings
from trainer.window.drawing.paint import Painter
from trainer.window.drawing.type import Type, grown
from trainer.window.state.layout import laid_out
from trainer.window.state.nodes import Node

pygame.font.init()

Screens = Callable[[str], list[tuple[str, Node]]]
SIZES = ((1024, 600), (1280, 800), (1920, 1080), (3840, 2160))


SCALES = (1.0, 1.5, 2.5)
LANGUAGES = ("en", "es", "wide")


@pytest.fixture(scope="module")
def screens(tmp_path_factory: pytest.TempPathFactory) -> Screens:
    """Every screen as nodes, in English, in Spanish, or with every English sentence two fifths longer."""
    english = words.LANGUAGES["en"]

    @cache
    def shown(language: str) -> list[tuple[str, Node]]:
        patched = pytest.MonkeyPatch()
        if language == "wide":
            wide = {key: value + "·" * round(0.4 * len(value)) for key, value in words.TEXTS.items()}
            patched.setitem(words.LANGUAGES, "en", (wide, english[1]))
        settings = Settings(language="es" if language == "es" else "en")
        hands = Hands(settings=settings, folder=tmp_path_factory.mktemp(language))
        nodes = [(name, hands.shell.root()) for name in every_screen(hands)]
        patched.undo()
        words.speak("en")
        return nodes

    return shown


def combinations() -> Iterator[ParameterSet]:
    """Yield every size, scale and language; each pair of two of them is in the quick suite, the rest are long.

    Taking the third value as the sum of the first two, modulo three, gives each pair of them: a Latin square.
    """
    for (row, size), (column, scale), (third, language) in product(*map(enumerate, (SIZES, SCALES, LANGUAGES))):
        name = f"{size[0]}x{size[1]}-{scale}-{language}"
        marks = () if (row + column) % len(LANGUAGES) == third else (pytest.mark.long,)
        yield pytest.param(size, scale, language, id=name, marks=marks)


@pytest.mark.parametrize(("size", "scale", "language"), list(combinations()))
def test_nothing_is_clipped_or_covered(screens: Screens, size: tuple[int, int], scale: float, language: str) -> None:
    letters = Type(scale * grown(*size))
    wrong = {}
    for name, root in screens(language):
        found = wrong_with(laid_out(root, *size, letters, {}), letters, size)
        if found:
            wrong[name] = found[:4]
    assert wrong == {}


def test_tab_comes_to_everything_once_and_whatever_it_comes_to_is_seen(tmp_path: Path) -> None:
    hands = Hands(folder=tmp_path, measure=Type(2.0), settings=Settings(scale=2.0), size=(1024, 600))
    for name in every_screen(hands):
        order = hands.layout.order
        assert len(order) == len(set(order)), name
        reachable = [node.name for node in hands.shell.root().walk() if node.reachable]
        assert sorted(reachable) == sorted(order), name
        start, seen = hands.shell.focus, []
        for _step in order:
            hands.shell.hands.press("tab")
            focus = str(hands.shell.focus)
            one = hands.layout.named(focus)
            assert one is not None
            seen.append(focus)
            part = one.visible
            assert part is not None, f"{name}: {focus} cannot be seen"
            assert part.h >= min(one.box.h, one.clip.h * 0.8) - 1, f"{name}: {focus} is seen in part only"
        assert sorted(seen) == sorted(order), name
        assert hands.shell.focus == start, name


def test_one_key_means_one_thing_on_a_screen(screens: Screens) -> None:
    for name, root in screens("en"):
        keys = [node.key for node in root.walk() if node.key and node.enabled]
        assert len(keys) == len(set(keys)), name
        assert not {key for key in keys if key.isdigit()}, f"digits name cylinders only ({name})"


@pytest.mark.parametrize("theme", ["dark", "light"])
def test_every_screen_can_be_painted(theme: str, screens: Screens) -> None:
    letters = Type(1.0)
    painter, screen = Painter(letters, theme), pygame.Surface((1280, 800))
    looks = set()
    for _name, root in screens("es"):
        layout = laid_out(root, 1280, 800, letters, {})
        painter.paint(screen, layout, layout.order[0])
        looks.add(pygame.image.tobytes(screen, "RGB"))
    assert len(looks) > 25  # screens that differ
