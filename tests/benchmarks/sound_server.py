"""A sound server of our own for benchmarks: a null sink with a clock, so that what plays takes its time."""

from __future__ import annotations

import contextlib
import os
import subprocess
import time
from collections.abc import Iterator
from pathlib import Path


@contextlib.contextmanager
def sound_server(folder: Path) -> Iterator[None]:
    """Run a sound server with one null sink, which has a clock; the default output leads to it."""
    os.environ["XDG_RUNTIME_DIR"] = str(folder)
    folder.chmod(0o700)
    modules = ["module-native-protocol-unix", "module-null-sink sink_name=null rate=48000 format=float32le"]
    loads = [part for module in modules for part in ("-L", module)]
    server = subprocess.Popen(
        ["pulseaudio", "-n", "--daemonize=no", "--exit-idle-time=-1", *loads],
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    )  # fmt: skip
    (folder / "asound.conf").write_text("pcm.!default { type pulse }\nctl.!default { type pulse }\n")
    os.environ["ALSA_CONFIG_PATH"] = f"/usr/share/alsa/alsa.conf:{folder / 'asound.conf'}"
    try:
        for _try in range(50):
            if subprocess.run(["pactl", "info"], capture_output=True).returncode == 0:
                break
            time.sleep(0.1)
        yield
    finally:
        server.terminate()
        server.wait(5)
