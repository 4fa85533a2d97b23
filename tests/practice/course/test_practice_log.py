"""Entries of practice as the events that end a task hold them."""

from __future__ import annotations

import json

import pytest

from trainer.practice.course.practice_log import Task, entries_of, entry_from, entry_json
from trainer.practice.course.skills import Demand, Skill

AT = "2026-11-02T08:00:00.000+00:00"
DEMAND = Demand(Skill.HEARING, 0.4, 0.25)
TASK = Task("ear", "ear:hum:1", "ear:hum", "hum", (DEMAND,), probes=("insisted",), accident=0.2)
ENTRY = entry_json(
    TASK, [(DEMAND, False)], right=False, certainty=0.75, misconception="insisted", confused=("very_faint", "nothing")
)


def test_an_entry_reads_back_as_it_was_written() -> None:
    entry = entry_from(json.loads(json.dumps(ENTRY)), AT)
    (answer,) = entry.answers
    assert (answer.demand, answer.right, answer.day) == (DEMAND, False, entry.day)
    assert (entry.kind, entry.topic, entry.kind_class, entry.probes) == ("ear", "ear:hum", "hum", ("insisted",))
    assert (entry.right, entry.certainty, entry.misconception) == (False, 0.75, "insisted")
    assert (entry.confused, entry.accident, entry.lesson) == (("very_faint", "nothing"), 0.2, 0)


def test_an_entry_from_before_accidents_and_confusions_were_stored_is_read() -> None:
    early = {name: value for name, value in ENTRY.items() if name not in ("accident", "confused")}
    assert entry_from(early, AT).confused == ()


@pytest.mark.parametrize(
    "change",
    [
        {"kind": "singing"}, {"kind": ""}, {"misconception": "bad_luck"}, {"probes": ["bad_luck"]},
        {"confused": ["a tune"]}, {"certainty": 1.0}, {"accident": 0.0}, {"answers": [["hearing", 0.4, 0.25]]},
        {"answers": [["patience", 0.4, 0.25, True]]}, {"answers": None}, {"topic": None},
    ],
    ids=str,
)  # fmt: skip
def test_what_another_version_wrote_is_left_out(change: dict) -> None:
    assert len(list(entries_of([(AT, {**ENTRY, **change}), (AT, ENTRY)]))) == 1
