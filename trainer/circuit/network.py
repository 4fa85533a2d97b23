"""Nodal analysis of a resistive network: node voltages, branch currents, and its reduction to ports.

Every resistance keeps its current as an unknown and its equation is scaled by 1 + R, so that 0 Ω and 1 GΩ are
solved by the same lines. Each node leaks to ground through sound insulation, so that nothing floats.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.elements import GROUND, INSULATION_OHM

Branch = tuple[str, str, float]
"""A resistance: from node, to node, ohm."""


@dataclass(frozen=True, slots=True)
class Solution:
    """Node voltages in volt, shape (node, column), and branch currents in ampere, shape (branch, column)."""

    node_index: Mapping[str, int]
    voltage_v: Floats
    current_a: Floats

    def voltage(self, node: str) -> Floats:
        """Return the voltage of a node in every column."""
        if node == GROUND:
            return np.zeros(self.voltage_v.shape[1])
        return np.asarray(self.voltage_v[self.node_index[node]])


def system_of(
    branches: Sequence[Branch], sources: Sequence[Mapping[str, float]], injections: Sequence[Mapping[str, float]]
) -> tuple[Floats, Floats, dict[str, int]]:
    """Return matrix, right sides and the row of every free node; branch currents follow the nodes, in order.

    Raises ValueError if the columns disagree on which nodes are sources.
    """
    fixed = tuple(sources[0]) if sources else ()
    if any(tuple(column) != fixed for column in sources) or len(sources) != len(injections):
        raise ValueError("every column names the same source nodes, in the same order")
    held = {GROUND, *fixed}
    free = dict.fromkeys(node for a, b, _ in branches for node in (a, b) if node not in held)
    index = {node: row for row, node in enumerate(free)}
    count, columns = len(index), len(sources)
    size = count + len(branches)
    matrix = np.zeros((size, size))
    right = np.zeros((size, columns))
    matrix[range(count), range(count)] = 1.0 / INSULATION_OHM
    for row, (a, b, ohm) in enumerate(branches, start=count):
        scale = 1.0 / (1.0 + ohm)
        matrix[row, row] = -ohm * scale
        for node, sign in ((a, 1.0), (b, -1.0)):
            if node in index:
                matrix[index[node], row] += sign
                matrix[row, index[node]] += sign * scale
            elif node != GROUND:
                right[row] -= sign * scale * np.array([column[node] for column in sources])
    for number, column in enumerate(injections):
        for node, current_a in column.items():
            if node in index:
                right[index[node], number] += current_a
    return matrix, right, index


def solve(
    branches: Sequence[Branch],
    sources: Sequence[Mapping[str, float]],
    injections: Sequence[Mapping[str, float]],
) -> Solution:
    """Solve one network for many columns at once.

    A column gives the voltage of every source node (all columns name the same nodes) and the current that is put
    into other nodes, in ampere. Raises ValueError if the columns disagree on which nodes are sources.
    """
    matrix, right, index = system_of(branches, sources, injections)
    count, fixed = len(index), tuple(sources[0]) if sources else ()
    solved = np.linalg.solve(matrix, right)
    voltages = (
        np.concatenate([solved[:count], np.array([[column[node] for column in sources] for node in fixed])])
        if fixed
        else solved[:count]
    )
    return Solution({**index, **{node: count + row for row, node in enumerate(fixed)}}, voltages, solved[count:])


@dataclass(frozen=True, slots=True)
class Ports:
    """A network seen from its ports: `v = rail·V + battery·V_battery − impedance·i`, with branches watched.

    Shapes: (port,) and (port, port); the watched currents are `watched_rail·V + watched_battery·V_battery +
    watched_port·i`, shapes (watched,) and (watched, port).
    """

    rail: Floats
    battery: Floats
    impedance_ohm: Floats
    watched_rail: Floats
    watched_battery: Floats
    watched_port: Floats


def port_columns(
    ports: Sequence[tuple[str, str]], rail: str, battery: str
) -> tuple[list[dict[str, float]], list[dict[str, float]]]:
    """Return the columns that reduce a network, as sources and injections: rail, battery, one ampere a port."""
    none = {rail: 0.0, battery: 0.0}
    sources = [{**none, rail: 1.0}, {**none, battery: 1.0}, *(dict(none) for _port in ports)]
    return sources, [{}, {}, *({a: -1.0, b: 1.0} for a, b in ports)]


def ports_of(
    branches: Sequence[Branch], ports: Sequence[tuple[str, str]], watched: Sequence[int], rail: str, battery: str
) -> Ports:
    """Reduce a network with two sources to its ports; a port's current leaves its first node, enters its second."""
    solution = solve(branches, *port_columns(ports, rail, battery))
    across = np.array([solution.voltage(a) - solution.voltage(b) for a, b in ports])
    current = solution.current_a[list(watched)]
    return Ports(
        rail=across[:, 0],
        battery=across[:, 1],
        impedance_ohm=-across[:, 2:],
        watched_rail=current[:, 0],
        watched_battery=current[:, 1],
        watched_port=current[:, 2:],
    )
