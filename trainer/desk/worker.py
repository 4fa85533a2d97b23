"""Long work beside the window, in a process of its own: jobs go in, progress and values come out."""

from __future__ import annotations

import contextlib
import ctypes
import gc
import multiprocessing
import signal
import traceback
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any, Protocol

from trainer.cases.solved.universe_cache import Universes
from trainer.desk.background_tasks import BackgroundTasks
from trainer.desk.process_guard import guard_memory
from trainer.errors import MissingHereError, ProblemsFoundError, UserError
from trainer.words import speak, spoken

Then = Callable[[Any], None]
Failed = Callable[[UserError | ProblemsFoundError], None]


@dataclass(frozen=True, slots=True)
class Job:
    """A method of BackgroundTasks with its arguments; what is `idle` steps aside for anything else."""

    does: str
    arguments: tuple[object, ...]
    then: Then
    failed: Failed
    idle: bool = False


class Worker(Protocol):
    """Takes jobs one after another; results arrive in `poll`, on the caller's own thread."""

    stage: str
    share: float

    def ask(self, job: Job) -> None:
        """Queue a job."""
        ...

    def poll(self) -> bool:
        """Deliver what is finished; tell whether anything was."""
        ...

    @property
    def busy(self) -> bool:
        """Whether a job is under way that somebody waits for."""
        ...

    def forget(self) -> None:
        """Drop every job; what is under way is not delivered."""
        ...

    def close(self) -> None:
        """End the worker."""
        ...


MOST_DEATHS = 3
"""So many deaths without an answer in between, and the process is not started again."""


class _AsideError(Exception):
    """Raised inside idle work when another job has come in."""


class ProcessWorker:
    """A spawned process that is started at once and started again if it dies."""

    def __init__(self, universe_folder: Path) -> None:
        self._folder = universe_folder
        self._jobs: deque[Job] = deque()
        self._dropped = False
        self._deaths = 0
        self.stage, self.share = "", 0.0
        self._start()

    def _start(self) -> None:
        context = multiprocessing.get_context("spawn")
        self._line, theirs = context.Pipe()
        self._process = context.Process(target=_work, args=(theirs, self._folder), daemon=True)
        self._process.start()
        theirs.close()
        self._sent = False

    def ask(self, job: Job) -> None:
        """Queue a job; idle work under way steps aside for it."""
        if job.idle and any(not other.idle for other in self._jobs):
            return
        if not job.idle:
            idle = [other for other in self._jobs if other.idle and not (self._sent and other is self._jobs[0])]
            for other in idle:
                self._jobs.remove(other)
            if self._sent and self._jobs and self._jobs[0].idle:
                self._say(("aside", (), ""))
        self._jobs.append(job)
        self._send()

    def _send(self) -> None:
        if self._jobs and not self._sent:
            job = self._jobs[0]
            self._sent = True
            self.stage, self.share = "", 0.0
            self._say((job.does, job.arguments, spoken()))

    def _say(self, message: tuple[str, tuple[object, ...], str]) -> None:
        try:
            self._line.send(message)
        except OSError:  # the process is gone: poll notices
            return

    def poll(self) -> bool:
        """Deliver what is finished."""
        any_done = False
        try:
            while self._line.poll():
                kind, value = self._line.recv()
                any_done = True
                if kind == "progress":
                    self.stage, self.share = value
                else:
                    self._deaths = 0
                    self._deliver(kind, value)
        except (EOFError, OSError):
            any_done = True
            self._died()
        return any_done

    def _deliver(self, kind: str, value: Any) -> None:
        dropped, self._dropped, self._sent = self._dropped, False, False
        job = None if dropped else self._jobs.popleft()
        self.stage = ""
        self._send()
        if job is None or kind == "aside":
            return
        if kind == "done":
            job.then(value)
        else:
            job.failed(value)

    def _died(self) -> None:
        """Start the process again; one that dies each time before it has answered is left alone."""
        self._process.join(1.0)
        self._line.close()
        waiting = list(self._jobs)
        self._jobs.clear()
        self._dropped = False
        self._deaths += 1
        if self._deaths < MOST_DEATHS:
            self._start()
        again = self._deaths < MOST_DEATHS
        problem = MissingHereError("worker_gone") if again else MissingHereError("worker_dead")
        for job in waiting:
            if not job.idle:
                job.failed(problem)

    @property
    def busy(self) -> bool:
        """Whether a job is under way that somebody waits for."""
        return any(not job.idle for job in self._jobs)

    def forget(self) -> None:
        """Drop every job; stop the running one and ignore its result."""
        if self._sent and self._jobs:
            self._say(("aside", (), ""))
            self._dropped = True
        self._jobs.clear()

    def close(self) -> None:
        """End the process."""
        self._line.close()
        self._process.join(0.5)
        if self._process.is_alive():
            self._process.terminate()
            self._process.join(1.0)


def _work(line: Connection, universe_folder: Path) -> None:
    """Do jobs until the line is closed."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the window decides what Ctrl-C ends
    guard_memory()  # cases of exams come in, and nothing in this process needs to be looked into
    tasks = BackgroundTasks(Universes(universe_folder, in_memory=1))
    while True:
        try:
            does, arguments, language = line.recv()
        except (EOFError, OSError):
            return
        if does == "aside":
            continue
        speak(language)
        try:
            _answer(line, tasks, does, arguments)
        except OSError:
            return
        _give_back()


def _give_back() -> None:
    """Give freed memory back to the system, where its C library can: solving a universe takes much for a while."""
    gc.collect()
    with contextlib.suppress(OSError, AttributeError):
        ctypes.CDLL(None).malloc_trim(0)


def _answer(line: Connection, tasks: BackgroundTasks, does: str, arguments: tuple[object, ...]) -> None:
    def report(stage: str, share: float) -> None:
        line.send(("progress", (stage, share)))
        if line.poll():  # nothing is sent while a job is under way but the word to step aside
            raise _AsideError

    try:
        line.send(("done", getattr(tasks, does)(report, *arguments)))
    except _AsideError:
        line.send(("aside", None))
    except (UserError, ProblemsFoundError) as error:
        line.send(("failed", error))
    except OSError:
        raise
    except Exception:
        # a fault of the program: its trace goes to the console, the window goes on
        traceback.print_exc()
        line.send(("failed", MissingHereError("worker_gone")))
