"""The window over damaged records and settings: told on the screen, and everything else goes on."""

from __future__ import annotations

import json
from pathlib import Path

from tests.desk_hands import BEGUN
from tests.players import ClockedPlayer
from tests.records.store.test_damaged import change, filled
from tests.window_hands import Hands
from trainer.desk.case_source import find_case
from trainer.desk.settings import read_settings
from trainer.records.store.store import Store, open_store
from trainer.window.course.case_start import sit


def emptied(store: Store) -> Store:
    """Take the table of attempts away while the store is in use."""
    with store.writing() as connection:
        connection.exec_driver_sql("PRAGMA legacy_alter_table=ON")
        connection.exec_driver_sql("ALTER TABLE attempt RENAME TO gone")
    return store


def test_records_that_turn_out_damaged_are_told_on_the_screen_and_the_window_stays() -> None:
    hands = Hands(emptied(open_store(None)))
    assert "are damaged: no such table" in hands.shown
    hands.press("escape")
    assert not hands.shell.closing


def test_what_was_left_out_is_told_above_the_screens(tmp_path: Path) -> None:
    filled(tmp_path).close()
    change(tmp_path, "DELETE FROM event WHERE number = 2", "UPDATE event SET data = '{' WHERE attempt_id = 'two'",
           "UPDATE attempt SET case_source = 'shipped', case_name = 'faint_hum_on_three'")  # fmt: skip
    hands = Hands(open_store(tmp_path), folder=tmp_path)
    hands.go("name").write("ann").press("enter")
    assert "1 damaged record was left out (attempt two)" in hands.text_of("banner.damaged")
    hands.shell.end()
    hands.store.close()


def test_a_damaged_begun_case_is_told_and_a_new_one_begins(tmp_path: Path) -> None:
    hands = Hands(folder=tmp_path)
    found = find_case("faint_hum_on_three")
    sit(hands.shell, found, "ann")
    first = hands.shell.screen.desk.attempt_id
    hands.store.close()
    change(tmp_path, """UPDATE event SET data = '{"lesson": "first"}'""")
    again = Hands(open_store(tmp_path), folder=tmp_path)
    sit(again.shell, found, "ann")
    assert again.shell.screen.desk.attempt_id != first
    assert f"attempt {first}" in again.text_of("banner.damaged")
    again.shell.end()
    again.store.close()


class NamedPlayer(ClockedPlayer):
    """A player on a device that settings know."""

    backend = "portaudio"


def test_a_case_is_sat_down_at_whatever_settings_say_of_the_time_of_a_set_up(tmp_path: Path) -> None:
    path = tmp_path / "settings.json"
    kept = {"device": "headset", "ears": {"headset": {"verdict": {"hum": "ready"}, "checked_at": "yesterday"}}}
    path.write_text(json.dumps(kept), "utf-8")
    settings, damaged = read_settings(path)
    assert damaged == ("ears",)
    hands = Hands(player=NamedPlayer(), settings=settings)
    sit(hands.shell, find_case("faint_hum_on_three"), "ann")
    assert hands.shell.screen.name == "bench"
    assert not settings.calibration_of("headset").holds(BEGUN.isoformat())
