"""The class report: one page that says how a class hears, what it mistakes, and what to teach next."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from trainer.circuit.profile import PASSES
from trainer.records.class_report.irregularities import irregularity_lines
from trainer.records.class_report.item_statistics import alpha, discrimination, precision_of
from trainer.records.class_report.learner_sums import learner_sums, learners_with_repeats, results_by_class
from trainer.records.class_report.notes import notes_of
from trainer.records.class_report.results import StoredSet
from trainer.records.class_report.roster import roster
from trainer.records.class_report.sums import ClassSums, class_sums
from trainer.records.class_report.teaching import Lesson, lessons
from trainer.records.papers.charts import calibration_chart, marks_chart, slips_chart
from trainer.records.papers.page import page
from trainer.records.store.store import Store
from trainer.words import Words, spoken, text

SHOWN_LEARNERS = 200
SHOWN_PAIRS = 12


@dataclass(frozen=True, slots=True)
class _Cell:
    """One count of a matrix, and whether it counts right answers."""

    count: int
    right: bool


@dataclass(frozen=True, slots=True)
class _MatrixRow:
    """One row of a confusion table: answers where one place was true; `others` counts those without a column."""

    name: str
    cells: tuple[_Cell, ...]
    others: int
    total: int


@dataclass(frozen=True, slots=True)
class _Matrix:
    """Counts of (true, said); `more` says whether some answers have no column."""

    columns: tuple[str, ...]
    rows: tuple[_MatrixRow, ...]
    more: bool


@dataclass(frozen=True, slots=True)
class _LearnerRow:
    """A learner's results; `path` is the best path's minutes in percent of those used."""

    name: str
    mark: float
    passed: bool
    cases: int
    right: int
    solid: str
    weak: str
    path: float
    supported: bool


@dataclass(frozen=True, slots=True)
class _LessonRow:
    """A misconception with what to teach against it."""

    number: int
    name: str
    count: int
    weight: float
    confused: str
    teach: str


@dataclass(frozen=True, slots=True)
class _ItemRow:
    """A case's results; `facility` and `path` are percentages, `shown` and `index_shown` as `precision_of` says."""

    item: int
    count: int
    right: int
    mark: float
    path: float
    facility: float
    shown: str
    discrimination: float | None
    complete: int
    index_shown: str


def report_html(store: Store, stored: StoredSet, made_at: str) -> str:
    """Return the report of a set's counted results."""
    from markupsafe import Markup

    sums = class_sums(store, stored)
    shown = lessons(sums)
    words = Words("report.word")
    charts = {
        "marks": Markup(marks_chart(sums.marks, stored.passes_at, words)) if sums.learners else "",
        "slips": Markup(slips_chart(
            [one.count for one in shown], [one.weight for one in shown], words
        )) if shown else "",
        "calibration": Markup(calibration_chart(sums.certainty, words)) if sums.certainty else "",
    }  # fmt: skip
    return page(
        "report.html",
        text("report.title", title=stored.title),
        spoken(),
        words=words,
        rule=text("report.rule", share=100.0 * stored.certainty_weight, counts=text(f"counts.{stored.counts}")),
        made_at=made_at[:16].replace("T", " "),
        head=_head(sums, stored, learners_with_repeats(store, stored)),
        settle=irregularity_lines(store, stored, made_at),
        charts=charts,
        learners=_learners(store, stored),
        hidden=max(sums.learners - SHOWN_LEARNERS, 0),
        places=_matrix(sums.places, _place),
        cylinders=_matrix(sums.cylinders, str),
        lessons=[_lesson(number, one) for number, one in enumerate(shown, start=1)],
        detection=_detection(sums),
        certainty=[
            {"said": text(f"certainty.{said}"), "count": count, "right": right, "share": 100.0 * right / count}
            for said, (count, right) in sums.certainty.items()
        ],
        effort=_effort(sums),
        items=_items(sums),
        classes=[
            {"name": _class_name(name), "count": count, "right": right} for name, (count, right) in sums.classes.items()
        ],
        reliability=_reliability(sums),
        notes=notes_of(store, stored.id),
    )


def _head(sums: ClassSums, stored: StoredSet, repeated: list[str]) -> list[str]:
    lines = [
        text("report.counts", learners=sums.learners, results=sums.results, size=stored.size),
        text("report.mean", mean=sums.mean_mark, passed=sums.passed, n=sums.learners, passes_at=stored.passes_at),
    ]
    if sums.mean_mark_unsupported is not None and abs(sums.mean_mark_unsupported - sums.mean_mark) > 0.05:
        lines.append(text("report.unsupported", mean=sums.mean_mark_unsupported))
    if sums.voided:
        lines.append(text("report.voided", n=sums.voided))
    if sums.repeated:
        lines.append(text("report.repeated", n=sums.repeated, who=", ".join(repeated[:SHOWN_PAIRS])))
    return lines


def _place(name: str) -> str:
    return " + ".join(text(f"location.{one}") for one in name.split("+")) if name else text("debrief.passes")


def _fault(one: tuple[str, str], other: tuple[str, str]) -> str:
    """Return a place, with the kind where the places are the same."""
    if one[0] != other[0] or not one[0]:
        return _place(one[0])
    return f"{_place(one[0])} ({', '.join(text(f'kind.{kind}') for kind in one[1].split('+'))})"


def _class_name(name: str) -> str:
    return text(f"class.{name}") if name in (PASSES, "group", "two_faults") else _place(name)


def _matrix(pairs: Mapping[tuple[str, str], int], named: Callable[[str], str]) -> _Matrix:
    """Return (true, said) counts as rows; where there are many columns, the rarest share one."""
    truths = sorted({truth for truth, _said in pairs})
    totals: dict[str, int] = {}
    for (_truth, said), count in pairs.items():
        totals[said] = totals.get(said, 0) + count
    often = sorted(totals, key=lambda one: (-totals[one], one))[:SHOWN_PAIRS]
    columns = sorted(often)
    rows = []
    for truth in truths:
        counts = [pairs.get((truth, said), 0) for said in columns]
        total = sum(count for (one, _said), count in pairs.items() if one == truth)
        cells = tuple(_Cell(count, said == truth) for said, count in zip(columns, counts, strict=True))
        rows.append(_MatrixRow(named(truth), cells, total - sum(counts), total))
    return _Matrix(tuple(map(named, columns)), tuple(rows), more=len(totals) > len(often))


def _learners(store: Store, stored: StoredSet) -> list[_LearnerRow]:
    rows = learner_sums(store, stored, SHOWN_LEARNERS)
    names = roster(store)
    solid = results_by_class(store, stored, [row.learner for row in rows])
    shown = []
    for row in rows:
        kinds = solid.get(row.learner, {})
        good = [f"{_class_name(name)} {right}/{count}" for name, (count, right) in kinds.items() if right == count]
        weak = [f"{_class_name(name)} {right}/{count}" for name, (count, right) in kinds.items() if right < count]
        person = names.get(row.learner)
        shown.append(
            _LearnerRow(
                name=person.name if person and person.name else row.learner,
                mark=row.mark,
                passed=row.mark >= stored.passes_at,
                cases=row.cases,
                right=row.right,
                solid=", ".join(good),
                weak=", ".join(weak),
                path=_path_share(row.best_minutes, row.minutes),
                supported=row.supported,
            )
        )
    return shown


def _path_share(best_minutes: float, minutes: float) -> float:
    """Return the best path's minutes in percent of the minutes used."""
    return 100.0 * best_minutes / minutes if minutes else 100.0


def _lesson(number: int, one: Lesson) -> _LessonRow:
    pair = [name for name in (one.truth_case, one.said_case) if name]
    return _LessonRow(
        number,
        text(f"misconception.{one.misconception}") if one.misconception else text("misconception.unclassified"),
        one.count,
        one.weight,
        text("report.confused", truth=_fault(one.truth, one.said), said=_fault(one.said, one.truth)),
        text("report.play", first=pair[0], second=pair[1]) if len(pair) == 2 else "",
    )


def _detection(sums: ClassSums) -> dict[str, int]:
    faulty = sum(count for (truth, _said), count in sums.detected.items() if truth)
    sound = sum(count for (truth, _said), count in sums.detected.items() if not truth)
    return {
        "hits": sums.detected.get((1, 1), 0),
        "faulty": faulty,
        "alarms": sums.detected.get((0, 1), 0),
        "sound": sound,
    }


def _effort(sums: ClassSums) -> dict[str, float]:
    return {
        "plays": median_of(sums.plays),
        "readings": median_of(sums.readings),
        "minutes": sums.minutes / sums.results if sums.results else 0.0,
        "best": sums.best_minutes / sums.results if sums.results else 0.0,
    }


def median_of(histogram: Mapping[int, int]) -> float:
    """Return the median of counted values; nought for none."""
    count = sum(histogram.values())
    if not count:
        return 0.0

    def at(place: int) -> int:
        for value in sorted(histogram):
            place -= histogram[value]
            if place < 0:
                return value
        raise ValueError("the place lies beyond the values")

    return (at((count - 1) // 2) + at(count // 2)) / 2.0


def _items(sums: ClassSums) -> list[_ItemRow]:
    by_item = {one.item: one for one in sums.item_sums}
    rows = []
    for item, totals in sums.items.items():
        one = by_item.get(item)
        complete = 0 if one is None else one.count
        rows.append(
            _ItemRow(
                item=item,
                count=totals.count,
                right=totals.right,
                mark=totals.mark / totals.count,
                path=_path_share(totals.best_minutes, totals.minutes),
                facility=100.0 * totals.right / totals.count,
                shown=precision_of(totals.count),
                discrimination=None if one is None else discrimination(one),
                complete=complete,
                index_shown=precision_of(complete),
            )
        )
    return rows


def _reliability(sums: ClassSums) -> str:
    count = sums.item_sums[0].count if sums.item_sums else 0
    value = alpha(sums.item_sums) if sums.item_sums else None
    if precision_of(count) == "hidden" or value is None:
        return text("report.alpha_hidden", n=count)
    rough = text("report.rough") if precision_of(count) == "rough" else ""
    return text("report.alpha", value=value, count=count, rough=rough)
