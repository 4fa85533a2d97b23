"""How likely answers are together: one fault has one severity, one test in one bay has one loudness, and what an
expectation leaves out is the same however often the same thing is asked.

Severity, and what the expectation of each thing asked leaves out, are followed from answer to answer as normal
distributions (a Kalman filter with a state that does not move: Kalman 1960; the gain of one answer is that of linear
regression with a normal prior, Bishop 2006, section 3.3), each on its own. The ear's own level, common to all slots of
a test heard from one place, is integrated out of them together.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

import numpy as np

from trainer.arrays import Flags, Floats, Integers
from trainer.reasoning.universe.questions import FLAG_UP, SPAN, SPREAD, Answers, Expected, Prediction, Question, name_of

Block = tuple[Question, ...]
"""Questions that are answered together: slots of one test from one place, or one question."""

TryKey = tuple[object, ...]
"""A try: the place that was moved, the one that was warmed, how, and how likely it is to show anything."""

Errors = tuple[Floats, Floats]
"""Mean and variance of what an expectation leaves out, in its own standard deviations; shape (part, hypothesis)."""

SLIP = float(np.log(SPREAD / SPAN))
"""The logarithm of an answer's density where it is a slip."""

SLIP_FROM = -2.0 * (SLIP + 0.5 * float(np.log(2.0 * np.pi)))
"""From which squared distance on an answer is likelier a slip."""


@dataclass(frozen=True, slots=True)
class Followed:
    """What the answers so far leave unknown beside the hypotheses themselves.

    `severity` and its `variance` are in standard deviations of each hypothesis's stretch, shape (hypothesis,). `errors`
    are what expectations leave out, by what was asked. `tries` has for each try the log weights of its states, shape
    (state, hypothesis): a fault showed itself in all answers of a try, or in none.
    """

    severity: Floats
    variance: Floats
    errors: Mapping[object, Errors]
    tries: Mapping[TryKey, Floats]


def nothing_followed(count: int) -> Followed:
    """Return what is unknown before any answer."""
    return Followed(np.zeros(count), np.ones(count), {}, {})


def blocks_of(questions: Iterable[Question]) -> list[Block]:
    """Return questions in blocks, ohms first, in an order that does not depend on when they were asked.

    Ohms tell a severity best, and what it is then helps to judge the rest.
    """

    def belongs(question: Question) -> tuple[bool, str, str]:
        slot = question.kind == "slot"
        return question.kind != "ohms", "slot" if slot else name_of(question), _test_of(question) if slot else ""

    ordered = sorted(questions, key=lambda question: (*belongs(question), name_of(question)))
    return [tuple(block) for _key, block in groupby(ordered, key=belongs)]


def _test_of(slot: Question) -> str:
    """Return the name of the test and place that a slot was heard in."""
    return name_of(slot).partition(" ")[2].partition(" ")[2]


def after_block(
    block: Sequence[Question], expected: Mapping[Question, Expected], answers: Answers, followed: Followed
) -> tuple[Floats, Followed]:
    """Return what a block's answers add to each hypothesis's log likelihood, and what is then still unknown."""
    first = expected[block[0]]
    each = [_in_state(block, expected, answers, state, followed) for state in range(len(first.states))]
    if len(each) == 1:
        return each[0]
    log_likelihood = np.stack([one for one, _after in each])
    key = try_of(block[0], first.weights)
    before = followed.tries.get(key, np.log(first.weights)[:, None] + np.zeros_like(log_likelihood))
    after = before + log_likelihood
    added = np.logaddexp.reduce(after, axis=0) - np.logaddexp.reduce(before, axis=0)
    asked = [_asked_of(question) for question in block]
    likelier = _by_state([one for _log_likelihood, one in each], after.argmax(axis=0), asked)
    return added, replace(likelier, tries={**followed.tries, key: after})


def try_of(question: Question, weights: tuple[float, ...]) -> TryKey:
    """Return which try a question is answered in; `weights` are the chances of its states."""
    work = question.work
    return (work.conditions.moved, work.moving, work.conditions.heated, work.warming, weights)


def _by_state(each: Sequence[Followed], state: Integers, asked: Sequence[object]) -> Followed:
    """Return what is followed in one of several states, which may differ between hypotheses; `asked` has changed."""
    hypothesis = np.arange(len(state))

    def chosen(values: Sequence[Floats]) -> Floats:
        return np.asarray(np.moveaxis(np.stack(values), -1, 1)[state, hypothesis].T)

    changed = {
        key: (chosen([one.errors[key][0] for one in each]), chosen([one.errors[key][1] for one in each]))
        for key in asked
        if key in each[0].errors
    }
    errors = {**each[0].errors, **changed}
    return replace(
        each[0],
        severity=chosen([one.severity for one in each]),
        variance=chosen([one.variance for one in each]),
        errors=errors,
    )


def _in_state(
    block: Sequence[Question], expected: Mapping[Question, Expected], answers: Answers, state: int, followed: Followed
) -> tuple[Floats, Followed]:
    """Return a block's log likelihood in one state, and what is then still unknown."""
    shown = [expected[question].states[state] for question in block]
    if expected[block[0]].flags:
        return _of_flags(shown[0], answers[block[0]] > FLAG_UP, followed)
    away = np.stack([answers[question] - one.values for question, one in zip(block, shown, strict=True)])
    slope, spread, common = (
        np.stack([np.zeros_like(one.values) if part is None else part for one, part in zip(shown, parts, strict=True)])
        for parts in zip(*((one.slope, one.variance, one.common) for one in shown), strict=True)
    )
    keys = [_asked_of(question) for question in block]
    unknown = (np.zeros(away.shape[:0:-1]), np.ones(away.shape[:0:-1]))
    before = [followed.errors.get(key, unknown) for key in keys]
    error, doubt = (np.stack([one[place] for one in before]) for place in (0, 1))
    severity, variance = followed.severity, followed.variance
    log_likelihood = np.zeros(away.shape[1])
    for part in range(away.shape[2]):
        here = (away[..., part].T, slope[..., part].T, np.sqrt(spread[..., part].T), common[..., part].T)
        added, severity, variance, part_error, part_doubt = _after_part(
            *here, severity, variance, error[:, part].T, doubt[:, part].T
        )
        log_likelihood += added
        error[:, part], doubt[:, part] = part_error.T, part_doubt.T
    errors = {key: (error[place], doubt[place]) for place, key in enumerate(keys)}
    return log_likelihood, replace(followed, severity=severity, variance=variance, errors={**followed.errors, **errors})


def _of_flags(shown: Prediction, up: Flags, followed: Followed) -> tuple[Floats, Followed]:
    """Return the log likelihood of flags, whose chances go straight from one end of a stretch to the other.

    With a chance that is linear in the severity, mean and variance of the severity after a flag are known in closed
    form (assumed density filtering, Bishop 2006, section 10.7); neither moves further than one standard deviation.
    """
    if shown.slope is None:
        chance = np.where(up, shown.values, 1.0 - shown.values)
        return np.log(np.clip(chance, LEAST_CHANCE, 1.0)).sum(axis=1), followed
    severity, variance = followed.severity[:, None], followed.variance[:, None]
    chance = np.where(up, 1.0, -1.0) * (shown.values + shown.slope * severity) + np.where(up, 0.0, 1.0)
    chance = np.clip(chance, LEAST_CHANCE, 1.0)
    most = 1.0 / np.sqrt(variance)
    gain = np.clip(np.where(up, 1.0, -1.0) * shown.slope / chance, -most, most)
    moved = np.clip((variance * gain).sum(axis=1), -np.sqrt(followed.variance), np.sqrt(followed.variance))
    left = np.maximum(followed.variance - ((variance * gain) ** 2).sum(axis=1), LEAST_LEFT * followed.variance)
    return np.log(chance).sum(axis=1), replace(followed, severity=followed.severity + moved, variance=left)


LEAST_LEFT = 0.1


def _asked_of(question: Question) -> object:
    """Return what a question asks about, whatever has been done to the engine before."""
    return question.kind, question.slot, question.place, question.pins


LEAST_CHANCE = 1e-12


def _after_part(
    away: Floats, slope: Floats, left_out: Floats, common: Floats,
    severity: Floats, variance: Floats, error: Floats, doubt: Floats,
) -> tuple[Floats, Floats, Floats, Floats, Floats]:  # fmt: skip
    """Return the log likelihood of residuals (hypothesis, answer) of one trait, and mean and variance of the unknowns.

    Residuals are noise of unit variance, plus a common offset of unit variance times `common`, plus severity times
    `slope`, plus each answer's own error times `left_out`. Those that are too far from the others' offset to be
    anything but slips are counted as slips.
    """
    away = away - slope * severity[:, None] - left_out * error
    noise = 1.0 + left_out**2 * doubt
    alone = noise + slope**2 * variance[:, None]
    kept = (away - _offset(away, common)[:, None] * common) ** 2 / alone < SLIP_FROM
    use = kept / noise
    cc, aa, ss = (use * common**2).sum(1), (use * away**2).sum(1), (use * slope**2).sum(1)
    ac, sc, sa = (use * away * common).sum(1), (use * slope * common).sum(1), (use * slope * away).sum(1)
    aa, ss, sa = aa - ac**2 / (1.0 + cc), ss - sc**2 / (1.0 + cc), sa - sc * ac / (1.0 + cc)
    precision = 1.0 / variance + ss
    spread = np.where(kept, np.log(noise), 0.0).sum(1) + np.log1p(cc) + np.log(precision * variance)
    counted = kept.sum(1)
    log_density = -0.5 * (aa - sa**2 / precision + spread + counted * np.log(2.0 * np.pi))
    log_density += (kept.shape[1] - counted) * SLIP + counted * np.log1p(-SPREAD)
    moved = sa / precision
    rest = away - slope * moved[:, None] - common * ((ac - sc * moved) / (1.0 + cc))[:, None]
    gain = use * left_out * doubt
    return log_density, severity + moved, 1.0 / precision, error + gain * rest, doubt * (1.0 - gain * left_out)


def _offset(away: Floats, common: Floats) -> Floats:
    """Return the offset that most answers of each hypothesis agree on, shape (hypothesis,): their weighted median."""
    if away.shape[1] == 1 or not common.any():
        return np.zeros(len(away))
    each = np.clip(away / np.maximum(common, 1e-9), -MOST_OFFSET, MOST_OFFSET)
    order = np.argsort(each, axis=1)
    reached = np.cumsum(np.take_along_axis(common, order, axis=1), axis=1)
    place = np.argmax(reached >= 0.5 * reached[:, -1:], axis=1)
    return np.asarray(np.take_along_axis(each, order, axis=1)[np.arange(len(away)), place])


MOST_OFFSET = 3.0
"""How many standard deviations a common offset is taken for at most when slips are recognised by it."""
