"""Weighting A against IEC 61672-1:2013, table 3."""

import numpy as np
import pytest

from tests.engines import table
from trainer.sound.iec_61672 import a_weighting_db
from trainer.sound.levels import a_weighted_level_db

ROWS = table("iec61672_weighting_nominal.csv")


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["nominal_Hz"])
def test_weighting_a_agrees_at_every_frequency_of_the_table(row: dict[str, str]) -> None:
    # at the exact frequencies 1000·10^(n/10); the table is rounded to 0.1 dB, hence 0.06
    exact_hz = 1000.0 * 10.0 ** (int(row["n"]) / 10.0)
    assert float(a_weighting_db(np.array(exact_hz))) == pytest.approx(float(row["A_dB"]), abs=0.06)


@pytest.mark.parametrize(
    "row", [r for r in ROWS if 40.0 < float(r["nominal_Hz"]) < 13000.0], ids=lambda r: r["nominal_Hz"]
)
def test_a_tone_through_the_level_meter_is_weighted_so(row: dict[str, str]) -> None:
    rate_hz, exact_hz = 48_000, float(row["exact_Hz"])
    exact_hz = round(exact_hz)  # a whole number of periods in the second that is measured
    tone = np.sqrt(2.0) * np.sin(2 * np.pi * exact_hz * np.arange(rate_hz) / rate_hz)
    # 1 Pa RMS is 93.98 dB; rounding to whole hertz moves the weighting by up to 0.07 dB at 50 Hz
    assert a_weighted_level_db(tone, rate_hz) == pytest.approx(93.979 + float(row["A_dB"]), abs=0.1)
