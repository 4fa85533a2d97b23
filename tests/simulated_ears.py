"""Simulated listeners, who name each slot by ear.

The right name of a slot comes from how its plate moved, so the sound is never judged by itself.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from tests.engines import worst
from trainer.arrays import Floats
from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Conditions, Fault, FaultKind
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import faulty_circuit
from trainer.circuit.profile import Profile
from trainer.circuit.solve import SolvedTest, solve_test
from trainer.reasoning.universe.scales import BODY_LEVEL_DB, BODY_OCTAVES, heard_scale
from trainer.sound.bed import BedKind, bed_pa
from trainer.sound.levels import FULL_SCALE_PA
from trainer.sound.listeners import LISTENERS, heard_by
from trainer.sound.render import SAMPLE_RATE_HZ, Bed, render

BED_DBA = 30.0
"""A quiet bay."""


class Plate(StrEnum):
    """What a slot is, by its own plates and coils."""

    EVEN = "even"
    WEAK = "weak"
    DULL = "dull"
    VERY_FAINT = "very faint"
    NOTHING = "nothing"


@dataclass(frozen=True, slots=True)
class Heard:
    """One slot: what it is, and level in dB(A) and mean frequency in Hz of it and of its good slot, by listener."""

    plate: Plate
    slot: dict[str, tuple[float, float]]
    good: dict[str, tuple[float, float]]


LIFTS_SHARE, FLIES_SHARE, CREEPS_SHARE = 0.9, 0.75, 0.35
"""A slot is even where nine of ten pulses lift and land three quarters as fast as a good one's. A plate that comes to its
stop with a third of that speed or less creeps: it lands no blow, and is as dull as one that stays."""

THUD_N, HUM_N = 20.0, 8.0
"""What a coil pulls at least where its plate thuds, and at most where there is only a background current."""


def plate_of(test: SolvedTest, good: SolvedTest, row: int) -> Plate | None:
    """Return what a slot is from its solved motion; None for one that is between two, or where another plate clicks."""
    profile = test.circuit.profile
    column = profile.cylinders.index(test.slots[row].number)
    (pulse, place), (fine, there) = (one.pulses_of(row)[-1] for one in (test, good))
    moved = pulse.position_m[:, place].max(axis=0) > 0.5 * profile.solenoid.lift_m
    moved[column] = False
    if moved.any():
        return None
    if np.abs(pulse.coil_a[:, place]).max() < 0.1:
        return Plate.NOTHING
    families = [one for one in test.families.of_slot(row) if test.families.column[one] == column]
    lifts = float((test.families.lift[families[0]] > LIFTS_SHARE).mean()) if families else 0.0
    flies, good_flies = (
        float(np.diff(one.position_m[:, at, column]).max()) for one, at in ((pulse, place), (fine, there))
    )
    if lifts > 0.0 and (lifts < LIFTS_SHARE or flies > CREEPS_SHARE * good_flies):
        return Plate.EVEN if lifts >= LIFTS_SHARE and flies >= FLIES_SHARE * good_flies else Plate.WEAK
    pulled_n = float(pulse.force_n[:, place, column].max())
    if lifts > 0.0 or pulled_n > THUD_N:
        return Plate.DULL
    return Plate.VERY_FAINT if pulled_n < HUM_N else None


AT_THE_LIMIT_OHM = {"north_v8": 13.5, "harbour_v8": 16.25, "field_six": 14.5, "ridge_v6": 20.3}
"""Ohms in a return at which about half of the pulses lift."""


def at_the_limit(profile: Profile) -> list[Fault]:
    """Return resistances about the limit of lifting, in every return."""
    limit_ohm = AT_THE_LIMIT_OHM[profile.name]
    return [
        Fault(FaultKind.ADDED_RESISTANCE, Location.PASS_THROUGH, (n,), Side.RETURN, limit_ohm + more)
        for n in profile.cylinders
        for more in (-0.3, 0.0, 0.3)
    ]


def rare_slots(profile: Profile, listeners: Iterable[str] = ()) -> Iterator[Heard]:
    """Yield more slots of the classes that single faults seldom make: weak, dull and silent ones, of every injector.

    Weak ones have up to half an ohm less than the limit of lifting, or a little more; dull ones are stuck, or get a
    current that is some ohms short of it.
    """
    limit_ohm = AT_THE_LIMIT_OHM[profile.name]
    for n in profile.cylinders:
        short = [
            Fault(FaultKind.ADDED_RESISTANCE, Location.PASS_THROUGH, (n,), Side.RETURN, limit_ohm + more)
            for more in (-0.6, -0.45, 0.15, 3.0, 6.0)
        ]
        yield from heard_slots(
            profile, [Fault(FaultKind.STUCK_ARMATURE, Location.ARMATURE, (n,)), *short], listeners, n
        )
    for temperature_c in (0.0, 80.0):
        silent = Fault(FaultKind.NO_SUPPLY, Location.DRIVE_MODULE, profile.cylinders)
        yield from heard_slots(profile, [silent], listeners, temperature_c=temperature_c)


def chosen_faults(profile: Profile, a_kind: int) -> list[Fault]:
    """Return so many faults of each kind, over its places and cylinders."""
    by_kind: dict[str, list[Fault]] = {}
    for fault in single_faults(profile, "each"):
        by_kind.setdefault(fault.kind, []).append(fault)
    return [faults[k * len(faults) // a_kind] for faults in by_kind.values() for k in range(min(a_kind, len(faults)))]


def heard_slots(
    profile: Profile,
    faults: Iterable[Fault],
    listeners: Iterable[str],
    only: int | None = None,
    temperature_c: float | None = None,
) -> Iterator[Heard]:
    """Solve and render each fault's test at the front and yield its slots, or one of them, as each listener gets them."""
    names = tuple(listeners)
    numbers = profile.cylinders if only is None else (only,)
    at = None if temperature_c is None else Conditions(temperature_c=temperature_c)
    sound = solve_test(faulty_circuit(profile, [], at or Conditions()))
    fine = _through(sound, names, numbers)
    for fault in faults:
        test = solve_test(faulty_circuit(profile, [fault], at or worst(fault)))
        for number, heard, good in zip(numbers, _through(test, names, numbers), fine, strict=True):
            row = next(row for row, slot in enumerate(test.slots) if slot.number == number)
            plate = plate_of(test, sound, row)
            if plate is not None:
                yield Heard(plate, heard, good)


def _through(test: SolvedTest, names: tuple[str, ...], slots: Sequence[int]) -> list[dict[str, tuple[float, float]]]:
    rendered = render(test, "front", Bed(level_dba=-60.0), 1, slots)
    bed = bed_pa(BedKind.QUIET_BAY, BED_DBA, SAMPLE_RATE_HZ, SAMPLE_RATE_HZ, 1).astype(float)
    heard = []
    for slot in rendered.slots:
        window = slice(*(round(at * SAMPLE_RATE_HZ) for at in (slot.window.start_s, slot.window.end_s)))
        part = rendered.samples[window].astype(float) * FULL_SCALE_PA
        plain = {"as rendered": (slot.level_dba, slot.centroid_hz)}
        for name in names:
            got = heard_by(LISTENERS[name], part, SAMPLE_RATE_HZ, bed)
            plain[name] = (max(got.level_dba, 0.0), max(got.centroid_hz, 100.0))
        heard.append(plain)
    return heard


def apart(slots: list[Heard], listener: str) -> Floats:
    """Return how far each slot lies from its good one in level and brightness, in d′ as the reasoning counts, (slot, 2)."""
    traits, good = (np.array([[*getattr(one, which)[listener], 0.0] for one in slots]) for which in ("slot", "good"))
    return np.asarray((heard_scale(traits, BED_DBA) - heard_scale(good, BED_DBA))[:, :2])


def answers(slots: list[Heard], listener: str, senses: tuple[int, ...], seed: int) -> tuple[Floats, float]:
    """Return a confusion matrix (plate, answer), each row a share, and its mean diagonal.

    The listener learned on half of the slots how each plate sounds, as a bell curve in what `senses` names (0 level, 1
    brightness), and names the other half by what is nearest; hearing errs by one d′ and by what bodies differ.
    """
    chance = np.random.default_rng(seed)
    spread = np.sqrt(1.0 + np.array([BODY_LEVEL_DB / 2.0, BODY_OCTAVES / 0.15]) ** 2)
    heard = apart(slots, listener) + spread * chance.standard_normal((len(slots), 2))
    heard = heard[:, senses]
    truth = np.array([list(Plate).index(one.plate) for one in slots])
    learns = chance.uniform(size=len(slots)) < 0.5
    logs = np.full((len(slots), len(Plate)), -np.inf)
    for plate in range(len(Plate)):
        mine = heard[learns & (truth == plate)]
        if len(mine) < 4:
            continue
        spread_of = np.cov(mine.T).reshape(len(senses), len(senses)) + 0.25 * np.eye(len(senses))
        away = heard - mine.mean(axis=0)
        logs[:, plate] = -0.5 * np.einsum("ni,ij,nj->n", away, np.linalg.inv(spread_of), away)
        logs[:, plate] -= 0.5 * np.log(np.linalg.det(spread_of))
    said = logs.argmax(axis=1)
    matrix = np.array([
        [float((said[~learns & (truth == plate)] == answer).mean()) if (~learns & (truth == plate)).any() else np.nan
         for answer in range(len(Plate))] for plate in range(len(Plate))
    ])  # fmt: skip
    return matrix, float(np.nanmean(np.diag(matrix)))
