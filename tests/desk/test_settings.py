"""What a station remembers: whole or not at all, never louder by itself, a PIN that cannot be read."""

from __future__ import annotations

from pathlib import Path

import pytest
from pydantic import ValidationError

from trainer.desk.settings import Settings, pin_kept, read_settings, write_settings
from trainer.errors import MissingHereError
from trainer.output.sound_setup import START_LEVEL_DB

NOW, NEXT_DAY = "2026-01-01T08:00:00.000+00:00", "2026-01-02T08:00:01.000+00:00"


def test_settings_come_back_as_they_were_kept(tmp_path: Path) -> None:
    path = tmp_path / "new" / "settings.json"
    kept = Settings(theme="light", scale=2.0, language="es").with_ears("headset", level_db=-8.0)
    write_settings(kept, path)
    assert read_settings(path) == (kept, None)


def test_a_damaged_file_is_put_aside_and_told(tmp_path: Path) -> None:
    path = tmp_path / "settings.json"
    path.write_text('{"theme": "purple"}')
    settings, aside = read_settings(path)
    assert settings == Settings()
    assert aside is not None
    assert aside.read_text() == '{"theme": "purple"}'
    assert not path.exists()


def test_a_folder_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(MissingHereError) as told:
        write_settings(Settings(), tmp_path / "file" / "settings.json")
    assert told.value.key == "file_unwritable"


def test_each_device_starts_low_and_keeps_its_own_level_which_is_never_above_the_rendered_one() -> None:
    settings = Settings().with_ears("one", level_db=-4.0)
    assert settings.ears_at("one").level_db == -4.0
    assert settings.ears_at("another").level_db == START_LEVEL_DB == -20.0
    with pytest.raises(ValidationError):
        settings.with_ears("one", level_db=0.5)


def test_a_verdict_holds_for_a_day_at_its_own_level() -> None:
    ears = Settings().with_ears("one", level_db=-8.0, verdict={"hum": "ready", "level_db": -8.0}, checked_at=NOW)
    assert ears.ears_at("one").holds(NOW)
    assert not ears.ears_at("one").holds(NEXT_DAY)
    assert not ears.with_ears("one", level_db=-10.0).ears_at("one").holds(NOW)
    assert not Settings().ears_at("one").holds(NOW)


def test_a_pin_opens_and_is_not_kept_in_clear() -> None:
    settings = Settings(station_pin=pin_kept("4711"))
    assert "4711" not in settings.model_dump_json()
    assert settings.opens("4711")
    assert not settings.opens("4712")
    assert Settings().opens("anything")
    assert pin_kept("4711") != pin_kept("4711")  # salted
