"""The practice pool of one engine: faults of every form with how they sound, shipped solved or cached on disk."""

from __future__ import annotations

import contextlib
import hashlib
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path

import numpy as np

from trainer.arrays import Flags, Floats, Integers
from trainer.cases.drawing.practice_case import HARDEST, TEMPERATURE_C
from trainer.cases.drawing.random_case import drawable, is_group
from trainer.cases.files.array_file import Arrays, read_arrays, rounded, write_arrays
from trainer.cases.single_case.audibility import AUDIBLE_MARGIN_DB, DECISIVE_DB, SILENT_DBA
from trainer.cases.single_case.shipped import solved_folder
from trainer.circuit.codes import known_codes
from trainer.circuit.fault import Conditions, Fault
from trainer.circuit.fault_space import comes_and_goes
from trainer.circuit.harness import circuit_of
from trainer.circuit.profile import PASSES, Profile
from trainer.errors import UserError
from trainer.instruments.bench import Work
from trainer.reasoning.model_version import MODEL_VERSION
from trainer.reasoning.universe.equivalents import Equivalents
from trainer.reasoning.universe.expectations import Expectations
from trainer.reasoning.universe.hearing import DULL_DB
from trainer.reasoning.universe.hypotheses import Faults
from trainer.reasoning.universe.scales import heard_scale
from trainer.sound.traits import LEVEL, ears_of

CYLINDERS_EACH = 3
"""How many places on the engine represent each form of fault; different forms use different places."""

LEAST_MARGIN = 1.0
"""A fault nearer to a good engine than this, in just-noticeable differences, is not drawn."""

SHORTFALL_DB = 12.0
"""A hum this far above the bed is clearly audible."""


@dataclass(frozen=True)
class Table:
    """What a bed leaves of every fault of a pool, each of shape (fault,).

    `margins` are distances of the plainest slot from its good sound, on the scale of d′ (see `reasoning.scales`);
    `shortfalls` the dB by which the faintest decisive slot falls short of SHORTFALL_DB; `audible` follows the
    rule of `check`; `alike` counts the faults that ear and codes cannot tell apart, the one itself among them.
    """

    margins: Floats
    shortfalls: Floats
    audible: Flags
    alike: Integers


@dataclass(frozen=True, eq=False)
class Pool:
    """An engine's faults for practice.

    `rows` are numbers of faults as axes count them, shape (fault,); `heard` their slots as solved, shape
    (fault, slot, trait), the burst first, intermittent faults provoked; `good` the good engine's, shape (slot, trait);
    `codes` which codes they set, shape (fault, code); `provoked` which of them show only when moved or warm; `own_a`
    what the coil that is called carries at the end of its pulse, shape (fault, cylinder).
    """

    profile: Profile
    rows: Integers
    heard: Floats
    good: Floats
    codes: Flags
    provoked: Flags
    own_a: Floats
    tables: dict[float, Table] = field(default_factory=dict)

    @cached_property
    def under_good_db(self) -> Floats:
        """How far each slot lies under its good level, shape (fault, cylinder)."""
        return np.asarray(self.good[1:, LEVEL] - self.heard[:, 1:, LEVEL])

    @cached_property
    def hums(self) -> Flags:
        """Which slots are only the others' hum: faint, nothing in their own coil; shape (fault, cylinder)."""
        faint = (self.under_good_db > DULL_DB) & (self.heard[:, 1:, LEVEL] > SILENT_DBA)
        return np.asarray(faint & (self.own_a < NO_CURRENT_A))

    def fault(self, place: int) -> Fault:
        """Return the fault at a place of the pool."""
        return drawable(self.profile, HARDEST)[int(self.rows[place]) - 1]

    def table(self, bed_dba: float) -> Table:
        """Return what a bed leaves of every fault; computed once."""
        if bed_dba not in self.tables:
            self.tables[bed_dba] = self._table(bed_dba)
        return self.tables[bed_dba]

    def _table(self, bed_dba: float) -> Table:
        heard = heard_scale(self.heard, bed_dba)
        margins = margins_of(self.heard, self.good, bed_dba)
        level = self.heard[:, 1:, LEVEL]
        under = self.good[1:, LEVEL] - level
        sounds = level > SILENT_DBA
        over = np.where((under > DECISIVE_DB) & sounds, level - bed_dba, np.inf).min(axis=1)
        masked = ((np.abs(under) > DECISIVE_DB) & sounds & (level < bed_dba + AUDIBLE_MARGIN_DB)).any(axis=1)
        flat = np.asarray(heard.reshape(len(heard), -1), dtype=np.float64)
        near = _squares(flat) < SAME_WITHIN**2
        same_codes = (self.codes[:, None, :] == self.codes[None, :, :]).all(axis=2)
        return Table(
            margins=margins,
            shortfalls=np.asarray(np.clip(SHORTFALL_DB - over, 0.0, 2 * SHORTFALL_DB)),
            audible=np.asarray(~masked & (margins >= LEAST_MARGIN)),
            alike=np.asarray((near & same_codes).sum(axis=1)),
        )


def margins_of(heard: Floats, good: Floats, bed_dba: float) -> Floats:
    """Return how far engines' plainest slots lie from good ones, on the scale of d′, shape (engine,).

    `heard` has shape (engine, slot, trait), `good` (slot, trait).
    """
    apart = heard_scale(heard, bed_dba) - heard_scale(good, bed_dba)
    return np.asarray(np.sqrt((apart**2).sum(axis=2)).max(axis=1))


SAME_WITHIN = 2.0
"""Two faults nearer than this over all slots sound alike."""


class Pools:
    """The pools used so far, each solved or loaded once; `folder` None caches nothing on disk."""

    def __init__(self, folder: Path | None) -> None:
        self._folder = folder
        self._loaded: dict[str, Pool] = {}

    def __call__(self, profile: Profile) -> Pool:
        """Return an engine's pool; the first call may take seconds."""
        if profile.digest not in self._loaded:
            self._loaded[profile.digest] = pool_of(profile, self._folder)
        return self._loaded[profile.digest]

    def is_loaded(self, profile: Profile) -> bool:
        """Return whether an engine's pool is in memory."""
        return profile.digest in self._loaded


def pool_of(profile: Profile, folder: Path | None) -> Pool:
    """Return an engine's pool as shipped or from the cache on disk, or solve it (seconds) and save it there."""
    name = pool_file_name(profile)
    for place in (solved_folder(), folder):
        found = None if place is None else _load(profile, place / name)
        if found is not None:
            return found
    solved = _solved(profile)
    # it is what its file gives back: no result depends on whether it was solved or read
    arrays = rounded({name: getattr(solved, name) for name in ARRAYS})
    if folder is not None:
        with contextlib.suppress(UserError):  # what cannot be saved is solved again
            write_arrays(folder / name, arrays)
    return _pool(profile, arrays)


def is_cached(profile: Profile, folder: Path | None) -> bool:
    """Return whether an engine's pool is shipped or cached on disk, so that it need not be solved."""
    name = pool_file_name(profile)
    return any(place is not None and (place / name).is_file() for place in (solved_folder(), folder))


def class_of_fault(fault: Fault | None) -> str:
    """Return the class that practice mixes by: the place of the fault, a whole group, or none."""
    if fault is None:
        return PASSES
    return "group" if is_group(fault) else fault.location.value


def _forms(profile: Profile) -> list[int]:
    """Return the rows of faults that represent every form of fault on an engine."""
    forms: dict[tuple[object, ...], list[int]] = {}
    for row, fault in enumerate(drawable(profile, HARDEST), 1):
        form = (fault.kind, fault.location, fault.side, fault.part, fault.severity, len(fault.cylinders))
        forms.setdefault(form, []).append(row)
    chosen = []
    for number, rows in enumerate(forms.values()):
        step = max(len(rows) // CYLINDERS_EACH, 1)
        chosen += sorted({rows[(number + step * k) % len(rows)] for k in range(CYLINDERS_EACH)})
    return sorted(chosen)


@dataclass(frozen=True)
class Traits:
    """Solved results of engines, as in a pool; the first axis is the engine."""

    heard: Floats
    codes: Flags
    provoked: Flags
    own_a: Floats


def solved_traits(profile: Profile, faults: Sequence[Faults], temperature_c: float) -> Traits:
    """Return how engines with faults sound at the front and what they carry; intermittent faults are provoked."""
    equivalents = Equivalents(circuit_of(profile, temperature_c), ears_of(profile, ("front",)))
    at_rest = Work(conditions=Conditions(temperature_c))
    resting = Expectations(profile, faults, equivalents)
    tests = list(resting.tests(at_rest))
    names = list(known_codes(profile))
    codes = np.array([[name in found for name in names] for found in resting.standing(at_rest)])
    places = [
        next((one.location for one in those if comes_and_goes(one, profile, temperature_c)), None) for those in faults
    ]
    for location in dict.fromkeys(place for place in places if place is not None):
        mine = [row for row, place in enumerate(places) if place is location]
        work = Work(conditions=Conditions(temperature_c, moved=location, heated=location))
        moved = Expectations(profile, [faults[row] for row in mine], equivalents)
        for row, slots in zip(mine, moved.tests(work), strict=True):
            tests[row] = slots
    return Traits(
        heard=np.array([equivalents.ears.heard([slot.sound for slot in slots])[:, 0] for slots in tests]),
        codes=codes,
        provoked=np.array([place is not None for place in places]),
        own_a=np.array([[abs(slot.coil_end_a[row]) for row, slot in enumerate(slots[1:])] for slots in tests]),
    )


def _solved(profile: Profile) -> Pool:
    rows = _forms(profile)
    every = drawable(profile, HARDEST)
    solved = solved_traits(profile, [(), *((every[row - 1],) for row in rows)], TEMPERATURE_C)
    return Pool(
        profile,
        np.array(rows),
        solved.heard[1:],
        solved.heard[0],
        solved.codes[1:],
        solved.provoked[1:],
        solved.own_a[1:],
    )


POOL_PREFIX = "practice_"
"""Prefix of the cache files of pools, which lie in the folder of those of universes."""

NO_CURRENT_A = 0.5
"""A coil that carries less than this is not driven: its slot is only the hum of the others."""


def _squares(points: Floats) -> Floats:
    """Return squared distances between all points, shape (point, point)."""
    own = (points**2).sum(axis=1)
    return np.asarray(own[:, None] + own[None, :] - 2.0 * points @ points.T)


def pool_file_name(profile: Profile) -> str:
    """Return the name of a pool's file: a hash of everything that its content depends on."""
    rows = _forms(profile)
    parts = (profile.digest, MODEL_VERSION, rows, [drawable(profile, HARDEST)[row - 1] for row in rows])
    return f"{POOL_PREFIX}{hashlib.sha256(repr(parts).encode('utf-8')).hexdigest()[:32]}.npz"


def _load(profile: Profile, path: Path) -> Pool | None:
    try:
        pool = _pool(profile, read_arrays(path))
    except Exception:  # a damaged archive can raise nearly anything, and solving again loses nothing
        return None
    count, slots = len(_forms(profile)), len(profile.cylinders) + 1
    shapes = {
        "rows": (count,), "heard": (count, slots, 3), "good": (slots, 3), "provoked": (count,),
        "own_a": (count, slots - 1),
        "codes": (count, len(known_codes(profile))),
    }  # fmt: skip
    return pool if all(getattr(pool, name).shape == shape for name, shape in shapes.items()) else None


def _pool(profile: Profile, arrays: Arrays) -> Pool:
    rows, heard, good, codes, provoked, own_a = (arrays[name] for name in ARRAYS)
    return Pool(profile, rows, heard, good, codes, provoked, own_a)


ARRAYS = ("rows", "heard", "good", "codes", "provoked", "own_a")
