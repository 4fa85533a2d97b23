"""Every screen of the window, reached as a person reaches it; and what can be wrong with how one is laid out."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from tests.window_hands import Hands
from trainer.window.kit.layout import Layout, PlacedNode
from trainer.window.kit.lines import Measure
from trainer.window.station.station_pin import PinScreen

LEAVES = ("text", "button", "tick", "field", "bar", "picture")


def every_screen(hands: Hands) -> Iterator[str]:  # noqa: PLR0915  # a journey through everything
    """Go through every screen with the keyboard alone, yielding the name of each while it is shown."""
    yield "who"
    hands.act("two")
    yield "who, two"
    hands.act("two").go("name").write("anna").press("enter")
    yield "waiting"
    hands.act("practice")
    yield "practice"
    hands.act("lesson.1")
    yield "lesson"
    hands.press("q").wait(0.1)
    yield "lesson, taken over"
    hands.press("escape").act("sounds").wait(0.1)
    yield "sounds tour"
    hands.press("escape").act("drill.ear").wait(0.1)
    yield "exercise, ear"
    hands.press("a")
    yield "exercise, chosen"
    hands.press("l")
    yield "exercise, answered"
    hands.press("escape")
    for kind in ("numbering", "codes", "meter", "reasoning", "limits", "job_card"):
        hands.act(f"drill.{kind}").wait(0.1)
        yield f"exercise, {kind}"
        hands.press("b", "l").press("escape")
    hands.press("escape").go("next")
    hands.go("all").press("a")
    yield "waiting, all cases"
    hands.press("a").go("code").write("pair_with_two_causes").press("enter")
    yield "bench, new"
    hands.press("t").wait(25.0, 0.5)
    yield "bench, heard"
    hands.press("w")
    yield "choose place"
    hands.act("place.engine_harness")
    yield "choose how hard"
    hands.press("escape").press("x")
    yield "choose cylinders"
    hands.press("escape", "l")
    yield "lend"
    hands.act("other.0").press("p")
    yield "probe"
    hands.act("pin.2").act("pin.3").press("r").wait(0.1)
    yield "probe, read"
    hands.press("t", "r").wait(0.1)
    yield "probe, trace"
    hands.press("escape", "j", "c", "f")
    yield "finding, empty"
    hands.press("3").act("place.pass_through_connector").act("kind.open").act("side.return").press("b")
    yield "finding, one"
    hands.act("count.2").act("fault.1").press("1").act("place.engine_harness").act("kind.short_to_ground")
    hands.act("side.feed")
    yield "finding, two"
    hands.act("commit")
    yield "confirm"
    hands.press("y")
    yield "bench, found"
    hands.press("r")
    yield "repair"
    hands.press("m", "y", "e")
    yield "retest"
    hands.act("as_it_stands").wait(0.1)
    hands.press("d").wait(0.1)
    yield "debrief, closed"
    hands.press("t", "y", "d").wait(1.0)
    yield "debrief, open"
    hands.press("o", "a")
    yield "debrief, answer drawn"
    hands.press("escape").go("progress").press("p")
    yield "progress"
    hands.press("escape").go("progress").press("f2")
    yield "free"
    hands.act("kind.added_resistance")
    yield "free, chosen"
    hands.press("b")
    yield "free bench"
    hands.press("escape", "escape").go("progress").press("f3")
    yield "setup"
    hands.act("headphones").wait(0.1)
    while hands.shell.screen.setup.current_trial is not None:  # type: ignore[attr-defined]
        trial = hands.shell.screen.setup.current_trial  # type: ignore[attr-defined]
        yield f"setup, {trial.sound.part}"
        hands.act(f"answer.{trial.right or trial.answers[0]}")
    yield "setup, verdict"
    hands.press("escape").go("progress").press("f4")
    yield "glossary"
    hands.press("escape").go("progress").press("f5")
    yield "settings"
    hands.press("escape").go("progress").press("f6")
    yield "doctor"
    hands.press("escape").go("progress").press("f7")
    yield "instructor, empty"
    hands.press("b")
    yield "set builder"
    hands.go("title").write("A set of one").act("mode.exam")
    for _times in range(5):
        hands.act("drawn.less")
    hands.act("listing")
    yield "set builder, cases"
    hands.act("listing").act("plays.more").act("save").wait(0.1)
    yield "set builder, kept"
    hands.press("escape")
    hands.act("file.a_set_of_one.yaml").act("seal")
    yield "passphrase, new"
    hands.write("anvil lantern plum").go("again").write("anvil lantern plum").press("enter")
    yield "instructor, sealed"
    hands.press("escape").go("progress").press("s")
    yield "sets"
    hands.act("set.a_set_of_one.sealed")
    yield "passphrase"
    hands.write("anvil lantern plum").press("enter").wait(0.1)
    yield "set"
    hands.press("n").wait(0.1)
    yield "bench, in a set"
    hands.press("f").act("count.0").press("b").act("commit").press("y").wait(0.1)
    yield "set, done"
    hands.press("escape", "escape").go("progress").press("f7")
    hands.act("file.a_set_of_one.sealed").go("folder").write(str(hands.shell.services.results)).act("collect")
    hands.write("anvil lantern plum").press("enter").wait(0.1)
    yield "instructor, collected"
    hands.press("escape").go("next")
    hands.shell.show(PinScreen(hands.shell))  # a station in station mode asks for its PIN before the program ends
    yield "pin"
    hands.press("escape")


def wrong_with(layout: Layout, measure: Measure, size: tuple[int, int]) -> list[str]:
    """Return what is clipped, covered or cannot be reached on a screen."""
    return [*_clipped(layout, size), *_too_wide(layout, measure), *_covered(layout)]


def _leaves(layout: Layout) -> list[PlacedNode]:
    return [one for one in layout.placed if one.node.kind in LEAVES]


def _clipped(layout: Layout, size: tuple[int, int]) -> Iterator[str]:
    areas = [box for box, _content in layout.scrolls.values()]
    for one in _leaves(layout):
        if not one.clip.w:  # scrolled away with everything around it
            continue
        if one.box.x < one.clip.x - 1 or one.box.x + one.box.w > one.clip.x + one.clip.w + 1:
            yield f"{_name(one)} is cut at the side"
        scrolls = any(area.meets(one.clip) == one.clip for area in areas)
        if not scrolls and one.box.y + one.box.h > size[1] + 1:
            yield f"{_name(one)} is cut below and nothing scrolls"
    for name, (box, _content) in layout.scrolls.items():
        if box.h < 2.0 * 15 or box.w < 60:
            yield f"what scrolls as {name} is only {box.w:.0f} by {box.h:.0f}"


def _too_wide(layout: Layout, measure: Measure) -> Iterator[str]:
    for one in _leaves(layout):
        for line in one.lines:
            if len(line) > 1 and measure.width(line, one.node.look) > one.box.w + 1:
                yield f"the line {line!r} of {_name(one)} is wider than its place"


def _covered(layout: Layout) -> Iterator[str]:
    for first, second in combinations(_leaves(layout), 2):
        over = first.box.meets(second.box)
        if over and over.w > 1.5 and over.h > 1.5 and first.clip == second.clip:
            yield f"{_name(first)} and {_name(second)} lie over one another"


def _name(one: PlacedNode) -> str:
    return one.node.name or repr(one.node.text[:30])
