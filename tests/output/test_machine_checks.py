"""Each thing that can be wrong with a machine is found under its own name, with its mend."""

from __future__ import annotations

import importlib.metadata
import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from trainer.commands.entry import main
from trainer.errors import MissingHereError
from trainer.output import machine_checks as checks_module
from trainer.output import portaudio, sdl
from trainer.output.machine_checks import Check, clock_check, machine_checks, pygame_check


def named(checks: tuple[Check, ...], name: str) -> Check:
    return next(check for check in checks if check.name == name)


def test_json_tells_every_check_with_its_mend(tmp_path: Path) -> None:
    result = CliRunner().invoke(main, ["--data", str(tmp_path), "doctor", "--json"])
    document = json.loads(result.stdout)
    names = {check["name"] for check in document["checks"]}
    assert {
        "sound by PortAudio",
        "sound by SDL",
        "display",
        "pygame",
        "python",
        "packages",
        "data folder",
        "records",
        "clock",
    } <= names
    for check in document["checks"]:
        assert check["found"]
        assert check["good"] or check["mend"], check


def test_no_sound_device_is_reported_for_each_backend(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def missing(key: str) -> type:
        class Missing:
            backend = {"no_portaudio": "portaudio", "no_sdl_device": "sdl"}[key]

            def __init__(self) -> None:
                raise MissingHereError(key)

        return Missing

    monkeypatch.setattr(portaudio, "PortAudioPlayer", missing("no_portaudio"))
    monkeypatch.setattr(sdl, "SdlPlayer", missing("no_sdl_device"))
    assert named(machine_checks(tmp_path, "sdl"), "sound by SDL").good  # it is open, and stays open
    checks = machine_checks(tmp_path)
    assert "libportaudio2" in named(checks, "sound by PortAudio").mend
    assert not named(checks, "sound by SDL").good


def test_two_distributions_of_pygame_are_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(checks_module, "_version", lambda name: "2.6.1" if name == "pygame" else "2.5.8")
    check = pygame_check()
    assert not check.good
    assert "pip uninstall pygame" in check.mend

    def absent(name: str) -> str:
        raise importlib.metadata.PackageNotFoundError(name)

    monkeypatch.setattr(checks_module, "_version", lambda name: None)
    monkeypatch.setattr(importlib.metadata, "version", absent)
    assert pygame_check().mend == "pip install pygame-ce"


def test_a_clock_that_went_back_or_was_never_set_is_told() -> None:
    now = "2026-11-25T10:00:00.000+00:00"
    assert clock_check(now, None).good
    assert clock_check(now, "2026-11-25T09:59:00.000+00:00").good
    back = clock_check(now, "2026-11-26T10:00:00.000+00:00")
    assert not back.good
    assert "2026-11-26" in back.mend
    assert not clock_check("1970-01-01T00:00:00.000+00:00", None).good


def test_a_folder_that_cannot_be_written_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("os.access", lambda path, mode: False)
    check = named(machine_checks(tmp_path), "data folder")
    assert not check.good
    assert "--data" in check.mend
