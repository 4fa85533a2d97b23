"""Pairs of faults that share nothing: for each leading single fault its best partners given it, then solved together.

To find partners, answers are composed: the powers of what is heard add up, and any other part is that of whichever
fault moves it further from the sound engine.
That is quick and only chooses; what the chosen pairs are expected to show is solved from their own circuits, so that a
fault that hides another is seen to hide it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

import numpy as np

from trainer.arrays import Floats, Integers
from trainer.reasoning.universe.hypotheses import Faults, Hypotheses
from trainer.reasoning.universe.questions import Answers, Expected, Prediction, Question, in_order
from trainer.reasoning.universe.scales import level_of, level_power

PAIR_SHARE = 0.1
"""How often two faults are met at once: common practice, no published source."""

LEADING, LEADING_EACH = 60, 6
"""How many single faults lead: those that explain most, and of each cylinder those that do."""

PARTNERS, PAIRED = 10, 120
"""How many partners of each leading fault are compared, and how many pairs are solved."""

SEVERITIES_EACH = 2
"""At how many of its severities a fault leads, is a partner or makes a pair, so that it leaves room for others."""

CAPPED = 24.0
"""What one part can speak against a pair, in squared units: beyond, it is as good as a slip."""


Row = TypeVar("Row", int, tuple[int, int], tuple[int, float])


def share_nothing(one: Faults, other: Faults) -> bool:
    """Tell whether two single faults lie in different injectors' circuits."""
    return bool(one and other) and not {n for f in one for n in f.cylinders} & {n for f in other for n in f.cylinders}


def chosen_pairs(
    hypotheses: Hypotheses, expected: Mapping[Question, Expected], answers: Answers
) -> tuple[tuple[int, int], ...]:
    """Return the pairs of rows that answers make worth thinking of, the likeliest first."""
    singles = _Singles.of(hypotheses, *_parts(expected, answers))
    found: dict[tuple[int, int], float] = {}
    for lead in _leading(hypotheses.faults, singles.fault, singles.log_prior - 0.5 * singles.against.sum(axis=1)):
        for other, gain in singles.partners(lead):
            found[min(lead, other), max(lead, other)] = gain
    # what differs by rounding alone keeps the order of its rows
    order = sorted(found, key=lambda pair: (-round(found[pair], 6), pair))
    return tuple(_varied(order, lambda pair: (singles.fault[pair[0]], singles.fault[pair[1]]), PAIRED))


def _varied(order: Iterable[Row], fault_of: Callable[[Row], object], most: int) -> list[Row]:
    """Return the first of an order, each fault at no more than SEVERITIES_EACH of its severities."""
    count = Counter[object]()
    chosen = list[Row]()
    for one in order:
        fault = fault_of(one)
        if count[fault] < SEVERITIES_EACH:
            chosen.append(one)
            count[fault] += 1
        if len(chosen) == most:
            break
    return chosen


@dataclass(frozen=True)
class _Singles:
    """Single hypotheses beside what was answered; arrays have shape (hypothesis, part) unless said.

    `against` is how strongly each part's answer speaks against each hypothesis. `moved` is how far the hypothesis moves
    that part from a good engine. `level` are the columns with the levels of heard slots, `power` the powers there, and
    `rest` the columns that are not heard. `cylinders` has a bit for each cylinder, and `fault` is a number that a fault
    has at every severity, shape (hypothesis,).
    """

    values: Floats
    answer: Floats
    against: Floats
    moved: Floats
    level: Integers
    power: Floats
    rest: Integers
    cylinders: Integers
    fault: list[int]
    log_prior: Floats
    sound: int

    @classmethod
    def of(cls, hypotheses: Hypotheses, values: Floats, answer: Floats, level: Integers) -> _Singles:
        sound = hypotheses.faults.index(())
        heard = level[:, None] + np.arange(TRAITS)
        return cls(
            values=values,
            answer=answer,
            against=np.minimum((answer - values) ** 2, CAPPED),
            moved=np.abs(values - values[sound]),
            level=level,
            power=level_power(values[:, level]),
            rest=np.setdiff1d(np.arange(len(answer)), heard),
            cylinders=np.array(
                [sum(1 << n for n in {n for f in one for n in f.cylinders}) for one in hypotheses.faults]
            ),
            fault=_numbered(hypotheses.faults),
            log_prior=np.log(np.maximum(hypotheses.prior, 1e-300)),
            sound=sound,
        )

    def partners(self, lead: int) -> list[tuple[int, float]]:
        """Return the best partners of a leading fault, each with the logarithm of what speaks for the pair."""
        # a part that the leading fault does not move is the partner's own
        own = self.rest[self.moved[lead, self.rest] > 0.0]
        wins = self.moved[lead, own] >= self.moved[:, own]
        unheard = self.against[:, self.rest].sum(axis=1)
        unheard += np.where(wins, self.against[lead, own] - self.against[:, own], 0.0).sum(axis=1)
        most = self.log_prior + self.log_prior[lead] - 0.5 * unheard
        fitting = (self.cylinders != 0) & (self.cylinders & self.cylinders[lead] == 0)
        order = np.flatnonzero(fitting)
        order = order[np.argsort(-most[order], kind="stable")]
        found: list[tuple[int, float]] = []
        # what is heard can only speak against a pair, so the rest need not be looked at once the best are found
        for start in range(0, len(order), AT_ONCE):
            rows = order[start : start + AT_ONCE]
            if len(found) == PARTNERS and most[rows[0]] < found[-1][1]:
                break
            gain = most[rows] - 0.5 * self._heard(lead, rows)
            found += zip(rows.tolist(), gain.tolist(), strict=True)
            found.sort(key=lambda one: (-one[1], one[0]))
            found = _varied(found, lambda one: self.fault[one[0]], PARTNERS)
        return found

    def _heard(self, lead: int, rows: Integers) -> Floats:
        """Return what heard slots speak against pairs of a leading fault, shape (row,).

        Powers add to the sound engine's; brightness and side are those of the nearer in level.
        """
        least = np.minimum(self.power[lead], self.power[rows])
        power = np.maximum(self.power[lead] + self.power[rows] - self.power[self.sound], least)
        together = level_of(power)
        own, other = self.values[lead, self.level], self.values[rows][:, self.level]
        near = np.abs(together - own) <= np.abs(together - other)
        against = np.minimum((self.answer[self.level] - together) ** 2, CAPPED).sum(axis=1)
        for part in range(1, TRAITS):
            column = self.level + part
            against += np.where(near, self.against[lead, column], self.against[rows][:, column]).sum(axis=1)
        return np.asarray(against)


AT_ONCE = 64
"""How many partners are heard beside a leading fault at once."""

TRAITS = 3
"""A heard slot's parts: level, brightness, left against right."""


def _numbered(faults: Sequence[Faults]) -> list[int]:
    """Return a number for each hypothesis, the same for a fault at each of its severities."""
    numbers: dict[Faults, int] = {}
    return [numbers.setdefault(tuple(replace(one, severity=None) for one in each), len(numbers)) for each in faults]


def _leading(faults: Sequence[Faults], number_of: Sequence[int], gain: Floats) -> list[int]:
    order = [int(row) for row in np.argsort(-gain, kind="stable") if faults[row]]
    chosen = dict.fromkeys(_varied(order, lambda row: number_of[row], LEADING))
    for number in sorted({n for one in faults for fault in one for n in fault.cylinders}):
        mine = [row for row in order if any(number in fault.cylinders for fault in faults[row])]
        chosen |= dict.fromkeys(_varied(mine, lambda row: number_of[row], LEADING_EACH))
    return list(chosen)


def _parts(expected: Mapping[Question, Expected], answers: Answers) -> tuple[Floats, Floats, Integers]:
    """Return what is expected (hypothesis, part) and answered (part,); flags count some units apart.

    The parts that are heard slots' levels come with them; a slot's other parts follow its level.
    """
    asked = in_order(answers)
    scale = [FLAG_UNITS if expected[question].flags else 1.0 for question in asked]
    values = [expected[question].values * unit for question, unit in zip(asked, scale, strict=True)]
    seen = [np.atleast_1d(answers[question]) * unit for question, unit in zip(asked, scale, strict=True)]
    joined = np.concatenate(values, axis=1)
    answer = np.concatenate(seen)
    starts = np.cumsum([0, *(one.shape[1] for one in values)])[:-1]
    level = np.array(
        [start for question, start in zip(asked, starts, strict=True) if question.kind == "slot"], dtype=int
    )
    distinct = (np.abs(joined - answer) > DISTINCT_FROM).any(axis=0)
    for part in range(TRAITS):
        distinct[level + part] = True
    place = np.cumsum(distinct) - 1
    return joined[:, distinct], answer[distinct], place[level]


FLAG_UNITS, DISTINCT_FROM = 4.0, 0.5
"""How far apart a flag that is up lies from one that is down; parts that all expect alike choose nothing."""


def with_pairs(hypotheses: Hypotheses, pairs: Sequence[tuple[int, int]]) -> Hypotheses:
    """Return hypotheses with pairs added; two faults are met as often as their priors say, PAIR_SHARE for all pairs."""
    first, second = np.array(pairs).T
    faulty = np.array([bool(faults) for faults in hypotheses.faults])
    of_all = 0.5 * hypotheses.prior[faulty].sum() ** 2
    both = PAIR_SHARE * hypotheses.prior[first] * hypotheses.prior[second] / of_all
    prior = np.concatenate([(1.0 - PAIR_SHARE) * hypotheses.prior, both])
    faults = (*hypotheses.faults, *(hypotheses.faults[a] + hypotheses.faults[b] for a, b in pairs))
    return Hypotheses(faults, prior / prior.sum())


def expected_with_pairs(single: Expected, together: Expected, pairs: Sequence[tuple[int, int]], sound: int) -> Expected:
    """Return what single faults and pairs expect, pairs being solved in the middle of their faults' severities."""
    states = zip(single.states, together.states, strict=True)
    return replace(single, states=tuple(_with_pairs(one, both, np.array(pairs).T, sound) for one, both in states))


def _with_pairs(single: Prediction, together: Prediction, pairs: Integers, sound: int) -> Prediction:
    """Return the predictions of single faults and pairs, `pairs` having the rows of the first and of the second fault.

    A pair has the slope of its first fault with a range of severities; that of the other counts as spread. A fault that
    the other hides, so that the pair is where it is without it, has none.
    """
    values = np.concatenate([single.values, together.values])
    if single.slope is None or single.variance is None or together.variance is None:
        return Prediction(values)
    slopes = []
    for one, other in (pairs, pairs[::-1]):
        alone = np.abs(single.values[one] - single.values[sound])
        seen = np.abs(together.values - single.values[other]) > SEEN_SHARE * alone
        slopes.append(np.where(seen, single.slope[one], 0.0))
    first, second = slopes
    ranged = (single.slope[pairs[0]] != 0.0).any(axis=1)[:, None]
    spread = np.where(ranged, second, 0.0) ** 2 + np.maximum(*(single.variance[rows] for rows in pairs))
    common = None
    if single.common is not None and together.common is not None:
        common = np.concatenate([single.common, together.common])
    return Prediction(
        values,
        slope=np.concatenate([single.slope, np.where(ranged, first, second)]),
        variance=np.concatenate([single.variance, spread]),
        common=common,
    )


SEEN_SHARE = 0.5
"""A fault of a pair is seen in an answer where it moves it by more than this share of what it does alone."""
