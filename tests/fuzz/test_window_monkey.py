"""The window bears whatever hands do to it; and the monkey notices what it is there to notice."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.fuzz.window_monkey import SEED, Monkey, MonkeyFoundError
from tests.window_hands import Hands, PlainMeasure
from trainer.window.course.glossary import GlossaryScreen
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell


def test_fifteen_hundred_events_leave_the_window_whole(tmp_path: Path) -> None:
    figures = Monkey(SEED, tmp_path, jobs=8, tours=False).run(1500)
    assert figures.events == 1500
    assert len(figures.screens) >= 18


@pytest.mark.parametrize(
    ("broken", "told"),
    [
        ("raises", "ZeroDivisionError"),
        ("keeps the lost", "Escape does not lead home|does not leave the screen"),
        ("loses the keyboard", "the keyboard is on nowhere"),
        ("piles up", "screens on the pile"),
    ],
)
def test_a_window_that_is_broken_is_found_with_seed_and_events(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, broken: str, told: str
) -> None:
    if broken == "raises":
        monkeypatch.setattr(GlossaryScreen, "view", lambda screen: 1 // 0)
    elif broken == "keeps the lost":
        monkeypatch.setattr(Screen, "back", lambda screen: None)
    elif broken == "loses the keyboard":
        monkeypatch.setattr(Shell, "focus", property(lambda shell: "nowhere"))
    else:
        monkeypatch.setattr(Shell, "close", lambda shell: shell.show(GlossaryScreen(shell)))
    with pytest.raises(MonkeyFoundError, match=told) as found:
        Monkey(SEED, tmp_path, jobs=0, tours=False).run(1500)
    assert str(found.value).startswith(f"seed {SEED}, event ")
    last = str(found.value).partition("The last events:\n")[2].splitlines()
    assert any(event.startswith("(") for event in last)  # most begin with the screen that they came to


@pytest.mark.parametrize("size", [(640, 400), (1024, 600)])
def test_what_the_keyboard_is_on_is_seen_in_the_least_window_with_the_largest_text_and_a_long_notice(
    size: tuple[int, int],
) -> None:
    hands = Hands(size=size, measure=PlainMeasure(37.5)).sit_down("faint_hum_on_three")
    hands.shell.say(
        "Saved to /home/learner/.local/share/injector-ear-trainer/sheets/card_5b761329.html. Print it there."
    )
    for name in hands.layout.order:
        hands.shell.focus_on(name)
        here = hands.layout.named(name)
        assert here is not None
        assert here.visible is not None, f"{name} is not seen"
