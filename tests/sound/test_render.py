"""What every rendered file promises: bed first, ramps, ceilings, the same file for the same seed."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings

from tests.engines import ALL, NORTH, fault_of, solved
from tests.strategies import faulty_engines
from trainer.circuit.chance import Stream
from trainer.circuit.fault import Fault, FaultKind
from trainer.circuit.profile import Profile
from trainer.sound.levels import FULL_SCALE_PA, a_weighted_level_db
from trainer.sound.places import LEAN, contact_of, places_of
from trainer.sound.render import PEAK_CEILING, Bed, Sound, render


def measured_dba(sound: Sound, start_s: float, end_s: float) -> float:
    """Measure a stretch of the file itself, full scale and all."""
    part = sound.samples[round(start_s * sound.rate_hz) : round(end_s * sound.rate_hz)]
    return a_weighted_level_db(part.astype(float) * FULL_SCALE_PA, sound.rate_hz)


@pytest.mark.parametrize("only", [None, [3], [3, 5], [0]])
def test_bed_lies_before_and_after_every_playing(only: list[int] | None) -> None:
    sound = render(solved(NORTH), "front", Bed(), 1, only)
    first, last = sound.slots[0].window, sound.slots[-1].window
    length_s = len(sound.samples) / sound.rate_hz
    assert first.start_s >= 0.5
    assert length_s - last.end_s >= 0.3
    assert measured_dba(sound, 0.1, first.start_s) == pytest.approx(34.0, abs=1.0)
    assert np.abs(np.diff(sound.samples[:480], axis=0)).max() < 1e-3  # a ramp, no step


@pytest.mark.parametrize("profile", ALL, ids=lambda p: p.name)
def test_the_burst_is_at_most_eight_decibel_over_the_median_slot_in_the_file(profile: Profile) -> None:
    sound = render(solved(profile), "front", Bed(), 1)
    levels = [measured_dba(sound, slot.window.start_s, slot.window.end_s) for slot in sound.slots]
    median = float(np.median(levels[1:]))
    assert 3.0 < levels[0] - median <= 8.0
    assert 64.0 < median < 70.0  # a comfortable level, by the stated full scale


def ordinary_places(profile: Profile) -> list[str]:
    """Return where one stands: leaning over a bank, the own injector is so near that the others' hum falls farther."""
    return [place for place in places_of(profile) if contact_of(place) is None and not place.startswith(LEAN)]


@pytest.mark.parametrize("profile", ALL, ids=lambda p: p.name)
def test_an_open_slot_is_20_to_32_decibel_under_a_good_slot_at_every_ordinary_place(profile: Profile) -> None:
    for number in profile.cylinders:
        faulty = solved(profile, fault_of(profile, FaultKind.OPEN, number))
        for place in ordinary_places(profile):
            good, bad = (render(test, place, Bed(), 1, [number]).slots[0] for test in (solved(profile), faulty))
            assert 20.0 <= good.level_dba - bad.level_dba <= 32.0, (number, place)
    assert hum_over_300_hz_db(profile, 1) > -1.5  # for a small loudspeaker


@pytest.mark.parametrize("profile", ALL, ids=lambda p: p.name)
def test_the_hum_is_that_of_two_amperes_at_most_and_of_no_more_than_the_whole_pull(profile: Profile) -> None:
    assert 0.0 < profile.body.elastic_fraction <= 1.0
    test = solved(profile)
    for row, slot in enumerate(test.slots[1:], start=1):
        quiet = [column for column, n in enumerate(profile.cylinders) if n not in slot.commanded]
        pulse, place = test.pulses_of(row)[0]
        assert np.abs(pulse.coil_a[:, place, quiet]).max() <= 2.0


def hum_over_300_hz_db(profile: Profile, number: int) -> float:
    """Return how much of an open slot's A-weighted sound is left without everything under 300 Hz."""
    silent = Bed(level_dba=-60.0)
    sound = render(solved(profile, fault_of(profile, FaultKind.OPEN, number)), "front", silent, 1, [number])
    window = sound.slots[0].window
    part = sound.samples[round(window.start_s * 48_000) : round(window.end_s * 48_000)].astype(float)
    spectrum = np.fft.rfft(part, axis=0)
    spectrum[np.fft.rfftfreq(len(part), 1 / 48_000) < 300.0] = 0.0
    return a_weighted_level_db(np.fft.irfft(spectrum, len(part), axis=0), 48_000) - a_weighted_level_db(part, 48_000)


@settings(max_examples=12, deadline=None, suppress_health_check=list(HealthCheck), derandomize=True)
@given(faulty_engines())
def test_no_fault_is_louder_than_the_ceiling(engine: tuple[Profile, Fault]) -> None:
    profile, fault = engine
    sound = render(solved(profile, fault), "front", Bed(), 1)
    assert np.abs(sound.samples).max() <= PEAK_CEILING
    assert np.abs(sound.samples).max() < 0.7  # reached by no clipping


def test_the_same_seed_gives_the_same_file_and_another_seed_another() -> None:
    first, again, other = (render(solved(NORTH), "front", Bed(), seed, [1]) for seed in (5, 5, 6))
    assert np.array_equal(first.samples, again.samples)
    assert not np.array_equal(first.samples, other.samples)


def test_outside_the_windows_a_fault_touches_the_file_is_the_same() -> None:
    fault = fault_of(NORTH, FaultKind.DEAD_RETURN_DRIVER, 8)
    good, bad = (render(test, "front", Bed(), 1) for test in (solved(NORTH), solved(NORTH, fault)))
    quiet = slice(0, round(good.slots[0].window.start_s * 48_000) - 100)
    assert np.array_equal(good.samples[quiet], bad.samples[quiet])


def test_the_limiter_never_touches_a_single_slot() -> None:
    loud = render(solved(NORTH, fault_of(NORTH, FaultKind.STUCK_RETURN_DRIVER, 3)), "front", Bed(), 1)
    assert [slot.limiter_db for slot in loud.slots[1:]] == [0.0] * 8


def test_where_you_stand_is_heard() -> None:
    by_place = {place: render(solved(NORTH), place, Bed(), 1) for place in ("front", "right", "left", "probe 3")}
    right, left = by_place["right"].slots, by_place["left"].slots
    assert right[1].level_dba > left[1].level_dba
    assert left[2].level_dba > right[2].level_dba
    probe = by_place["probe 3"].slots
    assert probe[3].level_dba - max(slot.level_dba for n, slot in enumerate(probe) if n not in (0, 3)) > 15.0


@pytest.mark.parametrize("number", [1, 3, 4])
def test_a_cover_separates_injectors_more_than_the_bay_and_less_than_a_rod_on_the_injector(number: int) -> None:
    """Common practice, no published source: one listens for a dead injector through the cover before lifting it."""

    def separation_db(place: str) -> float:
        levels = {one.window.slot.number: one.level_dba for one in render(solved(NORTH), place, Bed(), 1).slots}
        return levels[number] - max(level for n, level in levels.items() if n not in (0, number))

    through, on = separation_db(f"cover {number}"), separation_db(f"probe {number}")
    assert separation_db("front") + 3.0 < through < on - 6.0
    own = [
        render(solved(NORTH), place, Bed(), 1, [number]).slots[0].level_dba
        for place in (f"cover {number}", f"probe {number}")
    ]
    assert 6.0 < own[1] - own[0] < 14.0


@pytest.mark.parametrize("profile", ALL, ids=lambda p: p.name)
def test_every_place_of_a_profile_can_be_rendered(profile: Profile) -> None:
    for place in places_of(profile):
        assert np.isfinite(render(solved(profile), place, Bed(), 1, [1]).samples).all()


def test_chance_has_the_right_mean_and_spread_and_never_shifts_another_purpose() -> None:
    normal = Stream(1, "a").normal(20_000)
    assert abs(normal.mean()) < 0.03
    assert normal.std() == pytest.approx(1.0, abs=0.03)
    assert np.array_equal(Stream(1, "a").uniform(5), Stream(1, "a").uniform(5))
    assert not np.array_equal(Stream(1, "a").uniform(5), Stream(1, "b").uniform(5))
