"""A network edited in closed form is the network solved anew."""

from __future__ import annotations

import numpy as np
import pytest

from tests.engines import ALL, worst
from trainer.circuit.drive import port_nodes, rail_branches
from trainer.circuit.edits import EditedNetwork, edit_between
from trainer.circuit.elements import RAIL
from trainer.circuit.fault_space import single_faults
from trainer.circuit.faults import with_faults
from trainer.circuit.harness import circuit_of
from trainer.circuit.network import solve
from trainer.circuit.profile import Profile

REFERENCE_OHM = 10.0


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_every_fault_as_an_edit_gives_the_ports_of_the_faulty_circuit(profile: Profile) -> None:
    """Impedances run to 1e9 ohm: compared as the currents that 10 ohm at each port would let through, to 1e-6."""
    sound = circuit_of(profile)
    live = frozenset(profile.wiring.outputs)
    base, ports = rail_branches(sound, live), port_nodes(sound)
    sources = [{RAIL: 1.0, "battery.source": 0.0}, *([{RAIL: 0.0, "battery.source": 0.0}] * len(ports))]
    injections = [{}, *({a: -1.0, b: 1.0} for a, b in ports)]
    network = EditedNetwork(base, sources, injections, ports)
    loads = np.eye(len(ports)) * REFERENCE_OHM
    for fault in single_faults(profile):
        faulty = rail_branches(with_faults(sound, [fault], worst(fault)), live)
        edited = network.outputs(edit_between(base, faulty))
        direct = solve(list(faulty.values()), sources, injections)
        anew = np.array([direct.voltage(a) - direct.voltage(b) for a, b in ports])
        through = [np.linalg.solve(loads - each[:, 1:], each[:, 0]) for each in (edited, anew)]
        assert through[0] == pytest.approx(through[1], abs=1e-6)


def test_taking_a_branch_out_is_leaving_it_out() -> None:
    branches = {"a": ("rail", "x", 2.0), "b": ("x", "ground", 3.0), "c": ("x", "ground", 6.0)}
    network = EditedNetwork(branches, [{"rail": 10.0}], [{}], [("x", "ground")], ["a"])
    assert network.outputs(edit_between(branches, branches))[:, 0] == pytest.approx([5.0, 2.5])
    left = {name: branch for name, branch in branches.items() if name != "c"}
    assert network.outputs(edit_between(branches, left))[:, 0] == pytest.approx([6.0, 2.0])
    moved = {**branches, "c": ("rail", "x", 6.0)}
    assert network.outputs(edit_between(branches, moved))[0, 0] == pytest.approx(10.0 * 3.0 / 4.5)
