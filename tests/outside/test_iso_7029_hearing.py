"""Hearing by age against the medians of ISO 7029:2017 and the thresholds of ISO 389-7, whole tables; sources in the data files."""

import numpy as np
import pytest

from tests.engines import table
from trainer.sound.iso_7029 import FREQUENCY_HZ, median_loss_db, threshold_db

MEDIANS = [row | {"db": float(row["db"])} for row in table("iso7029_median_2017.csv")]
SEXES, AGES = ("male", "female"), (20, 30, 40, 50, 60, 70)

# the table is rounded to 0.1 dB, and one source of it may have rounded a and b once more
WITHIN_DB = 0.11


def at(hertz: float) -> int:
    return int(np.flatnonzero(hertz == FREQUENCY_HZ)[0])


def test_the_table_has_every_frequency_age_and_sex() -> None:
    known = {(row["sex"], float(row["hertz"]), int(row["age"])) for row in MEDIANS}
    assert {(sex, hertz, age) for sex in SEXES for hertz in FREQUENCY_HZ for age in AGES} <= known


@pytest.mark.parametrize("sex", SEXES)
@pytest.mark.parametrize("age", [*AGES, 65])
def test_the_median_loss_is_that_of_the_standard(sex: str, age: int) -> None:
    rows = [row for row in MEDIANS if (row["sex"], int(row["age"])) == (sex, age)]
    loss = median_loss_db(float(age), sex)  # type: ignore[arg-type]
    found = {row["hertz"]: loss[at(float(row["hertz"]))] for row in rows}
    assert found == pytest.approx({row["hertz"]: row["db"] for row in rows}, abs=WITHIN_DB)


@pytest.mark.parametrize("sex", SEXES)
@pytest.mark.parametrize("hertz", FREQUENCY_HZ)
def test_a_coefficient_that_is_twelve_per_cent_off_would_leave_the_table(sex: str, hertz: float) -> None:
    # at 70 the loss is 9.5 dB at least, at every frequency
    assert 0.12 * median_loss_db(70.0, sex)[at(hertz)] > 10.0 * WITHIN_DB  # type: ignore[arg-type]


def test_ears_of_eighteen_have_the_reference_threshold_in_a_free_field() -> None:
    for row in table("iso389_7_free_field.csv"):
        hertz = np.array([float(row["hertz"])])
        for sex in SEXES:
            assert threshold_db(hertz, 18.0, sex)[0] == pytest.approx(float(row["db"]), abs=1e-9)  # type: ignore[arg-type]


@pytest.mark.parametrize("row", MEDIANS[5::7], ids=lambda row: f"{row['sex']} {row['age']} {row['hertz']} Hz")
def test_a_threshold_is_the_reference_and_the_loss_together(row: dict[str, str]) -> None:
    reference = {float(one["hertz"]): float(one["db"]) for one in table("iso389_7_free_field.csv")}
    hertz = float(row["hertz"])
    heard = threshold_db(np.array([hertz]), float(row["age"]), row["sex"])[0]  # type: ignore[arg-type]
    assert heard == pytest.approx(reference[hertz] + float(row["db"]), abs=WITHIN_DB)


# ISO 7029:2000 has a·(age − 18)², with 0.0040 at 1 kHz, 0.0070 at 2 kHz, 0.0160 at 4 kHz for men, from memory
@pytest.mark.parametrize(("hertz", "factor"), [(1000.0, 0.0040), (2000.0, 0.0070), (4000.0, 0.0160)])
def test_the_edition_of_2000_was_within_a_few_decibel(hertz: float, factor: float) -> None:
    assert median_loss_db(60.0, "male")[at(hertz)] == pytest.approx(factor * 42.0**2, abs=9.0)


def test_ears_under_eighteen_are_refused() -> None:
    assert np.all(median_loss_db(18.0, "female") == 0.0)
    with pytest.raises(ValueError, match="18"):
        median_loss_db(17.9, "male")
