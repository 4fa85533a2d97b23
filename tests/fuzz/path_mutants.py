"""Hostile names and kinds of files for every command that takes a path: told in words, nothing waits, nothing is harmed.

`python -m tests.fuzz.path_mutants COUNT [FIRST]` makes so many calls from a number on, and prints one line of figures.
"""

from __future__ import annotations

import json
import os
import shutil
import signal
import socket
import stat
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import chdir, contextmanager, suppress
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from unittest.mock import patch

import click
import numpy as np
from click.testing import CliRunner, Result

from tests.exam_sets import PASSPHRASE, SMALL
from trainer.commands.entry import main as program
from trainer.words.visible import unseen_in

SEED = 14
WATCHDOG_S = 30
"""Seconds of real time after which a call is taken for one that waits; a guard, far above what any takes."""

MOST_TOLD = 20_000
"""Characters that a call may print; a name of 5,000 characters is told whole."""

CALLS = {
    # the parameter: the words of a call; {path} is the hostile one
    "check paths": "check {path}",
    "check paths, with another": "check {case9} {path} {case9}",
    "fair paths_or_names": "fair {path}",
    "practice case": "practice {path} --text --sound file",
    "bench profile": "bench {path}",
    "hear case": "hear {path} -o {out}",
    "hear output": "hear faint_hum_on_three --slot 3 -o {path}",
    "inspect case": "inspect {path}",
    "inspect netlist": "inspect faint_hum_on_three --netlist {path}",
    "handout case": "handout {path} -o {out}",
    "handout output": "handout faint_hum_on_three -o {path}",
    "draw profile": "draw {path}",
    "set make path": "set make {path} --case faint_hum_on_three",
    "set make cases": "set make {out} --case {path}",
    "set check path": "set check {path}",
    "set preview path": "set preview {path} -o {out}",
    "set preview output": "set preview {case9} -o {path}",
    "set preview passphrase_file": "set preview {sealed} -o {out} --passphrase-file {path}",
    "set seal path": "set seal {path} -o {out} --passphrase-file {passphrase}",
    "set seal output": "set seal {set} -o {path} --passphrase-file {passphrase}",
    "set seal passphrase_file": "set seal {set} -o {out} --passphrase-file {path}",
    "set show path": "set show {path}",
    "set sit path": "set sit {path} --learner ann --text --sound file",
    "set sit results": "set sit {set} --learner ann --text --sound file --results {path}",
    "set sit passphrase_file": "set sit {sealed} --learner ann --text --sound file --passphrase-file {path}",
    "records collect folders": "records collect {path} --set {set}",
    "records collect set_path": "records collect {folder} --set {path}",
    "records collect passphrase_file": "records collect {folder} --set {sealed} --passphrase-file {path}",
    "records mark set_path": "records mark --set {path}",
    "records mark passphrase_file": "records mark --set {sealed} --passphrase-file {path}",
    "records report output": "records report -o {path}",
    "records export output": "records export gradebook -o {path}",
    "records roster path": "records roster {path}",
    "records regrade set_path": "records regrade --set {path} --case 1 --answer circuit_passes --reason x",
    "records regrade passphrase_file": (
        "records regrade --set {sealed} --case 1 --answer circuit_passes --reason x --passphrase-file {path}"
    ),
    "records backup path": "records backup {path}",
    "records restore path": "records restore {path}",
    "records bundle set_path": "records bundle --set {path} --learner ann -o {folder}",
    "records bundle output": "records bundle --set {set} --learner ann -o {path}",
    "records bundle passphrase_file": "records bundle --set {sealed} --learner ann -o {folder} --passphrase-file {path}",
    "records carry output": "records carry -o {path}",
    "records take path": "records take {path}",
    "data": "--data {path} records list",
    "data, for a learner": "--data {path} progress",
    "data, for the doctor": "--data {path} doctor",
}


def path_parameters(command: click.Command = program, words: tuple[str, ...] = ()) -> Iterator[str]:
    """Yield every parameter of every command that is a path, or a case or profile that may be one."""
    for parameter in command.params:
        if isinstance(parameter.type, click.Path) or parameter.name in ("case", "profile"):
            yield " ".join([*words, str(parameter.name)])
    for name, inner in getattr(command, "commands", {}).items():
        yield from path_parameters(inner, (*words, name))


NAMES = (
    "nothing_here.yaml", "", ".", "..", "-", "--", "-o", "a b", " ", "~", "~nobody/x", "x" * 300, "x" * 5000, "a/" * 600 + "x", "../" * 300 + "nowhere/nowhere",
    "a\nb.yaml", "a\rb", "a\tb", "\x1b[2J\x1b]0;x\x07.yaml", "\x9b31m", "\u202egpj.yaml", "\u200b", "\ufeff", "\udcff\udc80.yaml",
    "%s%n", "{0}{title}", "[red]x[/]", "$(true)", "`true`", "'\"", "<b>", "=1+1", "file:///etc/hostname", "http://localhost/x", "C:\\x", "CON", "\\\\x\\y",
    "postgresql://x", "é" * 200, "e\u0301", "馬" * 90, "\U0001f3fb" * 60, "faint_hum_on_three/", "north_v8.yaml/x", ".yaml", "1:30", "null", "NUL\u0131",
)  # fmt: skip


def _folder(place: Path) -> None:
    place.mkdir()


def _pipe(place: Path) -> None:
    os.mkfifo(place)


def _socket(place: Path) -> None:
    with socket.socket(socket.AF_UNIX) as made:
        made.bind(place.name)  # short: the test stands in the folder


def _device(place: Path) -> None:
    """Make a device of our own: a fault of the program must not be able to take the machine's."""
    os.mknod(place, stat.S_IFCHR | 0o666, os.makedev(1, 5))  # endless zeros


def _ring(place: Path) -> None:
    place.symlink_to(place.name)


def _dangling(place: Path) -> None:
    place.symlink_to("nowhere")


def _link_to_folder(place: Path) -> None:
    place.symlink_to(".")


def _link_to_endless(place: Path) -> None:
    place.symlink_to("/dev/zero" if os.geteuid() else "ring")


def _large(place: Path) -> None:
    with place.open("wb") as file:
        file.truncate(3_000_000_000)


def _closed(place: Path) -> None:
    place.write_bytes(b"form: case/1")
    place.chmod(0)


def _closed_folder(place: Path) -> None:
    place.mkdir(0)


def _folder_of_everything(place: Path) -> None:
    place.mkdir()
    for kind in (_pipe, _ring, _dangling, _large):
        kind(place / f"{kind.__name__}.yaml")
    (place / "round").symlink_to(place)
    (place / "bad\n\x1b[2J.yaml").write_text("form: case/1\nseed: 1:1:1", "utf-8")


def _content(content: bytes) -> Callable[[Path], None]:
    def made(place: Path) -> None:
        place.write_bytes(content)

    return made


KINDS: dict[str, Callable[[Path], None]] = {
    "a folder": _folder, "a pipe": _pipe, "a socket": _socket, "a device": _device, "a ring": _ring, "a dangling link": _dangling,
    "a link to its folder": _link_to_folder, "an endless link": _link_to_endless, "a large file": _large, "a closed file": _closed,
    "a closed folder": _closed_folder, "a folder of everything": _folder_of_everything, "an empty file": _content(b""),
    "no text": _content(bytes(range(256))), "a line": _content(b"form: case/1\n"), "a list": _content(b"- 1\n"), "json": _content(b"{}"),
    "half a sealed set": _content(b"injector trainer sealed set 1\n{"), "a zip": _content(b"PK\x03\x04" + b"\0" * 60),
    "a gzip": _content(b"\x1f\x8b\x08\x00" + b"\0" * 60), "deep json": _content(b"[" * 50_000), "a csv": _content(b"learner,name,class\n\x1b[2J,=1+1,\n"),
}  # fmt: skip
BEFORE, AFTER = ("", "", "", "./", "nowhere/../", "//", ".//./"), ("", "", "", "/", "/.", "/..", "/x", ".yaml")


@dataclass(frozen=True)
class Call:
    """One call: its number, what the path is, the words."""

    number: int
    parameter: str
    what: str
    words: tuple[str, ...]


def _made(chance: np.random.Generator, folder: Path) -> tuple[str, str]:
    """Make something hostile in a folder; return what it is and its path."""
    if chance.integers(2):
        name = NAMES[int(chance.integers(len(NAMES)))]
        if not chance.integers(4):
            with suppress(OSError, ValueError):  # a name that can be had is had, with something in it
                (folder / name).write_bytes(b"form: case/9\n")
        what = f"the name {name[:40]!r}"
    else:
        kinds = tuple(KINDS)
        what = kinds[int(chance.integers(len(kinds)))]
        name = ("mine.yaml", "mine", "mine.sealed", "mi\nne.yaml", "\x1b[31mmine.results")[int(chance.integers(5))]
        try:
            KINDS[what](folder / name)
        except PermissionError:  # no devices for somebody who is no administrator
            what = f"nothing, for {what}"
    before, after = BEFORE[int(chance.integers(len(BEFORE)))], AFTER[int(chance.integers(len(AFTER)))]
    if before == "//":
        before = f"{folder}//"
    return what, name if name in ("", "-", "--") else before + name + after


def call_of(number: int, folder: Path) -> Call:
    """Return the call of a number, with what it needs in a folder."""
    chance = np.random.default_rng([SEED, number])
    parameters = tuple(CALLS)
    what, path = _made(chance, folder)
    return given_to(
        parameters[number % len(parameters)], what, path, folder, number=number, as_json=not chance.integers(4)
    )


def given_to(parameter: str, what: str, path: str, folder: Path, *, number: int = 0, as_json: bool = False) -> Call:
    """Return the call that gives a path to a parameter, with what it needs beside in a folder."""
    kept = folder / "kept"
    (kept / "folder").mkdir(parents=True)
    contents = {
        "case9": b"form: case/9\n", "set": SMALL.replace("mode: exam", "mode: practice").encode(), "passphrase": PASSPHRASE.encode(),
        "sealed": b'injector trainer sealed set 1\n{"closes": "", "mark": "", "mode": "exam", "name": "a", "opens": "", "salt": "00", "size": 1, "title": "a"}\n'
        + b"x" * 60,
    }  # fmt: skip
    for name, content in contents.items():
        (kept / name).write_bytes(content)
    given = {name: str(kept / name) for name in contents} | {"folder": str(kept / "folder"), "out": str(kept / "out")}
    words = [word.format(path=path, **given) for word in CALLS[parameter].split()]
    if "--data" not in words:
        words = ["--data", str(kept / "data"), *words]
    return Call(number, parameter, what, tuple(["--json", *words] if as_json else words))


def wrong_with(result: Result, *, as_json: bool, talks: bool) -> str | None:
    """Return what is wrong with how a call ended, or None; one that talks with a person prints no document."""
    if result.exception is not None and not isinstance(result.exception, SystemExit):
        return f"{type(result.exception).__name__}: {str(result.exception)[:200]}"
    if result.exit_code not in (0, 1, 2, 3):
        return f"exit code {result.exit_code}"
    if result.exit_code and not result.stderr.strip():
        return "nothing was told"
    if "Traceback" in result.output:
        return "a traceback: " + result.output[-300:]
    for printed in (result.stdout, result.stderr):
        at = unseen_in(printed, keep="\n")
        if at is not None and not (as_json and printed is result.stdout):
            return f"{printed[at]!r} in what is printed"
        if len(printed) > MOST_TOLD:
            return f"{len(printed)} characters"
    if as_json and result.exit_code != 2 and result.stdout and not talks:
        try:
            json.loads(result.stdout)
        except ValueError:
            return f"no JSON: {result.stdout[:100]!r}"
    return None


@dataclass
class Figures:
    """What came of many calls."""

    codes: dict[int, int] = field(default_factory=dict)
    failures: list[str] = field(default_factory=list)
    slowest: tuple[float, str] = (0.0, "")


@contextmanager
def alone(folder: Path) -> Iterator[None]:
    """Keep records, settings and what is solved in a folder, without a display or a sound device."""
    kept = {
        name: str(folder / name) for name in ("XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_RUNTIME_DIR")
    }
    with patch.dict(os.environ, {**kept, "SDL_VIDEODRIVER": "none"}):
        for name in ("DISPLAY", "WAYLAND_DISPLAY"):
            os.environ.pop(name, None)
        yield


def called(make: Callable[[Path], Call], figures: Figures) -> None:
    """Make a call in a folder of its own and add what came of it to the figures."""
    whole = Path(tempfile.mkdtemp()).resolve()
    folder = whole / "a" / "b" / "c"  # what leads upwards does not lead out
    folder.mkdir(parents=True)
    started = time.process_time()
    try:
        with chdir(folder), alone(folder / "kept"):
            call = make(folder)
            result = CliRunner().invoke(program, list(call.words), input="")
        failure = wrong_with(result, as_json=call.words[0] == "--json", talks="--text" in call.words)
    finally:
        for inner, _folders, _files in os.walk(whole):
            Path(inner).chmod(0o700)
        shutil.rmtree(whole)
    figures.codes[result.exit_code] = figures.codes.get(result.exit_code, 0) + 1
    figures.slowest = max(figures.slowest, (time.process_time() - started, f"{call.parameter}, {call.what}"))
    if failure is not None:
        figures.failures.append(
            f"call {call.number} ({call.parameter}, {call.what}): {failure}\n{[w[:200] for w in call.words]}"
        )


def main(count: int, first: int) -> int:
    """Make calls, print the figures, return the exit code."""

    def end(_signal: int, _frame: object) -> None:
        raise TimeoutError(f"{WATCHDOG_S} s for one call")

    figures = Figures()
    signal.signal(signal.SIGALRM, end)
    started = time.process_time()
    for number in range(first, first + count):
        signal.alarm(WATCHDOG_S)
        called(partial(call_of, number), figures)
    signal.alarm(0)
    for failure in figures.failures:
        print(failure, "\n", f"repeat: python -m tests.fuzz.path_mutants 1 {failure.split()[1]}")
    codes = ", ".join(f"{count} with code {code}" for code, count in sorted(figures.codes.items()))
    print(
        f"Paths: {count} calls of {len(CALLS)} kinds: {codes}; {len(figures.failures)} failures; slowest "
        f"{figures.slowest[0]:.1f} s of CPU ({figures.slowest[1]}); {time.process_time() - started:.0f} s in all"
    )
    return int(bool(figures.failures))


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else 0))
