"""Finds universes of profiles on disk, shipped or cached, under a hash of everything that their content depends on.

A file that is damaged or does not fit is ignored and a cached one written again, without a message: nothing is lost.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
from collections.abc import Callable
from pathlib import Path

from trainer.cases.drawing.practice_pool import POOL_PREFIX, Pools
from trainer.cases.files.array_file import Arrays, read_arrays, rounded, write_arrays
from trainer.cases.profiles.engine_trial import try_engine
from trainer.cases.single_case.case import Case
from trainer.cases.single_case.shipped import solved_folder
from trainer.cases.solved.universe_file import arrays_of, fill
from trainer.circuit.codes import stored_code
from trainer.circuit.fault_space import comes_and_goes
from trainer.errors import UserError
from trainer.instruments.bench import Work
from trainer.reasoning.case_facts import CaseFacts, Universe, universe_of
from trainer.reasoning.model_version import MODEL_VERSION
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.questions import Question, name_of, states_in

MOST_FILES = 12
"""How many universes are cached on disk."""

REASONERS_EACH = 2
"""How many reasoners stay in memory for each universe that stays."""

ReportProgress = Callable[[float], None]
"""Takes the share of a universe that is solved; an exception from it stops the work and keeps what is solved."""


def solve_universe(universe: Universe, folder: Path | None, report: ReportProgress = lambda share: None) -> None:
    """Answer every question of a universe's menu: as shipped, from the cache on disk, or by solving it and saving it.

    Raises UnsolvableError for an engine whose figures leave nothing to solve.
    """
    name = file_name(universe)
    shipped, path = solved_folder(), None if folder is None else folder / name
    if shipped is not None and _load(universe, shipped / name):
        return
    if path is not None and _load(universe, path):
        with contextlib.suppress(OSError):  # the files used longest ago are deleted first
            os.utime(path)
        return
    try_engine(universe.profile)
    by_work: dict[Work, list[Question]] = {}
    for question in states_in(universe.menu):
        by_work.setdefault(question.work, []).append(question)
    done = 0
    universe.expectations.equivalents.between = lambda: report(done / len(by_work))
    for questions in by_work.values():
        universe.expectations.of(questions, 0.0)
        done += 1
        report(done / len(by_work))
    universe.expectations.equivalents.between = None
    # from here on it is what its file gives back: no result depends on whether it was solved or read
    arrays = rounded(arrays_of(universe))
    fill(universe, arrays)
    if path is not None:
        _save(arrays, path)


UniverseKey = tuple[str, float]


def universe_key(case: Case) -> UniverseKey:
    """Return which universe a case belongs to: engine and temperature."""
    return case.profile.digest, case.temperature_c


class Universes:
    """The universes used so far, each solved or loaded once; `folder` None caches nothing on disk.

    Those that shipped cases need are shipped, so the folder holds only others. `pools` are the practice pools.
    `in_memory` is how many universes stay in memory: one takes some fifty megabytes, and a quarter of a second to load
    again. The reasoners used last stay too, with their results: a class hands in the same cases many times.
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
            self._universes[key] = universe_of(case.profile, case.temperature_c)
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
            facts.seed,
            facts.mechanical,
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
    # the seed matters only to what comes and goes: cases that differ in nothing else share a reasoner
    fickle = any(comes_and_goes(fault, case.profile, case.temperature_c) for fault in case.faults)
    return CaseFacts(
        case.profile,
        case.temperature_c,
        case.faults,
        case.evidence,
        case.bed.level_dba,
        case.priors,
        stored,
        case.complaint,
        case.seed if fickle else 0,
        case.mechanical,
    )


def file_name(universe: Universe) -> str:
    """Return the name of a universe's file: a hash of everything that its content depends on."""
    menu = [name_of(question) for question in states_in(universe.menu)]
    parts = (universe.profile.digest, universe.temperature_c, universe.faults, menu, MODEL_VERSION)
    return f"{hashlib.sha256(repr(parts).encode('utf-8')).hexdigest()[:32]}.npz"


def _save(arrays: Arrays, path: Path) -> None:
    """Write the cache file; do nothing where the folder cannot be written."""
    try:
        write_arrays(path, arrays)
        _delete_oldest(path.parent)
    except (UserError, OSError):
        return


def _delete_oldest(folder: Path) -> None:
    """Delete all but the universes used last: each takes about a megabyte."""
    universes = [path for path in folder.glob("*.npz") if not path.name.startswith(POOL_PREFIX)]
    by_age = sorted(universes, key=lambda path: path.stat().st_mtime, reverse=True)
    for path in by_age[MOST_FILES:]:
        path.unlink(missing_ok=True)


def _load(universe: Universe, path: Path) -> bool:
    """Fill the universe from a file and return True, or leave it unchanged and return False."""
    try:
        fill(universe, read_arrays(path))
    except Exception:  # a damaged archive can raise nearly anything; it is solved again
        return False
    return True
