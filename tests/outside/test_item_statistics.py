"""Reliability and discrimination against a published analysis and an independent library."""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import pytest
from scipy import stats

from tests.results import keep, put, result
from trainer.records.class_report.item_statistics import ItemSums, alpha, discrimination
from trainer.records.class_report.sums import class_sums
from trainer.records.store.store import open_store

DATA = Path(__file__).parent / "data" / "lsat_bock_lieberman.csv"

# mirt's documentation, pages LSAT6 and itemstats (philchalmers.github.io/mirt): 1000 persons, five questions of 0 or 1;
# printed to three decimals, hence 0.0005
PRINTED = {
    "n6": (0.295, [0.924, 0.709, 0.553, 0.763, 0.870], [0.113, 0.153, 0.173, 0.144, 0.122]),
    "n7": (0.453, [0.828, 0.658, 0.772, 0.606, 0.843], [0.246, 0.247, 0.313, 0.223, 0.175]),
}


def answers(section: str) -> np.ndarray:
    """Return the answers, shape (person, question)."""
    lines = [line for line in DATA.read_text("utf-8").splitlines() if not line.startswith("#")]
    rows = list(csv.DictReader(lines))
    return np.repeat(
        [[int(row[f"Q{n}"]) for n in range(1, 6)] for row in rows], [int(row[section]) for row in rows], axis=0
    )


def sums_of(marks: np.ndarray) -> list[ItemSums]:
    total = marks.sum(axis=1)
    return [
        ItemSums(
            column + 1,
            len(marks),
            float(one.sum()),
            float((one**2).sum()),
            float(total.sum()),
            float((total**2).sum()),
            float((one * total).sum()),
        )
        for column, one in enumerate(marks.T)
    ]


@pytest.mark.parametrize("section", PRINTED)
def test_reliability_and_discrimination_are_as_published(section: str) -> None:
    printed_alpha, facility, item_rest = PRINTED[section]
    marks = answers(section)
    sums = sums_of(marks.astype(float))
    assert alpha(sums) == pytest.approx(printed_alpha, abs=0.0005)
    assert [one.mark / one.count for one in sums] == pytest.approx(facility, abs=0.0005)
    assert [discrimination(one) for one in sums] == pytest.approx(item_rest, abs=0.0005)


@pytest.mark.parametrize("section", PRINTED)
def test_discrimination_agrees_with_an_independent_library(section: str) -> None:
    marks = answers(section).astype(float)
    for column, one in enumerate(sums_of(marks)):
        rest = np.delete(marks, column, axis=1).sum(axis=1)
        assert discrimination(one) == pytest.approx(stats.pointbiserialr(marks[:, column], rest).statistic, abs=1e-9)


# K. Wuensch, East Carolina University, StatHelp/KR20.txt: ten learners, ten questions; printed are pq of each question, 5.84
# for the variance of totals with the divisor n, and Kuder and Richardson's formula 20
WUENSCH = np.array([
    [1, 1, 1, 1, 1, 1, 0, 1, 1, 0], [1, 0, 1, 1, 0, 1, 1, 1, 0, 1], [1, 1, 1, 1, 0, 1, 1, 0, 0, 1],
    [0, 0, 1, 0, 0, 0, 1, 0, 0, 0], [0, 0, 0, 0, 0, 1, 0, 0, 1, 0], [1, 1, 1, 0, 1, 1, 1, 1, 1, 1],
    [1, 1, 0, 1, 1, 1, 0, 1, 1, 1], [1, 1, 1, 1, 1, 1, 1, 1, 0, 1], [0, 1, 0, 1, 1, 1, 1, 1, 0, 1],
    [1, 1, 0, 1, 1, 0, 1, 1, 1, 0],
])  # fmt: skip
PRINTED_PQ = [0.21, 0.21, 0.24, 0.21, 0.24, 0.16, 0.21, 0.21, 0.25, 0.24]


def test_the_formula_of_kuder_and_richardson_from_its_printed_pieces() -> None:
    kr20 = 10 / 9 * (1 - sum(PRINTED_PQ) / 5.84)
    assert alpha(sums_of(WUENSCH.astype(float))) == pytest.approx(kr20, abs=1e-9)


def test_the_store_adds_up_the_same_sums() -> None:
    """The published answers as marks of nought and a hundred, through the database."""
    store = open_store(None)
    kept = keep(store, 10)
    put(
        store,
        [result(f"p{row}", column + 1, 100.0 * WUENSCH[row, column]) for row in range(10) for column in range(10)],
    )
    sums = class_sums(store, kept).item_sums
    assert alpha(sums) == pytest.approx(10 / 9 * (1 - sum(PRINTED_PQ) / 5.84), abs=1e-9)
    for column, one in enumerate(sums):
        rest = np.delete(WUENSCH, column, axis=1).sum(axis=1)
        assert discrimination(one) == pytest.approx(stats.pearsonr(WUENSCH[:, column], rest).statistic, abs=1e-9)
    store.close()


def test_an_index_that_has_no_meaning_is_none() -> None:
    alike = np.ones((12, 3))
    assert alpha(sums_of(alike)) is None
    assert discrimination(sums_of(alike)[0]) is None
    assert alpha(sums_of(np.eye(3)[:, :1])) is None
