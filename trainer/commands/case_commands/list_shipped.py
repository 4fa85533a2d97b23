"""Lists the shipped engines and cases, and draws new ones."""

from __future__ import annotations

import secrets

from trainer.cases.drawing.random_case import draw_case
from trainer.cases.profiles.profile_title import title_of
from trainer.cases.single_case.case_code import SEED_LIMIT
from trainer.cases.single_case.shipped import case_named, case_names, profile_named, profile_names
from trainer.commands.call.json_document import JsonValue
from trainer.commands.call.result import Result
from trainer.errors import WrongCallError
from trainer.practice.reports.attempt_lines import engine_lines
from trainer.words import text


def list_profiles() -> Result:
    """Return every shipped engine with its banks and connectors."""
    lines: list[str] = []
    rows: list[dict[str, JsonValue]] = []
    for name in profile_names():
        profile = profile_named(name)
        lines += [name, *(f"  {line}" for line in engine_lines(profile))]
        rows.append({
            "name": name, "title": title_of(profile), "digest": profile.digest, "codes": profile.codes,
            "banks": {bank: list(row) for bank, row in profile.banks.items()},
            "firing_order": list(profile.firing_order),
        })  # fmt: skip
    return Result(tuple(lines), {"profiles": rows})


def list_cases(*, titles: bool) -> Result:
    """Return every shipped case by difficulty; with names and titles, which reveal much of a fault, only on request."""
    cases = sorted((case_named(name) for name in case_names()), key=lambda case: (case.difficulty, case.number))
    rows: list[dict[str, JsonValue]] = []
    for case in cases:
        row: dict[str, JsonValue] = {
            "number": case.number, "profile": case.profile.name, "difficulty": case.difficulty,
        }  # fmt: skip
        rows.append({**row, "name": case.name, "title": case.in_words.title} if titles else row)
    lines = [f"{case.number}  {case.difficulty:>10}  {case.profile.name}" for case in cases]
    if titles:
        lines = [f"{line:<28}  {case.name:<32} {case.in_words.title}" for line, case in zip(lines, cases, strict=True)]
    return Result((text("cases.head"), *lines), {"cases": rows})


def draw_code(name: str, difficulty: int, seed: int | None) -> Result:
    """Return the code of a case drawn for a profile."""
    if name not in profile_names():
        raise WrongCallError("no_profile", name=name, profiles=", ".join(profile_names()))
    if seed is not None and seed >= SEED_LIMIT:
        raise WrongCallError("no_seed", seed=seed, limit=SEED_LIMIT)
    chosen = secrets.randbelow(SEED_LIMIT) if seed is None else seed
    case = draw_case(profile_named(name), difficulty, chosen)
    document = {"code": case.code, "profile": name, "difficulty": difficulty, "seed": chosen}
    return Result((str(case.code),), document)
