"""Everything that a profile allows to be wrong, one fault at a time, with how likely it is before any evidence."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import permutations

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.elements import Location
from trainer.circuit.fault import Fault, FaultKind
from trainer.circuit.fault_space import single_faults
from trainer.circuit.profile import PASSES, Profile
from trainer.reasoning.universe.finding import Claim, truth_of
from trainer.reasoning.universe.severity import severities_of

Faults = tuple[Fault, ...]


@dataclass(frozen=True)
class Hypotheses:
    """What can be wrong, each as its faults (none: the circuit passes), with its prior; the priors sum to 1."""

    faults: tuple[Faults, ...]
    prior: Floats

    @cached_property
    def claims(self) -> tuple[tuple[Claim, ...], ...]:
        """What would be right to say for each."""
        return tuple(truth_of(faults) for faults in self.faults)


def same_claims(said: Sequence[Claim], true: Sequence[Claim]) -> bool:
    """Tell whether two findings name the same: cylinders, places, kinds, and sides where both name one."""
    if len(said) != len(true):
        return False
    return any(all(map(_same, said, order)) for order in permutations(true))


def _same(one: Claim, other: Claim) -> bool:
    sides = one.side is None or other.side is None or one.side is other.side
    return sides and (one.cylinders, one.location, one.kind) == (other.cylinders, other.location, other.kind)


def single_hypotheses(profile: Profile, priors: Mapping[str, float] | None = None) -> Hypotheses:
    """Return all single faults of a profile, at each severity of its kind, and "circuit passes".

    A location's share goes to its kinds by their weights, and within a kind to every place alike; the logarithm of a
    severity is spread evenly over the kind's range. Raises ValueError for priors that do not sum to 1.
    """
    shares = profile.priors if priors is None else priors
    if abs(sum(shares.values()) - 1.0) > 1e-6:
        raise ValueError(f"priors sum to 1, found {sum(shares.values())}")
    faults = single_faults(profile, "grid")
    width = severities_of([(fault,) for fault in faults]).width
    alike: dict[tuple[Location, FaultKind], float] = {}
    for fault, share in zip(faults, width, strict=True):
        alike[fault.location, fault.kind] = alike.get((fault.location, fault.kind), 0.0) + float(share)
    weight: dict[str, float] = {}
    for location, kind in alike:
        weight[location] = weight.get(location, 0.0) + profile.kinds[kind]
    prior = [
        shares[fault.location] * profile.kinds[fault.kind] / weight[fault.location]
        * share / alike[fault.location, fault.kind]
        for fault, share in zip(faults, width, strict=True)
    ]  # fmt: skip
    whole = np.array([shares[PASSES], *prior])
    return Hypotheses(((), *((fault,) for fault in faults)), whole / whole.sum())
