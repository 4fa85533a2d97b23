"""A set previewed by its instructor: every sound as a file and a reveal sheet; no record is touched."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from trainer.cases.files.whole_file import write_bytes
from trainer.cases.profiles.profile_title import title_of
from trainer.cases.solved.universe_cache import Universes
from trainer.circuit.codes import codes_of
from trainer.circuit.fault import Conditions
from trainer.desk.caching_solver import CachingSolver
from trainer.instruments.bench import Work
from trainer.output.wav import write_wav
from trainer.practice.reports.attempt_lines import claims_text, code_lines, test_text
from trainer.practice.reports.path_lines import ends_open
from trainer.practice.reports.set_lines import head_lines
from trainer.reasoning.universe.finding import truth_of
from trainer.records.papers.page import page
from trainer.sets.case_set import CaseSet
from trainer.sets.items import SetItem, items_of
from trainer.sound.render import render
from trainer.words import spoken, text


def write_preview(
    case_set: CaseSet, learner: str, folder: Path, universes: Universes, report: Callable[[str], None]
) -> list[Path]:
    """Write the sounds of a set and a list of what each is; return the files."""
    solver = CachingSolver()
    written, shown = [], []
    for item in items_of(case_set, learner):
        report(text("set.rendering", number=item.number, size=case_set.size))
        path = folder / f"{case_set.name}_case_{item.number:02}.wav"
        folder.mkdir(parents=True, exist_ok=True)
        case = item.case
        work = Work(conditions=Conditions(temperature_c=case.temperature_c))
        solved = solver(case.profile, case.faults, work)
        sound = render(solved, "front", case.bed, item.seed)
        write_wav(path, sound.samples, sound.rate_hz)
        codes = [code.code for code in codes_of(solved)]
        shown.append(_shown(item, path.name, codes, universes))
        written.append(path)
    sheet = folder / f"{case_set.name}_reveal.html"
    words = {"keep": text("preview.keep"), "path": text("preview.path")}
    title = text("preview.title", title=case_set.title)
    body = page("preview.html", title, spoken(), head=head_lines(case_set, learner), items=shown, words=words)
    write_bytes(sheet, body.encode("utf-8"), make_folder=True)
    return [*written, sheet]


def _shown(item: SetItem, file: str, codes: list[str], universes: Universes) -> dict[str, object]:
    case = item.case
    path, truth = universes.reasoner(case).best_path, truth_of(case.faults)
    steps = [text("preview.step", test=test_text(step.name), minutes=step.minutes) for step in path]
    return {
        "heading": text("preview.case", number=item.number, title=case.in_words.title),
        "engine": title_of(case.profile),
        "truth": claims_text(truth),
        "story": case.in_words.story,
        "conditions": text("preview.conditions", celsius=case.temperature_c, bed=case.bed.level_dba, seed=item.seed),
        "codes": code_lines(case.profile, codes),
        "path": "; ".join(steps) + (f". {text('debrief.best_open')}" if ends_open(path, truth) else ""),
        "takeaway": case.in_words.takeaway,
        "file": file,
    }
