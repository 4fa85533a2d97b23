"""Caches the universes of profiles on disk, under a hash of everything that their content depends on.

A file that is damaged or does not fit is ignored and written again, without a message: nothing is lost.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Callable
from pathlib import Path

import numpy as np

from trainer.arrays import Floats
from trainer.cases.drawing.practice_pool import POOL_PREFIX, Pools
from trainer.cases.files.plain_file import open_plain
from trainer.cases.files.whole_file import write_whole
from trainer.cases.profiles.engine_trial import try_engine
from trainer.cases.single_case.case import Case
from trainer.circuit.codes import SlotCurrents, stored_code
from trainer.circuit.drive import Slot, slots_of
from trainer.circuit.faults import KINDS
from trainer.errors import UserError
from trainer.instruments.bench import Work
from trainer.reasoning.model_version import MODEL_VERSION
from trainer.reasoning.reasoner import CaseFacts, Reasoner, Universe, universe_of
from trainer.reasoning.universe.hypotheses import SEVERITIES, Faults
from trainer.reasoning.universe.questions import Question, name_of
from trainer.reasoning.universe.slot_traits import SlotTraits, TraceMarks

Arrays = dict[str, np.ndarray]
MOST_FILES = 12
"""How many universes are cached on disk."""

REASONERS_EACH = 2
"""How many reasoners stay in memory for each universe that stays."""

ReportProgress = Callable[[float], None]
"""Takes the share of a universe that is solved; an exception from it stops the work and keeps what is solved."""


def solve_universe(universe: Universe, folder: Path | None, report: ReportProgress = lambda share: None) -> None:
    """Answer every question of a universe's menu, from the cache on disk or by solving it and saving it there.

    Raises UnsolvableError for an engine whose figures leave nothing to solve.
    """
    path = None if folder is None else folder / f"{_content(universe)}.npz"
    if path is not None and _load(universe, path):
        return
    try_engine(universe.profile)
    by_work: dict[Work, list[Question]] = {}
    for test in universe.menu:
        for question in test.questions:
            by_work.setdefault(question.work, []).append(question)
    done = 0
    universe.expectations.equivalents.between = lambda: report(done / len(by_work))
    for questions in by_work.values():
        universe.expectations.of(questions, 0.0)
        done += 1
        report(done / len(by_work))
    universe.expectations.equivalents.between = None
    if path is not None:
        _save(universe, path)


UniverseKey = tuple[str, float, Faults]


def universe_key(case: Case) -> UniverseKey:
    """Return which universe a case belongs to: engine, temperature, and its faults of an unusual severity."""
    off_grid = tuple(f for f in case.faults if f.amount() not in KINDS[f.kind].severities[:SEVERITIES])
    return case.profile.digest, case.temperature_c, off_grid


class Universes:
    """The universes used so far, each solved or loaded once; `folder` None caches nothing on disk.

    `pools` are the practice pools. `in_memory` is how many universes stay in memory: one takes some fifty megabytes,
    and a quarter of a second to load again. The reasoners used last stay too, with their results: a class hands in the
    same cases many times.
    """

    def __init__(self, folder: Path | None = None, in_memory: int = 8) -> None:
        self.folder, self._most = folder, in_memory
        self.pools = Pools(folder)
        self._universes: dict[UniverseKey, Universe] = {}
        self._solved: set[UniverseKey] = set()
        self._reasoners: dict[tuple[object, ...], Reasoner] = {}

    def reasoner(self, case: Case, report: ReportProgress = lambda share: None) -> Reasoner:
        """Return a reasoner for a case; where `report` stops the work by raising, a later call continues."""
        key = universe_key(case)
        if key not in self._universes:
            while len(self._universes) >= self._most:
                self._solved.discard(oldest := next(iter(self._universes)))
                del self._universes[oldest]
            self._universes[key] = universe_of(case.profile, case.temperature_c, key[2])
        if key not in self._solved:
            solve_universe(self._universes[key], self.folder, report)
            self._solved.add(key)
        universe, facts = self._universes[key], facts_of(case)
        about = (
            key,
            facts.truth,
            facts.evidence,
            facts.bed_dba,
            tuple((facts.priors or {}).items()),
            facts.stored,
            facts.complaint,
        )
        reasoner = self._reasoners.pop(about, None)  # put back at the end: the one used longest ago is dropped first
        if reasoner is None or reasoner.universe is not universe:
            reasoner = Reasoner(facts, universe)
        self._reasoners[about] = reasoner
        while len(self._reasoners) > REASONERS_EACH * self._most:
            del self._reasoners[next(iter(self._reasoners))]
        return reasoner


def facts_of(case: Case) -> CaseFacts:
    """Return what reasoning needs to know of a case."""
    stored = frozenset(stored_code(case.profile, item.cylinder, item.sensed).code for item in case.stored)
    bed_dba = case.bed.level_dba
    return CaseFacts(
        case.profile, case.temperature_c, case.faults, case.evidence, bed_dba, case.priors, stored, case.complaint
    )


def _content(universe: Universe) -> str:
    parts = (universe.profile.digest, universe.temperature_c, universe.faults, MODEL_VERSION)
    return hashlib.sha256(repr(parts).encode("utf-8")).hexdigest()[:32]


def _save(universe: Universe, path: Path) -> None:
    """Write the cache file; do nothing where the folder cannot be written."""
    try:
        write_whole(path, lambda file: np.savez(file, allow_pickle=False, **_arrays(universe)), make_folder=True)
        _delete_oldest(path.parent)
    except (UserError, OSError):
        return


def _delete_oldest(folder: Path) -> None:
    """Delete all but the universes used last: each takes several megabytes."""
    universes = [path for path in folder.glob("*.npz") if not path.name.startswith(POOL_PREFIX)]
    by_age = sorted(universes, key=lambda path: path.stat().st_mtime, reverse=True)
    for path in by_age[MOST_FILES:]:
        path.unlink(missing_ok=True)


def _load(universe: Universe, path: Path) -> bool:
    """Fill the universe from a file and return True, or leave it unchanged and return False."""
    try:
        with open_plain(path) as opened, np.load(opened, allow_pickle=False) as file:
            arrays = {name: file[name] for name in file.files}
        solved, tests, kept = _from_arrays(universe, arrays)
        os.utime(path)
    except Exception:  # a damaged archive can raise nearly anything; it is solved again
        return False
    universe.expectations.equivalents.solved.update(solved)
    universe.expectations.equivalents.tests.update(tests)
    universe.expectations.kept.update(kept)
    return True


_VECTORS = ("most_a", "early_a", "end_a", "coil_end_a", "return_end_a")


def _arrays(universe: Universe) -> Arrays:
    equivalents, kept = universe.expectations.equivalents, universe.expectations.kept
    slots = list(equivalents.solved.values())
    place = {key: number for number, key in enumerate(equivalents.solved)}
    by_identity = {id(traits): place[key] for key, traits in equivalents.solved.items()}
    outputs = tuple(universe.profile.wiring.outputs)
    questions = list(dict.fromkeys(question for test in universe.menu for question in test.questions))
    return {
        "keys": np.array([list(key) for key in equivalents.solved], dtype=np.uint8),
        "slot": np.array([one.seen.slot.number for one in slots]),
        "live": np.array([[name in one.seen.slot.live for name in outputs] for one in slots]),
        "tripped": np.array([[name in one.seen.tripped for name in outputs] for one in slots]),
        "sound": np.array([one.sound for one in slots]),
        "trace": np.array([(t.trace.peak_a, t.trace.early_a, t.trace.dip_s, t.trace.dip_a) for t in slots]),
        "rail": np.array([(one.rail_end_v, one.rail_low_v) for one in slots]),
        **{name: np.array([_vector(one, name) for one in slots]) for name in _VECTORS},
        "test_keys": np.array([list(key) for key in equivalents.tests], dtype=np.uint8),
        "test_slots": np.array([[by_identity[id(t)] for t in test] for test in equivalents.tests.values()]),
        "names": np.array([name_of(question) for question in questions]),
        "widths": np.array([kept[question].shape[1] for question in questions]),
        "kept": np.concatenate([kept[question] for question in questions], axis=1),
    }


def _vector(traits: SlotTraits, name: str) -> np.ndarray:
    return np.asarray(getattr(traits.seen if hasattr(traits.seen, name) else traits, name))


def _from_arrays(
    universe: Universe, arrays: Arrays
) -> tuple[dict[bytes, SlotTraits], dict[bytes, tuple[SlotTraits, ...]], dict[Question, Floats]]:
    """Return solved slots, tests and kept answers; raises KeyError, ValueError or IndexError for what does not fit."""
    profile = universe.profile
    outputs = tuple(profile.wiring.outputs)
    commanded = {slot.number: slot.commanded for slot in slots_of(profile)}
    slots = []
    for row, number in enumerate(arrays["slot"].tolist()):
        live = frozenset(name for name, on in zip(outputs, arrays["live"][row], strict=True) if on)
        tripped = frozenset(name for name, on in zip(outputs, arrays["tripped"][row], strict=True) if on)
        most, early, end, coil, back = (arrays[name][row] for name in _VECTORS)
        rail_end_v, rail_low_v = arrays["rail"][row].tolist()
        slots.append(
            SlotTraits(
                sound=arrays["sound"][row],
                seen=SlotCurrents(Slot(number, commanded[number], live), most, early, end, tripped, rail_low_v),
                trace=TraceMarks(*arrays["trace"][row].tolist()),
                coil_end_a=coil,
                return_end_a=back,
                rail_end_v=rail_end_v,
                rail_low_v=rail_low_v,
            )
        )
    solved = {bytes(key): traits for key, traits in zip(arrays["keys"], slots, strict=True)}
    tests = {
        bytes(key): tuple(slots[place] for place in places)
        for key, places in zip(arrays["test_keys"], arrays["test_slots"].tolist(), strict=True)
    }
    questions = list(dict.fromkeys(question for test in universe.menu for question in test.questions))
    if [name_of(question) for question in questions] != arrays["names"].tolist():
        raise ValueError("another menu")
    if len(arrays["kept"]) != len(universe.faults):
        raise ValueError("other hypotheses")
    edges = np.cumsum(arrays["widths"])[:-1]
    kept = dict(zip(questions, np.split(arrays["kept"], edges, axis=1), strict=True))
    return solved, tests, kept
