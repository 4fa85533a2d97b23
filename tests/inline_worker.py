"""A worker without a process: what a test asks for is done when it lets time pass."""

from __future__ import annotations

from collections import deque

from trainer.cases.solved.universe_cache import Universes
from trainer.desk.background_tasks import BackgroundTasks
from trainer.desk.worker import Job
from trainer.errors import UserError


class InlineWorker:
    """Does each job at once when polled."""

    def __init__(self, universes: Universes) -> None:
        self._tasks = BackgroundTasks(universes)
        self._jobs: deque[Job] = deque()
        self.stage, self.share = "", 0.0

    def ask(self, job: Job) -> None:
        """Queue a job."""
        if not job.idle:
            self._jobs.append(job)

    def poll(self) -> bool:
        """Do every job that is waiting."""
        any_done = bool(self._jobs)
        while self._jobs:
            job = self._jobs.popleft()
            try:
                value = getattr(self._tasks, job.does)(lambda stage, share: None, *job.arguments)
            except UserError as error:
                job.failed(error)
                continue
            job.then(value)
        return any_done

    @property
    def busy(self) -> bool:
        """Whether a job waits."""
        return bool(self._jobs)

    def forget(self) -> None:
        """Drop every job."""
        self._jobs.clear()

    def close(self) -> None:
        """Nothing to end."""
