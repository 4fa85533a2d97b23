"""A headless browser: what a page logs, what it asks the network for, what it looks like, whether its sound plays."""

from __future__ import annotations

import json
import shutil
import subprocess
import tempfile
from dataclasses import dataclass
from pathlib import Path

BROWSERS = ("chromium", "chromium-browser", "google-chrome")

# played muted, as far as a second; what became of it stands in the page's title
LISTEN = """<script>
const sounds = [...document.querySelectorAll("audio")];
Promise.all(sounds.map(async (sound) => {
  sound.muted = true;
  await sound.play();
  await new Promise((done) => setTimeout(done, 700));
  return sound.currentTime > 0.2 && sound.duration > 1 && !sound.error;
})).then((all) => { document.body.dataset.played = all.join(","); }, (wrong) => { document.body.dataset.played = String(wrong); });
</script></body>"""


@dataclass(frozen=True)
class Seen:
    """What a browser made of a page: its document, what was logged, the addresses it asked for, a picture."""

    dom: str
    logged: tuple[str, ...]
    asked: tuple[str, ...]
    picture: bytes


def _run(folder: Path, page: Path, *options: str) -> subprocess.CompletedProcess[str]:
    browser = next(found for name in BROWSERS if (found := shutil.which(name)))
    call = [
        browser, "--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars",
        f"--user-data-dir={folder / 'profile'}", "--window-size=1000,1400", *options, page.as_uri(),
    ]  # fmt: skip
    return subprocess.run(call, capture_output=True, text=True, timeout=180, check=True)


def seen(html: str, *, listen: bool = False) -> Seen:
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
        if listen:
            policy = html[html.index("<meta http-equiv=") : html.index(">", html.index("default-src")) + 1]
            page.write_text(html.replace(policy, "").replace("</body>", LISTEN), "utf-8")
        dom = _run(folder, page, "--dump-dom", "--autoplay-policy=no-user-gesture-required", "--timeout=4000").stdout
        return Seen(dom, logged, tuple(sorted(asked)), picture.read_bytes())
