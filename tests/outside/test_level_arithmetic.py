"""Level arithmetic: handbook examples (20 µPa reference, ISO 1683)."""

import numpy as np
import pytest

from trainer.sound.levels import FULL_SCALE_PA, REFERENCE_PA, level_db, sum_db


@pytest.mark.parametrize(
    ("levels", "total"),
    [((60, 60), 63.01), ((60, 57), 61.76), ((60, 50), 60.41), ((80, 83, 85, 70), 87.96), ((0,) * 8, 9.03)],
)
def test_incoherent_sounds_add_as_energies(levels: tuple[float, ...], total: float) -> None:
    assert sum_db(np.array(levels, dtype=float)) == pytest.approx(total, abs=0.005)


def test_94_db_is_one_pascal() -> None:
    assert float(level_db(np.array(1.0024**2))) == pytest.approx(94.0, abs=0.001)


def test_zero_db_is_twenty_micropascal() -> None:
    assert float(level_db(np.array(REFERENCE_PA**2))) == pytest.approx(0.0, abs=1e-9)


def test_full_scale_is_the_crest_of_a_100_db_sine() -> None:
    assert float(level_db(np.array(FULL_SCALE_PA**2 / 2.0))) == pytest.approx(100.0, abs=1e-9)


def test_nothing_at_all_has_a_finite_level() -> None:
    assert np.isfinite(level_db(np.array(0.0)))
