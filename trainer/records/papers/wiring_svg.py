"""The wiring of an engine as a picture in a page, breaks and other faults marked; readable in grey."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from trainer.circuit.elements import Location, Side
from trainer.circuit.fault import Fault
from trainer.circuit.faults import OPENS
from trainer.circuit.geometry import HEIGHT, INJECTOR_RADIUS, WIDTH, Drawing, Point, Run, cut_in_two, drawing_of
from trainer.circuit.profile import Profile
from trainer.practice.reports.attempt_lines import named
from trainer.words import text

GAP = 1.4


def wiring_svg(profile: Profile, faults: Sequence[Fault]) -> str:
    """Return the drawing: wires of faulty cylinders black, the others grey, the fault's place crossed."""
    drawing = drawing_of(profile)
    # what the module is fed through is no injector's circuit
    hurt = {number for fault in faults for number in fault.cylinders if fault.location is not Location.MODULE_POWER}
    parts = [_boxes(drawing)]
    for run in sorted(drawing.runs, key=lambda one: bool(hurt & set(one.cylinders))):
        fault = next((one for one in faults if _on(one, run)), None)
        parts.append(_run(run, fault, lit=bool(hurt & set(run.cylinders)) and len(run.cylinders) == 1))
    parts += [_injector(number, point, number in hurt) for number, point in drawing.injectors.items()]
    elsewhere = [fault for fault in faults if not any(_on(fault, run) for run in drawing.runs)]
    parts += [_cross(_place(drawing, profile, fault)) for fault in elsewhere]
    described = escape(text("handout.wiring"))
    return (
        f'<svg viewBox="0 0 {WIDTH:.0f} {HEIGHT:.0f}" role="img" aria-label="{described}" '
        f'font-family="B612, sans-serif" font-size="2.2">{"".join(parts)}</svg>'
    )


def _on(fault: Fault, run: Run) -> bool:
    if fault.location is not run.location or set(fault.cylinders) != set(run.cylinders):
        return False
    return fault.side is None or fault.side is run.side


def _boxes(drawing: Drawing) -> str:
    parts = []
    for name, (left, top, right, bottom) in drawing.banks.items():
        parts.append(_box(left, top, right, bottom))
        label = escape(text("engine.bank_name", name=named(name)))
        parts.append(_words((left + right) / 2, bottom + 2.4, label))
    parts += [_box(*box) for box in drawing.connectors.values()]
    left, top, right, bottom = drawing.module
    parts.append(_box(left, top, right, bottom))
    parts.append(_words((left + right) / 2, top + 3, escape(text("engine.module"))))
    for (side, name), (x, y) in drawing.module_pins.items():
        label = text("engine.feed", name=named(name)) if side is Side.FEED else name
        parts.append(f'<circle cx="{x:.2f}" cy="{y:.2f}" r="0.45"/>')
        parts.append(f'<text x="{x + 1.2:.2f}" y="{y + 0.7:.2f}" font-size="1.9">{escape(label)}</text>')
    return "".join(parts)


def _box(left: float, top: float, right: float, bottom: float) -> str:
    return (
        f'<rect x="{left:.2f}" y="{top:.2f}" width="{right - left:.2f}" height="{bottom - top:.2f}" rx="1" '
        'fill="none" stroke="#555" stroke-width="0.25"/>'
    )


def _words(x: float, y: float, label: str) -> str:
    return f'<text x="{x:.2f}" y="{y:.2f}" text-anchor="middle">{label}</text>'


def _run(run: Run, fault: Fault | None, *, lit: bool) -> str:
    ink, width = ("#000", 0.55) if lit or fault else ("#999", 0.3)
    dash = ' stroke-dasharray="1 0.6"' if run.side is Side.FEED else ""
    pieces, mark = [run.points], ""
    if fault is not None:
        before, after = cut_in_two(run.points, GAP)
        middle = ((before[-1][0] + after[0][0]) / 2, (before[-1][1] + after[0][1]) / 2)
        pieces, mark = ([before, after] if fault.kind in OPENS else [run.points]), _cross(middle)
    lines = "".join(
        f'<polyline points="{" ".join(f"{x:.2f},{y:.2f}" for x, y in piece)}" fill="none" stroke="{ink}" '
        f'stroke-width="{width}"{dash}/>'
        for piece in pieces
    )
    return lines + mark


def _cross(point: Point) -> str:
    x, y = point
    return (
        f'<path d="M{x - 1.1:.2f} {y - 1.1:.2f} l2.2 2.2 m0 -2.2 l-2.2 2.2" stroke="#000" stroke-width="0.6"/>'
        f'<circle cx="{x:.2f}" cy="{y:.2f}" r="2" fill="none" stroke="#000" stroke-width="0.35"/>'
    )


def _injector(number: int, point: Point, hurt: bool) -> str:
    x, y = point
    fill, ink = ("#000", "#fff") if hurt else ("#fff", "#000")
    return (
        f'<circle cx="{x:.2f}" cy="{y:.2f}" r="{INJECTOR_RADIUS}" fill="{fill}" stroke="#000" stroke-width="0.3"/>'
        f'<text x="{x:.2f}" y="{y + 0.9:.2f}" text-anchor="middle" fill="{ink}" font-size="2.6">{number}</text>'
    )


def _place(drawing: Drawing, profile: Profile, fault: Fault) -> Point:
    """Return where a fault lies that is not in a wire: at a pin of the module or a connector, or at the injector."""
    number = fault.cylinders[0]
    if fault.location is Location.MODULE_POWER:
        left, top, right, _bottom = drawing.module
        return (left + right) / 2, top - 3.0
    if fault.location is Location.DRIVE_MODULE:
        if len(fault.cylinders) == 1:
            return drawing.module_pins[Side.RETURN, str(number)]
        fed = next((name for name, scope in profile.wiring.outputs.items() if set(scope) == set(fault.cylinders)), None)
        return _middle(drawing.module) if fed is None else drawing.module_pins[Side.FEED, fed]
    if fault.location is Location.PASS_THROUGH:
        for name, pins in drawing.through_pins.items():
            for (side, scope), point in pins.items():
                if number in scope and set(scope) >= set(fault.cylinders) and fault.side in (None, side):
                    return point
            if any(number in scope for _side, scope in pins):
                return _middle(drawing.connectors[name])
    return drawing.injectors[number]


def _middle(box: tuple[float, float, float, float]) -> Point:
    left, top, right, bottom = box
    return (left + right) / 2, (top + bottom) / 2
