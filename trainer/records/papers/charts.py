"""Charts of a report as SVG in the page: black, grey and hatching, so that they read on any printer."""

from __future__ import annotations

import io
import logging
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from trainer.words import Words

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

logging.getLogger("matplotlib").setLevel(logging.ERROR)  # where it keeps its list of fonts is no news to anybody

WIDE_IN, HIGH_IN = 6.2, 2.1
BAR_IN = 0.26


def marks_chart(marks: Mapping[int, int], passes_at: float, words: Words) -> str:
    """Return how many learners have a mark in each ten, with the mark from which the set is passed."""
    from matplotlib.ticker import MaxNLocator

    figure, axes = _figure(HIGH_IN)
    axes.bar(
        [10 * ten + 5 for ten in marks], list(marks.values()), width=9.0, color="0.75", edgecolor="0.1", hatch="//"
    )
    axes.axvline(passes_at, color="0.0", linestyle="--", linewidth=1.2)
    axes.set_xlim(0, 100)
    axes.set_xlabel(words["mark"])
    axes.set_ylabel(words["learners"])
    axes.yaxis.set_major_locator(MaxNLocator(integer=True))
    return _svg(figure, words["marks"])


def slips_chart(counts: Sequence[int], weights: Sequence[float], words: Words) -> str:
    """Return misconceptions as bars: how often, and in black how often weighed by how sure."""
    figure, axes = _figure(0.95 + BAR_IN * max(len(counts), 1))
    places = range(len(counts))
    axes.barh(places, counts, color="0.85", edgecolor="0.1", hatch="..", label=words["often"])
    axes.barh(places, weights, height=0.35, color="0.15", label=words["sure"])
    axes.set_yticks(list(places), [str(number) for number in range(1, len(counts) + 1)])
    axes.invert_yaxis()
    axes.set_xlabel(words["findings"])
    axes.legend(loc="lower left", bbox_to_anchor=(0.0, 1.0), ncols=2, fontsize=7, frameon=False)
    return _svg(figure, words["slips"])


def calibration_chart(said: Mapping[float, tuple[int, int]], words: Words) -> str:
    """Return the share that was right at each certainty, its count beside it, over the line of perfect calibration."""
    figure, axes = _figure(HIGH_IN)
    axes.plot([0.0, 1.0], [0.0, 1.0], color="0.5", linewidth=1.0, linestyle=":")
    certainties = sorted(said)
    shares = [said[one][1] / said[one][0] for one in certainties]
    axes.plot(certainties, shares, color="0.0", marker="o", linewidth=1.2)
    for certainty, share in zip(certainties, shares, strict=True):
        axes.annotate(f" n={said[certainty][0]}", (certainty, share), fontsize=7, va="bottom")
    axes.set_xlim(0.4, 1.05)
    axes.set_ylim(-0.05, 1.15)
    axes.set_xlabel(words["certainty"])
    axes.set_ylabel(words["right"])
    return _svg(figure, words["calibration"])


def _figure(high_in: float) -> tuple[Figure, Axes]:
    from matplotlib.figure import Figure

    figure = Figure(figsize=(WIDE_IN, high_in), layout="constrained")
    axes = figure.add_subplot()
    axes.spines[["top", "right"]].set_visible(False)
    axes.tick_params(labelsize=8)
    return figure, axes


def _svg(figure: Figure, title: str) -> str:
    """Return a figure as SVG for a page: text as outlines, nothing in it that changes from run to run."""
    from html import escape

    from matplotlib import rc_context

    out = io.StringIO()
    with rc_context({"svg.hashsalt": title, "svg.fonttype": "path"}):
        figure.savefig(out, format="svg", metadata={"Date": None, "Creator": None})
    drawn = out.getvalue()
    return drawn[drawn.index("<svg") :].replace("<svg ", f'<svg role="img" aria-label="{escape(title)}" ', 1)
