"""Renders a solved test to stereo pressure and to a buffer: bodies, places, room, limiter, bed, ramps."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Annotated

import numpy as np
import scipy.fft
from annotated_types import Interval

from trainer.arrays import Complex64, Floats, Floats32, Integers
from trainer.circuit.chance import Stream
from trainer.circuit.drive import Slot
from trainer.circuit.elements import Circuit
from trainer.circuit.family import Families
from trainer.circuit.profile import ByContent, Profile, Schedule
from trainer.circuit.solenoid import Magnets, magnets_of
from trainer.circuit.solve import SAMPLE_RATE_HZ, Pulse, SolvedTest
from trainer.sound.bed import BedKind, bed_pa
from trainer.sound.body import bending_n
from trainer.sound.levels import FULL_SCALE_PA, SILENCE_DB, Measures, measure
from trainer.sound.limiter import limiter_gain_db, threshold_dba
from trainer.sound.paths import TEMPLATE_FRAMES, paths_of

PRE_ROLL_S = 0.6
"""Bed before the first slot: sleeping outputs swallow the first sound, which would sound like an open circuit."""

TAIL_S = 0.5
RAMP_S = 0.02

TIME_JITTER_LIMIT = 3.0
PEAK_CEILING = 0.7079
"""−3 dBFS."""


@dataclass(frozen=True, slots=True)
class Bed:
    """What noise lies under the test, at what level."""

    kind: BedKind = BedKind.QUIET_BAY
    level_dba: Annotated[float, Interval(ge=20, le=60)] = 34.0


@dataclass(frozen=True, slots=True)
class Window:
    """One slot in the file's time: from its first pulse until its last has ended."""

    slot: Slot
    start_s: float
    end_s: float


@dataclass(frozen=True, slots=True)
class SlotSound:
    """What one slot measures at the listener without the bed, and what the limiter did to it."""

    window: Window
    level_dba: float
    centroid_hz: float
    limiter_db: float


@dataclass(frozen=True, slots=True)
class Sound:
    """A finished buffer: float32, shape (frame, channel), full scale 1.0, with its windows."""

    samples: Floats32
    rate_hz: int
    slots: tuple[SlotSound, ...]
    place: str
    bed: Bed


def render(solved: SolvedTest, place: str, bed: Bed, seed: int, only: Sequence[int] | None = None) -> Sound:
    """Render the slots of a solved test (all, or those numbered in `only`, 0 for all together) as heard at a place.

    Raises KeyError for a place the profile does not have.
    """
    profile = solved.circuit.profile
    chosen = [row for row, slot in enumerate(solved.slots) if only is None or slot.number in only]
    windows, length_s = timeline_of(profile.schedule, [solved.slots[row] for row in chosen])
    frames = round(length_s * SAMPLE_RATE_HZ)
    pressure = np.zeros((2, frames + TEMPLATE_FRAMES), dtype=np.float32)
    heard: dict[int, SlotSound] = {}
    # the burst comes last: how far it is limited depends on the loudest of the others
    for row, window in sorted(zip(chosen, windows, strict=True), key=lambda one: one[1].slot.number == 0):
        dry, measures = _measured(solved, row, window, place, seed)
        gain_db = 0.0
        if window.slot.number == 0:
            loudest_dba = _loudest_dba(solved, heard, place, seed)
            gain_db = limiter_gain_db(measures.level_dba, threshold_dba(profile, place), loudest_dba)
            dry *= np.float32(10.0 ** (gain_db / 20.0))
        start = round(window.start_s * SAMPLE_RATE_HZ)
        heard[row] = SlotSound(window, measures.level_dba + gain_db, measures.centroid_hz, gain_db)
        pressure[:, start : start + dry.shape[1]] += dry[:, : pressure.shape[1] - start]
    whole = pressure[:, :frames]
    whole += bed_pa(bed.kind, bed.level_dba, frames, SAMPLE_RATE_HZ, seed).T
    whole *= np.float32(1.0 / FULL_SCALE_PA)
    ramp = round(RAMP_S * SAMPLE_RATE_HZ)
    fade = (0.5 - 0.5 * np.cos(np.pi * np.arange(ramp) / ramp)).astype(np.float32)
    whole[:, :ramp] *= fade
    whole[:, -ramp:] *= fade[::-1]
    np.clip(whole, -PEAK_CEILING, PEAK_CEILING, out=whole)
    samples = np.ascontiguousarray(whole.T)
    return Sound(samples, SAMPLE_RATE_HZ, tuple(heard[row] for row in chosen), place, bed)


def timeline_of(schedule: Schedule, slots: Sequence[Slot]) -> tuple[tuple[Window, ...], float]:
    """Return the windows of slots played one after another, and the whole length in seconds."""
    windows = []
    now_s = PRE_ROLL_S
    for slot in slots:
        length_s = schedule.together_s if slot.number == 0 else schedule.slot_s
        windows.append(Window(slot, now_s, now_s + length_s))
        now_s += length_s + schedule.pause_s
    return tuple(windows), windows[-1].end_s + TAIL_S


def _loudest_dba(solved: SolvedTest, heard: Mapping[int, SlotSound], place: str, seed: int) -> float:
    """Return the level of the loudest single slot of the whole test, whether it is played or not."""
    rows = [row for row, slot in enumerate(solved.slots) if slot.number != 0]
    levels = [heard[row].level_dba for row in rows if row in heard]
    for row in rows:
        if row not in heard:
            (window,), _length_s = timeline_of(solved.circuit.profile.schedule, [solved.slots[row]])
            levels.append(_measured(solved, row, window, place, seed)[1].level_dba)
    return max(levels, default=SILENCE_DB)


def _measured(solved: SolvedTest, row: int, window: Window, place: str, seed: int) -> tuple[Floats32, Measures]:
    """Return one slot's pressure from its start, shape (ear, frame), and what its window measures."""
    dry = _slot_pa(solved, row, window, place, seed)
    inside = dry[:, : round((window.end_s - window.start_s) * SAMPLE_RATE_HZ)].T
    return dry, measure(inside, SAMPLE_RATE_HZ)


def _slot_pa(solved: SolvedTest, row: int, window: Window, place: str, seed: int) -> Floats32:
    """Return one slot's pressure from its start, shape (ear, frame), without a limiter."""
    profile = solved.circuit.profile
    schedule, paths = profile.schedule, paths_of(profile, place)
    pulses, families = solved.pulses_of(row), solved.families.of_slot(row)
    own = [int(solved.families.column[family]) for family in families]
    templates: list[Floats32 | None] = [_template(solved, pulse_row, paths) for pulse_row in pulses[:-1]]
    # the last pulse is that of all the rest: without the plates whose pulses differ, which are added
    alike = len(own) < len(profile.cylinders)
    templates.append(_template(solved, pulses[-1], paths, without=own) if alike else None)
    count = max(round((window.end_s - window.start_s) * schedule.pulses_per_s), 1)
    chance = Stream(seed, f"pulses of slot {window.slot.number}")
    late = np.clip(chance.normal(count), -TIME_JITTER_LIMIT, TIME_JITTER_LIMIT) * schedule.timing_jitter_s
    strength = 1.0 + schedule.strength_jitter * np.clip(chance.normal(count), -2.0, 2.0)
    length = round((window.end_s - window.start_s) * SAMPLE_RATE_HZ) + TEMPLATE_FRAMES
    dry = np.zeros((2, length), dtype=np.float32)
    scaled = np.empty((2, TEMPLATE_FRAMES), dtype=np.float32)
    starts = np.round((np.arange(count) / schedule.pulses_per_s + np.abs(late)) * SAMPLE_RATE_HZ).astype(int)
    for pulse, (start, factor) in enumerate(zip(starts, strength, strict=True)):
        template = templates[min(pulse, len(templates) - 1)]
        if template is None:
            break
        end = min(start + TEMPLATE_FRAMES, length)
        np.multiply(template, np.float32(factor), out=scaled)
        dry[:, start:end] += scaled[:, : end - start]
    if own and count >= len(templates):
        rest = slice(len(templates) - 1, None)
        dry += _varied_pa(solved, families, starts[rest], strength[rest], length, place, seed)
    return dry


def _varied_pa(
    solved: SolvedTest, families: Sequence[int], starts: Integers, strength: Floats, length: int, place: str, seed: int
) -> Floats32:
    """Return the pressure of plates whose pulses differ, shape (ear, frame): each pulse is drawn from its family."""
    profile = solved.circuit.profile
    count, whole = len(profile.cylinders), scipy.fft.next_fast_len(length, real=True)
    paths = _long_paths(ByContent(profile), place, whole)
    force = np.zeros((2 * len(families), whole), dtype=np.float32)
    sources = []
    for at, family in enumerate(families):
        column, slot = int(solved.families.column[family]), solved.slots[int(solved.families.slot[family])].number
        forces = family_force(solved.families, family, solved.circuit, solved.step_s)
        drawn = Stream(seed, f"variants in slot {slot} of {profile.cylinders[column]}").uniform(len(starts))
        variants = (drawn * len(forces)).astype(int)
        for start, variant, factor in zip(starts, variants, strength.astype(np.float32), strict=True):
            end = min(start + forces.shape[2], length)
            force[2 * at : 2 * at + 2, start:end] += factor * forces[variant, :, : end - start]
        sources += [column, count + column]
    spectrum = scipy.fft.rfft(force, axis=1)
    ears = np.zeros((2, spectrum.shape[1]), dtype=np.complex64)
    for source, shaken in zip(sources, spectrum, strict=True):
        for ear in range(2):
            ears[ear] += shaken * paths[source, ear]
    return np.asarray(scipy.fft.irfft(ears, whole, axis=1)[:, :length])


@lru_cache(maxsize=4)  # up to fifteen megabytes each
def _long_paths(keyed: ByContent, place: str, frames: int) -> Complex64:
    """Return the paths on the frequencies of a whole slot's transform."""
    responses = scipy.fft.irfft(paths_of(keyed.profile, place), TEMPLATE_FRAMES, axis=2)
    return np.asarray(scipy.fft.rfft(responses, frames, axis=2), dtype=np.complex64)


def family_force(families: Families, family: int, circuit: Circuit, step_s: float) -> Floats32:
    """Return what one plate's variants shake its body with, shape (variant, blow and pull, frame), in newton."""
    profile = circuit.profile
    magnets = magnets_of([circuit.solenoids[profile.cylinders[int(families.column[family])]]])
    pull, position = families.force_n[:, family], families.position_m[:, family]
    reaction = -magnets.mass_kg * families.acceleration_m_s2[:, family]
    force = _force(bending_n(magnets, pull, position), reaction, profile, step_s)
    return np.asarray(np.moveaxis(force.reshape(2, pull.shape[1], -1), 0, 1))


def pulse_frames(schedule: Schedule) -> int:
    """Return how many frames lie between two pulses."""
    return round(SAMPLE_RATE_HZ / schedule.pulses_per_s)


def force_of(pulse: Pulse, row: int, magnets: Magnets, profile: Profile, step_s: float) -> Floats32:
    """Return what shakes each injector's body in one pulse, shape (source, frame) at the sound's rate, in newton.

    The sources are those of `body_response`: the armatures' blows, then the pulls on the poles.
    The frames are those of the pulse's whole period. A magnetic force that stays on between pulses shakes nothing: the
    straight line from its first value to the one it rests at is taken off, so that pulses put together have no edges.
    """
    bending = bending_n(magnets, pulse.force_n[:, row], pulse.position_m[:, row])
    return _force(bending, -magnets.mass_kg * pulse.acceleration_m_s2[:, row], profile, step_s)


def _force(pull: Floats, reaction: Floats, profile: Profile, step_s: float) -> Floats32:
    """Return blows, then pulls, over a pulse's period at the sound's rate; both given as (step, plate), in newton."""
    steps = round(1.0 / (step_s * SAMPLE_RATE_HZ))
    frames = pulse_frames(profile.schedule)
    pull = pull[: frames * steps]
    rested = np.repeat(pull[-1:], frames * steps - len(pull), axis=0)
    along = np.arange(frames * steps)[:, None] / (frames * steps)
    elastic = np.concatenate([pull, rested]) - (pull[0] + (pull[-1] - pull[0]) * along)
    blow = np.zeros_like(elastic)
    blow[: len(pull)] = reaction[: len(pull)]
    force = np.concatenate([blow, profile.body.elastic_fraction * elastic], axis=1)
    return np.asarray(force.reshape(frames, steps, -1).mean(axis=1).T, dtype=np.float32)


def _template(
    solved: SolvedTest, pulse_row: tuple[Pulse, int], paths: Complex64, without: Sequence[int] = ()
) -> Floats32:
    """Return one pulse's pressure at both ears, some plates left out, shape (ear, TEMPLATE_FRAMES)."""
    pulse, row = pulse_row
    circuit = solved.circuit
    numbers = circuit.profile.cylinders
    magnets = magnets_of([circuit.solenoids[number] for number in numbers])
    sampled = force_of(pulse, row, magnets, circuit.profile, solved.step_s)
    kept = [source for source in range(len(sampled)) if source % len(numbers) not in without]
    spectrum = scipy.fft.rfft(sampled[kept], TEMPLATE_FRAMES, axis=1)
    ears = np.einsum("cf,cef->ef", spectrum, paths[kept])
    return np.asarray(scipy.fft.irfft(ears, TEMPLATE_FRAMES, axis=1), dtype=np.float32)
