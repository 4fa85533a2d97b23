"""Practice in the terminal: one task after another, each with a line that says why; Enter goes on."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from trainer.cases.drawing.practice_pool import Pool
from trainer.cases.profiles.profile_title import title_of
from trainer.circuit.profile import Profile
from trainer.desk.attempt_start import start_or_resume
from trainer.desk.case_source import FoundCase, find_case
from trainer.desk.desk import Desk
from trainer.desk.exercise_maker import Exercises
from trainer.desk.learner_course import Begun, Course
from trainer.errors import MissingHereError, UserError, WrongCallError
from trainer.practice.attempt.events import Started
from trainer.practice.course.lessons import ALONE, LESSONS, Lesson, steps_done, worked_finding
from trainer.practice.course.practice_log import CASE
from trainer.practice.course.session_time import REST_MINUTES, STOP_MINUTES
from trainer.practice.exercises.contrasts import TOURED, contrasts_of
from trainer.practice.exercises.course_lines import progress_lines, reveal_lines, task_line, why_line
from trainer.practice.exercises.exercise_types import Exercise, Sounding
from trainer.practice.exercises.rematch import REMATCH, top_confusion
from trainer.practice.reports.attempt_lines import engine_lines
from trainer.reasoning.universe.finding import CERTAINTIES
from trainer.terminal.session import Ask, Say, Session
from trainer.words import capital, message_of, text

SLOW = ("reasoning", "job_card")
"""Kinds of exercise that can take seconds to make."""


class PracticeSession:
    """One sitting of practice. `new_desk` gives a desk for a case; `pools` the engines to practise on.

    `clock` counts seconds that no change of the date moves.
    """

    def __init__(
        self, course: Course, exercises: Exercises, new_desk: Callable[[], Desk], pools: Sequence[Pool],
        now: Callable[[], str], clock: Callable[[], float], ask: Ask, say: Say,
    ) -> None:  # fmt: skip
        self._course, self._exercises, self._new_desk, self._pools = course, exercises, new_desk, pools
        self._now, self._clock, self._ask, self._say = now, clock, ask, say
        self._player = new_desk().player
        self._began_s, self._announced_minutes, self._skipped, self._fresh = clock(), 0, False, True
        self._words: dict[str, Callable[[Sequence[str]], None]] = {
            "": lambda _words: self._next(), "sounds": lambda _words: self._sounds(),
            "rematch": lambda _words: self._rematch(), "drill": self._drill,
            "skip": lambda _words: self._skip(), "lesson": self._any_lesson,
            "progress": lambda _words: self._lines(progress_lines(course.state, course.day)),
            "help": lambda _words: self._say(text("practice.help")),
        }  # fmt: skip

    def run(self) -> None:
        """Practise until the learner leaves or the input ends."""
        self._say(text("practice.title", who=self._course.learner))
        self._say(text("caution.sound"))
        self._say(text("practice.help"))
        line = ""
        try:
            while line.lower() != "leave":
                self._obey(line)
                line = self._ask(text("practice.prompt") + " ").strip()
        except EOFError:
            pass
        self._say(text("practice.left" if self._course.store.keeps else "left_unkept"))

    def _obey(self, line: str) -> None:
        words = line.split() or [""]
        command = self._words.get(words[0].lower())
        if command is None:
            self._say(text("unknown_command", word=words[0][:40]))
            return
        try:
            command(words[1:])
        except UserError as error:
            self._say(message_of(error))
        self._mind_the_time()

    def _lines(self, lines: Sequence[str]) -> None:
        for line in lines:
            self._say(line)

    def _mind_the_time(self) -> None:
        minutes = (self._clock() - self._began_s) / 60.0
        for limit, key in ((REST_MINUTES, "course.twenty"), (STOP_MINUTES, "course.ten")):
            if self._announced_minutes < limit <= minutes:
                self._say(text(key, minutes=round(minutes)))
                self._announced_minutes = limit
                return

    # what comes next

    def _next(self) -> None:
        lesson = None if self._skipped else self._course.lesson
        open_one = self._course.unfinished()
        if open_one is not None:
            self._say(text("practice.resumed"))
            self._say(why_line(open_one.why, open_one.about, open_one.spec.kind))
            self._answer(open_one, self._exercises.make(open_one.spec))
            return
        begun = self._course.begun_case() if self._fresh else None
        self._fresh = False
        if begun is not None:
            self._case(begun[0], Started())
            return
        if lesson is not None:
            self._lesson(lesson)
            return
        chosen = self._course.next(self._pools)
        self._say(why_line(chosen.why, chosen.about, chosen.task.kind))
        if chosen.task.kind == CASE:
            self._say(text("course.next", what=task_line(chosen.task)))
            self._case(find_case(chosen.task.name), Started(why=chosen.why, about=chosen.about))
        else:
            self._say_slow(chosen.task.kind)
            exercise = self._exercises.made(chosen.task.name, self._course.stale_class(), chosen.probed)
            self._answer(self._course.begin(exercise, chosen.why, chosen.about), exercise)

    def _case(self, found: FoundCase, at: Started) -> None:
        desk = self._new_desk()
        start_or_resume(desk, found, self._course.learner, self._now(), at=at)
        Session(desk, self._ask, self._say).run()

    def _lesson(self, lesson: Lesson) -> None:
        desk = self._new_desk()
        found = find_case(lesson.case)
        start_or_resume(desk, found, self._course.learner, self._now(), at=Started(lesson=lesson.number))
        self._say(text("course.lesson", number=lesson.number, count=len(LESSONS)))
        self._say(text(f"lesson.intro.{lesson.number}"))
        session = Session(desk, self._ask, self._say)
        if lesson.number != ALONE and desk.attempt.finding is None and not self._worked(desk, lesson, session):
            return
        if lesson.finding_worked and desk.attempt.finding is None:
            self._say(text("lesson.step", number=lesson.count, count=lesson.count))
            self._say(text("lesson.finding"))
            desk.commit(worked_finding(desk.attempt))
            session.debrief()
        else:
            session.run()

    def _worked(self, desk: Desk, lesson: Lesson, session: Session) -> bool:
        """Work a lesson's steps, Enter by Enter; tell whether they were worked to the end."""
        for number in range(steps_done(lesson, desk.attempt), len(lesson.steps)):
            step = lesson.steps[number]
            self._say(text("lesson.step", number=number + 1, count=lesson.count))
            self._say(text(f"lesson.{step.name}"))
            word = self._ask("… ").strip().lower()
            if word in ("leave", "skip"):
                self._skipped = self._skipped or word == "skip"
                return False
            if word:
                self._say(text("practice.lesson_keys"))
                return False
            session.worked(step.do(desk.attempt, desk.solver))
        return True

    def _skip(self) -> None:
        self._skipped = True
        self._next()

    def _any_lesson(self, words: Sequence[str]) -> None:
        wanted = [lesson for lesson in LESSONS if [str(lesson.number)] == list(words)]
        if not wanted:
            raise WrongCallError("no_lesson", count=len(LESSONS))
        self._lesson(wanted[0])

    # exercises

    def _drill(self, words: Sequence[str]) -> None:
        if len(words) != 1:
            raise WrongCallError("needs_drill")
        spec = self._course.drill(words[0], [pool.profile.name for pool in self._pools])
        self._say_slow(spec.kind)
        exercise = self._exercises.make(spec)
        self._answer(self._course.begin(exercise), exercise)

    def _say_slow(self, kind: str) -> None:
        if kind in SLOW:
            self._say(text("practice.making"))

    def _rematch(self) -> None:
        first, second = top_confusion(self._course.state.entries)
        self._say(text("practice.rematch.pair", first=text(f"heard.{first}"), second=text(f"heard.{second}")))
        right = 0
        rounds = self._course.rematch(self._pools)
        for one in rounds:
            exercise = self._exercises.make(one.spec)
            answered = self._answer(self._course.begin(exercise, REMATCH, one.about), exercise)
            if answered is None:
                return
            right += answered
        self._say(text("practice.rematch.over", right=right, count=len(rounds)))

    def _answer(self, begun: Begun, exercise: Exercise) -> bool | None:
        """Ask one exercise; return whether it was right, None where it was left open."""
        self._say(text("course.next", what=task_line(exercise.task)))
        self._say(title_of(exercise.profile))
        if exercise.spec.subject == "shared":
            self._lines(engine_lines(exercise.profile)[1:])
        self._say(exercise.asked)
        self._lines(exercise.shown)
        self._play_all(exercise.profile, exercise.sounds)
        for number, choice in enumerate(exercise.choices, 1):
            self._say(f"  {number}  {choice.said}")
        chosen = self._chosen(exercise)
        certainty = None if chosen is None else self._certainty()
        if chosen is None or certainty is None:
            self._say(text("practice.left_open"))
            return None
        right = self._course.answer(begun, exercise, chosen, certainty)
        self._lines(reveal_lines(exercise, chosen))
        return right

    def _chosen(self, exercise: Exercise) -> int | None:
        numbers = "/".join(str(number) for number in range(1, len(exercise.choices) + 1))
        asked = "practice.answer" if exercise.sounds else "practice.answer_silent"
        while True:
            words = self._ask(text(asked, choice=numbers) + " ").split()
            if words == ["leave"]:
                return None
            number = int(words[-1]) if words and words[-1].isdecimal() else 0
            if len(words) == 2 and words[0] == "hear" and 1 <= number <= len(exercise.sounds):
                self._play_all(exercise.profile, exercise.sounds[number - 1 : number])
            elif len(words) == 1 and 1 <= number <= len(exercise.choices):
                return number - 1
            elif words:
                self._say(text("practice.answers", choice=numbers))

    def _certainty(self) -> float | None:
        first, second, third = (text(f"certainty.{one}") for one in CERTAINTIES)
        while True:
            word = self._ask(text("practice.sure", first=first, second=second, third=third) + " ").strip()
            if word == "leave":
                return None
            if word in ("1", "2", "3"):
                return CERTAINTIES[int(word) - 1]
            if word:
                self._say(text("practice.answers", choice="1/2/3"))

    # listening

    def _sounds(self) -> None:
        pool = next((one for one in self._pools if one.profile.name == TOURED), self._pools[0])
        pairs = contrasts_of(pool)
        self._say(text("tour.sounds.about"))
        for number, pair in enumerate(pairs, 1):
            self._say(text("tour.pair", number=number, count=len(pairs)))
            self._say(capital(text(f"tour.{pair.name}")))
            self._play_all(pool.profile, (pair.first, pair.second))
            if self._ask("… ").strip() == "leave":
                break
        self._course.listened(f"tour.{pool.profile.name}", pool.profile.digest)

    def _play_all(self, profile: Profile, sounds: Sequence[Sounding]) -> None:
        for what in sounds:
            self._say(text("course.listen", label=what.label))
            sound = self._exercises.sound(profile, what)
            try:
                played = self._player.play(sound.samples, sound.rate_hz)
            except MissingHereError as error:
                self._say(message_of(error))
                continue
            except KeyboardInterrupt:
                self._say(text("hear.stopped"))
                continue
            if played.void:
                self._say(text("hear.void"))
            if played.file is not None:
                self._say(text("hear.file", path=played.file))
