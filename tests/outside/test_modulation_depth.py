"""Depth of modulation against its definition: a tone of 1 + m·cos has a depth of m (any textbook on amplitude modulation)."""

import numpy as np
import pytest

from tests.slot_measures import alikeness, modulation_depth, pulses_in

RATE_HZ = 48_000


@pytest.mark.parametrize("depth", [0.05, 0.3, 0.5, 1.0])
@pytest.mark.parametrize("beat_hz", [60.0, 80.0])
def test_an_amplitude_modulated_tone_has_the_depth_it_was_made_with(depth: float, beat_hz: float) -> None:
    time_s = np.arange(RATE_HZ) / RATE_HZ
    tone = (1.0 + depth * np.cos(2 * np.pi * beat_hz * time_s)) * np.sin(2 * np.pi * 3000.0 * time_s)
    assert modulation_depth(tone, RATE_HZ, beat_hz) == pytest.approx(depth, abs=0.005)


def test_a_steady_tone_has_none_and_equal_pulses_are_all_alike() -> None:
    time_s = np.arange(RATE_HZ) / RATE_HZ
    assert modulation_depth(np.sin(2 * np.pi * 3000.0 * time_s), RATE_HZ, 80.0) < 0.005
    clicks = np.zeros(RATE_HZ)
    clicks[300::600] = 1.0
    assert alikeness(pulses_in(np.convolve(clicks, np.hanning(40), "same"), RATE_HZ, 80.0), RATE_HZ) > 0.999
