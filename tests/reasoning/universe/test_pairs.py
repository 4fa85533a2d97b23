"""Two faults at once: the true pair is thought of, and is proved or said to be hidden."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.engines import ALL, NORTH
from tests.universes import UNIVERSES
from trainer.cases.drawing.random_case import drawable
from trainer.cases.single_case.shipped import case_named, case_names
from trainer.circuit.chance import Stream
from trainer.circuit.elements import Location, Side
from trainer.circuit.profile import Profile
from trainer.reasoning.reasoner import Reasoner
from trainer.reasoning.universe.finding import claim_of, truth_of
from trainer.reasoning.universe.hypotheses import Faults
from trainer.reasoning.universe.pairs import share_nothing
from trainer.reasoning.verdict.belief import finding_key


def random_pairs(profile: Profile, count: int, seed: int) -> list[Faults]:
    """Return pairs of faults that share no cylinder, drawn evenly."""
    faults, chance, pairs = drawable(profile, 3), Stream(seed, "pairs"), list[Faults]()
    while len(pairs) < count:
        one, other = (faults[chance.below(len(faults))] for _ in range(2))
        if share_nothing((one,), (other,)):
            pairs.append((one, other))
    return pairs


def reasoner_with(profile: Profile, faults: Faults) -> Reasoner:
    name = next(name for name in case_names() if case_named(name).profile == profile)
    return UNIVERSES.reasoner(replace(case_named(name), faults=faults, stored=(), complaint=None))


def thought_of_and_settled(profile: Profile, faults: Faults) -> bool:
    """Tell whether a pair's finding is found by its answers and proved, or one fault said to hide the other."""
    reasoner = reasoner_with(profile, faults)
    if reasoner.hidden is not None:
        return True
    key = finding_key(truth_of(faults))
    singles = reasoner.universe.faults
    found = {finding_key(truth_of((*singles[one], *singles[other]))) for one, other in reasoner.found_pairs}
    return key in found and reasoner.everything.findings[key] >= 0.95


@pytest.mark.parametrize("faults", random_pairs(NORTH, 2, 5), ids=str)
def test_a_random_pair_is_thought_of_and_proved_or_hidden(faults: Faults) -> None:
    assert thought_of_and_settled(NORTH, faults)


@pytest.mark.long
@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_two_hundred_pairs_of_every_engine_are_thought_of_and_proved_or_hidden(profile: Profile) -> None:
    missed = [faults for faults in random_pairs(profile, 200, 11) if not thought_of_and_settled(profile, faults)]
    assert missed == []


def test_where_one_fault_hides_the_other_naming_both_is_proved_as_far_as_it_can_be() -> None:
    """A return on ground makes its injector click in every slot, so a contact that opens when moved is not heard."""
    faults = drawable(NORTH, 3)
    moved = next(f for f in faults if f.kind == "open_when_moved" and f.cylinders == (5, 7) and f.side is Side.FEED)
    short = next(
        f
        for f in faults
        if (f.kind, f.location, f.cylinders) == ("short_to_ground", Location.ENGINE_HARNESS, (6,))
        and f.side is Side.RETURN
    )
    reasoner = reasoner_with(NORTH, (moved, short))
    assert reasoner.hidden == (claim_of(short), claim_of(moved))
    assert finding_key(truth_of((moved, short))) in reasoner.everything.findings
