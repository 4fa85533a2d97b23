"""What a command gives back; one place prints it and exits."""

from __future__ import annotations

import io
import json
import sys
from collections.abc import Callable, Sequence
from dataclasses import asdict, dataclass, field
from typing import Any

from trainer.errors import ExitCode, MissingHereError, Problem, ProblemsFoundError, WrongCallError
from trainer.words import problem_line, told


@dataclass(frozen=True, slots=True)
class Result:
    """Lines for a person, one document for a program, and the exit code."""

    lines: tuple[str, ...] = ()
    document: dict[str, Any] = field(default_factory=dict)
    exit_code: ExitCode = ExitCode.DONE


def finish(work: Callable[[], Result], *, as_json: bool) -> None:
    """Run a command's work, print its result and exit; nothing a person can cause ends in a traceback."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")  # a console without Ω still shows the number
    try:
        result = work()
    except ProblemsFoundError as error:
        result = problems_result(error.problems)
    except (WrongCallError, MissingHereError) as error:
        result = Result((told(error),), {"error": error.key, "message": told(error)}, error.exit_code)
    except UnicodeEncodeError:
        told_ = WrongCallError("not_text")
        result = Result((told(told_),), {"error": told_.key, "message": told(told_)}, told_.exit_code)
    except KeyboardInterrupt:
        sys.stderr.write("\n")
        sys.exit(130)
    except Exception as error:
        from trainer.records.opening import as_told

        lacking = as_told(error)
        if lacking is None:  # a fault of the program, which only its trace can tell
            raise
        result = Result((told(lacking),), {"error": lacking.key, "message": told(lacking)}, lacking.exit_code)
    try:
        _print(result, as_json=as_json)
    except BrokenPipeError:
        # whoever read the output has gone away: nothing to tell, and nowhere to tell it
        sys.stderr.close()
    sys.exit(result.exit_code)


def problems_result(problems: Sequence[Problem]) -> Result:
    """Return problems as a result."""
    lines = tuple(problem_line(problem) for problem in problems)
    return Result(lines, {"problems": [asdict(problem) for problem in problems]}, ExitCode.WRONG)


def _print(result: Result, *, as_json: bool) -> None:
    good = result.exit_code is ExitCode.DONE
    if as_json:
        sys.stdout.write(json.dumps(result.document, indent=2, ensure_ascii=False) + "\n")
        out = sys.stderr
        lines = () if good else result.lines
    else:
        out = sys.stdout if good else sys.stderr
        lines = result.lines
    for line in lines:
        out.write(line + "\n")
    sys.stdout.flush()
