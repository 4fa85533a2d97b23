"""Sheets to print: the job card and the result, each one page of HTML without anything from outside."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from trainer.cases.files.whole_file import write_bytes
from trainer.cases.profiles.profile_title import title_of
from trainer.practice.attempt.attempt import Attempt
from trainer.practice.reports.attempt_lines import card_entry, claims_text, heading
from trainer.words import text

Findings = Mapping[str, str | float | None]
"""What the sound set-up found at a station: `sound_setup.Verdict` as plain data."""

PAGE = """<!doctype html>
<html lang="{{ language }}"><head><meta charset="utf-8"><title>{{ title }} – {{ case }}</title>
<style>
@page { size: A4; margin: 15mm }
body { font: 10.5pt/1.35 "B612", sans-serif; color: #111; background: #fff; max-width: 180mm; margin: 0 auto }
h1 { font-size: 15pt; margin: 0 0 2mm } h2 { font-size: 11pt; margin: 4mm 0 1mm; border-top: 0.4mm solid #111 }
p { margin: 0 0 1mm } .by { display: flex; justify-content: space-between }
table { border-collapse: collapse; width: 100% }
td { border-bottom: 0.2mm solid #999; padding: 0.6mm 1mm; vertical-align: top }
td.minutes { text-align: right; white-space: nowrap; font-family: "B612 Mono", monospace }
.caution { border: 0.4mm solid #111; padding: 1mm 2mm; margin-top: 4mm }
</style></head><body>
<h1>{{ title }}</h1>
<p class="by"><span>{{ case }}{% if code %} · {{ code }}{% endif %}</span><span>{{ who }}</span></p>
<p>{{ engine }}</p>
<h2>{{ words.complaint }}</h2><p>{{ story }}</p>
<h2>{{ words.done }}</h2>
<table>{% for entry, minutes in entries %}
<tr><td>{{ entry }}</td><td class="minutes">{{ minutes }}</td></tr>{% endfor %}</table>
<p>{{ total }}</p>
{% if finding %}<h2>{{ words.finding }}</h2><p>{{ finding }}</p>{% endif %}
{% if lines %}<h2>{{ words.result }}</h2>{% for line in lines %}<p>{{ line }}</p>{% endfor %}{% endif %}
{% if listening %}<h2>{{ words.listening }}</h2><p>{{ listening }}</p>{% endif %}
<p class="caution">{{ words.caution }}</p>
</body></html>
"""


def sheet_html(
    kind: str,
    attempt: Attempt,
    lines: Sequence[str],
    who: str,
    verdict: Findings | None,
    language: str,
) -> str:
    """Return a sheet: `kind` is `card` or `result`; `lines` are the debrief's. What a person wrote is escaped."""
    import jinja2

    case = attempt.case
    finding = attempt.finding
    named = ("complaint", "done", "finding", "listening")
    page = jinja2.Environment(autoescape=True, undefined=jinja2.StrictUndefined).from_string(PAGE)
    return page.render(
        language=language,
        title=text(f"sheet.{kind}"),
        case=heading(case, title_shown=kind == "result" or attempt.title_shown),
        code=case.code,
        who=who,
        engine=title_of(case.profile),
        story=case.in_words.story or text("case.drawn_story"),
        entries=[
            (entry, f"{event.labour_minutes:.0f} min") for event in attempt.events if (entry := card_entry(event))
        ],
        total=text("card.total", minutes=attempt.minutes),
        finding=finding and f"{claims_text(finding.claims)}, {text(f'certainty.{finding.certainty}')}",
        lines=[line.strip() for line in lines if line.strip()],
        listening=listening_text(verdict) if kind == "result" else "",
        words={name: text(f"sheet.{name}") for name in named}
        | {"result": text("debrief.head"), "caution": text("caution.real")},
    )


def listening_text(verdict: Findings | None) -> str:
    """Return what is known of the station's sound."""
    if not verdict:
        return text("setup.none")
    parts = [text(f"setup.hum.{verdict['hum']}"), text(f"setup.sides.{verdict['sides']}")]
    parts += [text(f"setup.bed.{verdict['bed']}"), text(f"setup.lows.{verdict['lows']}")]
    if verdict["headphones"]:
        parts.append(text(f"setup.headphones.{verdict['headphones']}"))
    return " ".join(parts)


def write_sheet(
    folder: Path,
    kind: str,
    attempt: Attempt,
    attempt_id: str,
    lines: Sequence[str],
    who: str,
    verdict: Findings | None,
    language: str = "en",
) -> Path:
    """Write a sheet whole and return its path; raises MissingHereError where it cannot be written."""
    path = folder / f"{kind}_{attempt_id[:8]}.html"  # no case's name: it may tell the fault
    html = sheet_html(kind, attempt, lines, who, verdict, language)
    write_bytes(path, html.encode("utf-8"), make_folder=True)
    return path
