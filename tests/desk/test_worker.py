"""The worker in a process of its own: values and errors come back, idle work steps aside, a death is survived."""

from __future__ import annotations

import os
import signal
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from tests.desk_hands import new_desk
from tests.universes import UNIVERSES
from trainer.commands.call.this_machine import universe_folder
from trainer.desk.background_tasks import BackgroundTasks
from trainer.desk.worker import Job, ProcessWorker
from trainer.errors import MissingHereError, UserError, WrongCallError
from trainer.instruments.requests import Request
from trainer.practice.attempt.attempt import begun

CASE = "faint_hum_on_three"
LONGEST_S = 120.0


@pytest.fixture(scope="module")
def worker() -> Iterator[ProcessWorker]:
    UNIVERSES.reasoner(new_desk(CASE).attempt.case)  # solved once, so that the process finds it on disk
    one = ProcessWorker(universe_folder())
    yield one
    one.close()


def wait_for(worker: ProcessWorker, done: Callable[[], bool]) -> None:
    end = time.monotonic() + LONGEST_S
    while not done():
        assert time.monotonic() < end, "nothing came back"
        worker.poll()
        time.sleep(0.005)


def ask(
    worker: ProcessWorker, does: str, *arguments: object, idle: bool = False
) -> tuple[list[object], list[UserError]]:
    values: list[object] = []
    errors: list[UserError] = []
    worker.ask(Job(does, arguments, values.append, errors.append, idle))
    return values, errors


def test_a_sound_from_the_process_is_the_one_rendered_here(worker: ProcessWorker) -> None:
    attempt = new_desk(CASE).attempt
    values, _errors = ask(worker, "hear", attempt, (3,), "front")
    assert worker.busy
    wait_for(worker, lambda: bool(values))
    here = BackgroundTasks(UNIVERSES).hear(lambda stage, share: None, attempt, (3,), "front")
    assert np.array_equal(values[0].sound.samples, here.sound.samples)  # type: ignore[attr-defined, union-attr]
    assert values[0].event == here.event  # type: ignore[attr-defined]
    assert not worker.busy


@pytest.mark.parametrize("error", [WrongCallError("no_place", place="x", places="y"), MissingHereError("no_portaudio")])
def test_every_told_error_survives_the_way(error: UserError) -> None:
    import pickle

    again = pickle.loads(pickle.dumps(error))
    assert (type(again), again.key, again.values) == (type(error), error.key, error.values)


def test_what_is_refused_is_told_and_the_worker_goes_on(worker: ProcessWorker) -> None:
    attempt = new_desk(CASE).attempt
    _values, errors = ask(worker, "measure", attempt, Request("pair", cylinder=99), None)
    wait_for(worker, lambda: bool(errors))
    assert errors[0].key == "no_cylinder"
    values, _errors = ask(worker, "measure", attempt, Request("pair", cylinder=3), None)
    wait_for(worker, lambda: bool(values))


def test_a_fault_of_the_program_is_told_too(worker: ProcessWorker, capfd: pytest.CaptureFixture[str]) -> None:
    _values, errors = ask(worker, "measure", None, None, None)
    wait_for(worker, lambda: bool(errors))
    assert errors[0].key == "worker_gone"


def test_jobs_come_back_in_their_order_and_dropped_ones_never(worker: ProcessWorker) -> None:
    attempt = new_desk(CASE).attempt
    dropped, _errors = ask(worker, "hear", attempt, None, "front")
    worker.forget()
    assert not worker.busy
    order: list[object] = []
    for slot in (1, 2, 4):
        worker.ask(Job("hear", (attempt, (slot,), "front"), lambda done: order.append(done.event.slots), order.append))
    wait_for(worker, lambda: len(order) == 3)
    assert order == [(1,), (2,), (4,)]
    assert dropped == []


def test_idle_work_steps_aside_and_its_progress_is_told(tmp_path: Path) -> None:
    worker = ProcessWorker(tmp_path)
    case = replace(new_desk("rests_on_its_edge").attempt.case, temperature_c=33.0)  # nothing solved is shipped for that
    ready, _errors = ask(worker, "prepare", begun(case, 1), idle=True)
    wait_for(worker, lambda: worker.stage == "reasoning")
    assert not worker.busy  # nobody waits for it
    values, _errors = ask(worker, "measure", new_desk(CASE).attempt, Request("pair", cylinder=3), None)
    wait_for(worker, lambda: bool(values))
    assert ready == []
    assert not list(tmp_path.glob("*.npz"))
    worker.close()


def test_a_process_that_is_killed_is_started_again_and_the_loss_is_told(tmp_path: Path) -> None:
    worker = ProcessWorker(universe_folder())
    attempt = new_desk(CASE).attempt
    _values, errors = ask(worker, "hear", attempt, None, "front")
    os.kill(worker._process.pid, signal.SIGKILL)  # type: ignore[arg-type]
    wait_for(worker, lambda: bool(errors))
    assert errors[0].key == "worker_gone"
    values, _errors = ask(worker, "hear", attempt, (3,), "front")
    wait_for(worker, lambda: bool(values))
    _values, idle_errors = ask(worker, "prepare", attempt, idle=True)
    for _death in range(3):
        _values, errors = ask(worker, "hear", attempt, None, "front")
        os.kill(worker._process.pid, signal.SIGKILL)  # type: ignore[arg-type]
        wait_for(worker, lambda: bool(errors))  # noqa: B023
    assert errors[0].key == "worker_dead"  # and says that the program is to be started again
    assert idle_errors == []
    worker.close()
    assert not worker._process.is_alive()
