"""What a command gives back; one place prints it and exits."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Mapping, Sequence
from dataclasses import asdict, dataclass, field

from trainer.commands.streams import give_up_output, say, tell
from trainer.errors import ExitCode, MissingHereError, Problem, ProblemsFoundError, UserError, WrongCallError
from trainer.words import message_of, problem_line
from trainer.words.visible import UNSEEN


@dataclass(frozen=True, slots=True)
class Result:
    """Lines for a person, one document for a program, and the exit code."""

    lines: tuple[str, ...] = ()
    document: Mapping[str, object] = field(default_factory=dict)
    exit_code: ExitCode = ExitCode.DONE


def finish(work: Callable[[], Result], *, as_json: bool) -> None:
    """Run a command's work, print its result and exit; nothing a person can cause ends in a traceback."""
    code = int(ExitCode.DONE)
    try:
        result = _result_of(work)
        code = result.exit_code
        _print(result, as_json=as_json)
    except KeyboardInterrupt:
        tell("")
        code = 130
    except BrokenPipeError:  # whoever read the output has gone away: nothing to tell, and nowhere to tell it
        give_up_output()
    except MissingHereError as error:  # the result itself could not be printed
        tell(message_of(error))
        code = error.exit_code
    sys.exit(code)


def _result_of(work: Callable[[], Result]) -> Result:
    try:
        return work()
    except ProblemsFoundError as error:
        return problems_result(error.problems)
    except UserError as error:
        return _told_result(error)
    except UnicodeEncodeError:
        return _told_result(WrongCallError("not_text"))
    except BrokenPipeError:
        raise
    except Exception as error:
        from trainer.records.store.database import user_error

        lacking = user_error(error)
        if lacking is None:  # a fault of the program, which only its trace can tell
            raise
        return _told_result(lacking)


def _told_result(error: UserError) -> Result:
    return Result((message_of(error),), {"error": error.key, "message": message_of(error)}, error.exit_code)


def problems_result(problems: Sequence[Problem]) -> Result:
    """Return problems as a result."""
    lines = tuple(problem_line(problem) for problem in problems)
    return Result(lines, {"problems": [asdict(problem) for problem in problems]}, ExitCode.WRONG)


def _json(document: Mapping[str, object]) -> str:
    """Return a document as JSON in which no character drives a terminal."""
    written = json.dumps(document, indent=2, ensure_ascii=False)
    return UNSEEN.sub(lambda found: found[0] if found[0] == "\n" else json.dumps(found[0])[1:-1], written)


def _print(result: Result, *, as_json: bool) -> None:
    good = result.exit_code is ExitCode.DONE
    if as_json:
        say(_json(result.document))
    if result.lines and not good:
        tell("\n".join(result.lines))
    elif result.lines and not as_json:
        say("\n".join(result.lines))
