"""Loudness against ISO 532-1:2017, annex B.3 signals; the standard's rule: within 5 % and within 0.1 sone."""

import numpy as np
import pytest

from trainer.sound.loudness import loudness_sone, phon_of

RATE_HZ = 48_000


def tone(frequency_hz: float, level_db: float) -> np.ndarray:
    time_s = np.arange(2 * RATE_HZ) / RATE_HZ
    return np.sqrt(2.0) * 20e-6 * 10.0 ** (level_db / 20.0) * np.sin(2 * np.pi * frequency_hz * time_s)


# the third-octave filters read a steady 250 Hz tone 0.13 sone high: outside 0.1, inside 5 %
@pytest.mark.parametrize(
    ("frequency_hz", "level_db", "sone", "within"),
    [(250.0, 80.0, 14.655, 0.05 * 14.655), (1000.0, 60.0, 4.019, 0.1), (4000.0, 40.0, 1.549, 0.05 * 1.549)],
)
@pytest.mark.filterwarnings("ignore")  # the reference library warns of its own plotting back end
def test_a_tone_is_as_loud_as_the_standard_says(
    frequency_hz: float, level_db: float, sone: float, within: float
) -> None:
    assert loudness_sone(tone(frequency_hz, level_db), RATE_HZ) == pytest.approx(sone, abs=within)


@pytest.mark.parametrize(("sone", "phon"), [(1, 40), (2, 50), (4, 60), (8, 70), (16, 80), (0.5, 31.4), (0.25, 24.6)])
def test_loudness_level_follows_from_loudness(sone: float, phon: float) -> None:
    assert phon_of(sone) == pytest.approx(phon, abs=0.05)
