"""What every distinct circuit shows with nothing driven: ohms, insulation, volts at rest, a lamp, a battery's crank.

One network is solved, then an edit of it for each circuit, all pairs of pins at once.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.edits import EditedNetwork
from trainer.circuit.elements import BATTERY, GROUND
from trainer.circuit.network import Branch
from trainer.circuit.profile import Profile
from trainer.instruments.bench import Pin, node_of
from trainer.instruments.ohmmeter import METER_CURRENT_A, VOLTMETER_OHM, resting_branches
from trainer.instruments.on_battery import lamp_current_a, starter_branch
from trainer.reasoning.universe.distinct import Group
from trainer.reasoning.universe.questions import Question
from trainer.reasoning.universe.scales import accuracy_scale, insulation_scale, ohm_scale, volts_scale

AT_REST = frozenset({"ohms", "insulation", "volts", "lamp", "crank"})
"""Kinds of questions that are answered here."""

LAMP_LEAST_A = 0.02
"""What two readings of a lamp's current differ by at least: from memory."""


def is_loaded(question: Question) -> bool:
    """Tell whether a question sends amperes, under which some joints read otherwise than under a meter."""
    return question.kind == "lamp"


def at_rest(profile: Profile, group: Group, questions: Sequence[Question]) -> dict[Question, Floats]:
    """Return what each circuit of a group shows, by question; all questions are of one load, or all of a crank."""
    loaded, cranked = is_loaded(questions[0]), questions[0].kind == "crank"
    base: dict[str, Branch] = resting_branches(group.base, loaded=loaded)
    if cranked:
        base["starter"] = starter_branch(profile)
    battery_v = profile.module.battery_v
    pairs = [_nodes(profile, question) for question in questions]
    sources = [{"battery.source": battery_v}, *([{"battery.source": 0.0}] * len(pairs))]
    injections: list[Mapping[str, float]] = [{}, *({a: 1.0, b: -1.0} for a, b in pairs)]
    network = EditedNetwork(base, sources, injections, pairs)
    seen = np.array([network.outputs(edit) for edit in group.edits])
    return {
        question: _shown(profile, question, seen[:, place, 0], np.asarray(seen[:, place, place + 1]))[:, None]
        for place, question in enumerate(questions)
    }


def _shown(profile: Profile, question: Question, volts: Floats, ohm: Floats) -> Floats:
    """Return what is shown on its scale, from open-circuit voltage and resistance between two nodes."""
    if question.kind == "crank":
        return volts_scale(volts)
    if question.kind == "volts":
        return volts_scale(volts * VOLTMETER_OHM / (VOLTMETER_OHM + np.abs(ohm)))
    if question.kind == "lamp":
        return accuracy_scale(lamp_current_a(profile, np.abs(ohm)), 1.0, LAMP_LEAST_A)
    if question.kind == "insulation":
        return insulation_scale(np.abs(ohm), profile.meter)
    # voltage on the wire adds to what the meter's own current drops
    return ohm_scale(np.abs(ohm + volts / METER_CURRENT_A), profile.meter)


def _nodes(profile: Profile, question: Question) -> tuple[str, str]:
    if question.kind == "crank":
        return BATTERY, GROUND
    first, second = question.pins
    return node_at(profile, first), node_at(profile, second)


def node_at(profile: Profile, pin: Pin | None) -> str:
    """Return a pin's node, engine ground for None."""
    return GROUND if pin is None else node_of(profile, pin)
