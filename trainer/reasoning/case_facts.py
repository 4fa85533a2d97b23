"""What reasoning starts from: the universe of an engine, which its cases share, and the facts of one case."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from trainer.circuit.profile import Profile
from trainer.instruments.bench_tests import Operation
from trainer.instruments.running import Mechanical
from trainer.reasoning.universe.complaint import Complaint
from trainer.reasoning.universe.expectations import Expectations, expectations_of
from trainer.reasoning.universe.hypotheses import Faults, single_hypotheses
from trainer.reasoning.universe.menu import menu_of
from trainer.reasoning.universe.questions import Test


@dataclass(frozen=True)
class Universe:
    """All single faults of a profile at one temperature, with what they expect; shared by its cases."""

    profile: Profile
    temperature_c: float
    faults: tuple[Faults, ...]
    expectations: Expectations
    menu: tuple[Test, ...]


def universe_of(profile: Profile, temperature_c: float) -> Universe:
    """Return the universe of a profile; nothing in it is solved before it is asked for."""
    faults = single_hypotheses(profile).faults
    return Universe(
        profile, temperature_c, faults, expectations_of(profile, temperature_c, faults), menu_of(profile, temperature_c)
    )


@dataclass(frozen=True)
class CaseFacts:
    """What reasoning needs to know of a case: its truth, the evidence it offers, its bed level and its priors.

    `stored` are the codes that something earlier left in memory; `complaint` says when the trouble shows, if anybody
    has said so. `seed` decides in which tries an intermittent fault shows itself; `mechanical` is what ails an engine
    whose circuit passes.
    """

    profile: Profile
    temperature_c: float
    truth: Faults
    evidence: frozenset[Operation]
    bed_dba: float
    priors: Mapping[str, float] | None = None
    stored: frozenset[str] = frozenset()
    complaint: Complaint | None = None
    seed: int = 0
    mechanical: Mechanical | None = None

    @property
    def rough(self) -> bool:
        """Whether anybody complains of how the engine runs."""
        return self.complaint is not Complaint.CODE_ONLY
