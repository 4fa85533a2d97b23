"""Rebuilds the case of a case code."""

from __future__ import annotations

from collections.abc import Sequence

from trainer.cases.drawing.practice_case import OPTIONS, axes_of, practice_case
from trainer.cases.drawing.random_case import draw_case
from trainer.cases.single_case.case import Case
from trainer.cases.single_case.case_code import CodeError, parse_code, short_digest
from trainer.circuit.profile import Profile


def case_of_code(code: str, profiles: Sequence[Profile]) -> Case:
    """Return the case that a code identifies.

    Raises CodeError for a text that is no code, and KeyError where none of these profiles has the code's digest.
    """
    drawn = parse_code(code)
    if drawn.difficulty not in (1, 2, 3, OPTIONS):
        raise CodeError("version")
    for profile in profiles:
        if short_digest(profile.digest) == drawn.digest:
            if drawn.difficulty != OPTIONS:
                return draw_case(profile, drawn.difficulty, drawn.seed)
            try:
                return practice_case(profile, axes_of(drawn.seed))
            except ValueError as error:  # a fault that this engine does not have
                raise CodeError("version") from error
    raise KeyError(code)
