"""Draws the engine from above and its wiring."""

from __future__ import annotations

from trainer.circuit.elements import Location, Side
from trainer.circuit.geometry import INJECTOR_RADIUS, MIDDLE_X, Run, cut_in_two
from trainer.practice.reports.attempt_lines import listening_place_text, named
from trainer.window.drawing.pen import Pen
from trainer.window.pictures.pictures import EnginePicture, Gap
from trainer.words import text

BLOCK_FROM_BANK = 1.5
THIN_PX, PX_PER_A = 0.8, 0.75
"""A wire without current, and how much wider each ampere makes it."""

SHOWN_FROM_A = 0.02
GAP = 1.3
"""Half of a break's length along its wire, in units."""


def draw_engine(pen: Pen, picture: EnginePicture) -> None:
    """Draw everything of one engine."""
    _block(pen, picture)
    for run in picture.drawing.runs:
        if not _lit(picture, run):
            _run(pen, picture, run)
    for run in picture.drawing.runs:
        if _lit(picture, run):
            _run(pen, picture, run)
    _module(pen, picture)
    _connectors(pen, picture)
    _injectors(pen, picture)
    _listening_places(pen, picture)


def _lit(picture: EnginePicture, run: Run) -> bool:
    return picture.currents_a is None and bool(picture.marked & set(run.cylinders)) and len(run.cylinders) == 1


def _block(pen: Pen, picture: EnginePicture) -> None:
    boxes = list(picture.drawing.banks.items())
    lefts, rights = [box[0] for _n, box in boxes], [box[2] for _n, box in boxes]
    top, bottom = boxes[0][1][1], boxes[0][1][3]
    if len(boxes) > 1:
        left, right = min(rights) + BLOCK_FROM_BANK, max(lefts) - BLOCK_FROM_BANK
    else:
        left, right = lefts[0] - 3.5, rights[0] + 3.5
    pen.box((left, top - 1.0, right, bottom + 1.5), "faint", fill="fill", round_=2.5)
    if len(boxes) > 1:
        pen.line([((left + right) / 2, top + 0.5), ((left + right) / 2, bottom)], "faint", 1.0)
    for name, box in boxes:
        pen.box(box, "line", fill="fill", round_=2.8)
        pen.words(text("engine.bank_name", name=named(name)), ((box[0] + box[2]) / 2, box[3] + 1.6), "muted")


def _run(pen: Pen, picture: EnginePicture, run: Run) -> None:
    gap = next((gap for gap in picture.gaps if _breaks(gap, run)), None)
    pieces = list(cut_in_two(run.points, GAP)) if gap else [run.points]
    if picture.currents_a is None:
        role, width = ("marked", 2.4) if _lit(picture, run) else ("faint", 1.2)
    else:
        amps = sum(picture.currents_a.get(number, 0.0) for number in run.cylinders)
        flows = amps > SHOWN_FROM_A
        role, width = ("touch" if flows else "faint"), (THIN_PX + PX_PER_A * min(amps, 20.0) if flows else THIN_PX)
    for piece in pieces:
        pen.line(piece, role, width)
    if gap:
        first, second = pieces[0][-1], pieces[1][0]
        for x, y in (first, second):
            pen.circle((x, y), 0.55, "caution", fill="caution")
        middle = (first[0] + second[0]) / 2, (first[1] + second[1]) / 2 - 1.8
        pen.words(text("engine.broken"), middle, "caution", "bold", most=2.4)


def _breaks(gap: Gap, run: Run) -> bool:
    if gap.location is not run.location or set(gap.cylinders) != set(run.cylinders):
        return False
    return gap.side is None or gap.side is run.side


def _module(pen: Pen, picture: EnginePicture) -> None:
    drawing = picture.drawing
    left, top, right, bottom = drawing.module
    off = "module_connector" in picture.unplugged
    pen.box((left, top, right, bottom), "touch" if off else "line", fill="fill", round_=1.0)
    pen.words(text("engine.module"), ((left + right) / 2, top + 1.8), "text")
    pen.words(text("engine.module_second"), ((left + right) / 2, top + 4.2), "text")
    if off:
        pen.words(text("engine.unplugged"), ((left + right) / 2, bottom - 1.4), "touch")
    for (side, name), (x, y) in drawing.module_pins.items():
        pen.circle((x, y), 0.5, "", fill="marked" if side is Side.RETURN and _marks(picture, name) else "line")
        label = text("engine.feed", name=named(name)) if side is Side.FEED else name
        pen.words(label, (x + 1.4, y), "muted", align=0.0, most=2.0)


def _marks(picture: EnginePicture, name: str) -> bool:
    return name.isdigit() and int(name) in picture.marked


def _connectors(pen: Pen, picture: EnginePicture) -> None:
    for name, box in picture.drawing.connectors.items():
        off = f"pass_through.{name}" in picture.unplugged
        broken = any(
            gap.location is Location.PASS_THROUGH and set(gap.cylinders) <= _served(picture, name)
            for gap in picture.gaps
        )
        pen.box(
            box,
            "touch" if off else "caution" if broken else "line",
            fill="fill",
            round_=0.5,
            width_px=2.2 if off else 1.4,
        )
        if broken:
            outward = 6.5 if box[0] > MIDDLE_X else -6.5
            pen.words(
                text("engine.broken"), ((box[0] + box[2]) / 2 + outward, box[1] - 1.6), "caution", "bold", most=2.4
            )
        for (side, scope), (x, y) in picture.drawing.through_pins[name].items():
            cut = any(
                gap.location is Location.PASS_THROUGH and set(gap.cylinders) == set(scope) and gap.side in (None, side)
                for gap in picture.gaps
            )
            if cut:
                pen.line([(x - 0.6, y - 0.6), (x + 0.6, y + 0.6)], "caution", 1.6)
                pen.line([(x - 0.6, y + 0.6), (x + 0.6, y - 0.6)], "caution", 1.6)
            else:
                pen.circle((x, y), 0.36, "", fill="line")


def _served(picture: EnginePicture, name: str) -> set[int]:
    return {number for _side, scope in picture.drawing.through_pins[name] for number in scope}


def _injectors(pen: Pen, picture: EnginePicture) -> None:
    for number, at in picture.drawing.injectors.items():
        marked = number in picture.marked
        off = f"injector_plug.{number}" in picture.unplugged
        role = "marked" if marked else "touch" if off else "line"
        pen.circle(at, INJECTOR_RADIUS, role, fill="fill", width_px=2.4 if marked or off else 1.4)
        pen.circle(at, INJECTOR_RADIUS * 0.68, "faint", width_px=1.0)
        pen.words(str(number), at, "marked" if marked else "text", "bold", most=2.6)
        if picture.here == f"probe {number}":
            pen.circle(at, INJECTOR_RADIUS + 0.9, "here", width_px=2.4)


def _listening_places(pen: Pen, picture: EnginePicture) -> None:
    for name, (x, y) in picture.places.items():
        here = name == picture.here
        role = "here" if here else "faint"
        pen.circle((x, y), 1.25, role, fill="here" if here else "", width_px=1.8)
        # two ears and a nose that points at the engine
        for side in (-1.0, 1.0):
            pen.circle((x + side * 1.35, y), 0.45, role, fill=role)
        pen.polygon([(x - 0.5, y + 1.2), (x + 0.5, y + 1.2), (x, y + 2.0)], role)
        label = text("engine.you", place=listening_place_text(name)) if here else listening_place_text(name)
        pen.words(label, (x + 2.6, y), "here" if here else "muted", align=0.0)
