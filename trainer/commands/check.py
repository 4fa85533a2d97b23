"""check: every problem in profiles and cases."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from trainer.cases.case_file import case_from
from trainer.cases.profile_file import profile_from
from trainer.cases.shipped import finder_beside
from trainer.cases.yaml_text import YamlText, read_text
from trainer.commands.result import Result, problems_result
from trainer.errors import Problem, ProblemsFoundError
from trainer.words import text


def check_paths(paths: Sequence[Path]) -> Result:
    """Read every file, and every YAML file under every folder, and return all problems found."""
    files = list(_files(paths))
    problems: list[Problem] = []
    for path in files:
        try:
            check_file(path)
        except ProblemsFoundError as error:
            problems += error.problems
    if not files:
        problems.append(
            Problem(
                str(paths[0]),
                None,
                "the folder",
                text("file.no_yaml_file"),
                text("file.profiles_and_cases"),
                text("file.name_files"),
            )
        )
    if problems:
        bad = problems_result(problems)
        last = text("check.bad", problems=len(problems), count=len(files))
        return Result((*bad.lines, last), bad.document, bad.exit_code)
    return Result((text("check.good", count=len(files)),), {"problems": [], "files": [str(path) for path in files]})


def check_file(path: Path) -> None:
    """Read one profile or case by its own `form` field; raises ProblemsFoundError."""
    content = read_text(path)
    form = YamlText(content, path.name).value.get("form")
    if form == "profile/1":
        profile_from(content, path.name)
    elif form == "case/1":
        case_from(content, path.name, finder_beside(path))
    else:
        raise ProblemsFoundError(
            [
                Problem(
                    path.name,
                    1,
                    "form",
                    repr(form)[:60],
                    "profile/1, case/1",
                    text("file.start_the_file_with_one_of_them"),
                )
            ]
        )


def _files(paths: Sequence[Path]) -> Iterator[Path]:
    for path in paths:
        if path.is_dir():
            yield from sorted(path.rglob("*.yaml"))
        else:
            yield path
