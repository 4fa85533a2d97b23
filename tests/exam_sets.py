"""Sets for tests, and learners who work them: a scenario of our own."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from tests.desk_hands import RecordingPlayer
from tests.universes import UNIVERSES
from trainer.circuit.elements import Location, Side
from trainer.circuit.faults import FaultKind
from trainer.desk.desk import Desk
from trainer.desk.set_sitting import Sitting
from trainer.instruments.bench import MODULE_CONNECTOR
from trainer.instruments.measuring import Request, through_point
from trainer.practice.attempt import actions
from trainer.reasoning.universe.finding import Claim, Finding, truth_of
from trainer.records.store.store import Store
from trainer.sets.items import SetItem
from trainer.sets.pack import pack_from
from trainer.sets.sealed import open_key_of, seal
from trainer.sets.set_access import OpenedSet, open_set
from trainer.sets.set_file import set_of

PASSPHRASE = "anvil lantern plum seven"

SMALL = """
form: set/1
name: first_week
title: First week
draw_key: a key for tests only
cases:
  - case: faint_hum_on_three
  - case: misfire_without_a_circuit
  - case: one_side_asleep
policy:
  mode: exam
"""


def small_set(text: str = SMALL, folder: Path = Path()) -> OpenedSet:
    """Return a set of a text, not sealed."""
    case_set = set_of(pack_from(text, "small.yaml", folder), "small.yaml")
    return OpenedSet(case_set, open_key_of(case_set.pack), sealed=False)


def sealed_set(folder: Path, text: str = SMALL, passphrase: str = PASSPHRASE) -> tuple[Path, OpenedSet]:
    """Return a set sealed in a folder, and opened again."""
    path = folder / "small.sealed"
    seal(small_set(text).case_set, passphrase, path)
    return path, open_set(path, lambda: passphrase)


class Clocks:
    """A wall clock and a clock of seconds, moved by hand."""

    def __init__(self, now: str = "2026-12-01T08:00:00.000+00:00") -> None:
        self.now, self.seconds = now, 0.0

    def wall(self) -> str:
        return self.now

    def steady(self) -> float:
        self.seconds += 1.0
        return self.seconds


def sitting_of(opened: OpenedSet, store: Store, learner: str = "ann", clocks: Clocks | None = None) -> Sitting:
    clocks = clocks or Clocks()
    return Sitting(opened, learner, store, clocks.wall, clocks.steady)


def seated(sitting: Sitting) -> tuple[Desk, SetItem]:
    """Sit down at the next case and hear the whole test."""
    desk = sitting.desk(RecordingPlayer(), UNIVERSES)
    item = sitting.start_case(desk)
    desk.do(actions.hear(desk.attempt, None, "front", desk.solver))
    return desk, item


def right_finding(item: SetItem, certainty: float = 0.95) -> Finding:
    return Finding(truth_of(item.case.to_be_found), certainty)


def wrong_finding(item: SetItem, certainty: float = 0.95) -> Finding:
    """Return the opposite of what a case holds: no fault where there is one, an open at cylinder 1 where there is none."""
    if item.case.to_be_found:
        return Finding((), certainty)
    return Finding((Claim(frozenset({1}), Location.PASS_THROUGH, FaultKind.OPEN, Side.RETURN),), certainty)


def measure_well(desk: Desk) -> None:
    """Hear the test, then take the ohms that single out an open at a pass-through connector, or show even mates."""
    case = desk.attempt.case
    desk.do(actions.hear(desk.attempt, None, "front", desk.solver))
    faulty = [number for fault in case.faults for number in fault.cylinders]
    for number in faulty or case.profile.cylinders[:2]:
        requests = [
            Request("pair", MODULE_CONNECTOR, "harness", number),
            Request("pair", through_point(case.profile, number), "cover", number),
            *(Request("wire", cylinder=number, side=side, location=Location.ENGINE_HARNESS) for side in Side),
        ]
        for request in requests if faulty else requests[:1]:
            desk.do(actions.measure(desk.attempt, request))


def work_through(sitting: Sitting, right: Sequence[bool], certainty: float = 0.95) -> None:
    """Work every case of an exam, rightly or wrongly."""
    for good in right:
        desk = sitting.desk(RecordingPlayer(), UNIVERSES)
        item = sitting.start_case(desk)
        if good:
            measure_well(desk)
        desk.commit(right_finding(item, certainty) if good else wrong_finding(item, certainty))
        desk.hand_in()
        sitting.refresh()
