"""What a station remembers between sittings: looks, language, sound levels and verdicts by device, station mode."""

from __future__ import annotations

import hashlib
import secrets
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError, model_validator

from trainer.cases.plain_file import Unfit, UnfitFileError, read_plain
from trainer.cases.whole_file import write_bytes
from trainer.output.sound_setup import LEAST_LEVEL_DB, START_LEVEL_DB

Trace = Literal["fading", "shown", "off"]
MOST_BYTES = 1_000_000
SCALES = (1.0, 1.25, 1.5, 1.75, 2.0, 2.5)


class _Kept(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class Ears(_Kept):
    """What is known of one output device: its level, at most 0 dB, and what the set-up showed (UTC)."""

    level_db: float = Field(default=START_LEVEL_DB, ge=LEAST_LEVEL_DB, le=0.0)
    verdict: dict[str, Any] | None = None
    checked_at: str = ""

    def holds(self, now: str) -> bool:
        """Tell whether what the set-up showed still counts (UTC, ISO 8601): for a day, at the level it was made at."""
        if not self.verdict or not self.checked_at:
            return False
        age = datetime.fromisoformat(now) - datetime.fromisoformat(self.checked_at)
        return age < timedelta(hours=24) and self.verdict.get("level_db") == self.level_db


class Settings(_Kept):
    """Everything that is remembered; `device` "" is the system's default output."""

    theme: Literal["dark", "light"] = "dark"
    scale: float = Field(default=1.0, ge=1.0, le=2.5)
    language: Literal["en", "es"] = "en"
    trace: Trace = "fading"
    device: str = ""
    ears: dict[str, Ears] = {}
    station_pin: str = ""
    last_learner: str = ""
    store_url: str = ""

    @model_validator(mode="before")
    @classmethod
    def _without_the_old(cls, kept: Any) -> Any:
        """Drop what earlier versions remembered and this one has no use for."""
        return {name: value for name, value in kept.items() if name != "toured"} if isinstance(kept, dict) else kept

    def ears_at(self, device: str) -> Ears:
        """What is known of a device."""
        return self.ears.get(device, Ears())

    def changed(self, **values: object) -> Settings:
        """Return settings with values changed, checked."""
        return Settings.model_validate({**self.model_dump(), **values})

    def with_ears(self, device: str, **values: object) -> Settings:
        """Return settings with something new known of a device."""
        ears = Ears.model_validate({**self.ears_at(device).model_dump(), **values})
        return self.changed(ears={**self.ears, device: ears})

    def opens(self, pin: str) -> bool:
        """Tell whether a PIN leaves station mode."""
        salt, _dash, kept = self.station_pin.partition("-")
        return not self.station_pin or secrets.compare_digest(_hashed(pin, salt), kept)


def pin_kept(pin: str) -> str:
    """Return a PIN as it is kept; "" for none."""
    if not pin:
        return ""
    salt = secrets.token_hex(8)
    return f"{salt}-{_hashed(pin, salt)}"


def _hashed(pin: str, salt: str) -> str:
    return hashlib.scrypt(pin.encode("utf-8"), salt=salt.encode("utf-8"), n=2**12, r=8, p=1).hex()


def read_settings(path: Path) -> tuple[Settings, Path | None]:
    """Return the settings in a file; a damaged file is put aside, and where it lies is returned too."""
    try:
        return Settings.model_validate_json(read_plain(path, MOST_BYTES)), None
    except (ValidationError, UnfitFileError) as error:
        if isinstance(error, UnfitFileError) and error.why is Unfit.MISSING:
            return Settings(), None
        aside = path.with_suffix(".damaged.json")
        try:
            path.replace(aside)
        except OSError:
            return Settings(), path
        return Settings(), aside


def write_settings(settings: Settings, path: Path) -> None:
    """Write the settings whole; raises MissingHereError where they cannot be kept."""
    write_bytes(path, settings.model_dump_json(indent=2).encode("utf-8"), make_folder=True, private=True)
