"""Where the keyboard is, and where an arrow leads from there."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from trainer.window.kit.layout import Layout, PlacedNode


def after(order: Sequence[str], focus: str | None, step: int) -> str | None:
    """Return the name that Tab (step 1) or Shift+Tab (step -1) leads to; None where nothing can be reached."""
    if not order:
        return None
    if focus not in order:
        return order[0 if step > 0 else -1]
    return order[(order.index(focus) + step) % len(order)]


def towards(layout: Layout, focus: str | None, right: int, down: int) -> str | None:
    """Return the nearest reachable node in a direction, or the focus itself where there is none."""
    here = layout.named(focus) if focus else None
    if here is None:
        return after(layout.order, None, 1)
    x, y = _centre(here)
    best, name = float("inf"), focus
    for other in layout.placed:
        if not other.node.reachable or other.node.name == focus:
            continue
        ox, oy = _centre(other)
        along = (ox - x) * right + (oy - y) * down
        if right:
            aside = _apart(here.box.y, here.box.h, other.box.y, other.box.h)
        else:
            aside = _apart(here.box.x, here.box.w, other.box.x, other.box.w)
        # what lies straight ahead wins over what is nearer but aside
        cost = along + 3.0 * aside
        if along > 1.0 and cost < best:
            best, name = cost, other.node.name
    return name


def scrolled_into_view(
    layout: Layout, name: str, margin: float, scrolled: Mapping[str, float]
) -> tuple[str, float] | None:
    """Return which part to scroll how far so that a node is seen, or None where it is seen already."""
    one, scroller = layout.named(name), layout.inside.get(name, "")
    if one is None or not scroller:
        return None
    box, content = layout.scrolls[scroller]
    offset = min(scrolled.get(scroller, 0.0), content - box.h)
    above = box.y + margin - one.box.y
    below = one.box.y + one.box.h + margin - box.y - box.h
    if above > 0:
        wanted = offset - above
    elif below > 0:
        # its top stays in view where it is higher than the part
        wanted = offset + min(below, one.box.y - margin - box.y)
    else:
        return None
    wanted = min(max(wanted, 0.0), content - box.h)
    return (scroller, wanted) if abs(wanted - offset) > 1.0 else None


def _centre(one: PlacedNode) -> tuple[float, float]:
    return one.box.x + one.box.w / 2, one.box.y + one.box.h / 2


def _apart(start: float, length: float, other: float, other_length: float) -> float:
    """Return the gap between two stretches; nought where they overlap."""
    return max(other - start - length, start - other - other_length, 0.0)
