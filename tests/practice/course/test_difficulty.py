"""The difficulty that is shown holds: listeners that know only the rendered sound find hard what is called hard.

A listener measures each slot of the file (level and brightness against its good sound), errs by a just noticeable step
times a fixed factor, and names the slot that is furthest off. Steps: Jesteadt, Wier and Green 1977; the factor is ours
and the same for every case, so only the order is claimed.
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import spearmanr

from tests.engines import ALL, FIELD, NORTH
from tests.universes import POOLS
from trainer.cases.drawing.coded_case import case_of_code
from trainer.cases.drawing.features import features_at, features_of, pool_features
from trainer.cases.drawing.practice_case import BEDS_DBA, FAULTS, VARIATIONS, Axes, practice_case
from trainer.cases.single_case.case_code import SEED_LIMIT
from trainer.circuit.chance import Stream
from trainer.circuit.profile import Profile
from trainer.instruments.bench import Work
from trainer.practice.attempt.actions import solved_work
from trainer.practice.course.demands import hearing_difficulty
from trainer.reasoning.universe.hearing import Heard, heard_as
from trainer.reasoning.universe.scales import heard_scale, level_scale
from trainer.sound.render import Bed, render

BLUR = 2.5
"""How many just noticeable steps these listeners err by, as a standard deviation."""

HUM_FROM = 4.0
"""From how many steps over silence in the bed on they call a hum a hum, and below it nothing."""

TRIALS, CASES = 1500, 12


def share_right(profile: Profile, place: int, bed_dba: float, chance: np.random.Generator) -> float:
    """Return how often a listener names a wrong slot rightly, and tells a hum from nothing."""
    fault, bed = POOLS(profile).fault(place), Bed(level_dba=bed_dba)
    slots = [render(solved_work(profile, faults, Work()), "front", bed, 3).slots[1:] for faults in ((fault,), ())]
    heard, good = (np.array([[slot.level_dba, slot.centroid_hz, 0.0] for slot in those]) for those in slots)
    apart = heard_scale(heard, bed_dba) - heard_scale(good, bed_dba)
    noisy = np.sqrt(((apart + BLUR * chance.standard_normal((TRIALS, *apart.shape))) ** 2).sum(axis=2))
    true = [profile.cylinders.index(number) for number in fault.cylinders]
    right = np.isin(noisy.argmax(axis=1), true)
    (level, centre_hz, _side), (fine, fine_hz, _) = heard[true[0]], good[true[0]]
    if heard_as(level, fine, bed_dba, centre_hz / fine_hz) is Heard.VERY_FAINT:
        over = float(level_scale(np.array([level]), bed_dba)[0] - level_scale(np.array([-60.0]), bed_dba)[0])
        right &= over + BLUR * chance.standard_normal(TRIALS) > HUM_FROM
    return float(np.mean(right))


@pytest.mark.parametrize("profile", [FIELD, NORTH], ids=lambda one: one.name)
@pytest.mark.long
def test_simulated_listeners_rank_cases_as_predicted(profile: Profile) -> None:
    """Cases evenly from the easiest to the hardest, over all beds in which they can be heard."""
    pool, chance = POOLS(profile), np.random.default_rng(4)
    # one slot that is off, and no other, by a fault of that slot alone: where every cylinder is at fault, any is right
    off = (np.abs(pool.under_good_db) > 1.0).sum(axis=1)
    alone = [len(pool.fault(row).cylinders) == 1 for row in range(len(pool.rows))]
    single = [row for row in range(len(pool.rows)) if alone[row] and off[row] == 1 and not pool.provoked[row]]
    cases = [
        (hearing_difficulty(features_at(pool, row, bed)), row, bed)
        for row in single for bed in BEDS_DBA if pool.table(bed).audible[row]
    ]  # fmt: skip
    cases.sort()
    aims = np.linspace(cases[0][0], cases[-1][0], CASES)
    chosen = [min(cases, key=lambda case: (abs(case[0] - aim), case)) for aim in aims]
    found = [share_right(profile, row, bed, chance) for _hard, row, bed in chosen]
    assert spearmanr([hard for hard, _row, _bed in chosen], found).statistic <= -0.75


@pytest.mark.parametrize("profile", ALL, ids=lambda one: one.name)
def test_a_louder_bed_makes_a_hum_harder_and_each_further_axis_a_case(profile: Profile) -> None:
    pool = POOLS(profile)
    humming = next(row for row in range(len(pool.rows)) if features_at(pool, row, BEDS_DBA[0]).hums)
    by_bed = [hearing_difficulty(features_at(pool, humming, bed)) for bed in BEDS_DBA]
    assert by_bed == sorted(by_bed)
    assert by_bed[-1] > by_bed[0]


def test_axes_and_code_say_the_same_case_for_any_seed_in_bounds() -> None:
    chance = Stream(9, "axes")
    for _case in range(300):
        axes = Axes(chance.below(500), chance.below(len(BEDS_DBA)), bool(chance.below(2)), bool(chance.below(2)),
                    chance.below(VARIATIONS))  # fmt: skip
        profile = ALL[chance.below(len(ALL))]
        case = practice_case(profile, axes)
        assert case.code is not None
        assert case_of_code(case.code, ALL) == case
        assert case.bed.level_dba == BEDS_DBA[axes.bed]
        assert bool(case.faults) == bool(axes.fault)


def test_axes_lie_within_their_bounds_and_all_of_them_fit_a_code() -> None:
    assert FAULTS * len(BEDS_DBA) * 4 * VARIATIONS <= SEED_LIMIT
    for wrong in ({"fault": FAULTS}, {"fault": -1}, {"bed": len(BEDS_DBA)}, {"variation": VARIATIONS}):
        with pytest.raises(ValueError, match="bounds"):
            Axes(**{"fault": 0, "bed": 0, "old_code": False, "lending": True, "variation": 0, **wrong})


def test_a_case_has_the_features_that_it_was_chosen_by() -> None:
    """What the pool says of a case before it is drawn is what is computed of the drawn case afterwards."""
    for profile in ALL:
        pool = POOLS(profile)
        for place in range(0, len(pool.rows), 37):
            axes = Axes(int(pool.rows[place]), 2, old_code=False, lending=True, variation=5)
            before, after = pool_features(pool, place, axes), features_of(practice_case(profile, axes), pool)
            assert (after.kind_class, after.hums, after.coded, after.provoked) == (
                before.kind_class, before.hums, before.coded, before.provoked,
            )  # fmt: skip
            # circuits that sound alike share one solution: within what an ear can just tell
            assert after.margin == pytest.approx(before.margin, rel=0.01, abs=1.0)
            assert hearing_difficulty(after) == pytest.approx(hearing_difficulty(before), abs=0.02)
