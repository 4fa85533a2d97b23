"""Finds the cases that a person named together: shipped ones, codes, files of cases and sets, folders of them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from trainer.cases.files.plain_file import files_in, is_there
from trainer.cases.files.yaml_text import YamlText, read_text
from trainer.cases.profiles.engine_trial import engine_problem
from trainer.cases.single_case.case import Case, number_of
from trainer.cases.single_case.case_file import case_from
from trainer.cases.single_case.shipped import case_named, case_names, finder_beside
from trainer.circuit.profile import Profile
from trainer.desk.case_source import find_case
from trainer.errors import THE_FILE, THE_FOLDER, Problem, ProblemsFoundError, Said, WrongCallError
from trainer.sets.proofs import distinct_items
from trainer.sets.set_file import read_set
from trainer.words import message_parts, text


def cases_named(asked: Sequence[Path]) -> tuple[Case, ...]:
    """Return the cases in the order they were named; all shipped ones where nothing is.

    A set gives the cases of the forms that `check` proves. Engines that lie in a folder are passed over. Raises
    ProblemsFoundError with all that is wrong with any of the names and files.
    """
    if not asked:
        return tuple(case_named(name) for name in case_names())
    cases: list[Case] = []
    problems: list[Problem] = []
    for one in asked:
        try:
            cases += _cases_of(one)
        except ProblemsFoundError as error:
            problems += error.problems
    if problems:
        raise ProblemsFoundError(problems)
    return tuple(cases)


def _cases_of(asked: Path) -> Iterator[Case]:
    name = str(asked)
    shipped = name in case_names() or any(name == str(number_of(one)) for one in case_names())
    if shipped or not (asked.suffix in (".yaml", ".yml") or is_there(asked)):
        yield find_case(name).case
        return
    files, closed = files_in([asked], ".yaml")
    problems = [problem for error in closed for problem in error.problems]
    found = 0
    for path in files:
        try:
            for case in _cases_in(path, passing_over=files != [asked]):
                found += 1
                yield case
        except ProblemsFoundError as error:
            problems += error.problems
    if not problems and not found:
        problems.append(_no_case(name, THE_FOLDER, text("fair.no_case_in_it")))
    if problems:
        raise ProblemsFoundError(problems)


def _cases_in(path: Path, *, passing_over: bool) -> Iterator[Case]:
    """Yield the cases of a file by its `form` field; raises ProblemsFoundError, for an engine unless passed over."""
    content = read_text(path)
    parsed = YamlText(content, path.name)
    form = parsed.value.get("form")
    if form == "case/1":
        case = case_from(content, path.name, finder_beside(path))
        _refuse_unsolvable(case.profile, parsed, ["profile"])
        yield case
    elif form == "set/1":
        yield from _cases_of_set(path, parsed)
    elif form != "profile/1":
        mend = text("file.start_the_file_with_one_of_them")
        raise ProblemsFoundError([parsed.problem(["form"], repr(form)[:60], "case/1, set/1", mend)])
    elif not passing_over:
        raise ProblemsFoundError([_no_case(path.name, THE_FILE, text("fair.an_engine"))])


def _cases_of_set(path: Path, parsed: YamlText) -> Iterator[Case]:
    try:
        items = distinct_items(read_set(path))
    except WrongCallError as error:
        found, mend = (words.rstrip(".") for words in message_parts(error))
        raise ProblemsFoundError([parsed.problem(["cases"], found, text("set.a_wider_pool"), mend)]) from error
    for item in sorted(items, key=lambda one: one.index):
        _refuse_unsolvable(item.case.profile, parsed, ["cases", item.line])
        yield item.case


def _refuse_unsolvable(profile: Profile, parsed: YamlText, field: list[str | int]) -> None:
    wrong = engine_problem(profile)
    if wrong is not None:
        raise ProblemsFoundError([parsed.problem(field, *wrong)])


def _no_case(name: str, field: Said, found: str) -> Problem:
    return Problem(name, None, field, found, text("fair.a_case"), text("file.name_files"))
