"""What a station stores between sessions: looks, language, sound levels and verdicts by device, station mode."""

from __future__ import annotations

import contextlib
import hashlib
import json
import math
import secrets
from datetime import datetime, timedelta
from pathlib import Path
from typing import Annotated, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, ValidationError, model_validator

from trainer.cases.files.plain_file import Unfit, UnfitFileError, is_there, read_plain
from trainer.cases.files.whole_file import write_bytes
from trainer.output.sound_setup import LEAST_LEVEL_DB, START_LEVEL_DB, Verdict
from trainer.words import has, text
from trainer.words.languages import FIRST, LANGUAGES
from trainer.words.visible import unseen_in

Trace = Literal["fading", "shown", "off"]
MOST_BYTES, MOST_CHARACTERS = 1_000_000, 1_000
MOST_ASIDE = 99
"""So many damaged files are kept beside one another."""

SCALES = (1.0, 1.25, 1.5, 1.75, 2.0, 2.5)


class _FrozenModel(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


def _moment(written: str) -> str:
    if written and datetime.fromisoformat(written).tzinfo is None:
        raise ValueError("a time without its zone")
    return written


def _verdict(kept: dict[str, str | float | None]) -> dict[str, str | float | None]:
    """Refuse a verdict that there are no words for: `sound_setup.Verdict.plain`, with the level it was made at."""
    numbers = [kept[name] for name in ("margin_db", "level_db") if kept.get(name) is not None]
    words = {name: kept.get(name) for name in ("hum", "sides", "bed", "lows", "headphones")}
    told = [f"setup.{name}.{word}" for name, word in words.items() if (name, word) != ("headphones", "")]
    known = kept.keys() <= {*Verdict.__dataclass_fields__, "level_db"} and all(map(has, told))
    if not known or not all(isinstance(one, float | int) and math.isfinite(one) for one in numbers):
        raise ValueError("a verdict that this version does not know")
    return kept


def _language(code: str) -> str:
    if code not in LANGUAGES:
        raise ValueError("a language that this version does not speak")
    return code


def _seen(written: str) -> str:
    if unseen_in(written) is not None:
        raise ValueError("a name with characters that are not seen")
    return written


Name = Annotated[str, Field(max_length=MOST_CHARACTERS)]


class DeviceCalibration(_FrozenModel):
    """One output device: its level in dB, at most 0, the verdict of its set-up and when that was made (UTC)."""

    level_db: float = Field(default=START_LEVEL_DB, ge=LEAST_LEVEL_DB, le=0.0)
    verdict: Annotated[dict[str, str | float | None], AfterValidator(_verdict)] | None = None
    checked_at: Annotated[str, AfterValidator(_moment)] = ""

    def holds(self, now: str) -> bool:
        """Tell whether what the set-up showed still counts (UTC, ISO 8601): for a day, at the level it was made at."""
        if not self.verdict or not self.checked_at:
            return False
        age = datetime.fromisoformat(now) - datetime.fromisoformat(self.checked_at)
        return age < timedelta(hours=24) and self.verdict.get("level_db") == self.level_db


class Settings(_FrozenModel):
    """The settings of a station; `device` "" is the system's default output."""

    theme: Literal["dark", "light"] = "dark"
    scale: float = Field(default=1.0, ge=1.0, le=2.5)
    language: Annotated[str, AfterValidator(_language)] = FIRST
    trace: Trace = "fading"
    device: Name = ""
    ears: dict[str, DeviceCalibration] = {}
    station_pin: Annotated[str, Field(pattern=r"^([0-9a-f]{16}-[0-9a-f]{128})?$")] = ""
    last_learner: Annotated[Name, AfterValidator(_seen)] = ""
    store_url: Name = ""

    @model_validator(mode="before")
    @classmethod
    def _without_the_old(cls, kept: object) -> object:
        """Drop what earlier versions remembered and this one has no use for."""
        return {name: value for name, value in kept.items() if name != "toured"} if isinstance(kept, dict) else kept

    def calibration_of(self, device: str) -> DeviceCalibration:
        """Return the calibration of a device, the default for one that was never set up."""
        return self.ears.get(device, DeviceCalibration())

    def changed(self, **values: object) -> Settings:
        """Return settings with values changed, checked."""
        return Settings.model_validate({**self.model_dump(), **values})

    def with_calibration(self, device: str, **values: object) -> Settings:
        """Return settings with the calibration of a device changed."""
        calibration = DeviceCalibration.model_validate({**self.calibration_of(device).model_dump(), **values})
        return self.changed(ears={**self.ears, device: calibration})

    def opens(self, pin: str) -> bool:
        """Tell whether a PIN leaves station mode."""
        salt, _dash, kept = self.station_pin.partition("-")
        return not self.station_pin or secrets.compare_digest(_hashed(pin, salt), kept)


def hashed_pin(pin: str) -> str:
    """Return a PIN salted and hashed for the settings file; "" for none."""
    if not pin:
        return ""
    salt = secrets.token_hex(8)
    return f"{salt}-{_hashed(pin, salt)}"


def _hashed(pin: str, salt: str) -> str:
    return hashlib.scrypt(pin.encode("utf-8"), salt=salt.encode("utf-8"), n=2**12, r=8, p=1).hex()


def read_settings(path: Path) -> tuple[Settings, tuple[str, ...]]:
    """Return the settings in a file, and which of them are damaged there and the usual ones instead.

    Nothing is changed by reading; `write_settings` puts a damaged file aside.
    """
    try:
        content = read_plain(path, MOST_BYTES)
    except UnfitFileError as error:
        return Settings(), () if error.why is Unfit.MISSING else tuple(Settings.model_fields)
    try:
        return Settings.model_validate_json(content), ()
    except ValidationError as error:
        damaged = {str(one["loc"][0]) for one in error.errors() if one["loc"]}
    try:
        whole = {name: value for name, value in json.loads(content).items() if name not in damaged}
        return Settings.model_validate_json(json.dumps(whole)), tuple(sorted(damaged))
    except (ValueError, AttributeError, RecursionError):
        return Settings(), tuple(Settings.model_fields)


def write_settings(settings: Settings, path: Path) -> None:
    """Write the settings whole; a damaged file in their place is put aside first.

    Raises MissingHereError where they cannot be kept, and WrongCallError where something else than a file is there.
    """
    if read_settings(path)[1]:
        with contextlib.suppress(OSError):
            path.replace(_aside_of(path))
    write_bytes(path, settings.model_dump_json(indent=2).encode("utf-8"), make_folder=True, private=True)


def damage_line(path: Path, damaged: tuple[str, ...]) -> str:
    """Return in words which settings in a file are damaged, and where the file is going to be kept."""
    return text("settings.damaged", path=path, which=", ".join(damaged), aside=_aside_of(path).name)


def _aside_of(path: Path) -> Path:
    """Return where a damaged file of settings is put: beside it, under the first name that is free."""
    names = (path.with_suffix(f".damaged{number}.json") for number in ("", *range(2, MOST_ASIDE + 1)))
    return next((name for name in names if not is_there(name)), path.with_suffix(".damaged.json"))
