"""Damages settings and opens the window by them: `python -m tests.fuzz.settings_mutants COUNT [SEED]`."""

from __future__ import annotations

import json
from collections.abc import Iterator
from functools import partial
from pathlib import Path

import numpy as np

from tests.desk_hands import BEGUN
from tests.fuzz.figures import Figures, Mutant, counted, main
from tests.fuzz.values import damaged_data, damaged_json
from tests.fuzz.world import World
from tests.window_hands import Hands
from trainer.desk.settings import read_settings, write_settings
from trainer.records.papers.sheets import listening_text
from trainer.records.store.store import Store, open_store
from trainer.window.station.settings_page import SettingsScreen
from trainer.window.station.setup import SetupScreen

OPEN_THE_WINDOW = 40
"""Of so many mutants one is seen in the window itself; of the others, only what the window asks of settings."""


def damage(rng: np.random.Generator, written: bytes) -> tuple[bytes, str]:
    """Return the content of a file of settings damaged in one way, and what was done."""
    if rng.integers(4):
        text, did = damaged_json(rng, written.decode("utf-8"))
        return text.encode("utf-8", "surrogatepass"), did
    if rng.integers(2):
        value, did = damaged_data(rng, json.loads(written))
        value, more = damaged_data(rng, value)
        return json.dumps(value).encode("utf-8"), f"{did}; {more}"
    content = bytearray(written)
    place = int(rng.integers(len(content)))
    content[place] ^= 1 << int(rng.integers(8))
    return bytes(content), f"bit flipped at {place}"


def used(path: Path, content: bytes, store: Store, *, seen: bool) -> bool:
    """Read settings, ask of them what the window asks, and keep others; tell whether nothing was damaged."""
    path.write_bytes(content)
    settings, damaged = read_settings(path)
    assert path.read_bytes() == content, "reading changed the settings"
    now = BEGUN.isoformat()
    for device in ("", settings.device, *settings.ears):
        ears = settings.calibration_of(device)
        if ears.holds(now):
            listening_text(ears.verdict)
    settings.opens("4711")
    if seen:
        hands = Hands(store, settings=settings)
        hands.shell.now_s = 1.0
        for screen in (SettingsScreen(hands.shell), SetupScreen(hands.shell)):
            hands.shell.show(screen)
            assert hands.layout.order
            hands.shell.close()
        hands.shell.end()
    write_settings(settings, path)
    assert read_settings(path) == (settings, ())
    aside = [one for one in path.parent.glob("*.damaged*.json") if one.read_bytes() == content]
    assert bool(aside) == bool(damaged), "a damaged file was not put aside"
    for one in path.parent.glob("*.damaged*.json"):
        one.unlink()
    return not damaged


def run(seed: int, count: int, world: World, folder: Path) -> Figures:
    """Damage so many files of settings and use them."""
    path, store = folder / "settings.json", open_store(None)
    written = world.settings.read_bytes()

    def mutants() -> Iterator[Mutant]:
        for number in range(count):
            content, did = damage(np.random.default_rng([seed, number]), written)
            yield did, partial(used, path, content, store, seen=number % OPEN_THE_WINDOW == 0)

    figures = counted("settings", seed, mutants())
    store.close()
    return figures


if __name__ == "__main__":
    main(run)
