"""Checks of this machine for `doctor`: sound, display, packages, clock and disk."""

from __future__ import annotations

import importlib.metadata
import os
import sys
from dataclasses import dataclass
from pathlib import Path

from trainer.cases.files.plain_file import is_there
from trainer.circuit.compiled_step import in_use
from trainer.errors import MissingHereError
from trainer.words import message_parts, text


@dataclass(frozen=True, slots=True)
class Check:
    """The result of one check; `mend` is empty where nothing needs mending."""

    name: str
    good: bool
    found: str
    mend: str


def machine_checks(data_folder: Path, in_use: str = "") -> tuple[Check, ...]:
    """Check sound, display, versions and disk; never raises for what is missing.

    `in_use` names the backend that a window has open: it works, and opening it again could close it.
    """
    return (*_sound(in_use), _display(), pygame_check(), *_versions(), _disk(data_folder))


def _sound(in_use: str) -> list[Check]:
    from trainer.output.portaudio import PortAudioPlayer
    from trainer.output.sdl import SdlPlayer

    checks = []
    for name, make in (("sound by PortAudio", PortAudioPlayer), ("sound by SDL", SdlPlayer)):
        if make.backend == in_use:
            checks.append(Check(name, True, text("file.in_use_here"), ""))
            continue
        try:
            make().close()
            checks.append(Check(name, True, text("file.an_output_device_answers"), ""))
        except MissingHereError as error:
            checks.append(Check(name, False, *message_parts(error)))
    return checks


def _display() -> Check:
    named = os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")
    if named or sys.platform in ("win32", "darwin"):
        return Check("display", True, named or text("file.the_desktop"), "")
    return Check("display", False, text("file.no_display"), text("file.use_the_terminal"))


def pygame_check() -> Check:
    """Check that pygame-ce is installed and that the other distribution of pygame is not."""
    installed = [name for name in ("pygame", "pygame-ce") if _version(name)]
    if installed == ["pygame-ce"]:
        return Check("pygame", True, f"pygame-ce {_version('pygame-ce')}", "")
    if "pygame" in installed:
        mend = "pip uninstall pygame pygame-ce, then pip install pygame-ce"
        return Check("pygame", False, text("file.both_installed", names=" + ".join(installed)), mend)
    return Check("pygame", False, text("file.not_installed"), "pip install pygame-ce")


EARLIEST = "2026-01-01"
"""A right clock never shows an earlier day: the program did not exist yet."""


def clock_check(now: str, latest: str | None) -> Check:
    """Check that a clock (UTC, ISO 8601) shows no time before the program existed or before the newest record."""
    if now < EARLIEST or (latest is not None and latest > now):
        return Check("clock", False, now, text("file.set_the_clock", latest=latest or EARLIEST))
    return Check("clock", True, now, "")


def _versions() -> list[Check]:
    names = ("numpy", "scipy", "sounddevice", "pyyaml", "pydantic", "sqlalchemy")
    found = ", ".join(f"{name} {_version(name)}" for name in names if _version(name))
    missing = [name for name in names if not _version(name)]
    python = f"Python {sys.version_info.major}.{sys.version_info.minor}.{sys.version_info.micro}"
    return [
        Check(
            "python",
            sys.version_info >= (3, 11),
            python,
            "" if sys.version_info >= (3, 11) else text("file.use_3_11_or_newer"),
        ),
        Check("packages", not missing, found, f"pip install {' '.join(missing)}" if missing else ""),
        Check("solver", True, text("doctor.compiled" if in_use() else "doctor.not_compiled"), ""),
    ]


def _version(name: str) -> str | None:
    try:
        return importlib.metadata.version(name)
    except importlib.metadata.PackageNotFoundError:
        return None


LEAST_FREE_BYTES = 200_000_000


def _disk(folder: Path) -> Check:
    import shutil

    existing = next(parent for parent in (folder, *folder.parents) if is_there(parent))
    free = shutil.disk_usage(existing).free
    if not os.access(existing, os.W_OK):
        return Check(
            "data folder",
            False,
            text("file.folder_unwritable", folder=folder),
            text("file.name_another_folder_with_data"),
        )
    if free < LEAST_FREE_BYTES:
        return Check("data folder", False, text("file.free_mb", count=free // 1_000_000), text("file.free_some_space"))
    return Check("data folder", True, text("file.free_gb", folder=folder, count=free // 1_000_000_000), "")
