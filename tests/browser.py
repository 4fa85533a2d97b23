"""A headless browser: what a page logs, what it asks the network for, what it looks like, whether its sounds play."""

from __future__ import annotations

import contextlib
import json
import os
import shutil
import signal
import subprocess
import tempfile
import threading
from dataclasses import dataclass
from pathlib import Path

BROWSERS = ("chromium", "chromium-browser", "google-chrome")

# played muted, as far as a part of a second; what became of each sound is said on the console
LISTEN = """<script>
const sounds = [...document.querySelectorAll("audio")];
Promise.all(sounds.map(async (sound) => {
  sound.muted = true;
  await sound.play();
  await new Promise((done) => { sound.ontimeupdate = () => { if (sound.currentTime > 0.2) { done(); } }; });
  return sound.duration > 1 && !sound.error;
})).then((all) => { console.log("played " + all.join(",")); }, (wrong) => { console.log("played " + wrong); });
</script></body>"""
WAIT_S = 60.0


@dataclass(frozen=True)
class Seen:
    """What a browser made of a page: its document, what was logged, the addresses it asked for, a picture."""

    dom: str
    logged: tuple[str, ...]
    asked: tuple[str, ...]
    picture: bytes


def _call(folder: Path, page: Path, *options: str) -> list[str]:
    browser = next(found for name in BROWSERS if (found := shutil.which(name)))
    return [
        browser, "--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars",
        f"--user-data-dir={folder / 'profile'}", "--window-size=1000,1400", *options, page.as_uri(),
    ]  # fmt: skip


def _run(folder: Path, page: Path, *options: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        _call(folder, page, *options), env=_here(folder), capture_output=True, text=True, timeout=180, check=True
    )


def _here(folder: Path) -> dict[str, str]:
    """Return an environment in which a browser leaves what it makes in a folder, also where it is killed."""
    return {**os.environ, "TMPDIR": str(folder)}


def seen(html: str) -> Seen:
    """Open a page from a file and tell what was seen."""
    with tempfile.TemporaryDirectory(prefix="browser-") as name:
        folder = Path(name)
        page = folder / "page.html"
        page.write_text(html, "utf-8")
        log, picture = folder / "net.json", folder / "picture.png"
        shot = _run(folder, page, f"--log-net-log={log}", f"--screenshot={picture}", "--enable-logging=stderr", "--v=0")
        logged = tuple(line for line in shot.stderr.splitlines() if "CONSOLE" in line)
        events = json.loads(log.read_text("utf-8", "replace"))["events"]
        asked = {
            str(one["params"]["url"])
            for one in events
            if isinstance(one.get("params"), dict) and "url" in one["params"]
        }
        dom = _run(folder, page, "--dump-dom").stdout
        return Seen(dom, logged, tuple(sorted(asked)), picture.read_bytes())


def _end(group: int) -> None:
    """End a browser with all its processes, which else go on writing into its folder."""
    with contextlib.suppress(ProcessLookupError):
        os.killpg(group, signal.SIGKILL)


def played(html: str) -> str:
    """Play every sound of a page and tell what became of each: `true` or `false`, or what went wrong.

    The page forbids scripts; it is played without that line.
    """
    policy = html[html.index("<meta http-equiv=") : html.index(">", html.index("default-src")) + 1]
    with tempfile.TemporaryDirectory(prefix="browser-") as name:
        folder = Path(name)
        page = folder / "page.html"
        page.write_text(html.replace(policy, "").replace("</body>", LISTEN), "utf-8")
        call = _call(folder, page, "--enable-logging=stderr", "--v=0", "--remote-debugging-port=0",
                     "--autoplay-policy=no-user-gesture-required")  # fmt: skip
        with subprocess.Popen(call, env=_here(folder), stderr=subprocess.PIPE, text=True,
                              start_new_session=True) as browser:  # fmt: skip
            late = threading.Timer(WAIT_S, _end, [browser.pid])
            late.start()
            assert browser.stderr is not None
            said = next((line for line in browser.stderr if '"played ' in line), "never")
            late.cancel()
            _end(browser.pid)
            browser.communicate()  # ends when the last process that could write has ended
        return said.partition('"played ')[2].partition('"')[0] or said
