"""The trade's order of tests: run the test and say what each slot is, codes, dead readings, then live ones, drops last.

The battery and what feeds the module come before what hangs on it: quick readings at battery voltage, from outside.
Dead readings begin outside, at the module plug or the pass-through connector, and go under the cover after that. A
later step waits while a test before it in this order could settle the case. No live reading comes before a first dead
one that tells something. Within a step the test with most bits per minute is next. Looking into an opened connector
belongs to the readings there: opening it first would re-seat its contacts before they were heard. Common practice, no
published source.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from enum import IntEnum

from trainer.arrays import Floats
from trainer.instruments.bench_tests import BenchTestKind, Price, Spot
from trainer.reasoning.advice.channels import Channel
from trainer.reasoning.advice.measured import PROVED, Standing, is_dead_reading, is_electrical
from trainer.reasoning.advice.planning import LEAST_BITS, Choice, ranked
from trainer.reasoning.universe.questions import Test


class Stage(IntEnum):
    """Steps of the order."""

    HEAR = 0
    CODES = 1
    BATTERY = 2
    OUTSIDE = 3
    COVER = 4
    EXCHANGE = 5
    LIVE = 6
    DROPS = 7
    LENT = 8


_KINDS: Mapping[Stage, tuple[BenchTestKind, ...]] = {
    Stage.HEAR: (BenchTestKind.HEAR,),
    Stage.CODES: (BenchTestKind.THROUGH_COVER, BenchTestKind.CODES),
    Stage.BATTERY: (BenchTestKind.CRANK, BenchTestKind.POWER_DROPS),
    Stage.COVER: (
        BenchTestKind.PLUG_PAIRS, BenchTestKind.PLUG_GROUNDS, BenchTestKind.WIRES_COVER, BenchTestKind.COVER_ALONE,
        BenchTestKind.PLUG_VOLTS, BenchTestKind.PROBE, BenchTestKind.LAMP_COVER, BenchTestKind.COVER_INSULATION,
        BenchTestKind.LOOK_COVER, BenchTestKind.DRAG_COVER,
        BenchTestKind.RESEAT_PLUGS, BenchTestKind.PAIRS_RESEATED_PLUGS,
    ),
    Stage.EXCHANGE: (BenchTestKind.SWAP,),
    Stage.LIVE: (
        BenchTestKind.SUPPLY, BenchTestKind.TRACE, BenchTestKind.TRACE_MOVED, BenchTestKind.TRACE_WARM,
        BenchTestKind.DUMMY, BenchTestKind.CLAMP,
    ),
    Stage.DROPS: (BenchTestKind.DROPS, BenchTestKind.DROPS_COVER),
    Stage.LENT: (BenchTestKind.LEND_MODULE, BenchTestKind.LEND_INJECTOR),
}  # fmt: skip
_STAGES = {kind: stage for stage, kinds in _KINDS.items() for kind in kinds}
"""Everything else is done outside: ohms, eyes, moving, warming and re-seating."""

BEGIN = (BenchTestKind.HEAR, BenchTestKind.CODES)
"""What comes before everything else, in this order."""

SETTLES_FROM, LIKELY_FROM = 0.02, 0.005
"""From which chance of proving a finding on a test could settle the case; less likely outcomes are not looked at."""

SEPARATES_BITS = 0.5
"""What a test must tell of two places left, each as likely as the other, to settle which."""

Sure = Callable[[Floats], float]
"""Returns the chance of the best finding."""


def stage_of(test: Test) -> Stage:
    """Return the step of the order that a test belongs to; what is moved or warmed under a cover waits for it."""
    if isinstance(test.name.at, Spot) and test.name.at.bank and not is_live(test):
        return Stage.COVER
    return _STAGES.get(test.name.kind, Stage.OUTSIDE)


def is_live(test: Test) -> bool:
    """Tell whether a test needs a meter on the driven engine."""
    return _STAGES.get(test.name.kind) in (Stage.LIVE, Stage.DROPS)


def could_settle(channel: Channel, standing: Standing, sure: Sure) -> bool:
    """Tell whether a test may end the case: prove a finding, or measure the one that is likely enough already."""
    if standing.sure >= PROVED:
        return channel.bits(standing.doubt) >= SEPARATES_BITS
    chance = channel.outcomes(standing.probability)
    total = 0.0
    for outcome in (chance > LIKELY_FROM).nonzero()[0]:
        if sure(channel.after(standing.probability, int(outcome))) >= PROVED:
            total += float(chance[outcome])
            if total >= SETTLES_FROM:
                return True
    return False


def in_trade_order(
    channels: Sequence[Channel], standing: Standing, paid: Collection[Price], minutes: Mapping[str, float], sure: Sure,
    *, ahead: bool = True, dead_done: bool = False,
) -> list[Choice]:  # fmt: skip
    """Return the tests that can be done next, the one to do first; what tells nothing is left out.

    `channels` are those not done yet; `dead_done` says that a dead reading has been taken.
    """
    order = ranked(channels, standing.doubt, paid, minutes, ahead=ahead)
    begin = [one for kind in BEGIN for one in order if one.test.name.kind is kind]
    telling = [one for one in order if one.bits > LEAST_BITS and one not in begin]
    telling = [one for one in telling if stage_of(one.test) is not Stage.LENT]
    if not standing.measured and standing.sure >= PROVED:
        telling = [one for one in telling if _measures(one.test, mates=standing.passes)]
    left = [*begin, *telling]
    if begin:
        return left
    while telling:
        first = telling[0]
        before = [one for one in telling if stage_of(one.test) < stage_of(first.test)]
        held = _first_before(first, before, standing, sure, dead_done=dead_done)
        if held is None:
            break
        telling = [held, *(one for one in telling if one is not held)]
    return telling


def _first_before(
    first: Choice, before: Sequence[Choice], standing: Standing, sure: Sure, *, dead_done: bool
) -> Choice | None:
    """Return the test that has to come before another, None where there is none."""
    if is_live(first.test) and not dead_done:
        dead = next((one for one in before if is_dead(one.test)), None)
        if dead is not None:
            return dead
    return next((one for one in before if could_settle(one.channel, standing, sure)), None)


def is_dead(test: Test) -> bool:
    """Tell whether a test takes readings with the key off."""
    return any(is_dead_reading(question) for question in test.questions)


def _measures(test: Test, *, mates: bool) -> bool:
    """Tell whether a test is a measurement, and of more than one cylinder's pair where mates must be compared."""
    if mates:
        return is_live(test) or test.name.kind in PAIRS
    return any(is_electrical(question) for question in test.questions)


PAIRS = (BenchTestKind.MODULE_PAIRS, BenchTestKind.THROUGH_PAIRS, BenchTestKind.PLUG_PAIRS)
"""The tests that read the pairs of mates at one break point."""
