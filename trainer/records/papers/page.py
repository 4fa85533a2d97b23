"""Pages for a browser or a printer: one file, nothing from outside, black on white, whatever a person typed escaped."""

from __future__ import annotations

from pathlib import Path

from trainer.words.visible import visible

TEMPLATES = Path(__file__).parent / "templates"


def _seen(value: object) -> object:
    """Return a value with its unseen characters as escapes; markup of ours is left alone."""
    return visible(value, "\n\t") if type(value) is str else value


def page(template: str, title: str, language: str, **values: object) -> str:
    """Return a whole page from the template of its body."""
    import jinja2
    from markupsafe import Markup

    loader = jinja2.FileSystemLoader(TEMPLATES)
    environment = jinja2.Environment(
        loader=loader, autoescape=True, undefined=jinja2.StrictUndefined, trim_blocks=True, lstrip_blocks=True,
        finalize=_seen,
    )  # fmt: skip
    body = Markup(environment.get_template(template).render(title=title, **values))  # escaped by the template
    return environment.get_template("frame.html").render(language=language, title=title, body=body)
