"""What every hypothesis expects of every question, computed from its own circuit; nothing is typed in.

Most hypotheses leave the same circuit under most work: each distinct circuit is solved, and each distinct network
measured, once.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from functools import cached_property

import numpy as np

from trainer.arrays import Floats
from trainer.circuit.codes import codes_from, known_codes
from trainer.circuit.drive import port_nodes, rail_branches, slots_of
from trainer.circuit.edits import EditedNetwork, edit_between
from trainer.circuit.elements import RAIL, Damage
from trainer.circuit.fault import Conditions
from trainer.circuit.faults import with_faults
from trainer.circuit.harness import circuit_of
from trainer.circuit.network import port_columns
from trainer.circuit.profile import Profile
from trainer.instruments.bench import Work
from trainer.instruments.looking import damage_felt, damage_seen, seen_bridges, sightings_of
from trainer.instruments.on_battery import power_drop_v
from trainer.instruments.requests import POWER_DROPS, PowerDrop
from trainer.reasoning.universe.at_rest import AT_REST, at_rest, is_loaded, node_at
from trainer.reasoning.universe.distinct import DistinctCircuits, content_of
from trainer.reasoning.universe.equivalents import Equivalents, digest_of
from trainer.reasoning.universe.hypotheses import Faults
from trainer.reasoning.universe.questions import EXAMINED, FLAG_UP, RUNNING, Expected, Prediction, Question
from trainer.reasoning.universe.running import running_expected
from trainer.reasoning.universe.scales import (
    CURRENT_STEP_A,
    DIP_STEP_A,
    DIP_STEP_S,
    accuracy_scale,
    ear_spread,
    heard_scale,
)
from trainer.reasoning.universe.severity import severities_of
from trainer.reasoning.universe.slot_traits import SlotTraits, TraceMarks
from trainer.sound.places import places_of
from trainer.sound.traits import ears_of

KEPT, STRAY, OLD, FROM_THE_ROAD = 0.998, 0.002, 0.02, 0.5
"""Chances that a code stands in memory: set by the test just run; by nothing; left by something mended since; left by
an intermittent that is at rest now, or by any fault before the first test. Common practice, no published source."""

CLAMP_PERCENT, CLAMP_LEAST_A = 3.0, 0.1
"""Accuracy of a clamp for direct current: common practice, no published source."""

DROP_LEAST_V = 0.2
"""What two readings of a voltage drop on a pulsed wire differ by at least: from memory."""

POWER_DROP_LEAST_V = 0.1
"""What two readings of a drop between battery and module differ by at least: from memory."""

SEEN, FANCIED = 0.95, 0.01
"""Chances that what can be seen or felt is noticed, and that something is that is not there: from memory."""

FLAGS = frozenset({"codes"}) | EXAMINED
"""Questions that are answered by what is there and what is not."""


class Expectations:
    """What hypotheses of one profile at one temperature expect, kept once computed."""

    def __init__(self, profile: Profile, hypotheses: Sequence[Faults], equivalents: Equivalents) -> None:
        self.profile, self.hypotheses, self.equivalents = profile, tuple(hypotheses), equivalents
        self._circuits = DistinctCircuits(equivalents.sound, self.hypotheses)
        self._row_of = {slot.number: row for row, slot in enumerate(slots_of(profile))}
        self._tests: dict[Work, list[tuple[SlotTraits, ...]]] = {}
        self.kept: dict[Question, Floats] = {}
        self._passes = np.array([not faults for faults in self.hypotheses])
        self._worst: list[frozenset[str]] | None = None
        self.severities = severities_of(self.hypotheses)

    def of(self, questions: Iterable[Question], bed_dba: float, *, rough: bool = True) -> dict[Question, Expected]:
        """Return what is expected of each question under a bed of some level, on an engine that runs rough or not."""
        asked = list(dict.fromkeys(questions))
        self.prepare(asked)
        result = {}
        for question in asked:
            states = question.states()
            weights = tuple(chance for chance, _state in states)
            if question.kind in RUNNING:
                starved = self.kept[states[0][1]] > FLAG_UP
                result[question] = running_expected(self.profile, self._passes, starved, question.kind, rough=rough)
                continue
            shown = tuple(self._prediction(question.kind, self.kept[state], bed_dba) for _chance, state in states)
            result[question] = Expected(shown, question.kind in FLAGS, weights)
        return result

    def prepare(self, questions: Iterable[Question]) -> None:
        """Solve and keep what questions ask for, all together."""
        wanted = dict.fromkeys(state for question in questions for _chance, state in question.states())
        self._fill([state for state in wanted if state not in self.kept])

    def restore(
        self, solved: dict[bytes, SlotTraits], tests: dict[bytes, tuple[SlotTraits, ...]], kept: dict[Question, Floats]
    ) -> None:
        """Replace what was solved here by slots, tests and answers that were solved before."""
        self.equivalents.solved, self.equivalents.tests, self.kept = solved, tests, kept
        self._tests, self._worst = {}, None

    def _prediction(self, kind: str, values: Floats, bed_dba: float) -> Prediction:
        """Return what is predicted over each stretch of severities, from values at its ends."""
        between = self.severities
        if kind in FLAGS:
            return Prediction(between.middle(values), slope=between.slope(values))
        common: Floats | None = None
        deviation: Floats = np.zeros(1)
        if kind == "slot":
            common, deviation = ear_spread(between.middle(values), bed_dba)
            values = heard_scale(values, bed_dba)
        variance = between.bend(values) ** 2 + deviation**2
        return Prediction(between.middle(values), slope=between.slope(values), variance=variance, common=common)

    def _fill(self, questions: Sequence[Question]) -> None:
        resting: dict[tuple[Work, bool, bool], list[Question]] = {}
        driven: dict[Work, list[Question]] = {}
        for question in questions:
            if question.kind in AT_REST:
                key = (question.work, is_loaded(question), question.kind == "crank")
                resting.setdefault(key, []).append(question)
            elif question.kind == "drop":
                driven.setdefault(question.work, []).append(question)
            elif question.kind == "clamp":
                self.kept[question] = self._clamped(question)
            elif question.kind in POWER_DROPS:
                self.kept[question] = self._power_drops(question)
            elif question.kind in RUNNING:
                self.kept[question] = self._starved(question)
            elif question.kind == "codes":
                self.kept[question] = self._codes(question)
            elif question.kind in EXAMINED:
                self.kept[question] = self._examined(question)
            else:
                self.kept[question] = self._in_tests(question)
        for (work, _loaded, _cranked), alike in resting.items():
            self._measure(work, alike)
        for work, alike in driven.items():
            self._drops(work, alike)

    def tests(self, work: Work) -> list[tuple[SlotTraits, ...]]:
        """Return the whole test of every hypothesis as the work has left its engine."""
        work = work.physical()
        if work in self._tests:
            return self._tests[work]
        group = self._circuits.under(work, loaded=True)
        sound = self._circuits.sound(work)
        keys = [digest_of(work.conditions.temperature_c, content_of(circuit, sound)) for circuit in group.circuits]
        new = {
            key: circuit for key, circuit in zip(keys, group.circuits, strict=True) if key not in self.equivalents.tests
        }
        if new:
            solved = self.equivalents.tests_of(group.base, list(new.values()))
            self.equivalents.tests.update(zip(new, solved, strict=True))
        self._tests[work] = [self.equivalents.tests[keys[place]] for place in group.index]
        return self._tests[work]

    def _measure(self, work: Work, questions: Sequence[Question]) -> None:
        """Fill in what is measured at rest."""
        group = self._circuits.under(work, loaded=is_loaded(questions[0]))
        for question, values in at_rest(self.profile, group, questions).items():
            self.kept[question] = values[group.index]

    def _starved(self, question: Question) -> Floats:
        """Return whose injector does not move: it leaves no dip in its own trace."""
        rows = [self._row_of[number] for number in self.profile.cylinders]
        return np.array([[float(test[row].trace.dip_a == 0.0) for row in rows] for test in self.tests(question.work)])

    def _clamped(self, question: Question) -> Floats:
        group = self._circuits.under(question.work, loaded=True)
        slot = next(slot for slot in slots_of(self.profile) if slot.number == question.slot)
        (pin,) = question.pins
        assert pin is not None
        currents_a = self.equivalents.resting_returns_a(group.base, group.circuits, slot)
        clamped_a = currents_a[:, self.profile.cylinders.index(int(pin.name))]
        return accuracy_scale(clamped_a, CLAMP_PERCENT, CLAMP_LEAST_A)[group.index][:, None]

    def _power_drops(self, question: Question) -> Floats:
        group = self._circuits.under(question.work, loaded=True)
        what: PowerDrop = "plus_drop" if question.kind == "plus_drop" else "ground_drop"
        tests = self.tests(question.work)
        dropped_v = np.array([
            power_drop_v(group.circuits[place], test[0].rail_low_v, what)
            for place, test in zip(group.index, tests, strict=True)
        ])  # fmt: skip
        return accuracy_scale(dropped_v, 1.0, POWER_DROP_LEAST_V)[:, None]

    def _drops(self, work: Work, questions: Sequence[Question]) -> None:
        """Fill in voltages between two pins at the end of a pulse, from the solved currents of their slots."""
        group = self._circuits.under(work, loaded=True)
        tests = self.tests(work)
        first = {int(place): number for number, place in reversed(list(enumerate(group.index)))}
        columns = port_columns(port_nodes(group.base), RAIL, "battery.source")
        live_in = {slot.number: slot.live for slot in slots_of(self.profile)}
        battery_v = self.profile.module.battery_v
        for live in dict.fromkeys(live_in[question.slot] for question in questions):
            alike = [question for question in questions if live_in[question.slot] == live]
            base = rail_branches(group.base, live)
            pairs = [(node_at(self.profile, a), node_at(self.profile, b)) for a, b in (one.pins for one in alike)]
            network = EditedNetwork(base, *columns, pairs)
            volts = np.empty((len(group.circuits), len(alike)))
            for place, circuit in enumerate(group.circuits):
                seen = network.outputs(edit_between(base, rail_branches(circuit, live)))
                for column, question in enumerate(alike):
                    traits = tests[first[place]][self._row_of[question.slot]]
                    ends = (traits.coil_end_a, traits.return_end_a)
                    drive = np.concatenate([[traits.rail_end_v, battery_v], *ends])
                    volts[place, column] = abs(float(seen[column] @ drive))
            for column, question in enumerate(alike):
                self.kept[question] = accuracy_scale(volts[group.index, column], 1.0, DROP_LEAST_V)[:, None]

    def _in_tests(self, question: Question) -> Floats:
        """Return what every hypothesis's whole test answers; engines that work alike have one and the same test."""
        tests = self.tests(question.work)
        rows: dict[int, int] = {}
        index = [rows.setdefault(id(test), len(rows)) for test in tests]
        distinct = {id(test): test for test in tests}.values()
        return np.array([self._of_test(question, test) for test in distinct])[index]

    def _of_test(self, question: Question, test: tuple[SlotTraits, ...]) -> Floats:
        traits = test[self._row_of[question.slot]]
        if question.kind == "slot":
            ears = self.equivalents.ears
            sounds = ears.heard([one.sound for one in test]) if question.slot == 0 else [one.sound for one in test]
            return np.asarray(sounds[self._row_of[question.slot]][ears.places.index(question.place)])
        if question.kind == "supply":
            return accuracy_scale(np.array([test[0].rail_low_v]), 0.5, 0.2)
        if question.kind == "dummy":
            column = self.profile.cylinders.index(question.slot)
            return accuracy_scale(np.array([abs(traits.return_end_a[column])]), 1.0, 0.1)
        return trace_scale(traits.trace)

    def _codes(self, question: Question) -> Floats:
        names = list(known_codes(self.profile))
        road = self._on_the_road()
        first = not (question.cleared or question.known)
        chances = np.empty((len(self.hypotheses), len(names)))
        for row, (now, before) in enumerate(zip(self.standing(question.work), road, strict=True)):
            for column, name in enumerate(names):
                left = (FROM_THE_ROAD if name in before else OLD) if first else STRAY
                chances[row, column] = KEPT if question.tested and name in now else left
                if name in question.known:
                    # it was there before this test: that it still is, or not, tells nothing
                    chances[row, column] = 0.5
        return chances

    def standing(self, work: Work) -> list[frozenset[str]]:
        """Return the codes that a whole test leaves, for every hypothesis."""
        return [self._stand(test) for test in self.tests(work)]

    def _examined(self, question: Question) -> Floats:
        group = self._circuits.under(question.work, loaded=False)
        names = {name: column for column, name in enumerate(sightings_of(self.profile))}
        looks = question.kind == "look"
        bridges = [seen_bridges(circuit, question.work) if looks else () for circuit in group.circuits]
        found = damage_seen if looks else damage_felt
        chances = np.full((len(self.hypotheses), len(names)), FANCIED)
        for row, damaged in enumerate(self._damaged):
            for name in (*bridges[group.index[row]], *found(self.profile, damaged, question.work)):
                chances[row, names[name]] = SEEN
        return chances

    @cached_property
    def _damaged(self) -> list[Mapping[str, Damage]]:
        """The damage that each hypothesis has done to contacts; circuits are distinguished by what flows only."""
        sound = self.equivalents.sound
        return [with_faults(sound, faults, Conditions()).damaged for faults in self.hypotheses]

    def _stand(self, test: tuple[SlotTraits, ...]) -> frozenset[str]:
        return frozenset(code.code for code in codes_from(self.profile, [slot.seen for slot in test]))

    def _on_the_road(self) -> list[frozenset[str]]:
        """Return the codes that each hypothesis leaves where everything moves and is warm."""
        if self._worst is None:
            conditions = Work().conditions
            self._worst = [frozenset()] * len(self.hypotheses)
            temperature_c = self.equivalents.sound.temperature_c
            for location in sorted({fault.location for faults in self.hypotheses for fault in faults}):
                work = Work(
                    conditions=replace(conditions, temperature_c=temperature_c, moved=location, heated=location)
                )
                tests = self.tests(work)
                for row, faults in enumerate(self.hypotheses):
                    if any(fault.location is location for fault in faults):
                        self._worst[row] |= self._stand(tests[row])
        return self._worst


def trace_scale(marks: TraceMarks) -> Floats:
    """Return a trace's marks on one scale: peak, early current, dip's time and depth (both nought without a dip)."""
    return np.array([
        marks.peak_a / CURRENT_STEP_A, marks.early_a / CURRENT_STEP_A,
        marks.dip_s / DIP_STEP_S, marks.dip_a / DIP_STEP_A,
    ])  # fmt: skip


def look_flags(profile: Profile, sightings: Iterable[str]) -> Floats:
    """Return what was seen, as flags in the order of everything that eyes can find."""
    seen = set(sightings)
    return np.array([float(name in seen) for name in sightings_of(profile)])


def code_flags(profile: Profile, codes: Iterable[str]) -> Floats:
    """Return which of the module's codes stand in memory, as flags in the order of all that it knows."""
    present = set(codes)
    return np.array([float(name in present) for name in known_codes(profile)])


def expectations_of(profile: Profile, temperature_c: float, hypotheses: Sequence[Faults]) -> Expectations:
    """Return the expectations of hypotheses on an engine at one temperature."""
    sound = circuit_of(profile, temperature_c)
    return Expectations(profile, hypotheses, Equivalents(sound, ears_of(profile, tuple(places_of(profile)))))
