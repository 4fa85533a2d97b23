"""One network solved once, then many small edits of it without solving it again.

A changed resistance is the old branch with a voltage source in series, a new branch a current source between its
nodes (compensation theorem). Both strengths follow from a small system as large as the edit.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.elements import GROUND
from trainer.circuit.network import Branch, system_of

FAR_OHM = 1e12
"""What a branch that is taken out is raised to."""


@dataclass(frozen=True, slots=True)
class Edit:
    """What differs from the base network: branches at another resistance, branches taken out, branches put in."""

    changed: Mapping[str, float]
    gone: frozenset[str]
    added: tuple[Branch, ...]


def edit_between(base: Mapping[str, Branch], other: Mapping[str, Branch]) -> Edit:
    """Return what turns one named network into another."""
    changed: dict[str, float] = {}
    gone, added = set(), []
    for name, branch in other.items():
        old = base.get(name)
        if old is branch:
            continue
        if old is not None and old[:2] == branch[:2]:
            if old[2] != branch[2]:
                changed[name] = branch[2]
            continue
        if old is not None:
            gone.add(name)
        added.append(branch)
    gone |= base.keys() - other.keys()
    return Edit(changed, frozenset(gone), tuple(added))


class EditedNetwork:
    """A base network with its columns solved; edits give what its outputs become.

    An output is the voltage between two nodes or the current of a branch. Results have shape (output, column).
    """

    def __init__(
        self,
        branches: Mapping[str, Branch],
        sources: Sequence[Mapping[str, float]],
        injections: Sequence[Mapping[str, float]],
        across: Sequence[tuple[str, str]],
        through: Sequence[str] = (),
    ) -> None:
        self._branches = dict(branches)
        matrix, right, self._index = system_of(tuple(branches.values()), sources, injections)
        self._first = matrix.shape[0] - len(branches)
        self._row = {name: self._first + place for place, name in enumerate(branches)}
        inverse = np.linalg.inv(matrix)
        self._inverse = inverse
        self._solved = inverse @ right
        # a held node (source, ground) has no row of its own: its voltage is the column's
        self._held = {node: np.array([column[node] for column in sources]) for node in (sources[0] if sources else {})}
        self._held[GROUND] = np.zeros(right.shape[1])
        self._outputs = np.zeros((len(across) + len(through), matrix.shape[0]))
        self._fixed = np.zeros((len(across) + len(through), right.shape[1]))
        for row, (a, b) in enumerate(across):
            for node, sign in ((a, 1.0), (b, -1.0)):
                if node in self._index:
                    self._outputs[row, self._index[node]] += sign
                else:
                    self._fixed[row] += sign * self._held[node]
        for row, name in enumerate(through, start=len(across)):
            self._outputs[row, self._row[name]] = 1.0
        self._seen = self._outputs @ inverse
        self._base = self._outputs @ self._solved + self._fixed

    def outputs(self, edit: Edit) -> Floats:
        """Return the outputs of the edited network; raises KeyError for a node or branch that is not there."""
        count = len(edit.changed) + len(edit.gone) + len(edit.added)
        if not count:
            return np.asarray(self._base)
        size = self._inverse.shape[0]
        # strength[:, k] is the right side that unit k adds; watch[k] the quantity that unit k answers to
        strength, watch = np.zeros((size, count)), np.zeros((count, size))
        shift = np.zeros((count, self._solved.shape[1]))
        weight = np.ones(count)
        unit = 0
        for name, ohm in [*edit.changed.items(), *((name, FAR_OHM) for name in sorted(edit.gone))]:
            row, old = self._row[name], self._branches[name][2]
            strength[row, unit] = (ohm - old) / (1.0 + old)
            watch[unit, row] = 1.0
            unit += 1
        for a, b, ohm in edit.added:
            for node, sign in ((a, 1.0), (b, -1.0)):
                if node in self._index:
                    strength[self._index[node], unit] -= sign
                    watch[unit, self._index[node]] += sign
                else:
                    shift[unit] += sign * self._held[node]
            weight[unit] = ohm
            unit += 1
        raised = self._inverse @ strength
        system = np.diag(weight) - watch @ raised
        size_of_row = np.abs(system).max(axis=1)[:, None]
        unknown = np.linalg.solve(system / size_of_row, (watch @ self._solved + shift) / size_of_row)
        return np.asarray(self._base + (self._seen @ strength) @ unknown)
