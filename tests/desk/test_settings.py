"""What a station remembers: whole or not at all, never louder by itself, a PIN that cannot be read."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from pydantic import ValidationError

from trainer.desk.settings import Settings, damage_line, hashed_pin, read_settings, write_settings
from trainer.errors import MissingHereError
from trainer.output.sound_setup import START_LEVEL_DB, Verdict

VERDICT = {**Verdict("ready", 6.0, "stereo", "yes", "all").plain, "level_db": -8.0}
NOW, NEXT_DAY = "2026-01-01T08:00:00.000+00:00", "2026-01-02T08:00:01.000+00:00"


def test_settings_come_back_as_they_were_kept(tmp_path: Path) -> None:
    path = tmp_path / "new" / "settings.json"
    kept = Settings(theme="light", scale=2.0, language="es").with_calibration("headset", level_db=-8.0)
    write_settings(kept, path)
    assert read_settings(path) == (kept, ())


DAMAGE = [
    {"theme": "purple"}, {"scale": "large"}, {"language": None}, {"station_pin": "4711"}, {"last_learner": "a\x00b"},
    {"device": ["headset"]}, {"ears": {"headset": {"checked_at": "yesterday"}}},
    {"ears": {"headset": {"checked_at": "2026-01-01T08:00:00"}}}, {"ears": {"headset": {"verdict": {"hum": "ready"}}}},
    {"ears": {"headset": {"verdict": {**VERDICT, "sides": "upside down"}}}}, {"ears": 7}, {"extra": 1},
]  # fmt: skip


@pytest.mark.parametrize("damage", DAMAGE, ids=str)
def test_one_damaged_setting_takes_no_other_with_it_and_is_named(tmp_path: Path, damage: dict[str, object]) -> None:
    path = tmp_path / "settings.json"
    whole = {"language": "es", "scale": 2.0, "store_url": "postgresql+psycopg://school"}
    path.write_text(json.dumps({**whole, **damage}), "utf-8")
    (name,) = damage
    settings, damaged = read_settings(path)
    assert damaged == (name,)
    assert settings == Settings.model_validate({key: value for key, value in whole.items() if key != name})
    told = damage_line(path, damaged)
    assert name in told
    assert "settings.damaged.json" in told


WHOLE_FILES = [
    b"",
    b"[]",
    b"null",
    b"{",
    b'{"theme": "dark"',
    b"\xff\xfe",
    b"[" * 100_000,
    b'{"theme": "\\ud800"}',
    b"7",
]


@pytest.mark.parametrize("content", WHOLE_FILES, ids=lambda one: repr(one[:20]))
def test_a_file_that_is_none_leaves_the_usual_settings(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "settings.json"
    path.write_bytes(content)
    assert read_settings(path) == (Settings(), tuple(Settings.model_fields))


def test_a_damaged_file_is_kept_where_it_is_until_settings_are_written_and_then_beside_them(tmp_path: Path) -> None:
    path = tmp_path / "settings.json"
    for number, content in enumerate((b'{"theme": "purple"}', b"{"), start=1):
        path.write_bytes(content)
        read_settings(path)
        assert path.read_bytes() == content
        write_settings(Settings(theme="light"), path)
        assert read_settings(path) == (Settings(theme="light"), ())
        assert len(list(tmp_path.glob("settings.damaged*.json"))) == number
    assert (tmp_path / "settings.damaged.json").read_bytes() == b'{"theme": "purple"}'
    assert (tmp_path / "settings.damaged2.json").read_bytes() == b"{"


def test_a_folder_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(MissingHereError) as told:
        write_settings(Settings(), tmp_path / "file" / "settings.json")
    assert told.value.key == "file_unwritable"


def test_each_device_starts_low_and_keeps_its_own_level_which_is_never_above_the_rendered_one() -> None:
    settings = Settings().with_calibration("one", level_db=-4.0)
    assert settings.calibration_of("one").level_db == -4.0
    assert settings.calibration_of("another").level_db == START_LEVEL_DB == -20.0
    with pytest.raises(ValidationError):
        settings.with_calibration("one", level_db=0.5)


def test_a_verdict_holds_for_a_day_at_its_own_level() -> None:
    ears = Settings().with_calibration("one", level_db=-8.0, verdict=VERDICT, checked_at=NOW)
    assert ears.calibration_of("one").holds(NOW)
    assert not ears.calibration_of("one").holds(NEXT_DAY)
    assert not ears.with_calibration("one", level_db=-10.0).calibration_of("one").holds(NOW)
    assert not Settings().calibration_of("one").holds(NOW)


def test_a_pin_opens_and_is_not_kept_in_clear() -> None:
    settings = Settings(station_pin=hashed_pin("4711"))
    assert "4711" not in settings.model_dump_json()
    assert settings.opens("4711")
    assert not settings.opens("4712")
    assert Settings().opens("anything")
    assert hashed_pin("4711") != hashed_pin("4711")  # salted
