"""Exercises: one right answer, found again by another way; card with one slip; the same name, the same exercise."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from scipy.stats import chisquare

from tests.engines import ALL
from tests.thinned import thinned
from tests.universes import POOLS, UNIVERSES
from trainer.cases.drawing.practice_case import BEDS_DBA
from trainer.cases.drawing.practice_pool import Pool
from trainer.cases.single_case.audibility import SILENT_DBA
from trainer.cases.single_case.shipped import profile_named
from trainer.circuit.codes import codes_of
from trainer.circuit.profile import Profile
from trainer.desk.caching_solver import CachingSolver
from trainer.errors import WrongCallError
from trainer.instruments.bench import Work
from trainer.practice.exercises.contrasts import contrasts_of
from trainer.practice.exercises.course_lines import MOST_WORDS, reveal_lines
from trainer.practice.exercises.difficulty_ranges import RANGES, aim_of
from trainer.practice.exercises.ear_exercises import LIMITS_DB, NEARLY, off_slots
from trainer.practice.exercises.exercise_kinds import KINDS, exercise_of, task_ahead
from trainer.practice.exercises.exercise_types import LEVELS, Exercise, Spec, fault_text, render_sounding, spec_of
from trainer.practice.exercises.job_card_exercises import SLIPS, card_with, slips_in, suitable
from trainer.reasoning.universe.hearing import heard_as
from trainer.words import numbers, speaking, text

SOLVER = CachingSolver()
SUBJECTS = [(kind, subject) for kind, one in KINDS.items() for subject in one.subjects]


@cache
def made(name: str) -> Exercise:
    return exercise_of(spec_of(name), profile_named, POOLS, UNIVERSES.reasoner)


def some(kind: str, subject: str, seeds: int = 1) -> list[Exercise]:
    engines = ["north_v8" if kind == "reasoning" else "harbour_v8"]
    return [
        made(Spec(kind, engine, subject, level, seed).name)
        for engine in engines for level in range(1, LEVELS + 1) for seed in range(seeds)
    ]  # fmt: skip


@pytest.mark.parametrize(("kind", "subject"), SUBJECTS)
def test_an_exercise_has_distinct_choices_a_reason_for_each_and_is_made_again_from_its_name(
    kind: str, subject: str
) -> None:
    for exercise in some(kind, subject):
        said = [choice.said for choice in exercise.choices]
        assert len(set(said)) == len(said)
        assert 2 <= len(said) <= 5
        assert all(choice.why for choice in exercise.choices)
        assert not exercise.choices[exercise.right].misconception
        assert exercise.rule
        assert exercise.demand.guess == pytest.approx(1.0 / len(said), abs=0.005)
    again = exercise_of(exercise.spec, profile_named, POOLS, UNIVERSES.reasoner)
    assert again == exercise


@pytest.mark.parametrize(("kind", "subject"), SUBJECTS)
def test_an_exercise_is_the_same_in_every_language_but_for_its_words(kind: str, subject: str) -> None:
    """Answers are told apart by what they are: the same ones are offered, in the same order, whatever says them."""
    for exercise in some(kind, subject):
        with speaking("es"):
            other = exercise_of(exercise.spec, profile_named, POOLS, UNIVERSES.reasoner)
        values = [choice.value for choice in exercise.choices]
        assert len(set(values)) == len(values)
        assert [choice.value for choice in other.choices] == values
        assert (other.right, other.demand, other.task) == (exercise.right, exercise.demand, exercise.task)
        assert [choice.misconception for choice in other.choices] == [one.misconception for one in exercise.choices]
        assert [(one.faults, one.slots, one.bed) for one in other.sounds] == [
            (one.faults, one.slots, one.bed) for one in exercise.sounds
        ]


@pytest.mark.parametrize(("kind", "subject"), thinned(SUBJECTS, 4))
def test_an_exercise_is_about_as_hard_as_its_level_aims_at(kind: str, subject: str) -> None:
    made_ = some(kind, subject, 1 if kind == "reasoning" else 3)  # a path is solved for each of those
    off = [exercise.demand.difficulty - aim_of(exercise.spec) for exercise in made_]
    assert abs(np.mean(off)) <= 0.45
    assert np.mean(np.abs(off)) <= 0.9
    assert (kind, subject) in RANGES


def test_an_easy_exercise_is_not_drawn_from_hard_faults_while_there_are_easy_ones() -> None:
    """Weak slots are either skipping, and plain, or hardly under even: of the two, the first level takes the plain ones."""
    first = [made(Spec("ear", "harbour_v8", "weak", 1, seed).name).demand.difficulty for seed in range(12)]
    assert np.ptp(first) <= 2.0 * NEARLY


@pytest.mark.parametrize("kind", thinned(["codes", "numbering", "reasoning", "limits", "ear", "job_card", "meter"], 4))
def test_the_right_choice_stands_at_no_place_of_its_own(kind: str) -> None:
    every = [one for subject in KINDS[kind].subjects for one in some(kind, subject, 4)]
    for count in (2, 4):
        places = np.bincount([one.right for one in every if len(one.choices) == count], minlength=count)
        assert chisquare(places).pvalue > 0.001


@pytest.mark.parametrize(("kind", "subject"), SUBJECTS)
def test_the_easiest_level_offers_two_and_before_it_is_made_an_exercise_is_known_to(kind: str, subject: str) -> None:
    for exercise in some(kind, subject):
        ahead = task_ahead(exercise.spec).demands[0].guess
        if exercise.spec.easiest:
            assert exercise.demand.guess == ahead
        else:
            assert exercise.demand.guess == pytest.approx(ahead, abs=0.1)


def test_with_two_to_choose_from_no_answer_is_always_the_right_one() -> None:
    """What is offered as wrong is elsewhere right: a word that is only ever right would be known without listening."""
    for subject in (("ear", "which"), ("meter", "says"), ("meter", "slip")):
        made_ = [made(Spec(subject[0], "ridge_v6", subject[1], 1, seed).name) for seed in range(24)]
        for said in {one.choices[one.right].said for one in made_}:
            offered = [one for one in made_ if said in [choice.said for choice in one.choices]]
            right = [one for one in offered if one.choices[one.right].said == said]
            assert len(offered) < 5 or len(right) < 0.9 * len(offered), (subject, said)


@pytest.mark.parametrize(("kind", "subject"), SUBJECTS)
def test_a_reveal_says_right_or_not_and_why_in_few_words_before_all_the_reasons(kind: str, subject: str) -> None:
    for exercise, choice in ((one, choice) for one in some(kind, subject) for choice in range(len(one.choices))):
        lines = reveal_lines(exercise, choice)
        before = lines[: lines.index("All the reasons")] if "All the reasons" in lines else lines
        assert before[0].startswith("Right." if choice == exercise.right else "Not quite.")
        assert before[1].lower() == exercise.choices[choice].why.lower()
        assert sum(len(line.split()) for line in before) <= MOST_WORDS
        assert any(line == f"Remember: {exercise.rule}" for line in lines)


@pytest.mark.parametrize(
    ("kind", "subject"),
    [("ear", "hum"), ("codes", "says"), ("codes", "old"), ("meter", "slip"), ("limits", "after")],
)
def test_no_sentence_is_always_the_right_one(kind: str, subject: str) -> None:
    """Who knows the sentences but nothing of the question: takes the one that was right most often, or the longest."""
    names = [engine.name for engine in ALL]
    made_ = [made(Spec(kind, names[seed % 4], subject, 2 + seed % 4, seed).name) for seed in range(40)]
    offered, right = Counter[str](), Counter[str]()
    for one in made_:
        sentences = [re.sub(r"\d+", "#", choice.said) for choice in one.choices]
        offered.update(sentences)
        right[sentences[one.right]] += 1
    by_words = by_length = 0
    for one in made_:
        sentences = [re.sub(r"\d+", "#", choice.said) for choice in one.choices]
        by_words += (
            max(range(len(sentences)), key=lambda row: right[sentences[row]] / offered[sentences[row]]) == one.right
        )
        by_length += max(range(len(sentences)), key=lambda row: len(one.choices[row].said)) == one.right
    assert by_words <= 0.75 * len(made_)
    assert by_length <= 0.6 * len(made_)


@pytest.mark.parametrize("seeds", [range(40), pytest.param(range(40, 160), marks=pytest.mark.long)])
def test_the_slot_that_is_off_cannot_be_told_from_how_the_answers_hang_together(seeds: range) -> None:
    """Who hears nothing: takes the number whose place in the firing order and whose neighbour are offered as well."""
    told = count = 0
    for seed in seeds:
        exercise = made(Spec("ear", ALL[seed % 4].name, "which", 2 + seed % 4, seed).name)
        numbers_ = {int(choice.said): row for row, choice in enumerate(exercise.choices) if choice.said.isdecimal()}
        order = exercise.profile.firing_order
        hung = {n: (order[n - 1] in numbers_) + (n + 1 in numbers_) for n in numbers_}
        if hung:
            told += numbers_[max(hung, key=lambda n: hung[n])] == exercise.right
            count += 1
    assert told <= 0.45 * count


# every tenth of a second of a slot's middle, A-weighted: what is heard, from the file itself
def levels_heard(profile: Profile, exercise: Exercise, row: int) -> list[float]:
    sound = render_sounding(profile, exercise.sounds[row], SOLVER)
    return [slot.level_dba for slot in sound.slots]


@pytest.mark.parametrize("engine", thinned(ALL, 2), ids=lambda one: one.name)
@pytest.mark.parametrize("seeds", [range(20), pytest.param(range(20, 80), marks=pytest.mark.long)])
def test_where_all_slots_are_even_the_key_says_so_and_nowhere_else(engine: Profile, seeds: range) -> None:
    for seed in seeds:
        exercise = made(Spec("ear", engine.name, "which", 1 + seed % LEVELS, seed).name)
        (what,) = exercise.sounds
        pool = POOLS(engine)
        words = {fault_text(pool.fault(place)): place for place in range(len(pool.rows))}
        off = off_slots(pool, words[fault_text(what.faults[0])], what.bed.level_dba) if what.faults else ()
        assert bool(off) == bool(what.faults)
        assert exercise.choices[exercise.right].said == (numbers(off) if off else text("exercise.none"))


@pytest.mark.parametrize("engine", thinned(ALL, 2), ids=lambda one: one.name)
def test_no_sound_that_is_asked_about_lies_at_a_limit_of_what_it_is_called(engine: Profile) -> None:
    for subject in ("even", "weak", "dull", "very_faint", "nothing"):
        exercise = made(Spec("ear", engine.name, subject, 3, 5).name)
        good, heard = (levels_heard(engine, exercise, row)[0] for row in (0, 1))
        assert exercise.labels[exercise.right] == subject or subject == "nothing"
        assert all(abs(good - heard - limit) > 0.4 for limit in LIMITS_DB)


@pytest.mark.parametrize("engine", thinned(ALL, 2), ids=lambda one: one.name)
@pytest.mark.parametrize("level", [1, 3, 5])
def test_the_slots_that_are_called_off_are_those_of_the_rendered_sound(engine: Profile, level: int) -> None:
    exercise = made(Spec("ear", engine.name, "which", level, 3).name)
    (what,) = exercise.sounds
    heard, good = (render_sounding(engine, one, SOLVER).slots[1:] for one in (what, replace(what, faults=())))
    off = [
        number
        for number, slot, fine in zip(engine.cylinders, heard, good, strict=True)
        if heard_as(slot.level_dba, fine.level_dba, what.bed.level_dba, slot.centroid_hz / fine.centroid_hz) != "even"
    ]
    said = exercise.choices[exercise.right].said
    assert said == (numbers(off) if off else text("exercise.none"))


@pytest.mark.parametrize("engine", thinned(ALL, 2), ids=lambda one: one.name)
def test_a_hum_is_called_the_others_only_where_its_own_coil_carries_nothing(engine: Profile) -> None:
    for seed in range(8):
        exercise = made(Spec("ear", engine.name, "hum", 1 + seed % LEVELS, seed).name)
        what = exercise.sounds[1]
        (number,) = what.slots or ()
        solved = SOLVER(engine, what.faults, Work())
        pulse, row = solved.pulses_of([slot.number for slot in solved.slots].index(number))[-1]
        own_a = float(abs(pulse.coil_a[:, row, engine.cylinders.index(number)]).max())
        said = exercise.choices[exercise.right].said
        bare_dba = levels_heard(engine, exercise, 1)[0]  # without the bed
        if said == text("exercise.hum.own", number=number):
            assert own_a > 2.0
        else:
            assert own_a < 0.5
            assert (bare_dba < SILENT_DBA) == (said == text("exercise.hum.bed", number=number))


@pytest.mark.parametrize("seed", range(6))
def test_a_fault_that_could_not_have_left_the_codes_leaves_others(seed: int) -> None:
    exercise = made(Spec("codes", "ridge_v6", "could", 1 + seed % 5, seed).name)
    pool = POOLS(exercise.profile)
    by_words = {fault_text(pool.fault(place)): place for place in range(len(pool.rows))}
    codes = []
    for choice in exercise.choices:
        solved = SOLVER(pool.profile, (pool.fault(by_words[choice.said]),), Work())
        codes.append(frozenset(code.code for code in codes_of(solved)))
    odd = codes[exercise.right]
    others = [one for row, one in enumerate(codes) if row != exercise.right]
    assert len(set(others)) == 1
    assert odd != others[0]


@pytest.mark.parametrize("engine", thinned(ALL, 2), ids=lambda one: one.name)
@pytest.mark.parametrize("slip", ["", *SLIPS])
def test_a_job_card_has_exactly_the_slip_that_was_worked_in(engine: Profile, slip: str) -> None:
    pool: Pool = POOLS(engine)
    places = suitable(pool)
    assert places
    for place in places[::3]:
        card = card_with(pool, place, slip, Spec("job_card", engine.name, "slip", 3, place).chance)
        wrong = slips_in(card, pool, 5)
        assert len(wrong) == bool(slip)


def test_an_even_test_could_still_hide_only_what_it_cannot_show() -> None:
    for exercise in some("limits", "still", 3):
        pool = POOLS(exercise.profile)
        by_words = {fault_text(pool.fault(place)): place for place in range(len(pool.rows))}
        for row, choice in enumerate(exercise.choices):
            place = by_words.get(choice.said)
            if row != exercise.right:
                assert place is not None
                assert off_slots(pool, place, BEDS_DBA[0])
            else:
                assert place is None or pool.provoked[place] or not off_slots(pool, place, BEDS_DBA[0])


@pytest.mark.parametrize("engine", thinned(ALL, 2), ids=lambda one: one.name)
def test_the_listening_tour_goes_from_even_down_and_each_pair_differs_as_it_says(engine: Profile) -> None:
    pairs = contrasts_of(POOLS(engine))
    names = [pair.name for pair in pairs]
    assert names[0] == "even_weak"
    assert "dull_very_faint" in names
    for pair in pairs[:3]:
        first, second = (render_sounding(engine, what, SOLVER).slots[0].level_dba for what in (pair.first, pair.second))
        assert first > second + 2.0


@pytest.mark.parametrize("name", ["", "ear", "ear.north_v8.which.9.1", "ear.north_v8.which.1.x", "ear.no.which.1.1", "x.y.z.1.1",
                                  "ear.north_v8.nobody.1.1", "numbering.north_v8.order.1.-4"])  # fmt: skip
def test_a_name_that_is_no_exercises_is_refused_with_the_mend(name: str) -> None:
    with pytest.raises(WrongCallError):
        made(name)
