"""Small screens that ask for one thing: a place, cylinders, a yes."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from trainer.circuit.elements import Location
from trainer.instruments.tries import CAN_BE_TRIED
from trainer.window.kit.nodes import Node, button, column, flow, scroll, words
from trainer.window.shell.screen import Screen
from trainer.window.shell.shell import Shell
from trainer.words import text

Choice = tuple[str, Callable[[], None]]


class ChoosePlace(Screen):
    """Asks for one of the places that can be moved or warmed, or for none; `others` are further choices."""

    name = "choose_place"

    def __init__(
        self,
        shell: Shell,
        title: str,
        caution: str,
        then: Callable[[Location | None], None],
        none: str,
        others: Sequence[Choice] = (),
    ) -> None:
        super().__init__(shell)
        self._title, self._caution, self._then, self._none = title, caution, then, none
        self._others = tuple(others)

    def view(self) -> Node:
        """Return the places as buttons."""
        places = [button(f"place.{p.value}", text(f"location.{p}"), self._chosen(p)) for p in CAN_BE_TRIED]
        others = [button(f"other.{n}", label, self._other(act)) for n, (label, act) in enumerate(self._others)]
        none = button("place.none", self._none, self._chosen(None), "n")
        return _asked(self, self._title, self._caution, column(*places, *others, none, gap=0.4))

    def _other(self, act: Callable[[], None]) -> Callable[[], None]:
        def choose() -> None:
            self.shell.close()
            act()

        return choose

    def _chosen(self, place: Location | None) -> Callable[[], None]:
        def choose() -> None:
            self.shell.close()
            self._then(place)

        return choose


class ChooseOne(Screen):
    """Asks for one of a few choices; each does what belongs to it."""

    name = "choose_one"
    first = "choice.0"

    def __init__(self, shell: Shell, title: str, why: str, choices: Sequence[Choice]) -> None:
        super().__init__(shell)
        self._title, self._why, self._choices = title, why, tuple(choices)

    def view(self) -> Node:
        """Return the choices as buttons."""
        buttons = [button(f"choice.{n}", label, self._chosen(act)) for n, (label, act) in enumerate(self._choices)]
        return _asked(self, self._title, self._why, column(*buttons, gap=0.4))

    def _chosen(self, act: Callable[[], None]) -> Callable[[], None]:
        def choose() -> None:
            self.shell.close()
            act()

        return choose


class ChooseCylinders(Screen):
    """Asks for so many cylinders, by digits or buttons; `others` are further choices."""

    name = "choose_cylinders"

    def __init__(
        self,
        shell: Shell,
        title: str,
        caution: str,
        cylinders: Sequence[int],
        count: int,
        then: Callable[[tuple[int, ...]], None],
        others: Sequence[Choice] = (),
    ) -> None:
        super().__init__(shell)
        self._title, self._caution, self._then, self._others = title, caution, then, tuple(others)
        self._cylinders, self._count = tuple(cylinders), count
        self._chosen: tuple[int, ...] = ()

    @property
    def cylinders(self) -> tuple[int, ...]:
        """The cylinders to choose from."""
        return self._cylinders

    def view(self) -> Node:
        """Return the cylinders as buttons."""
        numbers = [
            button(f"cylinder.{n}", str(n), self._choose(n), chosen=n in self._chosen, least=2.5)
            for n in self._cylinders
        ]
        others = [button(f"other.{place}", label, self._other(act)) for place, (label, act) in enumerate(self._others)]
        return _asked(self, self._title, self._caution, column(flow(*numbers), *others, gap=0.6))

    def named(self, cylinder: int, *, shift: bool) -> None:
        """Choose by digits."""
        self._choose(cylinder)()

    def _choose(self, number: int) -> Callable[[], None]:
        def choose() -> None:
            kept = tuple(one for one in self._chosen if one != number)
            self._chosen = kept if len(kept) < len(self._chosen) else (*self._chosen, number)
            self.shell.touch()
            if len(self._chosen) == self._count:
                self.shell.close()
                self._then(self._chosen)

        return choose

    def _other(self, act: Callable[[], None]) -> Callable[[], None]:
        def choose() -> None:
            self.shell.close()
            act()

        return choose


class Confirm(Screen):
    """Asks for a yes before what cannot be had back."""

    name = "confirm"
    first = "no"

    def __init__(self, shell: Shell, question: str, agreed: Callable[[], None]) -> None:
        super().__init__(shell)
        self._question, self._agreed = question, agreed

    def view(self) -> Node:
        """Return the question with both answers."""
        answers = flow(
            button("no", text("ui.no"), self.shell.close, "n"), button("yes", text("ui.yes"), self._yes, "y"), gap=0.6
        )
        return scroll("page", words(self._question, "title", "question"), answers, gap=1.0)

    def _yes(self) -> None:
        self.shell.close()
        self._agreed()


def _asked(screen: Screen, title: str, caution: str, choices: Node) -> Node:
    return scroll(
        "page",
        words(title, "title", "question"),
        words(caution, "caution", "caution") if caution else None,
        choices,
        screen.shell.footer(),
        gap=1.0,
    )
