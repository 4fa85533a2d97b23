"""Finds every problem in files of profiles, cases and sets."""

from __future__ import annotations

import math
import traceback
from collections.abc import Iterator, Sequence
from pathlib import Path

from trainer.cases.files.plain_file import files_in
from trainer.cases.files.yaml_text import YamlText, read_text
from trainer.cases.profiles.engine_trial import engine_problem
from trainer.cases.profiles.profile_file import profile_from
from trainer.cases.single_case.audibility import AUDIBLE_MARGIN_DB
from trainer.cases.single_case.case import Case
from trainer.cases.single_case.case_file import case_from
from trainer.cases.single_case.shipped import finder_beside
from trainer.cases.solved.case_proofs import inaudible, unsolvable
from trainer.cases.solved.universe_cache import Universes
from trainer.circuit.profile import Profile
from trainer.commands.call.result import Result, problems_result
from trainer.errors import THE_FILE, THE_FOLDER, Problem, ProblemsFoundError, UserError
from trainer.instruments.tries import Effort, provoked_by, tries_needed
from trainer.practice.reports.reason_lines import finding_text
from trainer.sets.proofs import set_problems
from trainer.sets.set_file import read_set
from trainer.words import message_parts, percent, text

MOST_FINDINGS = 3
"""The most remaining findings that one problem lists."""


def check_paths(paths: Sequence[Path], universes: Universes) -> Result:
    """Read every file, and every YAML file under every folder, and return all problems found.

    A case must also be solvable with the evidence it offers, and what decides it must be audible. An exception in one
    file does not stop the others: it is reported as a problem of that file, with its traceback.
    """
    files, closed = files_in(paths, ".yaml")
    problems: list[Problem] = [problem for error in closed for problem in error.problems]
    tracebacks: list[str] = []
    notes: list[str] = []
    for path in files:
        try:
            notes += check_file(path, universes)
        except ProblemsFoundError as error:
            problems += error.problems
        except UserError as error:
            found, mend = (words.rstrip(".") for words in message_parts(error))
            problems.append(Problem(path.name, None, THE_FILE, found, text("check.can_be_checked"), mend))
        except Exception as error:  # a bug: reported here, never swallowed
            tracebacks += traceback.format_exc().splitlines()
            found = text("check.own_fault", kind=type(error).__name__)
            mend = text("check.send_trace")
            problems.append(Problem(path.name, None, THE_FILE, found, text("check.can_be_checked"), mend))
    if not files and not closed:
        problems.append(
            Problem(
                str(paths[0]),
                None,
                THE_FOLDER,
                text("file.no_yaml_file"),
                text("file.profiles_and_cases"),
                text("file.name_files"),
            )
        )
    if problems:
        bad = problems_result(problems)
        last = text("check.bad", n=len(problems), files=text("check.files", n=len(files)))
        return Result((*tracebacks, *bad.lines, last), bad.document, bad.exit_code)
    document = {"problems": [], "files": [str(path) for path in files], "notes": notes}
    return Result((*notes, text("check.good", n=len(files))), document)


def check_file(path: Path, universes: Universes) -> tuple[str, ...]:
    """Read one profile, case or set by its `form` field; return notes. Raises ProblemsFoundError."""
    content = read_text(path)
    parsed = YamlText(content, path.name)
    form = parsed.value.get("form")
    if form == "profile/1":
        problems = list(_engine_problems(profile_from(content, path.name), parsed, "solenoid"))
    elif form == "case/1":
        case = case_from(content, path.name, finder_beside(path))
        problems = list(_engine_problems(case.profile, parsed, "profile"))
        problems = problems or [*_solvability_problems(case, parsed, universes), *_audibility_problems(case, parsed)]
    elif form == "set/1":
        problems = set_problems(read_set(path), path.name, universes, lambda line: None)
    else:
        mend = text("file.start_the_file_with_one_of_them")
        problems = [parsed.problem(["form"], repr(form)[:60], "profile/1, case/1, set/1", mend)]
    if problems:
        raise ProblemsFoundError(problems)
    return tuple(tries_lines(case, path.name)) if form == "case/1" else ()


def tries_lines(case: Case, name: str) -> Iterator[str]:
    """Yield in which try a case's seed shows each intermittent fault, moved or warmed gently."""
    for fault in case.faults:
        for how in provoked_by(fault, case.profile, case.temperature_c):
            count = tries_needed(case.seed, how, fault.location, Effort.GENTLE)
            yield text(f"check.tries_{how}", file=name, place=text(f"location.{fault.location}"), count=count)


def _engine_problems(profile: Profile, parsed: YamlText, field: str) -> Iterator[Problem]:
    """Yield the problem of an engine whose circuit has no solution."""
    wrong = engine_problem(profile)
    if wrong is not None:
        yield parsed.problem([field], *wrong)


def _solvability_problems(case: Case, parsed: YamlText, universes: Universes) -> Iterator[Problem]:
    """Yield the problem of a case that its evidence cannot decide, or that is declared undecidable and is not."""
    found = unsolvable(case, universes)
    if found is None and case.right_answer is None:
        return
    if found is None:
        key, chance = next(iter(universes.reasoner(case).everything.findings.items()))
        yield Problem(
            parsed.file,
            parsed.line_of(["stays_open"]),
            "stays_open",
            text("check.not_open", finding=finding_text(key), percent=percent(chance)),
            text("check.solvable"),
            text("check.take_open_out"),
        )
    elif case.right_answer is None:
        findings = [f"{finding_text(key)} ({percent(chance)})" for key, chance in found.left[:MOST_FINDINGS]]
        if len(found.left) > MOST_FINDINGS:
            findings.append(text("check.more", count=len(found.left) - MOST_FINDINGS))
        left = "; ".join(findings)
        mend = text("check.nothing_separates")
        if found.separated_by:
            mend = text("check.offer", words=", ".join(found.separated_by))
        yield Problem(
            parsed.file, parsed.line_of(["evidence"]), "evidence", text("check.unsolvable", left=left),
            text("check.solvable"), mend,
        )  # fmt: skip


def _audibility_problems(case: Case, parsed: YamlText) -> Iterator[Problem]:
    """Yield the problem of a case with a deciding sound that its bed masks."""
    quiet = list(inaudible(case))
    if quiet:
        worst = min(quiet, key=lambda one: one.level_dba)
        yield Problem(
            parsed.file,
            parsed.line_of(["bed"]),
            "bed",
            text("check.inaudible", slot=worst.slot, level=worst.level_dba, bed=worst.bed_dba),
            text("check.audible", margin=AUDIBLE_MARGIN_DB),
            text("check.quieter_bed", bed=math.floor(10.0 * (worst.level_dba - AUDIBLE_MARGIN_DB)) / 10.0),
        )
