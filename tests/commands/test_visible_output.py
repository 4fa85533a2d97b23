"""Whatever a file, a call or the records hold: nothing that is printed drives the terminal or turns it round."""

from __future__ import annotations

import io
import json
from pathlib import Path

import pytest
from sqlalchemy import insert

from tests.commands.test_commands import run
from trainer.commands.call import streams
from trainer.records.papers.page import page
from trainer.records.store.store import open_store
from trainer.records.store.tables import set_table
from trainer.words.visible import unseen_in

HOSTILE = "\x1b[2J\x9b31m\u202etxet\u2066\u200b"
SHOWN = "\\x1b[2J\\x9b31m\\u202etxet\\u2066\\u200b"


def test_a_file_name_is_shown_and_kept_as_it_is_in_json(tmp_path: Path) -> None:
    path = tmp_path / f"a\n{HOSTILE}.yaml"
    path.write_text("form: x/1")
    result = run("check", str(path))
    assert f"a\\n{SHOWN}.yaml, line 1: form is 'x/1'" in result.stderr
    assert unseen_in(result.output, "\n") is None
    as_json = run("check", str(path), "--json").stdout
    assert unseen_in(as_json, "\n") is None
    assert json.loads(as_json)["problems"][0]["file"] == path.name


@pytest.mark.parametrize("words", [(HOSTILE,), (f"--{HOSTILE}",), ("hear", HOSTILE), ("draw", "north_v8", "--seed", HOSTILE),
                                   ("hear", "x", "-o", f"/{HOSTILE}/a"), ("inspect", HOSTILE)])  # fmt: skip
def test_the_words_of_a_wrong_call_are_shown(words: tuple[str, ...]) -> None:
    result = run(*words)
    assert result.exit_code != 0
    assert result.stderr
    assert unseen_in(result.output, "\n") is None


def test_what_the_records_hold_is_shown_on_one_line(tmp_path: Path) -> None:
    store = open_store(tmp_path)
    row = {
        "id": "0" * 32, "name": f"a{HOSTILE}", "title": f"Week\n{HOSTILE}", "mode": "practice", "size": 1, "counts": "best",
        "passes_at": 60.0, "certainty_weight": 0.0, "weights": "[1.0]", "closes": "", "keep_until": "",
    }  # fmt: skip
    with store.writing() as connection:
        connection.execute(insert(set_table), [row])
    store.close()
    result = run("records", "list", data=tmp_path)
    assert f"Week\\n{SHOWN}" in result.stdout
    assert unseen_in(result.output, "\n") is None
    assert json.loads(run("records", "list", "--json", data=tmp_path).stdout)["sets"][0]["title"] == row["title"]


def test_a_session_says_asks_and_tells_visibly(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO("typed\n"))
    streams.say(f"two\n\tlines {HOSTILE}")
    streams.tell(HOSTILE)
    assert streams.ask(f"{HOSTILE}> ") == "typed"
    out, err = capsys.readouterr()
    assert out == f"two\n\tlines {SHOWN}\n{SHOWN}> "
    assert err == f"{SHOWN}\n"


def test_pages_show_it_too() -> None:
    html = page("handout.html", HOSTILE, "en", **PAGE)
    assert f"<h1>{SHOWN}</h1>" in html
    assert "<svg/>" in html
    assert unseen_in(html, "\n\t") is None


class _Svg(str):
    def __html__(self) -> str:
        return "<svg/>"


PAGE = {
    "engine": HOSTILE, "story": HOSTILE, "sounds": [], "codes": [HOSTILE], "truth": "", "wiring": _Svg(), "following": [],
    "cautions": [], "words": dict.fromkeys(("heard", "where", "wiring", "next", "cautions", "limits"), ""),
}  # fmt: skip
