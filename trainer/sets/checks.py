"""Finds contradictions in a set file: dates, an exam's rules, names given twice, draws from an empty pool."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from trainer.circuit.fault_space import single_faults
from trainer.sets.case_set import DebriefOpens, Draw, Listed, Mode, Policy, Seeds
from trainer.sets.pack import FieldPath
from trainer.sets.set_schema import DrawLine, ListedLine, SetFile
from trainer.words import text

Contradiction = tuple[FieldPath, str, str, str]


def contradictions(form: SetFile, lines: tuple[Listed | Draw, ...]) -> Iterator[Contradiction]:
    """Yield field, what was found, what is allowed and the mend."""
    policy = form.policy
    if policy.opens and policy.closes and policy.opens >= policy.closes:
        found, allowed = policy.closes.isoformat(), text("set.after", moment=policy.opens.isoformat())
        yield ("policy", "closes"), found, allowed, text("set.move_a_date")
    if policy.mode is Mode.EXAM:
        yield from _against_exam(policy)
    if policy.debrief is DebriefOpens.AFTER_CLOSING and policy.closes is None:
        yield ("policy", "debrief"), policy.debrief, text("set.a_closing_date"), text("set.write_closes")
    if (form.seeds is Seeds.VERSIONS) != bool(form.versions):
        yield ("seeds",), form.seeds, text("set.versions_and_seeds"), text("set.write_versions")
    if form.draw_key is None and any(isinstance(line, Draw) for line in lines):
        yield ("draw_key",), text("file.missing"), text("set.a_key"), text("set.write_a_key")
    yield from _twice("cases", "case", [line.case if isinstance(line, ListedLine) else None for line in form.cases])
    yield from _twice("support", "learner", [one.learner for one in form.support])
    for row, (draw, made) in enumerate(zip(form.cases, lines, strict=True)):
        if isinstance(draw, DrawLine) and isinstance(made, Draw):
            yield from _against_pool(row, draw, made)


def _twice(table: str, field: str, names: Sequence[str | None]) -> Iterator[Contradiction]:
    for row, name in enumerate(names):
        if name is not None and name in names[:row]:
            yield (table, row, field), name, text("set.each_once"), text("file.leave_one_of_them_out")


def _against_exam(policy: Policy) -> Iterator[Contradiction]:
    if policy.hints:
        yield ("policy", "hints"), "true", text("set.no_hints_in_exams"), text("set.take_it_out")
    if policy.debrief is DebriefOpens.AFTER_EACH:
        allowed = f"{DebriefOpens.AFTER_SET}, {DebriefOpens.AFTER_CLOSING}"
        yield ("policy", "debrief"), policy.debrief, allowed, text("set.take_one_of_these")
    if policy.trace != "off":
        yield ("policy", "trace"), policy.trace, "off", text("set.trace_as_support")


def _against_pool(row: int, form: DrawLine, draw: Draw) -> Iterator[Contradiction]:
    here: FieldPath = ("cases", row)
    if not draw.places and not (draw.passes and draw.shipped is None):
        every = {fault.kind for engine in draw.profiles for fault in single_faults(engine)}
        allowed = ", ".join(sorted(every & set(draw.kinds or every)))
        yield (*here, "draw"), text("set.an_empty_pool"), allowed, text("set.widen_it")
    elif draw.shipped is not None and len(draw.shipped) < draw.count:
        allowed = text("file.at_most", count=len(draw.shipped))
        yield (*here, "draw"), str(draw.count), allowed, text("set.widen_it")
