"""The process that holds an exam: its memory, its interpreter, and the prompt for the passphrase."""

from __future__ import annotations

import os
import select
import site
import subprocess
import sys
import termios
import venv
from pathlib import Path

import pytest

import trainer
from tests.exam_sets import PASSPHRASE, SMALL
from trainer.commands.call import isolation
from trainer.commands.call.isolation import can_isolate, isolate
from trainer.desk import process_guard

REPOSITORY = Path(trainer.__file__).parents[1]
LINUX = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="prctl is Linux's own")

TELL_GUARDS = """
import resource
from trainer.desk.process_guard import guards_missing
print("memory" in guards_missing(), resource.getrlimit(resource.RLIMIT_CORE))
"""


def python(code: str, *words: str) -> str:
    done = subprocess.run(
        [sys.executable, "-c", code, *words], cwd=REPOSITORY, capture_output=True, text=True, check=True
    )
    return done.stdout.strip()


# memory


@LINUX
def test_a_process_that_asked_for_a_passphrase_cannot_be_dumped(tmp_path: Path) -> None:
    (tmp_path / "pass").write_text(PASSPHRASE)
    ask = "import sys; from pathlib import Path; from trainer.commands.call.set_passphrase import passphrase_from\n"
    assert python(TELL_GUARDS).startswith("True")
    assert python(f"{ask}passphrase_from(Path(sys.argv[1]))(){TELL_GUARDS}", str(tmp_path / "pass")) == "False (0, 0)"


@LINUX
def test_the_worker_beside_the_window_cannot_be_dumped_either(tmp_path: Path) -> None:
    work = (
        "import multiprocessing, sys; from pathlib import Path; from trainer.desk.worker import _work\n"
        "here, there = multiprocessing.Pipe(); here.close(); _work(there, Path(sys.argv[1]))\n"
    )
    assert python(work + TELL_GUARDS, str(tmp_path)) == "False (0, 0)"


def test_where_the_system_has_no_such_call_the_memory_counts_as_open(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "platform", "darwin")
    assert not process_guard.can_guard_memory()
    assert "memory" in process_guard.guards_missing()


# the interpreter

INJECTED = """
import atexit, pathlib
atexit.register(pathlib.Path({seen!r}).touch)
"""
"""Runs to the end of every interpreter that takes it in; one that is started over does not come to that end."""

SPAWNED = """
import multiprocessing, sys

def tell():
    print(sys.flags.isolated, flush=True)

if __name__ == "__main__":
    process = multiprocessing.get_context("spawn").Process(target=tell)
    process.start()
    process.join()
"""


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The interpreter of an environment in which the program is installed, as an editable install does it."""
    folder = tmp_path_factory.mktemp("environment")
    venv.create(folder, symlinks=True)
    (packages,) = folder.glob("lib/python*/site-packages")
    (packages / "here.pth").write_text("\n".join([str(REPOSITORY), *site.getsitepackages()]))
    return folder / "bin" / "python"


@pytest.mark.skipif(os.name != "posix", reason="a process is started over on POSIX only")
def test_what_the_environment_would_put_into_an_exam_is_left_out(installed: Path, tmp_path: Path) -> None:
    seen = tmp_path / "seen"
    (tmp_path / "sitecustomize.py").write_text(INJECTED.format(seen=str(seen)))
    environment = {**os.environ, "PYTHONPATH": str(tmp_path)}
    done = subprocess.run(
        [installed, "-m", "trainer", "set", "sit", "none.sealed", "--learner", "ann", "--text"],
        cwd=tmp_path, env=environment, capture_output=True, text=True,
    )  # fmt: skip
    assert "none.sealed" in done.stderr
    assert not seen.exists()


def test_a_worker_is_isolated_where_its_window_is(installed: Path, tmp_path: Path) -> None:
    (tmp_path / "spawned.py").write_text(SPAWNED)
    done = subprocess.run([installed, "-I", tmp_path / "spawned.py"], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "1"


def test_a_program_that_only_its_folder_has_goes_on_as_it_was(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A checkout that is run by PYTHONPATH: isolated, another program or none would be found."""
    (tmp_path / "trainer.py").write_text("")
    monkeypatch.setattr(trainer, "__file__", str(tmp_path / "trainer.py"))
    monkeypatch.setattr(os, "execv", lambda *_words: pytest.fail("started over"))
    assert not can_isolate()
    isolate()


def test_a_process_is_started_over_once_with_the_words_it_was_called_by(monkeypatch: pytest.MonkeyPatch) -> None:
    called: list[object] = []
    monkeypatch.setattr(isolation, "_found_isolated", lambda: True)
    monkeypatch.setattr(os, "execv", lambda *words: called.append(words))
    monkeypatch.setattr(sys, "orig_argv", ["python3", "-X", "dev", "-m", "trainer", "set", "sit", "a b.sealed"])
    isolate()
    again = [sys.executable, "-I", "-X", "dev", "-m", "trainer", "set", "sit", "a b.sealed"]
    assert called == [(sys.executable, again)]


# the prompt

ASK = """
import sys
from pathlib import Path
from trainer.commands.call.set_passphrase import passphrase_from
Path(sys.argv[1]).write_text(passphrase_from(None, twice=True)())
"""


class Terminal:
    """A pseudo-terminal with a process in it."""

    def __init__(self, *words: str) -> None:
        self._near, far = os.openpty()
        self.far = os.dup(far)
        self.process = subprocess.Popen(
            [sys.executable, *words], cwd=REPOSITORY, stdin=far, stdout=far, stderr=far, start_new_session=True
        )
        os.close(far)
        self.shown = ""

    def answer(self, prompt: str, typed: str) -> None:
        """Wait for a prompt that has not been answered, then type a line."""
        start = len(self.shown)
        while prompt not in self.shown[start:]:
            ready, _, _ = select.select([self._near], [], [], 60.0)
            assert ready, self.shown
            self.shown += os.read(self._near, 4096).decode()
        os.write(self._near, f"{typed}\n".encode())

    def end(self) -> int:
        code = self.process.wait(60.0)
        while select.select([self._near], [], [], 0.0)[0]:
            self.shown += os.read(self._near, 4096).decode()
        return code


@pytest.mark.skipif(os.name != "posix", reason="pseudo-terminals")
def test_the_passphrase_is_typed_unseen_and_asked_again_where_it_differs(tmp_path: Path) -> None:
    terminal = Terminal("-c", ASK, str(tmp_path / "typed"))
    before = termios.tcgetattr(terminal.far)
    for prompt, typed in (
        ("Passphrase", PASSPHRASE),
        ("Type it again", "another"),
        ("Passphrase", PASSPHRASE),
        ("Type it again", PASSPHRASE),
    ):
        terminal.answer(f"{prompt}", typed)
    assert terminal.end() == 0
    assert (tmp_path / "typed").read_text() == PASSPHRASE
    assert PASSPHRASE not in terminal.shown
    assert "another" not in terminal.shown
    assert "do not match" in terminal.shown
    assert termios.tcgetattr(terminal.far)[3] == before[3]  # the terminal shows again what is typed


def test_where_nothing_hides_what_is_typed_the_passphrase_is_not_asked(tmp_path: Path) -> None:
    (tmp_path / "small.yaml").write_text(SMALL)
    done = subprocess.run(
        [sys.executable, "-m", "trainer", "set", "seal", tmp_path / "small.yaml", "-o", tmp_path / "small.sealed"],
        cwd=REPOSITORY, input=f"{PASSPHRASE}\n{PASSPHRASE}\n", capture_output=True, text=True, start_new_session=True,
    )  # fmt: skip
    assert done.returncode == 3
    assert "--passphrase-file" in done.stderr
    assert "Traceback" not in done.stderr
    assert not (tmp_path / "small.sealed").exists()


@pytest.mark.skipif(os.name != "posix", reason="terminals of POSIX")
def test_a_terminal_that_goes_on_showing_what_is_typed_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    from trainer.commands.call.hidden_prompt import _without_echo
    from trainer.errors import MissingHereError

    near, far = os.openpty()
    monkeypatch.setattr(termios, "tcsetattr", lambda *_words: None)
    with pytest.raises(MissingHereError, match="no_hidden_prompt"), _without_echo(far):
        pytest.fail("asked")
    os.close(near), os.close(far)
