"""Stores, bundles, backups and records that earlier programs wrote are read for ever; those in kept/ are such files.

They were made at commit ab6590f (tables of version 2) and are never made again: a scenario of our own, worked with every kind of step.
"""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from tests.exam_sets import PASSPHRASE
from tests.universes import UNIVERSES
from trainer.cases.single_case.shipped import case_named
from trainer.circuit.elements import Location
from trainer.desk.caching_solver import CachingSolver
from trainer.practice.attempt.attempt import Attempt, replayed
from trainer.practice.attempt.event_json import closed_from, outcome_json
from trainer.practice.attempt.event_record import EventKind
from trainer.practice.attempt.judging import scored
from trainer.practice.course.practice_log import entries_of
from trainer.reasoning.model_version import MODEL_VERSION
from trainer.reasoning.universe.hypotheses import same_claims
from trainer.records.class_report.collect import collect
from trainer.records.class_report.exports import case_rows, gradebook
from trainer.records.class_report.marking import Refusal, mark_set
from trainer.records.class_report.results import stored_sets
from trainer.records.store.backup import restore_backup
from trainer.records.store.learner_record import import_record
from trainer.records.store.store import Store, open_store
from trainer.sets.set_access import open_set

KEPT = Path(__file__).parent / "kept"
EXPECTED = json.loads((KEPT / "expected.json").read_text("utf-8"))
"""What the program that wrote them made of them."""

MADE_WITH = "1"
"""The version of the model that they were made with: marks hold as long as the program has it, reading always."""


def from_file(folder: Path) -> Store:
    shutil.copy(KEPT / "attempts.sqlite3", folder)
    return open_store(folder)


def from_backup(_folder: Path) -> Store:
    store = open_store(None)
    restore_backup(store, KEPT / "records.backup")
    return store


def from_record(_folder: Path) -> Store:
    store = open_store(None)
    import_record(store, KEPT / "me.record", "me")
    return store


SOURCES = pytest.mark.parametrize("source", [from_file, from_backup, from_record])


def worked(store: Store) -> Attempt:
    """Return the case that was worked with every kind of step."""
    return replayed(case_named("faint_hum_on_three"), 0, store.events("a1"))


@SOURCES
def test_an_old_case_is_replayed_to_what_it_was(source, tmp_path: Path) -> None:
    store = source(tmp_path)
    attempt, expected = worked(store), EXPECTED["a1"]
    assert [str(line.kind) for line in attempt.events] == expected["kinds"]
    assert (attempt.minutes, sorted(map(str, attempt.paid))) == (expected["minutes"], expected["paid"])
    assert attempt.retested
    assert not attempt.faults_left
    assert attempt.wrong_repairs == 1
    outcome = closed_from(store.events("a1")[-1].data).outcome
    assert outcome is not None
    assert outcome_json(outcome) == expected["closing"]
    store.close()


def test_every_kind_of_event_is_among_what_is_kept(tmp_path: Path) -> None:
    store = from_file(tmp_path)
    kinds = {event.kind for row in store.all_in_set("") for event in store.events(row.id)}
    in_set = {event.kind for row in _exam_rows(store) for event in store.events(row.id)}
    store.close()
    assert kinds | in_set == set(EventKind) - {EventKind.UNGUARDED}  # of a process, not of work


def _exam_rows(store: Store) -> list:
    exam = open_set(KEPT / "small.sealed", lambda: PASSPHRASE)
    return store.all_in_set(exam.case_set.id)


@pytest.mark.long  # every kind of step: each hypothesis is solved in engine states that no other test has
def test_an_old_case_is_scored_by_the_rules_of_today() -> None:
    """It names the truth, but no reading tells the connector from the wiring under the cover: by today's rule not right."""
    store = from_backup(Path())
    attempt = worked(store)
    found = scored(attempt, UNIVERSES.reasoner(attempt.case))
    assert attempt.finding is not None
    assert same_claims(attempt.finding.claims, found.truth)
    assert (found.score.cylinders, found.score.location, found.score.kind) == (1.0, 0.5, 1.0)
    assert (found.proof.rival, found.proof.failed_retests) == (Location.UNDER_COVER, 1)
    assert not found.score.right
    store.close()


@SOURCES
def test_old_exercises_still_tell_of_skills(source, tmp_path: Path) -> None:
    store = source(tmp_path)
    entries = list(entries_of((at, data) for _number, at, data in store.practised("me")))
    assert [(entry.kind, entry.right) for entry in entries] == [
        ("ear", True), ("meter", False), ("numbering", True), ("codes", True),
    ]  # fmt: skip
    store.close()


def test_old_bundles_are_marked_as_they_were_or_refused_by_their_version(tmp_path: Path) -> None:
    for path in KEPT.glob("*.results"):
        shutil.copy(path, tmp_path)
    exam = open_set(KEPT / "small.sealed", lambda: PASSPHRASE)
    store = open_store(None)
    collect(store, [tmp_path], exam.case_set.id, [exam.key])
    marked = mark_set(store, exam.case_set, [exam.key], CachingSolver(), UNIVERSES)
    if MODEL_VERSION != MADE_WITH:
        assert (marked.marked, marked.voided, dict(marked.refused)) == (0, 1, {Refusal("other_model", MADE_WITH): 15})
        return
    assert (marked.marked, marked.voided, dict(marked.refused)) == (15, 1, {})
    (kept,) = stored_sets(store)
    assert [row.decode() for row in case_rows(store, kept, bom=False)] == EXPECTED["cases"]
    assert [row.decode() for row in gradebook(store, kept, bom=False)] == EXPECTED["gradebook"]
    store.close()
