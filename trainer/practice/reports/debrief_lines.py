"""The debrief as lines of text."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product

from trainer.circuit.elements import Location
from trainer.circuit.faults import OPENS, SHORTS
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.attempt.debrief import Debrief
from trainer.practice.attempt.weighing import Weighed
from trainer.practice.reports.attempt_lines import card_line, claims_text, reason_line, request_text, test_text
from trainer.practice.reports.path_lines import path_lines
from trainer.practice.reports.reason_lines import finding_text
from trainer.practice.reports.word_limit import MOST_WORDS, word_count
from trainer.reasoning.advice.measured import PROVED
from trainer.reasoning.advice.prices import repair_minutes
from trainer.reasoning.universe.hearing import Heard
from trainer.reasoning.verdict.belief import finding_key
from trainer.reasoning.verdict.misconceptions import UNCLASSIFIED
from trainer.words import cylinders_named, numbers, percent, text

LEFT_SHOWN, LEFT_FROM = 4, 0.005


def debrief_lines(debrief: Debrief, attempt: Attempt, calibration: Mapping[float, tuple[int, float]]) -> list[str]:
    """Return the debrief: first what matters most, then truth, answer, score, reasons, rule, both paths, question.

    `calibration` is the learner's calibration so far: how often each certainty was said, and the share that was right.
    """
    return [
        *first_lines(debrief, attempt),
        "",
        text("debrief.show"),
        *verdict_lines(debrief, attempt, calibration),
        "",
        *_reasons(debrief, attempt),
        "",
        *_refutation(debrief, attempt),
        *_rules(debrief),
        "",
        *_paths(debrief),
        *_suspects(debrief, attempt),
        *_other_readings(debrief),
        *_left(debrief),
        "",
        text("debrief.take", question=_question(debrief, attempt)),
    ]


def first_lines(debrief: Debrief, attempt: Attempt) -> list[str]:
    """Return what a learner reads first: a failed retest, right or not, what it was, why, and what to do next time.

    Sides are left out where the reason would not fit with them, then the reason, and what to do next where it would
    not.
    """
    verdict, why = _verdict(debrief, attempt), _why(debrief, attempt)
    whole, short = claims_text(debrief.truth), finding_text(finding_key(debrief.truth))
    again = _failed_retest(debrief)
    drafts = [
        [retest, verdict, "" if whole in why else text("debrief.it_was", claims=truth), why]
        for retest, truth in product(again, (whole, short))
    ]
    drafts.append([again[-1], verdict, text("debrief.it_was", claims=short)])
    kept = next((draft for draft in drafts if word_count(*draft) <= MOST_WORDS), drafts[-1])
    kept = [line for line in kept if line]
    following = _next_time(debrief)
    return [*kept, following] if word_count(*kept, following) <= MOST_WORDS else kept


def _failed_retest(debrief: Debrief) -> tuple[str, ...]:
    """Return the first line after a failed retest, whole and short, "" where none failed."""
    if not debrief.proof.failed_retests:
        return ("",)
    return (text("debrief.retest_failed", n=round(debrief.score.lost)), text("debrief.retest_again"))


def _proved(debrief: Debrief) -> bool:
    return debrief.score.right and debrief.score.proof >= 1.0


def _verdict(debrief: Debrief, attempt: Attempt) -> str:
    if _proved(debrief):
        return text("debrief.right")
    if finding_key(debrief.claims) != finding_key(debrief.truth):
        return text("debrief.not_right")
    if debrief.proof.failed_retests:
        return text("debrief.unmended" if attempt.faults_left else "debrief.mended_later")
    return text("debrief.unproved")


def _why(debrief: Debrief, attempt: Attempt) -> str:
    """Return why, with this case's own numbers: what refutes the finding, what it lacks, or why the slot sounds so."""
    if debrief.misconception is not None and debrief.wrong is not None:
        return text(f"refute.{debrief.misconception}", **refutation_values(debrief, attempt))
    if not _proved(debrief):
        return _unproved(debrief)
    named = {number for claim in debrief.truth for number in claim.cylinders}
    reason = next((one for one in debrief.reasons if one.slot in named), None)
    return reason_line(reason, len(attempt.case.profile.cylinders)) if reason else ""


def _unproved(debrief: Debrief) -> str:
    """Return why a finding that names the truth does not count as proved, "" where only a retest speaks against it."""
    for line in _side(debrief):
        return line.strip()
    if not debrief.proof.measured:
        return text("debrief.by_ear" if debrief.truth else "debrief.unmeasured_passes")
    if debrief.score.proof >= 1.0:
        return ""
    return text("debrief.proof", percent=percent(debrief.proof.posterior))


def _next_time(debrief: Debrief) -> str:
    """Return what to do next time: the test that would have told more, or the rule of what was there."""
    if debrief.would_tell and not _proved(debrief):
        return text("debrief.would_tell", test=test_text(debrief.would_tell))
    return text("debrief.rule", rule=_rule_texts(debrief)[0])


def verdict_lines(debrief: Debrief, attempt: Attempt, calibration: Mapping[float, tuple[int, float]]) -> Iterator[str]:
    """Yield truth, answer and score with its arithmetic, for whoever wants all the reasons."""
    assert attempt.finding is not None
    score, proof = debrief.score, debrief.proof
    if proof.failed_retests:
        yield text("debrief.retest_failed", n=round(score.lost))
    yield text("debrief.truth", claims=claims_text(debrief.truth))
    certainty = text(f"certainty.{attempt.finding.certainty}")
    yield text("debrief.answer", claims=claims_text(debrief.claims), certainty=certainty)
    yield ""
    yield text("debrief.score", points=score.points)
    shares = ("cylinders", "location", "kind", "proof", "economy")
    yield "  " + text("debrief.arithmetic", **{name: getattr(score, name) for name in shares})
    chance = percent(proof.posterior)
    if proof.reachable >= PROVED:
        yield "  " + text("debrief.proof", percent=chance)
    else:
        yield "  " + text("debrief.proof_open", percent=chance, reachable=percent(proof.reachable))
    yield from _unmeasured(debrief, attempt)
    if debrief.hidden is not None:
        first, second = (claims_text((claim,)) for claim in debrief.hidden)
        yield "  " + text("debrief.hides", first=first, second=second)
    key = "debrief.economy" if debrief.truth else "debrief.economy_passes"
    yield "  " + text(key, used=proof.used_minutes, best=proof.best_minutes)
    yield from _side(debrief)
    yield "  " + text("debrief.certainty", brier=score.brier)
    if calibration:
        rows = [
            text("debrief.calibration_row", said=said, n=count, right=percent(share))
            for said, (count, share) in calibration.items()
        ]
        yield "  " + text("debrief.calibration", rows="; ".join(rows))


def _unmeasured(debrief: Debrief, attempt: Attempt) -> Iterator[str]:
    """Yield the part that was condemned without a measurement, the time of its repair and who pays for it."""
    claim, place = debrief.proof.unmeasured, debrief.proof.rival
    if claim is None:
        if not debrief.proof.measured:
            yield "  " + text("debrief.unmeasured_passes")
        return
    minutes = repair_minutes(attempt.case.profile, claim.location, claim.cylinders, ())
    rival = _the(place) if place else text("debrief.another_place")
    yield "  " + text("debrief.unmeasured", place=_the(claim.location), rival=rival, repair=minutes)


def _the(place: Location) -> str:
    return text("debrief.the_place", place=text(f"location.{place}"))


def _side(debrief: Debrief) -> Iterator[str]:
    """Tell a side that was named wrongly."""
    if finding_key(debrief.claims) != finding_key(debrief.truth):
        return
    said = {claim.cylinders: claim.side for claim in debrief.claims}
    for true in debrief.truth:
        side = said.get(true.cylinders)
        if side is not None and true.side is not None and side is not true.side:
            yield "  " + text("debrief.side", said=text(f"side.{side}"), true=text(f"side.{true.side}"))


def _reasons(debrief: Debrief, attempt: Attempt) -> Iterator[str]:
    if debrief.shown_at is not None:
        yield text("debrief.shown_at", place=text(f"location.{debrief.shown_at}"))
    yield text("debrief.why")
    count = len(attempt.case.profile.cylinders)
    for reason in debrief.reasons:
        yield "  " + reason_line(reason, count)


def _refutation(debrief: Debrief, attempt: Attempt) -> Iterator[str]:
    if debrief.misconception is None or debrief.wrong is None:
        return
    if debrief.misconception != UNCLASSIFIED:
        yield text("debrief.misconception", name=text(f"misconception.{debrief.misconception}"))
    yield text(f"refute.{debrief.misconception}", **refutation_values(debrief, attempt))
    yield ""


def refutation_values(debrief: Debrief, attempt: Attempt) -> dict[str, object]:
    """Return this case's own numbers for a refutation's words."""
    assert debrief.wrong is not None
    slots = debrief.wrong.slots
    true = sorted({number for claim in debrief.wrong.truth for number in claim.cylinders})
    said = sorted({number for claim in debrief.claims for number in claim.cylinders})
    slot = slots[true[0]] if true else slots[0]
    single = [reason for number, reason in slots.items() if number]
    even = [reason for reason in single if reason.heard is Heard.EVEN]
    left = debrief.weighing.belief.findings.get(finding_key(debrief.wrong.truth), 0.0)
    return {
        "said": numbers(said),
        "true": claims_text(debrief.wrong.truth),
        "true_slot": true[0] if true else 0,
        "group": numbers(true),
        "under": abs(slot.good_dba - slot.level_dba),
        "own": slot.own_a,
        "output": slot.output_a,
        "others": slot.others_a,
        "n": len(slot.others),
        "even": len(even),
        "count": len(single),
        "level": max((reason.level_dba for reason in single), default=0.0),
        "spread": max((abs(reason.level_dba - reason.good_dba) for reason in single), default=0.0),
        "bed": attempt.case.bed.level_dba,
        "firing": "-".join(str(number) for number in attempt.case.profile.firing_order),
        "display": ", ".join(dict.fromkeys(debrief.wrong.connected)),
        "passes": percent(debrief.wrong.passes_left),
        "left": percent(left),
        "said_chance": percent(debrief.proof.posterior),
    }


def _rules(debrief: Debrief) -> Iterator[str]:
    for rule in _rule_texts(debrief):
        yield text("debrief.rule", rule=rule)


def _rule_texts(debrief: Debrief) -> list[str]:
    return [text(f"rule.{claim.kind}") for claim in debrief.truth] or [text("debrief.passed_rule")]


def _paths(debrief: Debrief) -> Iterator[str]:
    yield text("debrief.path")
    for weighed in debrief.weighing.lines:
        yield from _weighed(weighed)
    yield ""
    yield text("debrief.best")
    yield from path_lines(debrief.best_path, debrief.truth)


def _weighed(weighed: Weighed) -> Iterator[str]:
    line = card_line(weighed.event)
    if line is None:
        return
    yield line
    if not weighed.bits:
        return
    out = [text(f"location.{place}") for place in weighed.places_out]
    if weighed.cylinders_out:
        out.append(cylinders_named(weighed.cylinders_out))
    names = text("debrief.step_out", names=", ".join(out)) if out else ""
    yield text("debrief.step", bits=weighed.bits, percent=percent(weighed.sure), out=names)
    if weighed.unexplained:
        yield text("debrief.step_strange")


def _suspects(debrief: Debrief, attempt: Attempt) -> Iterator[str]:
    """Compare the places that the learner ruled out, only now."""
    true = {str(claim.location) for claim in debrief.truth}
    left = debrief.weighing.belief.summed(lambda claims: [str(claim.location) for claim in claims])
    right = []
    for place in sorted(attempt.ruled_out):
        name = text(f"location.{place}")
        if place in true:
            yield text("debrief.suspects_wrong", places=name)
        elif left.get(place, 0.0) >= EARLY_FROM:
            yield text("debrief.suspects_early", places=name, percent=percent(left[place]))
        else:
            right.append(name)
    if right:
        yield text("debrief.suspects_right", places=", ".join(right))


EARLY_FROM = 0.05


def _other_readings(debrief: Debrief) -> Iterator[str]:
    """Tell what the finding would have measured like, where it was wrong."""
    if debrief.wrong is None or not debrief.other_readings:
        return
    yield text("debrief.other_readings")
    differing = [other for other in debrief.other_readings if other.display != other.event.reading.display]
    for other in differing:
        what, display = request_text(other.event.request), other.event.reading.display
        yield text("debrief.other_reading", what=what, display=display, other=other.display)
    if not differing:
        yield text("debrief.even_alike")


def _left(debrief: Debrief) -> Iterator[str]:
    yield text("debrief.left")
    findings = debrief.weighing.belief.findings
    named = {finding_key(debrief.claims), finding_key(debrief.truth)}
    for place, (key, chance) in enumerate(findings.items()):
        if (place < LEFT_SHOWN and chance >= LEFT_FROM) or key in named:
            yield text("debrief.left_line", percent=percent(chance), finding=finding_text(key))
    if debrief.would_tell:
        yield text("debrief.would_tell", test=test_text(debrief.would_tell))


def _question(debrief: Debrief, attempt: Attempt) -> str:
    if attempt.case.takeaway:
        return attempt.case.in_words.takeaway
    kinds = {claim.kind for claim in debrief.truth}
    if not kinds:
        return text("take.passes")
    return text("take.opens" if kinds <= OPENS else "take.shorts" if kinds <= SHORTS else "take.others")
