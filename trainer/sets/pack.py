"""Packs a set with every case and profile that it names, found beside it or among the shipped ones."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from trainer.cases.files.plain_file import is_file
from trainer.cases.files.validation import validated
from trainer.cases.files.yaml_text import YamlText, read_text
from trainer.cases.single_case.case import Case
from trainer.cases.single_case.case_code import CodeError, parse_code, short_digest
from trainer.cases.single_case.case_file import FORMAT as CASE_FORMAT
from trainer.cases.single_case.case_file import CaseFile
from trainer.cases.single_case.shipped import case_named, case_names, profile_named, profile_names, scenarios_folder
from trainer.circuit.profile import PASSES
from trainer.errors import Problem, ProblemsFoundError, Said, Sentence
from trainer.sets.case_set import SetPack
from trainer.sets.set_schema import FORMAT, DrawLine, SetFile

FieldPath = tuple[str | int, ...]

MOST_PACKED = 2_000_000
"""How many characters the listed cases of a set may have together: ten times what two hundred cases need."""


def pack_from(content: str, file: str, folder: Path) -> SetPack:
    """Return a set's text with the texts of its cases and profiles, looked for in a folder and among the shipped ones.

    Raises ProblemsFoundError with every name that was not found.
    """
    packing = _Packing(YamlText(content, file), folder)
    for row, line in enumerate(validated(SetFile, packing.parsed, FORMAT).cases):
        here: FieldPath = ("cases", row)
        if isinstance(line, DrawLine):
            packing.draw(here, line)
        else:
            packing.listed(here, line.case)
    if packing.problems:
        raise ProblemsFoundError(packing.problems)
    return SetPack(content, packing.cases, packing.profiles)


class _Packing:
    """Collects the cases and profiles that a set names, line by line."""

    def __init__(self, parsed: YamlText, folder: Path) -> None:
        self.parsed, self._folder = parsed, folder
        self.cases: dict[str, str] = {}
        self.profiles: dict[str, str] = {}
        self.problems: list[Problem] = []

    def draw(self, here: FieldPath, line: DrawLine) -> None:
        """Take the profiles that a draw names, and the shipped cases of its pool."""
        for place, name in enumerate(line.profiles):
            self._profile((*here, "profiles", place), name)
        if line.source != "shipped":
            return
        for name in shipped_pool(line, {name: case_named(name) for name in case_names()}):
            self.cases[name] = read_text(scenarios_folder() / "cases" / f"{name}.yaml")

    def listed(self, here: FieldPath, named: str) -> None:
        """Take a case that is named, with its profile; raises ProblemsFoundError if the cases are too long together."""
        path = (*here, "case")
        found = _case_text(named, self._folder)
        if found is not None:
            self.cases[named] = found
            self._refuse_too_much(path)
            try:
                self._profile(path, validated(CaseFile, YamlText(found, named), CASE_FORMAT).profile)
            except ProblemsFoundError as error:
                self.problems += error.problems
        elif (profile := _profile_of_code(named)) is not None:
            self._profile(path, profile)
        else:
            self._wrong(path, named, Sentence("file.a_shipped_case_a_file_or_a_case_code"), Sentence("set.name_it"))

    def _profile(self, path: FieldPath, name: str) -> None:
        folder = self._folder
        for near in (folder, folder / "profiles", folder.parent / "profiles", scenarios_folder() / "profiles"):
            if is_file(near / f"{name}.yaml"):
                self.profiles[name] = read_text(near / f"{name}.yaml")
                return
        self._wrong(path, name, ", ".join(profile_names()), Sentence("file.name_a_profile"))

    def _refuse_too_much(self, path: FieldPath) -> None:
        if sum(map(len, self.cases.values())) > MOST_PACKED:
            allowed = Sentence("file.at_most_characters", n=MOST_PACKED)
            over = self.parsed.problem(path, Sentence("set.too_much_text"), allowed, Sentence("set.make_two"))
            raise ProblemsFoundError([*self.problems, over])

    def _wrong(self, path: FieldPath, found: Said, allowed: Said, mend: Said) -> None:
        self.problems.append(self.parsed.problem(path, repr(found), allowed, mend))


def _case_text(named: str, folder: Path) -> str | None:
    """Return the text of a case that a set names: a file beside it, or a shipped one; None for neither."""
    for path in (folder / named, folder / f"{named}.yaml", folder / "cases" / f"{named}.yaml"):
        if path.suffix in (".yaml", ".yml") and is_file(path):
            return read_text(path)
    return read_text(scenarios_folder() / "cases" / f"{named}.yaml") if named in case_names() else None


def _profile_of_code(code: str) -> str | None:
    try:
        digest = parse_code(code).digest
    except CodeError:
        return None
    return next((name for name in profile_names() if short_digest(profile_named(name).digest) == digest), None)


def shipped_pool(line: DrawLine, cases: Mapping[str, Case]) -> list[str]:
    """Return which of some cases a draw from finished cases can give."""
    if line.source != "shipped":
        return []
    return [
        name for name, case in sorted(cases.items())
        if case.profile.name in line.profiles
        and case.difficulty in line.difficulty
        and case.right_answer is None
        and (line.places is None or _place_of(case) in line.places)
        and (line.kinds is None or all(fault.kind in line.kinds for fault in case.faults))
    ]  # fmt: skip


def _place_of(case: Case) -> str:
    return str(case.faults[0].location) if case.faults else PASSES
