"""The wiring as drawn: every wire of the circuit, from module to injector, in a lane of its own."""

from __future__ import annotations

from itertools import combinations

import pytest

from tests.engines import ALL
from trainer.circuit.elements import Location, Part, Side
from trainer.circuit.geometry import HEIGHT, WIDTH, Run, drawing_of
from trainer.circuit.harness import circuit_of
from trainer.circuit.profile import Profile


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_every_wire_of_the_circuit_is_drawn_once_and_no_other(profile: Profile) -> None:
    wires = {
        (element.location, element.side, element.cylinders)
        for element in circuit_of(profile).elements.values()
        if element.part is Part.WIRE
    }
    drawn = [(run.location, run.side, run.cylinders) for run in drawing_of(profile).runs]
    assert set(drawn) == wires


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_wires_join_module_connector_and_injector_without_a_gap(profile: Profile) -> None:
    drawing = drawing_of(profile)
    ends = {run.points[0] for run in drawing.runs} | {run.points[-1] for run in drawing.runs}
    for number in profile.cylinders:
        assert drawing.module_pins[Side.RETURN, str(number)] in ends
        connector = profile.connector_name_of(number)
        through = drawing.through_pins[connector][Side.RETURN, (number,)]
        own = [run for run in drawing.runs if run.cylinders == (number,) and run.side is Side.RETURN]
        assert {run.location for run in own} == {Location.ENGINE_HARNESS, Location.UNDER_COVER}
        assert all(through in (run.points[0], run.points[-1]) for run in own)


@pytest.mark.parametrize("profile", ALL, ids=lambda profile: profile.name)
def test_no_two_engine_wires_lie_over_one_another_and_all_stay_on_the_sheet(profile: Profile) -> None:
    runs = [run for run in drawing_of(profile).runs if run.location is Location.ENGINE_HARNESS]
    for run in runs:
        assert all(0 <= x <= WIDTH and 0 <= y <= HEIGHT for x, y in run.points)
    for first, second in combinations(runs, 2):
        if first.points[0] == second.points[0]:  # branches of one splice leave it together
            continue
        assert overlap(first, second) < 0.5, (first, second)


def overlap(first: Run, second: Run) -> float:
    """Return the longest stretch that two runs share along their pieces."""
    longest = 0.0
    for (ax, ay), (bx, by) in zip(first.points, first.points[1:], strict=False):
        for (cx, cy), (dx, dy) in zip(second.points, second.points[1:], strict=False):
            if ax == bx == cx == dx:
                shared = min(max(ay, by), max(cy, dy)) - max(min(ay, by), min(cy, dy))
            elif ay == by == cy == dy:
                shared = min(max(ax, bx), max(cx, dx)) - max(min(ax, bx), min(cx, dx))
            else:
                continue
            longest = max(longest, shared)
    return longest
