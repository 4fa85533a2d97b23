"""Sound that can be trusted in the window: torn, lost, silent, louder only by key, a rest in time."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from tests.players import ClockedPlayer, TearingPlayer, VanishingPlayer
from tests.window_hands import Hands
from trainer.desk.settings import Settings, hashed_pin
from trainer.errors import MissingHereError
from trainer.output.file_player import FilePlayer
from trainer.output.temporary_sounds import TemporarySounds
from trainer.practice.attempt.event_record import EventKind
from trainer.practice.attempt.events import Heard
from trainer.records.store.store import open_store
from trainer.sound.render import PRE_ROLL_S
from trainer.window.bench.bench_screen import BenchScreen
from trainer.window.pictures.sound_strip import strip_of

CASE = "faint_hum_on_three"


def bench_of(hands: Hands) -> BenchScreen:
    return next(screen for screen in hands.shell.screens if isinstance(screen, BenchScreen))


def test_what_plays_is_the_rendered_buffer_at_the_stations_level() -> None:
    hands = Hands().sit_down(CASE)
    hands.press("t")
    player = hands.player
    assert isinstance(player, ClockedPlayer)
    assert player.gain_db == -20.0
    assert np.abs(player.heard[0][0]).max() <= 10 ** (-3 / 20)


def test_a_torn_playing_is_void_and_offered_again_uncharged() -> None:
    hands = Hands(player=TearingPlayer()).sit_down(CASE)
    hands.press("t").wait(25.0, 0.5)
    assert "does not count" in hands.text_of("notice.sound")
    minutes = bench_of(hands).desk.attempt.minutes
    hands.act("again")
    assert len(hands.player.heard) == 2  # type: ignore[attr-defined]
    assert bench_of(hands).desk.attempt.minutes == minutes


def test_a_pulled_device_pauses_says_so_and_goes_on_from_the_slots_start() -> None:
    player = VanishingPlayer()
    hands = Hands(player=player).sit_down(CASE)
    hands.press("t").wait(9.0)
    player.pull()
    hands.wait(0.1)
    assert "output is gone" in hands.text_of("notice.sound")
    events = hands.store.count()
    player.gone = False
    hands.act("go_on")
    _samples, frame = player.heard[-1]
    starts = [round((start - PRE_ROLL_S) * 48_000) for _n, start, _end in strip_of(bench_of(hands).profile).slots]
    assert frame in starts
    assert 9.0 - 3.0 < frame / 48_000 <= 9.1
    assert hands.store.count() == events  # nothing was charged or counted for it


def test_a_device_that_is_gone_before_the_start_is_told_and_the_case_stays_whole() -> None:
    player = VanishingPlayer()
    hands = Hands(player=player).sit_down(CASE)
    player.gone = True
    hands.press("t").wait(0.1)
    assert "output is gone" in hands.text_of("notice.sound")
    hands.press("c")
    assert bench_of(hands).desk.attempt.events[-1].kind is EventKind.CODES_READ


def test_where_nothing_can_play_a_banner_says_so_and_the_case_can_be_worked(tmp_path: Path) -> None:
    missing = [MissingHereError("no_portaudio"), MissingHereError("no_sdl_device")]
    player = FilePlayer(TemporarySounds(tmp_path))
    hands = Hands(player=player, missing=missing).sit_down(CASE)
    assert "no sound output" in hands.text_of("banner.silent")
    assert "deleted when you close" in hands.text_of("banner.silent")
    hands.press("t").wait(0.1)
    assert player.written is not None
    assert player.written.is_file()
    assert str(player.written) in hands.text_of("notice.sound")
    hands.shell.sound.use("another")
    assert not hands.has("notice.sound")  # the file was the way out before
    hands.press("c", "p", "3").act("pin.2").act("pin.3").press("r")
    assert hands.text_of("display") == "OL"


def test_the_level_rises_by_key_only_never_above_the_rendered_one_and_is_kept_for_the_device(tmp_path: Path) -> None:
    hands = Hands(folder=tmp_path).sit_down(CASE)
    hands.press("t").wait(1.0)
    for _press in range(30):
        hands.press("+")
    assert hands.player.gain_db == 0.0
    frames = [frame for _samples, frame in hands.player.heard]  # type: ignore[attr-defined]
    assert frames == sorted(frames)  # it went on where it was
    again = Hands(folder=tmp_path, settings=hands.shell.settings)
    assert again.player.gain_db == 0.0
    hands.press("-")
    assert hands.player.gain_db == -2.0


def test_space_pauses_and_goes_on_at_the_slots_start() -> None:
    hands = Hands().sit_down(CASE)
    hands.press("t").wait(9.0)
    hands.press("space").wait(0.2)
    assert not hands.shell.listening.on
    assert hands.shell.listening.paused
    hands.press("space")
    assert hands.shell.listening.on
    assert 0 < hands.player.heard[-1][1] < 9.0 * 48_000  # type: ignore[attr-defined]


def test_a_rest_is_proposed_after_ten_and_twenty_minutes_and_never_bars_anything() -> None:
    hands = Hands().sit_down(CASE)
    hands.press("o", "t").wait(610.0, 5.0)
    assert "A rest helps" in hands.text_of("notice")
    hands.shell.say("")
    hands.wait(600.0, 5.0)
    assert "A rest helps" in hands.text_of("notice")
    assert hands.shell.listening.on


def test_the_outline_appears_slot_by_slot_as_it_is_heard() -> None:
    hands = Hands().sit_down(CASE)
    hands.press("t").wait(0.5)
    assert bench_of(hands).hearing.heard_s == 0.0
    hands.wait(5.0)
    slots = strip_of(bench_of(hands).profile).slots
    assert slots[0][2] <= bench_of(hands).hearing.heard_s <= 5.6
    hands.wait(25.0, 0.5)
    assert bench_of(hands).hearing.heard_s == float("inf")


def test_codes_wait_for_the_end_of_the_sequence() -> None:
    hands = Hands().sit_down(CASE)
    hands.press("t").wait(1.0)
    hands.press("c")
    assert "still running" in hands.text_of("said")
    assert bench_of(hands).desk.attempt.events[-1].kind is EventKind.HEARD
    hands.wait(25.0, 0.5).press("c")
    assert "P0203" in hands.text_of("said")


def test_the_set_up_is_kept_with_its_device_and_stands_in_the_attempt(tmp_path: Path) -> None:
    hands = Hands(folder=tmp_path)
    hands.press("f3").act("play")
    screen = hands.shell.screen
    while screen.setup.current_trial is not None:  # type: ignore[attr-defined]
        trial = screen.setup.current_trial  # type: ignore[attr-defined]
        if trial.sound.part == "comfort":
            hands.press("+", "+")
        hands.act(f"answer.{trial.right or trial.answers[0]}")
    assert "can hear the hum here easily" in hands.text_of("setup.verdict")
    hands.press("escape").sit_down(CASE)
    started = hands.store.events(bench_of(hands).desk.attempt_id)[0]
    assert started.data["listening"]["hum"] == "ready"
    assert started.data["listening"]["level_db"] == -16.0
    hands.press("-")
    hands.press("escape").go("code").write("x").press("escape")
    assert not hands.shell.sound.calibration.holds(hands.shell.services.now_utc())  # another level: to be shown anew


def test_a_station_asks_for_the_next_learner_after_three_quiet_minutes_and_for_a_pin_to_leave(tmp_path: Path) -> None:
    settings = Settings(station_pin=hashed_pin("4711"), last_learner="carla")
    hands = Hands(folder=tmp_path, settings=settings)
    assert hands.shell.full_screen
    assert hands.text_of("name") == ""
    hands.write("anna").press("enter")
    hands.wait(170.0, 1.0)
    assert hands.has("waiting.title")
    hands.wait(20.0, 1.0)
    assert hands.text_of("name") == ""
    hands.write("ben").wait(200.0, 1.0)
    assert hands.text_of("name") == ""  # a name that was only begun goes too
    hands.press("escape").press("escape").press("f10")
    assert hands.has("station.ask")
    hands.go("pin").write("1").write("2").write("3").write("4").press("enter")
    assert not hands.shell.closing
    assert "not the PIN" in hands.text_of("notice")
    for digit in "4711":
        hands.write(digit)
    hands.press("enter")
    assert hands.shell.closing


def test_work_under_way_is_charged_once_and_what_was_pressed_meanwhile_waits() -> None:
    hands = Hands().sit_down(CASE)
    for key in ("t", "t", "t", "3"):
        hands.shell.input.press(key)  # before any of it has come back
    hands.wait(0.2)
    attempt = bench_of(hands).desk.attempt
    assert attempt.minutes == 8.0
    assert [event.slots for event in attempt.events if isinstance(event, Heard)] == [None, (3,)]
    hands.shell.input.press("5")
    hands.shell.input.press("x")
    assert hands.shell.screen is bench_of(hands)  # the swap waits for the test
    hands.wait(0.1)
    assert hands.has("question")


def test_leaving_while_work_is_under_way_stores_nothing_of_it() -> None:
    hands = Hands().sit_down(CASE)
    hands.shell.input.press("t")
    hands.shell.input.press("escape")
    hands.wait(0.2)
    assert hands.has("waiting.title")
    assert hands.store.count() == 1  # that it began
    assert not hands.player.heard  # type: ignore[attr-defined]


def test_a_reading_that_is_left_before_it_comes_is_not_taken() -> None:
    hands = Hands().sit_down(CASE)
    hands.press("p", "3").act("pin.2").act("pin.3")
    hands.shell.input.press("r")
    hands.shell.input.press("escape")
    hands.wait(0.2)
    assert hands.shell.screen is bench_of(hands)
    assert bench_of(hands).desk.attempt.minutes == 0.0


def test_an_attempt_that_is_worked_elsewhere_is_told_and_the_window_stays() -> None:
    store = open_store(None)
    here = Hands(store=store).sit_down(CASE)
    there = Hands(store=store)
    there.write("anna").press("enter")
    there.act(next(name for name in there.layout.order if name.startswith("begun.")))
    there.press("c")
    here.press("c")
    assert "another window" in here.text_of("notice")
    here.press("escape")
    assert here.has("waiting.title")


def test_any_pin_with_any_other_is_told_or_measured() -> None:
    hands = Hands().sit_down(CASE)
    hands.press("p", "3")
    for first, second in (("pin.4", "pin.0"), ("pin.8", "pin.0"), ("pin.0", "pin.11"), ("pin.1", "pin.2")):
        hands.press("backspace").act(first).act(second).press("r").wait(0.1)
        assert hands.has("said")


def test_records_that_cannot_be_written_are_told_and_the_window_stays(monkeypatch: pytest.MonkeyPatch) -> None:
    hands = Hands().sit_down(CASE)

    def full(*_arguments: object) -> None:
        raise MissingHereError("store_unwritable", place="x", reason="disk full")

    monkeypatch.setattr(hands.store, "append", full)
    hands.press("c")
    assert "disk full" in hands.text_of("notice")
    assert not bench_of(hands).desk.attempt.events[1:]
    monkeypatch.undo()
    hands.press("c")
    assert len(bench_of(hands).desk.attempt.events) == 2
