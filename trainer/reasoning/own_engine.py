"""What the engine of a case itself answers: its own faults, its tries by the case's seed, and what is old in memory."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from trainer.arrays import Floats
from trainer.circuit.elements import Location
from trainer.instruments.tries import HEAT, MOVE, How, Try, shows_itself
from trainer.reasoning.case_facts import CaseFacts
from trainer.reasoning.universe.equivalents import Equivalents
from trainer.reasoning.universe.expectations import Expectations, code_flags
from trainer.reasoning.universe.questions import EXAMINED, FLAG_UP, RUNNING, Question
from trainer.reasoning.universe.running import with_mechanical


class OwnEngine:
    """The engine that a case is about."""

    def __init__(self, facts: CaseFacts, equivalents: Equivalents) -> None:
        self._facts = facts
        self._truth = Expectations(facts.profile, [facts.truth], equivalents)

    def answers(self, questions: Sequence[Question]) -> dict[Question, Floats]:
        """Return its answers, without chance."""
        state_of = {question: self._as_it_comes(question) for question in questions}
        facts = self._facts
        expected = self._truth.of(list(state_of.values()), facts.bed_dba, rough=facts.rough)
        answers = {}
        for question, state in state_of.items():
            one = expected[state]
            if question.kind == "codes":
                answers[question] = code_flags(facts.profile, self._codes(state))
            else:
                answers[question] = (one.values[0] > FLAG_UP).astype(float) if one.flags else one.values[0]
            if question.kind in RUNNING:
                answers[question] = with_mechanical(facts.profile, answers[question], facts.mechanical, question.kind)
        return answers

    def _as_it_comes(self, question: Question) -> Question:
        """Return a question about the state in which its tries leave the engine."""
        if question.kind in EXAMINED:
            return question
        work = question.work
        moving = self._outcome(MOVE, work.conditions.moved, work.moving)
        warming = self._outcome(HEAT, work.conditions.heated, work.warming)
        return replace(question, work=replace(work, moving=moving, warming=warming).physical(), captured=False)

    def _outcome(self, how: How, place: Location | None, one: Try | None) -> Try | None:
        if one is None or place is None or one.settled:
            return one
        return replace(one, shows=shows_itself(self._facts.seed, how, place, one.number, one.effort))

    def _codes(self, question: Question) -> frozenset[str]:
        """Return the codes in this engine's memory: old ones until they are cleared, and those of the last test."""
        left = frozenset[str]() if question.cleared else self._facts.stored
        return left | (self._truth.standing(question.work)[0] if question.tested else frozenset())
