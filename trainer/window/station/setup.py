"""The sound set-up on the screen: one question after another, each sound as often as wanted."""

from __future__ import annotations

from collections.abc import Callable

from trainer.output.playback import Samples
from trainer.output.sound_setup import SetupState, Trial, new_setup, verdict_of, with_answer, without_last_answer
from trainer.records.papers.sheets import listening_text
from trainer.window.kit.nodes import Node, button, flow, scroll, words
from trainer.window.shell.listening import Track
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import text


class SetupScreen(Screen):
    """About ninety seconds of questions; it can be left at any of them, and bars nobody."""

    name = "setup"
    first = "play"

    def __init__(self, shell: Shell) -> None:
        super().__init__(shell)
        self.setup: SetupState | None = None
        self._seed = round(shell.now_s * 1000) % 2**31 + len(shell.settings.ears)
        self._sound: tuple[Trial, Samples] | None = None
        shell.listening.stop()

    @property
    def cylinders(self) -> tuple[int, ...]:
        """Digits answer a question for a number: nothing here is a cylinder."""
        trial = self.setup.current_trial if self.setup else None
        if trial is None or trial.sound.part not in ("hum", "phase"):
            return ()
        return tuple(int(answer) for answer in trial.answers)

    def named(self, cylinder: int, *, shift: bool) -> None:
        """Answer by a number."""
        self._answer(str(cylinder))()

    def view(self) -> Node:
        """Return the question that is asked now, or what has come of it."""
        if self.setup is None:
            return self._start()
        if self.setup.current_trial is None:
            return self._verdict()
        return self._question(self.setup.current_trial)

    def _start(self) -> Node:
        calibration = self.shell.sound.calibration
        verdict = calibration.verdict if calibration.holds(self.shell.services.now_utc()) else None
        return scroll(
            "page",
            words(text("setup.title"), "title", "setup.title"),
            words(text("setup.why")),
            words(text("caution.sound"), "caution"),
            words(text("setup.device", name=self.shell.sound.device or text("settings.device_default")), "bold"),
            words(listening_text(verdict), "body", "setup.before"),
            flow(
                button("play", text("setup.begin"), self._begin(headphones=False), chosen=True),
                button("headphones", text("setup.begin_headphones"), self._begin(headphones=True), "h"),
                gap=0.6,
            ),
            self.shell.footer(),
            gap=0.9,
        )

    def _question(self, trial: Trial) -> Node:
        assert self.setup is not None
        part = trial.sound.part
        numbers = part in ("hum", "phase")
        answers = [
            button(
                f"answer.{answer}", answer if numbers else text(f"setup.answer.{part}.{answer}"), self._answer(answer)
            )
            for answer in trial.answers
        ]
        level = self.shell.listening.player.gain_db
        done, count = len(self.setup.answers), len(self.setup.trials)
        return scroll(
            "page",
            words(text("setup.step", done=done + 1, count=count), "muted", "setup.step"),
            Node("bar", "setup.bar", share=done / count),
            words(text(f"setup.ask.{part}"), "title", "setup.ask"),
            words(text("setup.level", level=level), "body", "setup.level") if part == "comfort" else None,
            flow(
                button("softer", text("setup.softer"), lambda: self._louder(-1), "-"),
                button("louder", text("setup.louder"), lambda: self._louder(1), "+"),
                gap=0.6,
            )
            if part == "comfort"
            else None,
            flow(button("play", text("setup.again"), self._play, "space", chosen=not self._sound), gap=0.6),
            flow(*answers, gap=0.6),
            flow(
                button("undo", text("setup.undo"), self._undo if self.setup.answers else None, "backspace"),
                button("back", text("setup.leave"), self.back, "escape"),
                gap=0.6,
            ),
            gap=0.9,
        )

    def _verdict(self) -> Node:
        verdict = self.shell.sound.calibration.verdict or {}
        return scroll(
            "page",
            words(text("setup.result"), "title", "setup.result"),
            words(listening_text(verdict), "body", "setup.verdict"),
            words(text(f"setup.advice.{verdict['hum']}"), "bold"),
            flow(
                button("play", text("setup.once_more"), self._begin(headphones=False), "r"),
                button("back", text("ui.done"), self.back, "escape", chosen=True),
                gap=0.6,
            ),
            gap=0.9,
        )

    # hands

    def _begin(self, *, headphones: bool) -> Callable[[], None]:
        def begin() -> None:
            self._seed += 1
            self.setup = new_setup(self._seed, headphones=headphones)
            self._sound = None
            self._play()

        return begin

    def _play(self) -> None:
        trial = self.setup.current_trial if self.setup else None
        if trial is None:
            return
        if self._sound is not None and self._sound[0] is trial:
            self._hear(trial, self._sound[1])
            return
        self.shell.ask("setup_sound", trial.sound, then=lambda samples: self._hear(trial, samples))

    def _hear(self, trial: Trial, samples: Samples) -> None:
        if self.setup is None or self.setup.current_trial is not trial or self not in self.shell.screens:
            return
        self._sound = (trial, samples)
        self.shell.listening.play(Track(samples, "setup"), loop=trial.sound.part == "comfort")

    def _answer(self, answer: str) -> Callable[[], None]:
        def take() -> None:
            assert self.setup is not None
            self.shell.listening.stop()
            self.setup = with_answer(self.setup, answer)
            self._sound = None
            if self.setup.current_trial is None:
                self._keep()
            else:
                self._play()
            self.shell.touch()

        return take

    def _keep(self) -> None:
        assert self.setup is not None
        sound, level = self.shell.sound, self.shell.listening.player.gain_db
        plain: dict[str, object] = {**verdict_of(self.setup).plain, "level_db": level}
        checked = self.shell.services.now_utc()
        self.shell.keep(
            self.shell.settings.with_calibration(sound.device, verdict=plain, level_db=level, checked_at=checked)
        )

    def _undo(self) -> None:
        assert self.setup is not None
        self.setup = without_last_answer(self.setup)
        self._sound = None
        self._play()

    def press(self, key: str, *, shift: bool) -> bool:
        """Take Backspace, which takes the last answer back."""
        if key == "backspace" and self.setup and self.setup.answers and self.setup.current_trial:
            self._undo()
            return True
        return False

    def _louder(self, steps: int) -> None:
        self.shell.sound.louder(steps)

    def left(self) -> None:
        """Stop what plays."""
        self.shell.listening.stop()
