"""Loads the shipped profiles and cases by name, and finds the solved engines that are shipped with them."""

from __future__ import annotations

import os
from functools import cache
from pathlib import Path

from trainer.cases.files.plain_file import is_file
from trainer.cases.profiles.profile_file import read_profile
from trainer.cases.single_case.case import Case
from trainer.cases.single_case.case_file import read_case
from trainer.circuit.profile import Profile


def scenarios_folder() -> Path:
    """Return where scenarios are: inside the installed package, or beside it in a checkout."""
    package = Path(__file__).parents[2]
    inside = package / "scenarios"
    return inside if inside.is_dir() else package.parent / "scenarios"


SOLVED_FOLDER = Path(__file__).parents[2] / "solved"
"""Where solved engines are shipped, in a checkout as in an installed package."""

SOLVED = "INJECTOR_TRAINER_SOLVED"
"""With this set to `none` in the environment shipped solved engines are not used: for tests of solving."""


def solved_folder() -> Path | None:
    """Return where solved engines are shipped, or None where they are not to be used."""
    return None if os.environ.get(SOLVED) == "none" else SOLVED_FOLDER


@cache
def profile_names() -> tuple[str, ...]:
    """Return the names of all shipped profiles."""
    return tuple(sorted(path.stem for path in (scenarios_folder() / "profiles").glob("*.yaml")))


@cache
def profile_named(name: str) -> Profile:
    """Return a shipped profile; raises KeyError with the known names."""
    if name not in profile_names():
        raise KeyError(profile_names())
    return read_profile(scenarios_folder() / "profiles" / f"{name}.yaml")


@cache
def case_names() -> tuple[str, ...]:
    """Return the names of all shipped cases."""
    return tuple(sorted(path.stem for path in (scenarios_folder() / "cases").glob("*.yaml")))


@cache
def case_named(name: str) -> Case:
    """Return a shipped case; raises KeyError with the known names."""
    if name not in case_names():
        raise KeyError(case_names())
    return read_case(scenarios_folder() / "cases" / f"{name}.yaml", profile_named)


def finder_beside(path: Path) -> ProfileFinderWithFolder:
    """Return a finder of profiles that also looks beside a file and in a folder `profiles` near it."""
    return ProfileFinderWithFolder(path.parent)


class ProfileFinderWithFolder:
    """Finds a profile by name in a folder, in `profiles` in or beside it, then among the shipped ones."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def __call__(self, name: str) -> Profile:
        """Return the profile; raises KeyError with the shipped names."""
        for folder in (self.folder, self.folder / "profiles", self.folder.parent / "profiles"):
            path = folder / f"{name}.yaml"
            if is_file(path):
                return read_profile(path)
        return profile_named(name)
