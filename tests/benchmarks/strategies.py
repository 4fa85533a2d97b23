"""Ways to go about a case, compared over drawn faults: by information, by the textbook, by chance, by codes alone."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from trainer.circuit.chance import Stream
from trainer.circuit.profile import Profile
from trainer.instruments.bench_tests import Price
from trainer.reasoning.advice.channels import Channel
from trainer.reasoning.advice.measured import Standing
from trainer.reasoning.advice.planning import (
    PROVED,
    Chooser,
    best_finding,
    by_belief,
    by_information,
    paid_enough,
    path_to,
)
from trainer.reasoning.universe.hypotheses import Hypotheses
from trainer.reasoning.universe.questions import Test
from trainer.reasoning.verdict.belief import finding_key

Floats = NDArray[np.floating[Any]]

TEXTBOOK = (
    "hear", "codes", "probe", "supply", "module_pairs", "module_returns", "module_grounds", "through_pairs",
    "through_grounds", "wires_engine", "engine_alone", "look_through", "trace", "drops", "reseat_module", "reseat",
    "move", "heat", "lend_module", "plug_pairs", "look_cover", "wires_cover", "cover_alone", "plug_grounds",
    "drops_cover", "reseat_plugs", "lend_injector",
)  # fmt: skip
"""From outside in, cheap first, the cover last: common practice, no published source."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """How one strategy did over many drawn faults: minutes to a proved finding, and the shares proved and wrong."""

    mean_minutes: float
    median_minutes: float
    proved: float
    wrong: float


def textbook(
    left: Sequence[Channel], _standing: Standing, paid: frozenset[Price], _done: Sequence[Test]
) -> Channel | None:
    """Return the next test of the fixed textbook order."""
    open_ones = [channel for channel in left if paid_enough(channel.test, paid)]
    order = {name: place for place, name in enumerate(TEXTBOOK)}
    known = [channel for channel in open_ones if channel.test.name.kind in order]
    return min(known, key=lambda channel: order[channel.test.name.kind], default=None)


def at_random(chance: Stream) -> Chooser:
    """Return the choice of any test that can be done."""

    def choose(
        left: Sequence[Channel], _standing: Standing, paid: frozenset[Price], _done: Sequence[Test]
    ) -> Channel | None:
        open_ones = [channel for channel in left if paid_enough(channel.test, paid)]
        return open_ones[chance.below(len(open_ones))] if open_ones else None

    return choose


def codes_only(
    left: Sequence[Channel], _standing: Standing, paid: frozenset[Price], _done: Sequence[Test]
) -> Channel | None:
    """Return the test and then its codes, and nothing more."""
    return next(
        (channel for name in ("hear", "codes") for channel in left
         if channel.test.name.kind == name and paid_enough(channel.test, paid)), None,
    )  # fmt: skip


def compared(
    profile: Profile, hypotheses: Hypotheses, channels: Sequence[Channel], drawn: int, seed: int
) -> dict[str, Outcome]:
    """Return how each strategy does over faults drawn by their priors; what a test shows is drawn by its channel.

    Codes alone end with a guess; the others with a proof or with nothing left to do.
    """
    proved = best_finding([finding_key(claims) for claims in hypotheses.claims])
    keys = [finding_key(claims) for claims in hypotheses.claims]
    standing, results = by_belief(proved), {}
    for name, choose in {
        "best path": by_information(profile.minutes),
        "best path, not looking ahead": by_information(profile.minutes, ahead=False),
        "textbook order": textbook,
        "random order": at_random(Stream(seed, "order")),
        "codes only": codes_only,
    }.items():
        chance = Stream(seed, "faults")
        minutes, sure, wrong = [], 0, 0
        for number in range(drawn):
            true = _drawn(hypotheses.prior, chance)
            shown = Stream(seed, f"answers {number}")

            def answered(before: Standing, test: Test, true: int = true, shown: Stream = shown) -> Standing:
                channel = next(one for one in channels if one.test is test)
                return standing(channel.after(before.probability, _drawn(channel.table[channel.label[true]], shown)))

            steps, left = path_to(
                lambda _standing: channels, standing(hypotheses.prior), profile.minutes, answered, choose
            )
            posterior = left.probability
            minutes.append(sum(step.minutes for step in steps))
            sure += proved(posterior) >= PROVED
            sums: dict[object, float] = {}
            for key, weight in zip(keys, posterior, strict=True):
                sums[key] = sums.get(key, 0.0) + float(weight)
            wrong += max(sums, key=lambda key: sums[key]) != keys[true]
        results[name] = Outcome(float(np.mean(minutes)), float(np.median(minutes)), sure / drawn, wrong / drawn)
    return results


def _drawn(chances: Floats, chance: Stream) -> int:
    mark = float(chance.uniform(1)[0]) * float(chances.sum())
    return min(int(np.searchsorted(np.cumsum(chances), mark, side="right")), len(chances) - 1)
