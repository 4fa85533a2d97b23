"""The bay under a test: it never repeats, lives, tells nothing of the fault, and leaves a slot asked for again alone."""

from __future__ import annotations

import numpy as np
import pytest
import scipy.fft

from tests.engines import NORTH, fault_of, solved
from trainer.arrays import Floats
from trainer.circuit.chance import Stream
from trainer.circuit.fault import FaultKind
from trainer.sound.bay import babble, clank, door, impact_wrench, ratchet
from trainer.sound.bed import LOUD_DB, QUIET_FOR_S, BedKind, bed_pa
from trainer.sound.levels import a_weighted_level_db
from trainer.sound.render import Bed, render

RATE_HZ = 48_000
WHOLE_S = 21
KINDS = pytest.mark.parametrize("kind", BedKind)


def bed(kind: BedKind, seed: int, seconds: int = WHOLE_S) -> Floats:
    return bed_pa(kind, 40.0, seconds * RATE_HZ, RATE_HZ, seed).astype(float)


def levels(pressure: Floats) -> list[float]:
    """Return the levels of fifths of a second."""
    length = RATE_HZ // 5
    return [
        a_weighted_level_db(pressure[at : at + length], RATE_HZ) for at in range(0, len(pressure) - length + 1, length)
    ]


@KINDS
@pytest.mark.parametrize("seed", [3, 4])
def test_the_steady_part_has_the_level_it_is_called(kind: BedKind, seed: int) -> None:
    parts = levels(bed(kind, seed))
    still = parts[: int(QUIET_FOR_S * 5)]
    assert np.mean(still) == pytest.approx(40.0, abs=0.7)
    assert max(still) - min(still) < 1.5
    assert min(parts) > 40.0 - 7.0  # a compressor that rests


@KINDS
def test_it_does_not_repeat_within_a_test(kind: BedKind) -> None:
    whole = bed(kind, 3)[:, 0]
    spectrum = scipy.fft.rfft(whole, 2 * len(whole))
    spectrum[: len(spectrum) // 12] = 0.0  # over 2 kHz: tones of things that turn do come again
    alike = scipy.fft.irfft(np.abs(spectrum) ** 2)[: len(whole)]
    assert (
        np.abs(alike[RATE_HZ // 2 : 15 * RATE_HZ]).max() < 0.15 * alike[0]
    )  # one that repeats has 1; a ratchet clicks as it did before


@KINDS
def test_something_happens_after_the_first_seconds_and_no_louder_than_its_class(kind: BedKind) -> None:
    later = [max(levels(bed(kind, seed))[int(QUIET_FOR_S * 5) :]) for seed in range(6)]
    assert np.median(later) > 42.0
    # a clank of half a second is loudest at its start; two things can come at once
    assert max(later) < 40.0 + LOUD_DB + 9.0


def test_a_busy_bay_can_mask_a_faint_slot_and_a_slot_that_is_asked_for_again_is_heard_without_it() -> None:
    test = solved(NORTH, fault_of(NORTH, FaultKind.OPEN, 8))
    busy = Bed(BedKind.COMPRESSOR, 30.0)
    masked = []
    for seed in range(8):
        whole, still = render(test, "front", busy, seed), render(test, "front", Bed(level_dba=-60.0), seed)
        window = whole.slots[8].window
        part = slice(round(window.start_s * RATE_HZ), round(window.end_s * RATE_HZ))
        over = np.array(levels((whole.samples[part] - still.samples[part]).astype(float)))
        own = a_weighted_level_db(still.samples[part].astype(float), RATE_HZ)
        masked.append(bool((over > own + 3.0).any()))
        again = render(test, "front", busy, seed, [8])
        assert len(again.samples) / RATE_HZ < QUIET_FOR_S
    assert any(masked)
    assert not all(masked)


def test_the_bed_knows_nothing_of_the_fault() -> None:
    good, bad = (
        render(solved(NORTH, *faults), "front", Bed(BedKind.VENTILATION), 7).samples
        for faults in ((), (fault_of(NORTH, FaultKind.OPEN, 3),))
    )
    window = render(solved(NORTH), "front", Bed(), 7).slots[-1].window
    tail = slice(round((window.end_s + 0.45) * RATE_HZ), None)  # the last slot's echo has died by then
    assert np.abs(good[tail] - bad[tail]).max() < 1e-5
    assert not np.array_equal(bed(BedKind.VENTILATION, 7), bed(BedKind.VENTILATION, 8))


@pytest.mark.parametrize("event", [babble, clank, door, impact_wrench, ratchet])
def test_what_happens_begins_and_ends_at_rest_and_differs_each_time(event: object) -> None:
    first, again, other = (event(Stream(seed, "event"), RATE_HZ) for seed in (1, 1, 2))  # type: ignore[operator]
    assert np.array_equal(first, again)
    assert len(first) != len(other) or not np.array_equal(first, other)
    assert np.abs(first[-200:]).max() < 0.02 * np.abs(first).max()


def test_voices_swell_as_syllables_do_three_to_eight_times_a_second() -> None:
    """Textbook: the envelope of speech is modulated most around 4 Hz (IEC 60268-16 uses 0.63 to 12.5 Hz)."""
    power = np.zeros(49)
    for seed in range(12):
        voice = babble(Stream(seed, "event"), RATE_HZ).astype(float) ** 2
        slow = voice[: len(voice) // 480 * 480].reshape(-1, 480).mean(axis=1)  # 100 values a second
        power += np.abs(np.fft.rfft(slow - slow.mean(), 1000))[10:500:10] ** 2  # 1 Hz apart
    assert power[1:8].sum() > 2.0 * power[12:19].sum()
