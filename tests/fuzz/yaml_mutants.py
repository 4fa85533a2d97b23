"""Mutants of every shipped file, seeded: what is wrong is told as problems, and reading stays within counted work.

`python -m tests.fuzz.yaml_mutants COUNT [FIRST]` tries so many mutants from a number on, and prints one line of figures.
A mutant is the same for the same number, so a failure is repeated with its number as FIRST.
"""

from __future__ import annotations

import re
import shutil
import signal
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any
from unittest.mock import patch

import numpy as np
from yaml.scanner import Scanner

from trainer.cases.files.plain_yaml import MOST_VALUES, plain_yaml, yaml_of
from trainer.cases.files.validation import MOST_PROBLEMS
from trainer.cases.profiles import engine_trial
from trainer.cases.profiles.engine_trial import MOST_STEPS
from trainer.cases.single_case.shipped import scenarios_folder
from trainer.cases.solved.universe_cache import Universes
from trainer.circuit.elements import Location
from trainer.circuit.fault import FaultKind
from trainer.circuit.profile import PASSES
from trainer.circuit.stepping import Stage
from trainer.commands.call.this_machine import universe_folder
from trainer.commands.case_commands import check_files
from trainer.errors import Problem, ProblemsFoundError
from trainer.sets import items as set_drawing
from trainer.sets import proofs as set_proofs
from trainer.sets.items import MOST_DRAWS_IN_SET
from trainer.words import problem_line, said
from trainer.words.visible import unseen_in

SEED = 13
WHOLE_CHECKS = 4
"""So many of the mutants that stay valid are solved as well, in the long run: each takes seconds."""

WATCHDOG_S = 30
"""Seconds of CPU after which the long run shows where a mutant is; a guard, far above what any takes."""

MOST_STEPS_OF_ENGINE = 17 * (MOST_STEPS + 4_800 + 100)
"""The budget of sixteen cylinders, with the one pulse in which it may be overdrawn."""

SET = """form: set/1
name: everything
title: Everything that a set may say
draw_key: a key for tests only
seeds: versions
versions: [1, 2, 3]
cases:
  - case: faint_hum_on_three
    weight: 2
  - {draw: 5, profiles: [north_v8, ridge_v6], difficulty: [1, 2], kinds: [open, added_resistance], weight: 1.5}
  - {draw: 2, profiles: [field_six], difficulty: [1, 2, 3], source: shipped, places: [pass_through_connector, circuit_passes]}
shares: {circuit_passes: 0, groups: 0}
policy:
  mode: exam
  opens: 2027-03-01T08:00:00+01:00
  closes: 2027-03-01T12:00:00+01:00
  tries: 1
  counts: best
  plays: 20
  readings: 10
  bench_minutes: 240
  clock_minutes: 40
  certainty_weight: 0.2
  debrief: after_closing
  order: shuffled
  passes_at: 60
support:
  - {learner: ann7, extra_time: 1.5, extra_plays: 5, extra_readings: 2, trace: true, quieter_bed_db: 4}
"""


@cache
def originals() -> tuple[tuple[str, str], ...]:
    """Return name and text of every file that is mutated: all shipped ones, and a set that says everything."""
    files = sorted(scenarios_folder().rglob("*.yaml"))
    texts = [(path.name, path.read_text("utf-8")) for path in files]
    engines = [one for one in texts if "form: profile/1" in one[1]]
    sets = [(f"{name}.yaml", text) for name, text in (("everything", SET),)] + [
        t for t in texts if "form: set/1" in t[1]
    ]
    return (*texts, *engines * 4, *sets * 6)  # few files with many fields count as much as many with few


@cache
def values() -> tuple[Any, ...]:
    """Return the plain value of every original."""
    return tuple(plain_yaml(text).value for _name, text in originals())


HOSTILE_WORDS = (
    "", " ", "x" * 300, "x" * 5000, "ñandú 馬", "\u202edlrow", "\x1b[2J", "a\nb", "\u0000", "%s%n{0}{title}", "../../etc/passwd", "~",
    "'\"`$(true)", "<script>", "=1+1", "[red]", "null", "true", "1:30", "1e5", "0x1f", "north_v8", "\ud7ff", "\U0001f3fb", "-", "|", "*a",
)  # fmt: skip
HOSTILE_NUMBERS = (
    0, -1, 1, 2, 3, 7, 16, 17, 59, 61, 200, 201, 10**6, 2**31 - 1, 2**31, 2**63, 10**30, -(10**18), 0.0, -0.0, 1e-300, 5e-324, 1e-9,
    1e9, 1e300, float("inf"), float("-inf"), float("nan"), 0.1 + 0.2,
)  # fmt: skip
RAW = (
    "1:" * 5000 + "1", "7" * 5000, "0x" + "f" * 5000, "1e400", "-1e-400", "!!int ''", "!!bool x", "!!python/object:os.system x", "!!set {a}",
    "&a [*a]", "*nobody", "&a x", "<<: {a: 1}", "'unended", "[unended", "{a: 1, a: 2}", "? [1]\n: 2", "|2\n  x", "2027-03-01", "yes", "~", "@x",
    "%TAG", "\t", "- - - - - - - - - - - - - - -", "[" * 30 + "]" * 30, '"\\UFFFFFFFF"', '"\\ud800"', '"\\e[2J"', "{" * 2000, "[" + "1," * 9000 + "]",
)  # fmt: skip
NOISE = (b"\x00", b"\xff", b"\xc3", b"\xed\xa0\x80", b"\x1b", b"\r", b"\t", b"\xe2\x80\xae", b"\xef\xbb\xbf", b"---\n", b"...\n", b"#", b":", b"'", b"\xf0\x9f")  # fmt: skip

Chance = np.random.Generator
Path_ = tuple[Any, ...]


def _pick(chance: Chance, from_: Any) -> Any:
    return from_[int(chance.integers(len(from_)))]


def _paths(value: Any, path: Path_ = ()) -> list[Path_]:
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return [path, *(leaf for key, part in inner for leaf in _paths(part, (*path, key)))]


def _at(value: Any, path: Path_) -> Any:
    for step in path:
        value = value[step]
    return value


def _copy(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _copy(part) for key, part in value.items()}
    return [_copy(part) for part in value] if isinstance(value, list) else value


def _put(value: Any, path: Path_, new: Any) -> Any:
    if not path:
        return new
    _at(value, path[:-1])[path[-1]] = new
    return value


def delete(chance: Chance, value: Any) -> Any:
    """Take a field or an entry out."""
    path = _pick(chance, _paths(value)[1:])
    del _at(value, path[:-1])[path[-1]]
    return value


def rename(chance: Chance, value: Any) -> Any:
    """Give a field another name."""
    path = _pick(chance, [path for path in _paths(value)[1:] if isinstance(_at(value, path[:-1]), dict)])
    table = _at(value, path[:-1])
    new = _pick(chance, (str(path[-1])[:-1], f"{path[-1]}s", "form", 1, 17, *HOSTILE_WORDS))
    table[new] = table.pop(path[-1])
    return value


def retype(chance: Chance, value: Any) -> Any:
    """Put a value of another type in the place of one."""
    path = _pick(chance, _paths(value))
    old = _at(value, path)
    others = (None, True, False, [], {}, [old], {"a": old}, str(old), 0, 1.5, [None], {"kind": "open"})
    return _put(value, path, _copy(_pick(chance, others)))


def _number_paths(value: Any) -> list[Path_]:
    return [path for path in _paths(value) if isinstance(_at(value, path), int | float)]


def extreme(chance: Chance, value: Any) -> Any:
    """Put an extreme in the place of a number."""
    return _put(value, _pick(chance, _number_paths(value) or [()]), _pick(chance, HOSTILE_NUMBERS))


def nudge(chance: Chance, value: Any) -> Any:
    """Move a number a little or much; a whole number stays whole."""
    path = _pick(chance, _number_paths(value) or [()])
    old = _at(value, path)
    if not isinstance(old, int | float):
        return value
    new = float(old) * float(10.0 ** chance.normal(0.0, _pick(chance, (0.02, 0.5, 3.0))))
    return _put(value, path, round(min(new, 1e15)) if isinstance(old, int) else new)


def graft(chance: Chance, value: Any) -> Any:
    """Put a branch of another file in the place of one."""
    donor = _pick(chance, values())
    return _put(value, _pick(chance, _paths(value)), _copy(_at(donor, _pick(chance, _paths(donor)))))


def transplant(chance: Chance, value: Any) -> Any:
    """Take a field from another file that has one at the same place."""
    donor = _pick(chance, values())
    shared = set(_paths(value)[1:]) & set(_paths(donor)[1:])
    path = _pick(chance, sorted(shared, key=repr) or [()])
    return _put(value, path, _copy(_at(donor, path))) if path else value


def swap(chance: Chance, value: Any) -> Any:
    """Exchange two branches, unless one holds the other."""
    one, other = _pick(chance, _paths(value)[1:]), _pick(chance, _paths(value)[1:])
    if one[: len(other)] == other or other[: len(one)] == one:
        return value
    first, second = _at(value, one), _at(value, other)
    return _put(_put(value, one, second), other, first)


def word(chance: Chance, value: Any) -> Any:
    """Put a hostile word in the place of a value."""
    return _put(value, _pick(chance, _paths(value)), _pick(chance, HOSTILE_WORDS))


def multiply(chance: Chance, value: Any) -> Any:
    """Repeat the entries of a list, or add fields to a table."""
    path = _pick(chance, [path for path in _paths(value) if isinstance(_at(value, path), list | dict)])
    times = _pick(chance, (2, 3, 30, 300, 3000))
    branch = _at(value, path)
    if isinstance(branch, list):
        return _put(value, path, [_copy(part) for part in (branch * times)[:6000]])
    branch |= {f"{_pick(chance, ('k', 'x' * 60))}{number}": number for number in range(times)}
    return value


def wrap(chance: Chance, value: Any) -> Any:
    """Nest a branch deeper."""
    path = _pick(chance, _paths(value))
    branch = _at(value, path)
    for _level in range(_pick(chance, (1, 2, 8, 13, 60))):
        branch = [branch] if chance.integers(2) else {"a": branch}
    return _put(value, path, branch)


def demand(chance: Chance, value: Any) -> Any:
    """Let a set ask for much of little: many cases, forms and engines, from pools that hold few."""
    listed = value.get("cases")
    lines = listed if isinstance(listed, list) else []
    line = {
        "draw": int(_pick(chance, (1, 9, 30, 60, 150, 200))),
        "profiles": ["north_v8", "ridge_v6", "field_six"][: 1 + int(chance.integers(3))],
    }
    for name, choices in (("kinds", list(FaultKind)), ("places", [*Location, PASSES]), ("difficulty", [1, 2, 3])):
        if chance.integers(2):
            line[name] = [
                str(one) if name != "difficulty" else one
                for one in chance.permutation(choices)[: 1 + int(chance.integers(3))].tolist()
            ]
    return {
        **value, "cases": [*lines[: int(chance.integers(3))], *[dict(line) for _time in range(int(_pick(chance, (1, 1, 1, 2, 30))))]],
        "draw_key": f"a key of mutants {int(chance.integers(1000))}", "shares": {"circuit_passes": 0, "groups": int(chance.integers(2))},
        **({"seeds": "versions", "versions": list(range(int(chance.integers(1, 13))))} if chance.integers(2) else {"seeds": "per_learner"}),
    }  # fmt: skip


def raw(chance: Chance, text: str) -> str:
    """Put something that only a text can hold after a colon or a dash."""
    spots = [match.end() for match in re.finditer(r"[:-] ", text)] or [0]
    start = _pick(chance, spots)
    end = text.find("\n", start)
    return text[:start] + _pick(chance, RAW) + text[end if end >= 0 else len(text) :]


def twice(chance: Chance, text: str) -> str:
    """Write a line twice, or many times."""
    lines = text.splitlines(keepends=True) or ["\n"]
    number = int(chance.integers(len(lines)))
    lines[number] *= _pick(chance, (2, 2, 2, 50, 9000))
    return "".join(lines)


def shuffle(chance: Chance, text: str) -> str:
    """Move a line elsewhere, or to another depth."""
    lines = text.splitlines(keepends=True) or ["\n"]
    moved = lines.pop(int(chance.integers(len(lines))))
    lines.insert(int(chance.integers(len(lines) + 1)), _pick(chance, ("", "  ", "- ", "\t")) + moved)
    return "".join(lines)


def cut(chance: Chance, text: str) -> str:
    """End early, or begin late."""
    place = int(chance.integers(len(text) + 1))
    return text[:place] if chance.integers(4) else text[place:]


def noise(chance: Chance, content: bytes) -> bytes:
    """Change, add or take away single bytes."""
    for _time in range(int(chance.integers(1, 6))):
        place = int(chance.integers(len(content) + 1))
        change = int(chance.integers(3))
        new = _pick(chance, NOISE) if change < 2 else bytes([int(chance.integers(256))])
        content = content[:place] + (b"" if change == 0 else new) + content[place + (change != 1) :]
    return content


OF_VALUES: tuple[Callable[[Chance, Any], Any], ...] = (
    delete, rename, retype, extreme, nudge, nudge, nudge, graft, transplant, transplant, swap, word, multiply, wrap, demand, demand,
)  # fmt: skip
OF_TEXT: tuple[Callable[[Chance, str], str], ...] = (raw, raw, twice, shuffle, cut)


@dataclass(frozen=True)
class Mutant:
    """A mutated file: what it was, what was done to it, what it is now."""

    number: int
    origin: str
    done: tuple[str, ...]
    content: bytes


def mutant(number: int) -> Mutant:
    """Return the mutant of a number."""
    chance = np.random.default_rng([SEED, number])
    place = int(chance.integers(len(originals())))
    name, text = originals()[place]
    done: list[str] = []
    if chance.integers(3):
        value = _copy(values()[place])
        for _time in range(int(_pick(chance, (1, 1, 1, 2, 4)))):
            if isinstance(value, dict) and value:
                change = _pick(chance, OF_VALUES)
                if change is demand and value.get("form") != "set/1":
                    change = nudge
                value = change(chance, value)
                done.append(change.__name__)
        text = yaml_of(value)
    if not done or not chance.integers(4):
        change_text = _pick(chance, OF_TEXT)
        text = change_text(chance, text)
        done.append(change_text.__name__)
    content = text.encode("utf-8", "surrogatepass")
    if not chance.integers(8):
        content = noise(chance, content)
        done.append(noise.__name__)
    return Mutant(number, name, tuple(done), content)


@dataclass
class Work:
    """What one mutant cost, in counts."""

    tokens: int = 0
    draws: int = 0
    steps: int = 0
    solved: bool = False


@contextmanager
def counted(work: Work, *, trial: bool) -> Iterator[None]:
    """Count tokens, draws and the solver's steps; solve nothing but, where that is asked for, an engine's trial."""
    fetch, draw, step = Scanner.fetch_more_tokens, set_drawing.draw_case, Stage.step

    def fetching(self: Scanner) -> Any:
        work.tokens += 1
        return fetch(self)

    def drawing(*rest: Any) -> Any:
        work.draws += 1
        return draw(*rest)

    def stepping(self: Stage, *rest: Any) -> Any:
        work.steps += len(self.matrix)
        return step(self, *rest)

    def solvable(*_rest: Any) -> None:
        work.solved = True

    with ExitStack() as stack:
        for where, name, instead in (
            (Scanner, "fetch_more_tokens", fetching), (set_drawing, "draw_case", drawing), (Stage, "step", stepping),
            (check_files, "unsolvable", solvable), (set_proofs, "unsolvable", solvable), (check_files, "inaudible", lambda case: ()),
            (set_proofs, "inaudible", lambda case: ()), (set_drawing, "inaudible", lambda case: ()),
        ):  # fmt: skip
            stack.enter_context(patch.object(where, name, instead))
        if not trial:
            for module in (check_files, set_proofs):
                stack.enter_context(patch.object(module, "engine_problem", lambda profile: None))
        engine_trial.trial_of.cache_clear()
        yield


@dataclass
class Figures:
    """What came of many mutants."""

    refused: int = 0
    valid: list[int] = field(default_factory=list)
    failures: list[str] = field(default_factory=list)
    slowest_s: float = 0.0
    work: Work = field(default_factory=Work)


def told_wrong(problem: Problem, lines: int) -> str | None:
    """Return what is wrong with how a problem is told, or None."""
    words = (problem.file, *map(said, (problem.field, problem.found, problem.allowed, problem.mend)))
    if not all(isinstance(one, str) and one for one in words):
        return "a problem with an empty part"
    if problem.line is not None and not 1 <= problem.line <= lines:
        return f"a line {problem.line} of {lines}"
    if max(map(len, words)) > 1500:
        return f"a part of {max(map(len, words))} characters"
    return None if unseen_in(problem_line(problem)) is None else "characters that are not seen"


def tried(one: Mutant, folder: Path, figures: Figures, *, trial: bool) -> None:
    """Check a mutant and add what came of it to the figures."""
    path = folder / "mutant.yaml"
    path.write_bytes(one.content)
    work, started = Work(), time.process_time()
    failure = None
    try:
        with counted(work, trial=trial):
            check_files.check_file(path, Universes(None))
        figures.valid.append(one.number)
    except ProblemsFoundError as error:
        figures.refused += 1
        lines = one.content.count(b"\n") + one.content.count(b"\r") + 2
        failure = next((wrong for p in error.problems if (wrong := told_wrong(p, lines))), None)
        if not 0 < len(error.problems) <= 12 * MOST_PROBLEMS:
            failure = f"{len(error.problems)} problems"
    except Exception as error:  # what the fuzzer looks for
        failure = f"{type(error).__name__}: {str(error)[:200]}"
    figures.slowest_s = max(figures.slowest_s, time.process_time() - started)
    bounds = {"tokens": 16 * MOST_VALUES, "draws": MOST_DRAWS_IN_SET * 12, "steps": MOST_STEPS_OF_ENGINE * 8}
    for name, most in bounds.items():
        setattr(figures.work, name, max(getattr(figures.work, name), getattr(work, name)))
        if getattr(work, name) > most:
            failure = f"{getattr(work, name)} {name}"
    if failure is not None:
        told = one.content[:1500].decode("utf-8", "backslashreplace")
        figures.failures.append(f"mutant {one.number} of {one.origin} ({', '.join(one.done)}): {failure}\n{told}")


def check_whole(number: int, folder: Path, figures: Figures) -> None:
    """Solve and hear a mutant that reads well; whatever is wrong with it must be told."""
    path = folder / "mutant.yaml"
    path.write_bytes(mutant(number).content)
    result = check_files.check_paths([path], Universes(universe_folder()))
    if any(line.startswith("Traceback") for line in result.lines):
        figures.failures.append(f"mutant {number}, checked whole:\n" + "\n".join(result.lines))


def main(count: int, first: int) -> int:
    """Try mutants with their engines' trials, check a few whole, print the figures; return the exit code."""

    def end(_signal: int, _frame: object) -> None:
        raise TimeoutError(f"{WATCHDOG_S} s of CPU for one mutant")

    figures = Figures()
    folder = Path(tempfile.mkdtemp())
    signal.signal(signal.SIGPROF, end)
    started = time.process_time()
    try:
        for number in range(first, first + count):
            signal.setitimer(signal.ITIMER_PROF, WATCHDOG_S)
            tried(mutant(number), folder, figures, trial=True)
        signal.setitimer(signal.ITIMER_PROF, 0)
        cases = [number for number in figures.valid if b"form: case/1" in mutant(number).content]
        for number in cases[:WHOLE_CHECKS]:
            check_whole(number, folder, figures)
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        shutil.rmtree(folder)
    for failure in figures.failures:
        print(failure, "\n", f"repeat: python -m tests.fuzz.yaml_mutants 1 {failure.split()[1]}")
    print(
        f"YAML: {count} mutants, {figures.refused} refused, {len(figures.valid)} valid ({len(cases[:WHOLE_CHECKS])} checked whole), "
        f"{len(figures.failures)} failures; slowest {figures.slowest_s:.1f} s of CPU; at most {figures.work.tokens} tokens, "
        f"{figures.work.draws} draws, {figures.work.steps} steps; {time.process_time() - started:.0f} s in all"
    )
    return int(bool(figures.failures))


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else 0))
