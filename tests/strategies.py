"""Hypothesis strategies that tests share."""

from hypothesis import strategies as st

from tests.engines import ALL
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import Fault
from trainer.circuit.profile import Profile

FAULTS = {profile.name: single_faults(profile) for profile in ALL}


@st.composite
def faulty_engines(draw: st.DrawFn) -> tuple[Profile, Fault]:
    """A shipped engine and any single fault that it allows."""
    profile = draw(st.sampled_from(ALL))
    return profile, draw(st.sampled_from(FAULTS[profile.name]))
