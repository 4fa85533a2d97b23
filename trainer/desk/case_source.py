"""Finds a case by what a person typed: a shipped name, a file, or a case code."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path

from trainer.cases.case import Case
from trainer.cases.case_code import CodeError
from trainer.cases.case_file import read_case
from trainer.cases.drawing import case_of_code
from trainer.cases.shipped import case_named, case_names, finder_beside, profile_named, profile_names
from trainer.errors import Problem, ProblemsFoundError


@dataclass(frozen=True, slots=True)
class FoundCase:
    """A case and where it came from: `shipped`, `file` or `code`, with its name, absolute path or code."""

    case: Case
    source: str
    name: str

    @property
    def digest(self) -> str:
        """A hash of the case's content and its profile's, to know it again."""
        return hashlib.sha256(repr((self.case.faults, self.case.profile.digest, self.case.stored,
                                    self.case.temperature_c, self.case.bed)).encode()).hexdigest()  # fmt: skip


def find_case(asked: str) -> FoundCase:
    """Return the case that was asked for; raises ProblemsFoundError with the mend."""
    if asked in case_names():
        return FoundCase(case_named(asked), "shipped", asked)
    path = Path(asked)
    if path.suffix in (".yaml", ".yml") or path.exists():
        return FoundCase(read_case(path, finder_beside(path)), "file", str(path.resolve()))
    try:
        case = case_of_code(asked, [profile_named(name) for name in profile_names()])
    except CodeError as error:
        raise _no_case(asked, error.reason) from error
    except KeyError as error:
        allowed = "a code drawn with the same profiles"
        mend = "use the program version and the profiles it was drawn with"
        raise ProblemsFoundError(
            [Problem(asked, None, "the case code", "of another profile", allowed, mend)]
        ) from error
    assert case.code is not None
    return FoundCase(case, "code", case.code)


def _no_case(asked: str, reason: str) -> ProblemsFoundError:
    if reason == "version":
        problem = Problem(
            asked, None, "the case code", "of another version", "a code of this version", "update the program"
        )
        return ProblemsFoundError([problem])
    looks_like_code = "_" not in asked and len(asked.replace("-", "")) in (11, 12, 13) and asked.upper() == asked
    if looks_like_code:
        found = {"length": "not twelve characters", "character": "holding a character that codes do not have"}
        problem = Problem(
            asked,
            None,
            "the case code",
            found.get(reason, "mistyped"),
            "a code as printed",
            "compare it letter by letter",
        )
        return ProblemsFoundError([problem])
    near = get_close_matches(asked, case_names(), 3, 0.4)
    mend = f"did you mean {' or '.join(near)}?" if near else "list them: injector-trainer cases"
    problem = Problem(asked, None, "the case", "unknown", "a shipped case, a file, or a case code", mend)
    return ProblemsFoundError([problem])
