"""Finds contradictions in a set file: dates, an exam's rules, names given twice, draws from an empty pool."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from trainer.circuit.fault_space import single_faults
from trainer.errors import Said, Sentence
from trainer.sets.case_set import DebriefOpens, Draw, Listed, Mode, Policy, Seeds
from trainer.sets.pack import FieldPath
from trainer.sets.set_schema import DrawLine, ListedLine, SetFile

Contradiction = tuple[FieldPath, Said, Said, Said]


def contradictions(form: SetFile, lines: tuple[Listed | Draw, ...]) -> Iterator[Contradiction]:
    """Yield field, what was found, what is allowed and the mend."""
    policy = form.policy
    if policy.opens and policy.closes and policy.opens >= policy.closes:
        found, allowed = policy.closes.isoformat(), Sentence("set.after", moment=policy.opens.isoformat())
        yield ("policy", "closes"), found, allowed, Sentence("set.move_a_date")
    if policy.mode is Mode.EXAM:
        yield from _against_exam(policy)
    if policy.debrief is DebriefOpens.AFTER_CLOSING and policy.closes is None:
        yield ("policy", "debrief"), policy.debrief, Sentence("set.a_closing_date"), Sentence("set.write_closes")
    if (form.seeds is Seeds.VERSIONS) != bool(form.versions):
        yield ("seeds",), form.seeds, Sentence("set.versions_and_seeds"), Sentence("set.write_versions")
    if form.draw_key is None and any(isinstance(line, Draw) for line in lines):
        yield ("draw_key",), Sentence("file.missing"), Sentence("set.a_key"), Sentence("set.write_a_key")
    yield from _twice("cases", "case", [line.case if isinstance(line, ListedLine) else None for line in form.cases])
    yield from _twice("support", "learner", [one.learner for one in form.support])
    for row, (draw, made) in enumerate(zip(form.cases, lines, strict=True)):
        if isinstance(draw, DrawLine) and isinstance(made, Draw):
            yield from _against_pool(row, draw, made)


def _twice(table: str, field: str, names: Sequence[str | None]) -> Iterator[Contradiction]:
    for row, name in enumerate(names):
        if name is not None and name in names[:row]:
            yield (table, row, field), name, Sentence("set.each_once"), Sentence("file.leave_one_of_them_out")


def _against_exam(policy: Policy) -> Iterator[Contradiction]:
    if policy.hints:
        yield ("policy", "hints"), "true", Sentence("set.no_hints_in_exams"), Sentence("set.take_it_out")
    if policy.debrief is DebriefOpens.AFTER_EACH:
        allowed = f"{DebriefOpens.AFTER_SET}, {DebriefOpens.AFTER_CLOSING}"
        yield ("policy", "debrief"), policy.debrief, allowed, Sentence("set.take_one_of_these")
    if policy.trace != "off":
        yield ("policy", "trace"), policy.trace, "off", Sentence("set.trace_as_support")


def _against_pool(row: int, form: DrawLine, draw: Draw) -> Iterator[Contradiction]:
    here: FieldPath = ("cases", row)
    if not draw.places and not (draw.passes and draw.shipped is None):
        every = {fault.kind for engine in draw.profiles for fault in single_faults(engine)}
        kinds = ", ".join(sorted(every & set(draw.kinds or every)))
        yield (*here, "draw"), Sentence("set.an_empty_pool"), kinds, Sentence("set.widen_it")
    elif draw.shipped is not None and len(draw.shipped) < draw.count:
        allowed = Sentence("file.at_most", count=len(draw.shipped))
        yield (*here, "draw"), str(draw.count), allowed, Sentence("set.widen_it")
