"""Finds a case by what a person typed: a shipped name or its number, a file, or a case code."""

from __future__ import annotations

from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path

from trainer.cases.drawing.coded_case import case_of_code
from trainer.cases.files.plain_file import is_there
from trainer.cases.single_case.case import Case, number_of
from trainer.cases.single_case.case_code import CodeError
from trainer.cases.single_case.case_file import read_case
from trainer.cases.single_case.shipped import case_named, case_names, finder_beside, profile_named, profile_names
from trainer.errors import Problem, ProblemsFoundError, Sentence


@dataclass(frozen=True, slots=True)
class FoundCase:
    """A case and where it came from: `shipped`, `file` or `code`, with its name, absolute path or code."""

    case: Case
    source: str
    name: str

    @property
    def digest(self) -> str:
        """A hash of the case's content."""
        return self.case.digest


def find_case(asked: str) -> FoundCase:
    """Return the case that was asked for; raises ProblemsFoundError with the mend."""
    name = next((name for name in case_names() if asked in (name, str(number_of(name)))), None)
    if name is not None:
        return FoundCase(case_named(name), "shipped", name)
    path = Path(asked)
    if path.suffix in (".yaml", ".yml") or is_there(path):
        return FoundCase(read_case(path, finder_beside(path)), "file", str(path.resolve()))
    return coded_case(asked)


def coded_case(asked: str) -> FoundCase:
    """Return the case of a case code; raises ProblemsFoundError with the mend."""
    try:
        case = case_of_code(asked, [profile_named(name) for name in profile_names()])
    except CodeError as error:
        raise _no_case(asked, error.reason) from error
    except KeyError as error:
        allowed = Sentence("file.a_code_drawn_with_the_same_profiles")
        mend = Sentence("file.same_profiles")
        raise ProblemsFoundError(
            [Problem(asked, None, "the case code", Sentence("file.of_another_profile"), allowed, mend)]
        ) from error
    assert case.code is not None
    return FoundCase(case, "code", case.code)


def _no_case(asked: str, reason: str) -> ProblemsFoundError:
    if reason == "version":
        problem = Problem(
            asked,
            None,
            "the case code",
            Sentence("file.of_another_version"),
            Sentence("file.a_code_of_this_version"),
            Sentence("file.update_the_program"),
        )
        return ProblemsFoundError([problem])
    looks_like_code = "_" not in asked and len(asked.replace("-", "")) in (11, 12, 13) and asked.upper() == asked
    if looks_like_code:
        found = {
            "length": Sentence("file.not_twelve_characters"),
            "character": Sentence("file.holding_a_character_that_codes_do_not_have"),
        }
        problem = Problem(
            asked,
            None,
            "the case code",
            found.get(reason, Sentence("file.mistyped")),
            Sentence("file.a_code_as_printed"),
            Sentence("file.compare_it_letter_by_letter"),
        )
        return ProblemsFoundError([problem])
    near = get_close_matches(asked, case_names(), 3, 0.4)
    listing = Sentence("file.list_them_injector_trainer_cases")
    mend = Sentence("file.did_you_mean", names=" / ".join(near)) if near else listing
    problem = Problem(
        asked, None, "the case", Sentence("file.unknown"), Sentence("file.a_shipped_case_a_file_or_a_case_code"), mend
    )
    return ProblemsFoundError([problem])
