"""How many wrong findings at the shipped cases get a name: run as `python -m tests.reasoning.verdict.misconception_share`.

Heard and coded, not measured. Three sets: every single fault of the engine and "circuit passes"; those on a true cylinder;
and guesses drawn in proportion to what hearing and codes leave (the right one left out).
"""

from __future__ import annotations

from collections import Counter

from tests.universes import POOLS, UNIVERSES
from trainer.cases.single_case.shipped import case_named, case_names
from trainer.circuit.codes import known_codes
from trainer.desk.caching_solver import CachingSolver
from trainer.practice.attempt.attempt import begun, step
from trainer.practice.attempt.debrief import debrief_of
from trainer.practice.attempt.events import Found
from trainer.reasoning.universe.finding import truth_of
from trainer.reasoning.verdict.belief import finding_key
from trainer.reasoning.verdict.explanation import SlotReason
from trainer.reasoning.verdict.misconceptions import UNCLASSIFIED, Wrong, misconception_of


def slots_of_case(name: str, solver: CachingSolver) -> dict[int, SlotReason]:
    case = case_named(name)
    found = Found(claims=(), certainty=0.5)
    debrief = debrief_of(step(begun(case, case.seed), found), solver, UNIVERSES.reasoner(case), POOLS(case.profile))
    return {reason.slot: reason for reason in debrief.reasons}


def main() -> None:
    """Print the shares, and how often each name is told among the likely guesses."""
    solver = CachingSolver()
    sets = {"every single fault": [0.0, 0.0], "on a true cylinder": [0.0, 0.0], "guesses by what is left": [0.0, 0.0]}
    names: Counter[str] = Counter()
    for name in case_names():
        case = case_named(name)
        reasoner = UNIVERSES.reasoner(case)
        known = known_codes(case.profile)
        tests = [test for test in reasoner.tests if str(test.name) in ("hear", "codes")]
        shown = reasoner.truth_answers([question for test in tests for question in test.questions])
        belief = reasoner.belief(shown)
        (codes,) = next(test for test in tests if str(test.name) == "codes").questions
        coded = frozenset(known[code].cylinder for code, up in zip(known, shown[codes], strict=True) if up) - {None}
        truth = truth_of(case.to_be_found)
        slots = slots_of_case(name, solver)
        true = {number for claim in truth for number in claim.cylinders}
        for claims in {
            finding_key(claims): claims for claims in reasoner.hypotheses.claims if len(claims) < 2
        }.values():
            if finding_key(claims) == finding_key(truth):
                continue
            wrong = Wrong(case.profile, truth, claims, slots, coded, passes_left=belief.findings[()])
            told = misconception_of(wrong)
            weight = belief.findings[finding_key(claims)]
            named = told != UNCLASSIFIED
            chosen = {"every single fault": 1.0, "guesses by what is left": weight}
            if not claims or true & {number for claim in claims for number in claim.cylinders}:
                chosen["on a true cylinder"] = 1.0
            for which, amount in chosen.items():
                sets[which][0] += amount
                sets[which][1] += amount * (not named)
            names[told] += weight
    for which, (total, unnamed) in sets.items():
        print(f"{which}: {100 * unnamed / total:.1f} % unclassified")
    total = sum(names.values())
    print(", ".join(f"{name} {100 * share / total:.1f} %" for name, share in names.most_common()))


if __name__ == "__main__":
    main()
