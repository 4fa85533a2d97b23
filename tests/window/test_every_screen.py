"""Every screen at every size: nothing clipped or covered, everything reachable by keyboard, words that fit."""

from __future__ import annotations

import importlib
import os
import pkgutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import product
from pathlib import Path

import pytest
from _pytest.mark import ParameterSet

os.environ.setdefault("SDL_VIDEODRIVER", "dummy")
os.environ.setdefault("SDL_AUDIODRIVER", "dummy")
os.environ.setdefault("PYGAME_HIDE_SUPPORT_PROMPT", "1")

import numpy as np
import pygame
from PIL import Image

import trainer.window
from tests.unchanged import screens as pictures
from tests.window.every_screen import every_screen, wrong_with
from tests.window_hands import Hands
from trainer import words
from trainer.desk.settings import Settings
from trainer.window.drawing.paint import Painter
from trainer.window.drawing.typeface import Typeface, grown
from trainer.window.kit.layout import lay_out
from trainer.window.kit.nodes import Node
from trainer.window.shell.screen import Screen
from trainer.words.catalogue import Catalogue, catalogue_of

pygame.font.init()

PLAIN, LARGE = Typeface(1.0), Typeface(2.0)

Screens = Callable[[str], list[tuple[str, Node]]]
SIZES = ((1024, 600), (1280, 800), (1920, 1080), (3840, 2160))
SCALES = (1.0, 1.5, 2.5)
LANGUAGES = ("en", "es", "wide")


@dataclass(frozen=True)
class Shown:
    """A screen as English readers come to it: its nodes, what the keyboard is on, and what Tab gets wrong there.

    `wide` is the same with every sentence two fifths longer, `spanish` the same in Spanish but for what was said before.
    """

    name: str
    root: Node
    focus: str
    wide: Node
    spanish: Node
    wrong_with_tab: str
    screen: str


@pytest.fixture(scope="module")
def journey() -> list[Shown]:
    """Every screen in English: one journey for everything that is asked of it."""
    return [
        Shown(name, root, focus, widened(hands), in_spanish(hands), tabbed_through(hands), hands.shell.screen.name)
        for name, root, focus, hands in pictures.screens()
    ]


@pytest.fixture(scope="module")
def screens(journey: list[Shown]) -> Screens:
    """Every screen as nodes, in English, in Spanish, or with every English sentence two fifths longer."""
    roots = {"en": "root", "es": "spanish", "wide": "wide"}
    return lambda language: [(one.name, getattr(one, roots[language])) for one in journey]


def widened(hands: Hands) -> Node:
    """Return the present screen with every sentence two fifths longer."""

    def sentence(key: str, count: int | None = None) -> str:
        said = Catalogue.sentence(catalogue, key, count)
        return said + "·" * round(0.4 * len(said))

    catalogue = catalogue_of("en")
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(catalogue, "sentence", sentence)
        hands.shell.touch()
        root = hands.shell.root()
    hands.shell.touch()
    return root


def in_spanish(hands: Hands) -> Node:
    """Return the present screen in Spanish."""
    words.speak("es")
    hands.shell.touch()
    root = hands.shell.root()
    words.speak("en")
    hands.shell.touch()
    return root


def tabbed_through(hands: Hands) -> str:
    """Press Tab once round a small window with large text; return what is wrong, "" for nothing."""
    hands.shell.measured_by(1024, 600, LARGE)
    wrong = _wrong_with_tab(hands)
    hands.shell.measured_by(1280, 800, PLAIN)
    return wrong


def _wrong_with_tab(hands: Hands) -> str:
    order = hands.layout.order
    if len(order) != len(set(order)):
        return f"{order} has something twice"
    if sorted(order) != sorted(node.name for node in hands.shell.root().walk() if node.reachable):
        return f"not all that can be reached is in {order}"
    start, seen = hands.shell.focus, []
    for _step in order:
        hands.shell.input.press("tab")
        focus = str(hands.shell.focus)
        seen.append(focus)
        one = hands.layout.named(focus)
        part = None if one is None else one.visible
        if one is None or part is None:
            return f"{focus} cannot be seen"
        if part.h < min(one.box.h, one.clip.h * 0.8) - 1:
            return f"{focus} is seen in part only"
    if sorted(seen) != sorted(order):
        return f"Tab comes to {seen} of {order}"
    return "" if hands.shell.focus == start else f"Tab does not come back to {start}"


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
    letters = Typeface(scale * grown(*size))
    wrong = {}
    for name, root in screens(language):
        found = wrong_with(lay_out(root, *size, letters, {}), letters, size)
        if found:
            wrong[name] = found[:4]
    assert wrong == {}


@pytest.mark.long
@pytest.mark.parametrize("language", [language for language in words.LANGUAGES if language != "en"])
def test_nothing_is_clipped_or_covered_for_somebody_who_reads_it_from_the_first_screen_on(
    language: str, tmp_path: Path
) -> None:
    hands = Hands(settings=Settings(language=language), folder=tmp_path)
    wrong = {}
    for name in every_screen(hands):
        root = hands.shell.root()
        for size, scale in product(SIZES, SCALES):
            letters = Typeface(scale * grown(*size))
            found = wrong_with(lay_out(root, *size, letters, {}), letters, size)
            if found:
                wrong[name, size, scale] = found[:4]
    words.speak("en")
    assert wrong == {}


def test_tab_comes_to_everything_once_and_whatever_it_comes_to_is_seen(journey: list[Shown]) -> None:
    assert {one.name: one.wrong_with_tab for one in journey if one.wrong_with_tab} == {}


TILE_PX, MOST_OFF = 32, 8.0
"""A picture is compared tile by tile: a changed word moves its tile by 15 to 50 of 255, another renderer's edges by 3."""

VARYING = {"sets", "set", "set, done", "instructor, empty", "instructor, sealed", "instructor, collected"}
"""Screens that show a temporary folder or the code of a set."""


def most_off(one: Image.Image, other: Image.Image) -> float:
    """Return by how much two pictures differ in the tile where they differ most, on a scale of 255."""
    off = np.abs(np.asarray(one.convert("RGB"), float) - np.asarray(other.convert("RGB"), float)).mean(axis=2)
    rows, columns = (length // TILE_PX for length in off.shape)
    tiles = off[: rows * TILE_PX, : columns * TILE_PX].reshape(rows, TILE_PX, columns, TILE_PX)
    return float(tiles.mean(axis=(1, 3)).max())


def test_the_screens_are_what_their_command_makes(journey: list[Shown]) -> None:
    made = {
        pictures.file_name(one.name, size, scale)
        for one in journey for size in pictures.SIZES for scale in pictures.SCALES
    }  # fmt: skip
    last = {one.name: one for one in journey}  # where a screen comes again, the last picture is the one that is kept
    off = {}
    for one in last.values():
        again = pictures.picture(one.root, one.focus, pictures.README_SIZE, pictures.README_SCALE)
        name = pictures.file_name(one.name, pictures.README_SIZE, pictures.README_SCALE)
        assert (pictures.FOLDER / name).exists(), f"{one.name}: run python -m tests.unchanged.screens and look at it"
        with Image.open(pictures.FOLDER / name) as kept:
            off[one.name] = most_off(kept, pictures.with_few_colours(again))
    differing = {name: by for name, by in off.items() if by > MOST_OFF and name not in VARYING}
    assert differing == {}, (
        "run python -m tests.unchanged.screens and look at them; what shows a folder or a code goes into VARYING"
    )
    light = {pictures.file_name(name, pictures.README_SIZE, 1.0, "light") for name in ("bench, heard", "debrief, open")}
    assert {path.name for path in pictures.FOLDER.iterdir()} == made | light


def test_the_journey_comes_to_every_screen_there_is(journey: list[Shown]) -> None:
    for module in pkgutil.walk_packages(trainer.window.__path__, "trainer.window."):
        importlib.import_module(module.name)

    def kinds(screen: type[Screen]) -> set[type[Screen]]:
        return {screen, *(one for below in screen.__subclasses__() for one in kinds(below))}

    names = {one.name for one in kinds(Screen) if "name" in vars(one) and one.__module__.startswith("trainer.")}
    assert names - {one.screen for one in journey} == set(), "add stops to tests/window/every_screen.py"


def test_one_key_means_one_thing_on_a_screen(screens: Screens) -> None:
    for name, root in screens("en"):
        keys = [node.key for node in root.walk() if node.key and node.enabled]
        assert len(keys) == len(set(keys)), name
        assert not {key for key in keys if key.isdigit()}, f"digits name cylinders only ({name})"


@pytest.mark.parametrize("theme", ["dark", "light"])
def test_every_screen_can_be_painted(theme: str, screens: Screens) -> None:
    letters = Typeface(1.0)
    painter, screen = Painter(letters, theme), pygame.Surface((1280, 800))
    looks = set()
    for _name, root in screens("es"):
        layout = lay_out(root, 1280, 800, letters, {})
        painter.paint(screen, layout, layout.order[0])
        looks.add(pygame.image.tobytes(screen, "RGB"))
    assert len(looks) > 25  # screens that differ
