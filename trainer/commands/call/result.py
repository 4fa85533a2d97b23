"""The result of a command, and the one place that prints it and exits."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from trainer.commands.call.json_document import JsonValue
from trainer.commands.call.streams import give_up_output, say, tell
from trainer.errors import ExitCode, MissingHereError, Problem, ProblemsFoundError, UserError, WrongCallError
from trainer.words import message_of, problem_line, problem_words
from trainer.words.visible import UNSEEN

EXIT_INTERRUPTED = 130
"""The exit code after Ctrl-C: 128 and the number of SIGINT, as shells count."""


@dataclass(frozen=True, slots=True)
class Result:
    """The lines for a person, the JSON document for a program, and the exit code."""

    lines: tuple[str, ...] = ()
    document: Mapping[str, JsonValue] = field(default_factory=dict)
    exit_code: ExitCode = ExitCode.DONE


def finish(work: Callable[[], Result], *, as_json: bool) -> None:
    """Run a command's work, print its result and exit; an error that a user can cause never ends in a traceback."""
    code = int(ExitCode.DONE)
    try:
        result = _result_of(work)
        code = result.exit_code
        _print(result, as_json=as_json)
    except KeyboardInterrupt:
        tell("")
        code = EXIT_INTERRUPTED
    except BrokenPipeError:  # the reader of the output has gone, so there is nobody to write to
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
        return _error_result(error)
    except UnicodeEncodeError:
        return _error_result(WrongCallError("not_text"))
    except BrokenPipeError:
        raise
    except Exception as error:
        from trainer.records.store.database import user_error

        shown = user_error(error)
        if shown is None:  # a bug: only its traceback explains it
            raise
        return _error_result(shown)


def _error_result(error: UserError) -> Result:
    message = message_of(error)
    return Result((message,), {"error": error.key, "message": message}, error.exit_code)


def problems_result(problems: Sequence[Problem]) -> Result:
    """Return the result of a command that found problems in files."""
    lines = tuple(problem_line(problem) for problem in problems)
    return Result(lines, {"problems": [problem_words(problem) for problem in problems]}, ExitCode.WRONG)


def _json(document: Mapping[str, JsonValue]) -> str:
    """Return a document as JSON, with every character escaped that would act on a terminal."""
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
