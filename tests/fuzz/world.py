"""A small school to damage: a store with practice, a set worked and marked, and the files that come of it.

Everything is worked through the program's own desk, but nothing is reasoned about, so that it is made in a moment.
"""

from __future__ import annotations

import random
import shutil
import uuid
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from unittest.mock import patch

import numpy as np

from tests.desk_hands import RecordingPlayer, clock
from tests.exam_sets import Clocks, sitting_of
from tests.universes import UNIVERSES
from trainer.circuit.elements import Location, Side
from trainer.circuit.faults import FaultKind
from trainer.desk.attempt_start import start_or_resume
from trainer.desk.caching_solver import CachingSolver
from trainer.desk.case_source import find_case
from trainer.desk.desk import Desk
from trainer.desk.exercise_maker import Exercises
from trainer.desk.learner_course import Course
from trainer.desk.settings import DeviceCalibration, Settings, write_settings
from trainer.instruments.measuring import Request
from trainer.output.sound_setup import Verdict
from trainer.practice.attempt import actions, repair
from trainer.practice.attempt.hints import Hint
from trainer.practice.attempt.outcome import Outcome
from trainer.practice.exercises.exercise_types import Spec
from trainer.reasoning.universe.finding import Claim, Finding
from trainer.records.class_report.marking import mark_set
from trainer.records.class_report.notes import Note, add_note
from trainer.records.class_report.results import store_set
from trainer.records.class_report.roster import Person, keep_roster
from trainer.records.store.backup import write_backup
from trainer.records.store.learner_record import write_record
from trainer.records.store.store import Store, open_store
from trainer.sets.sealed import open_key_of
from trainer.sets.set_access import OpenedSet, open_set

LEARNER, OTHER = "anna", "ben"
BEGUN_CASE, FINISHED_CASE = "faint_hum_on_three", "misfire_without_a_circuit"
SET_TEXT = """
form: set/1
name: first_week
title: First week
draw_key: a key for tests only
cases:
  - case: faint_hum_on_three
  - case: misfire_without_a_circuit
  - case: one_side_asleep
policy:
  mode: practice
  debrief: after_each
"""

RIGHT = Outcome(
    points=92.5, shares=(1.0, 1.0, 1.0, 1.0, 0.5), right=True, certainty=0.95, places=("pass_through_connector",),
    said_places=("pass_through_connector",), cylinders=(3,), said_cylinders=(3,), kinds=("open",), said_kinds=("open",),
    misconception="", plays=2, readings=1, hints=0, used_minutes=60.0, best_minutes=40.0, time_s=120.5,
)  # fmt: skip
WRONG = Outcome(
    points=20.0, shares=(0.0, 0.5, 0.0, 0.0, 0.0), right=False, certainty=0.75, places=("engine_harness",),
    said_places=("solenoid_coil",), cylinders=(5,), said_cylinders=(4,), kinds=("open",), said_kinds=("shorted_turns",),
    misconception="counted_burst", plays=3, readings=0, hints=1, used_minutes=90.0, best_minutes=40.0, time_s=300.0,
)  # fmt: skip
FINDING = Finding((Claim(frozenset({3}), Location.PASS_THROUGH, FaultKind.OPEN, Side.RETURN),), 0.95)


SETTINGS = Settings(
    language="en", last_learner=LEARNER, station_pin=f"{'0' * 16}-{'1' * 128}", device="headset",
    ears={
        "headset": DeviceCalibration(
            level_db=-8.0, checked_at="2026-01-01T00:00:00.000+00:00",
            verdict={**Verdict("ready", 6.0, "stereo", "yes", "all").plain, "level_db": -8.0},
        )
    },
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class World:
    """The folder of a station's data and, beside it, the files that a person carries about."""

    folder: Path

    @property
    def data(self) -> Path:
        """The station's folder: its store and its settings."""
        return self.folder / "data"

    @property
    def database(self) -> Path:
        """The file of the store."""
        return self.data / "attempts.sqlite3"

    @property
    def settings(self) -> Path:
        """The file of the settings."""
        return self.data / "settings.json"

    @property
    def set_file(self) -> Path:
        """The set that was worked."""
        return self.folder / "first_week.yaml"

    @property
    def record(self) -> Path:
        """What the learner carries to another machine."""
        return self.folder / "anna.record"

    @property
    def backup(self) -> Path:
        """Everything in one file."""
        return self.folder / "all.gz"

    @property
    def empty(self) -> Path:
        """The file of a store in which there is nothing yet."""
        return self.folder / "empty.sqlite3"

    @property
    def out(self) -> Path:
        """Where what is made of the records goes."""
        return self.folder / "out"

    @property
    def stick(self) -> Path:
        """Where another learner's results lie, not collected yet."""
        return self.folder / "stick"

    @property
    def bundle(self) -> Path:
        """The file of those results."""
        return next(self.stick.iterdir())

    def opened_set(self) -> OpenedSet:
        """Return the set, which is not sealed."""
        return open_set(self.set_file, lambda: "")


def emptied(world: World) -> Store:
    """Return a world's store after everything in it was taken away."""
    shutil.copyfile(world.empty, world.database)
    return open_store(world.data)


@contextmanager
def copied(world: World, to: Path) -> Iterator[World]:
    """Give the same world in another folder, to be damaged there."""
    shutil.copytree(world.folder, to)
    try:
        yield World(to)
    finally:
        shutil.rmtree(to, ignore_errors=True)


def world_in(folder: Path) -> World:
    """Make the world in a folder, byte for byte the same every time: a mutant is known by its seed."""
    chance = random.Random(1)
    with patch("uuid.uuid4", lambda: uuid.UUID(int=chance.getrandbits(128), version=4)):
        return _made(folder)


def _made(folder: Path) -> World:
    world = World(folder)
    world.out.mkdir(parents=True)
    world.set_file.write_text(SET_TEXT, "utf-8")
    case_set = world.opened_set().case_set
    opened_set = OpenedSet(case_set, open_key_of(case_set.pack), sealed=False)
    store = open_store(world.data)
    _practise(store)
    _work_the_set(store, opened_set, LEARNER, (RIGHT, WRONG, RIGHT))
    station = open_store(None)
    _work_the_set(station, opened_set, OTHER, (WRONG, RIGHT, WRONG)).bundle(folder / "stick")
    store_set(store, case_set)
    mark_set(store, case_set, [opened_set.key], CachingSolver(), UNIVERSES)
    keep_roster(store, [Person(LEARNER, "Anna Meyer", "day"), Person(OTHER, "Ben", "day")])
    at = "2026-12-02T08:00:00.000+00:00"
    add_note(store, case_set.id, Note(at, "comment", "", 1, "played on the projector"))
    add_note(store, case_set.id, Note(at, "void", LEARNER, 3, "noise in the room"))
    write_record(store, world.record, LEARNER, at)
    write_backup(store, world.backup)
    station.close()
    store.close()
    write_settings(SETTINGS, world.settings)
    open_store(folder / "empty").close()
    (folder / "empty" / world.database.name).rename(world.empty)
    (folder / "empty").rmdir()
    return world


def _practise(store: Store) -> None:
    """Leave of one learner: a case begun, one finished, one drawn and begun, exercises answered and one not."""
    now = clock()
    course = Course(store, LEARNER, now, np.random.default_rng(1))
    exercises = Exercises(UNIVERSES)
    for seed in range(3):
        exercise = exercises.make(Spec("numbering", "north_v8", "order", 1, seed))
        begun = course.begin(exercise)
        if seed < 2:
            course.answer(begun, exercise, (exercise.right + seed) % len(exercise.choices), 0.75)
    for name in (BEGUN_CASE, FINISHED_CASE):
        desk = Desk(store, RecordingPlayer(), now, UNIVERSES)
        start_or_resume(desk, find_case(name), LEARNER, now())
        desk.do(actions.hear(desk.attempt, None, "front", desk.solver))
        desk.do(actions.hear(desk.attempt, [3], "front", desk.solver))
        desk.do(actions.read_codes(desk.attempt, desk.solver, clear=True))
        desk.do(actions.measure(desk.attempt, Request(what="pair", cylinder=3), "2.6"))
        desk.do(actions.swap(desk.attempt, 3, 4))
        desk.suspect(frozenset({Location.DRIVE_MODULE}))
        desk.do(actions.look(desk.attempt))
        desk.take_hint(Hint(2, "codes"))
        if name == FINISHED_CASE:
            desk.commit(FINDING)
            desk.do(repair.repair(desk.attempt, repair.Repair(Location.PASS_THROUGH, frozenset({3}))))
            desk.do(repair.retest(desk.attempt, desk.solver))
            desk.close(RIGHT)


def _work_the_set(store: Store, opened_set: OpenedSet, learner: str, outcomes: tuple[Outcome, ...]) -> object:
    sitting = sitting_of(opened_set, store, learner, Clocks())
    for outcome in outcomes:
        desk = sitting.desk(RecordingPlayer(), UNIVERSES)
        sitting.start_case(desk)
        desk.commit(FINDING)
        desk.close(outcome)
        sitting.refresh()
    return sitting
