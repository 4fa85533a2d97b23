"""Which test to do next, and the whole path to a finding, its repair and its retest."""

from __future__ import annotations

from collections.abc import Callable, Collection, Hashable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from trainer.arrays import Floats
from trainer.instruments.bench_tests import BenchTest, Price
from trainer.reasoning.advice.channels import Channel
from trainer.reasoning.advice.measured import PROVED, Standing
from trainer.reasoning.advice.prices import after_plugging_back, minutes_of, unpaid
from trainer.reasoning.universe.questions import Test

FREE_MINUTES = 0.5
"""What a test costs in time once everything it needs is paid: reading a meter. From memory."""

LEAST_BITS = 0.01
AHEAD_TESTS, AHEAD_OUTCOMES = 5, 6
"""How many of the best tests, and of each one's likeliest outcomes, are looked one step beyond."""


@dataclass(frozen=True, slots=True)
class Choice:
    """A test that can be done next: expected bits, minutes now, and bits per minute looking one step ahead."""

    channel: Channel
    bits: float
    minutes: float
    rate: float

    @property
    def test(self) -> Test:
        """The test itself."""
        return self.channel.test


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a path: what was done, its minutes, what it was expected to tell and what is believed after it."""

    name: BenchTest
    minutes: float
    bits: float
    belief: float


def cost_of(test: Test, paid: Collection[Price], minutes: Mapping[str, float]) -> tuple[float, frozenset[Price]]:
    """Return a test's minutes now, and what is paid after it."""
    opening = unpaid(test.opens, paid)
    before = frozenset(paid) | set(opening)
    left = after_plugging_back(before) if test.plugged else before
    new = unpaid(test.prices, left)
    after = left | set(new)
    total = minutes_of([*opening, *new], minutes)
    # what a plugged test opens on its way is closed again by it
    return max(total, FREE_MINUTES), after_plugging_back(after) if test.plugged else after


def paid_enough(test: Test, paid: Collection[Price]) -> bool:
    """Tell whether a test can be done now."""
    return set(test.needs) <= set(paid)


def ranked(
    channels: Sequence[Channel], probability: Floats, paid: Collection[Price], minutes: Mapping[str, float],
    *, ahead: bool = True,
) -> list[Choice]:  # fmt: skip
    """Return the tests by bits per minute, best first; the best few are looked at one step further."""
    choices = []
    for channel in channels:
        if not paid_enough(channel.test, paid):
            continue
        bits = channel.bits(probability)
        price, _after = cost_of(channel.test, paid, minutes)
        choices.append((bits / price, bits, price, channel))
    choices.sort(key=lambda choice: (-choice[0], str(choice[3].test.name)))
    result = []
    others = [channel for _rate, _bits, _price, channel in choices[: 3 * AHEAD_TESTS]]
    others += [channel for channel in channels if not paid_enough(channel.test, paid)]
    for place, (rate, bits, price, channel) in enumerate(choices):
        beyond = rate
        if ahead and place < AHEAD_TESTS and bits > LEAST_BITS:
            after = cost_of(channel.test, paid, minutes)[1]
            beyond = max(rate, _rate_ahead(channel, bits, price, others, probability, after, minutes))
        result.append(Choice(channel, bits, price, beyond))
    return sorted(result, key=lambda choice: (-choice.rate, str(choice.test.name)))


def _rate_ahead(
    channel: Channel, bits: float, price: float, others: Sequence[Channel], probability: Floats,
    paid: frozenset[Price], minutes: Mapping[str, float],
) -> float:  # fmt: skip
    """Return bits per minute of a test together with the best single test after each of its likeliest outcomes."""
    chance = channel.outcomes(probability)
    likely = np.argsort(-chance)[:AHEAD_OUTCOMES]
    more_bits, more_minutes = 0.0, 0.0
    for outcome in likely:
        after = channel.after(probability, int(outcome))
        best = (0.0, 0.0, FREE_MINUTES)
        for other in others:
            if other is channel or not paid_enough(other.test, paid):
                continue
            beyond = other.bits(after)
            cost = cost_of(other.test, paid, minutes)[0]
            if beyond > LEAST_BITS and beyond / cost > best[0]:
                best = (beyond / cost, beyond, cost)
        if best[1] > 0.0:
            more_bits += float(chance[outcome]) * best[1]
            more_minutes += float(chance[outcome]) * best[2]
    return (bits + more_bits) / (price + more_minutes)


Proved = Callable[[Floats], float]
"""Returns the posterior of the best finding."""


def best_finding(keys: Sequence[Hashable]) -> Proved:
    """Return a measure of how sure the best finding is, for hypotheses that lead to these findings."""
    names = {key: place for place, key in enumerate(dict.fromkeys(keys))}
    index = np.array([names[key] for key in keys])
    return lambda probability: float(np.bincount(index, weights=probability).max())


def path_to(
    available: Callable[[Standing], Sequence[Channel]], begin: Standing, minutes: Mapping[str, float],
    answered: Callable[[Standing, Test], Standing], choose: Chooser,
) -> tuple[tuple[Step, ...], Standing]:  # fmt: skip
    """Do one test after another until a finding is proved or none is chosen; return the steps and the final standing.

    `available` gives the tests to think of; `answered` where it stands after a test as it comes out here. Where no test
    tells more and the place is sure, it is measured all the same: a repair there would be one without measurement.
    """
    paid: frozenset[Price] = frozenset()
    standing, steps = begin, list[Step]()
    done = list[Test]()
    while not standing.proves(PROVED):
        names = {test.name for test in done}
        chosen = None
        for doubtful in standing.in_turn:
            left = [channel for channel in available(doubtful) if channel.test.name not in names]
            chosen = choose(left, doubtful, paid, done)
            if chosen is not None:
                break
        if chosen is None:
            break
        bits = chosen.bits(standing.probability)
        price, paid = cost_of(chosen.test, paid, minutes)
        standing = answered(standing, chosen.test)
        done.append(chosen.test)
        steps.append(Step(chosen.test.name, price, bits, standing.sure))
    return tuple(steps), standing


Chooser = Callable[[Sequence[Channel], Standing, frozenset[Price], Sequence[Test]], Channel | None]
"""Returns the next test, given the standing, the paid prices and the tests done; None to stop."""


def by_belief(proved: Proved) -> Callable[[Floats], Standing]:
    """Return a function that makes a standing from a probability alone, without evidence."""
    return lambda probability: Standing(probability, proved(probability), True, probability)


def by_information(minutes: Mapping[str, float], *, ahead: bool = True) -> Chooser:
    """Return the choice of the test with most bits per minute, as long as any tells something."""

    def choose(
        left: Sequence[Channel], standing: Standing, paid: frozenset[Price], _done: Sequence[Test]
    ) -> Channel | None:
        order = ranked(left, standing.probability, paid, minutes, ahead=ahead)
        return next((choice.channel for choice in order if choice.bits > LEAST_BITS), None)

    return choose
