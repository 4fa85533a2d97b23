"""Hearing by age against ISO 7029:2017 and ISO 389-7:2005, by figures that an open package (phonometry) checks itself with."""

import numpy as np
import pytest

from trainer.sound.iso_7029 import FREQUENCY_HZ, median_loss_db, threshold_db


def at(hertz: float) -> int:
    return int(np.flatnonzero(hertz == FREQUENCY_HZ)[0])


def test_a_man_of_sixty_needs_twenty_decibel_more_at_four_kilohertz() -> None:
    # ISO 7029:2017, table 1: 0.00340·42^2.325
    assert median_loss_db(60.0, "male")[at(4000.0)] == pytest.approx(20.2085, abs=1e-3)


# ISO 7029:2000 has a·(age − 18)², with 0.0040 at 1 kHz and 0.0070 at 2 kHz for men, from memory
@pytest.mark.parametrize(("hertz", "factor"), [(1000.0, 0.0040), (2000.0, 0.0070), (4000.0, 0.0160)])
def test_the_edition_of_2000_was_within_a_few_decibel(hertz: float, factor: float) -> None:
    assert median_loss_db(60.0, "male")[at(hertz)] == pytest.approx(factor * 42.0**2, abs=9.0)


def test_ears_of_eighteen_are_the_reference_and_younger_ones_are_refused() -> None:
    assert np.all(median_loss_db(18.0, "female") == 0.0)
    assert threshold_db(np.array([1000.0]), 18.0, "male")[0] == pytest.approx(2.4)  # ISO 389-7, table 1, free field
    with pytest.raises(ValueError, match="18"):
        median_loss_db(17.9, "male")


def test_high_tones_go_first_and_women_lose_less_of_them() -> None:
    men, women = median_loss_db(65.0, "male"), median_loss_db(65.0, "female")
    assert np.all(np.diff(men) > 0.0)
    assert women[at(4000.0)] < men[at(4000.0)]
