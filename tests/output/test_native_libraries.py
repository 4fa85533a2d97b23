"""Lines of the sound libraries' C code stay off the screen, and an unusable ALSA does not end the program."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from trainer.output import native_libraries

ALSA_CONF = Path("/usr/share/alsa/alsa.conf")

pytestmark = pytest.mark.needs("PortAudio")  # its package brings ALSA's library and configuration


def ran(program: str, **environment: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", program], env={**os.environ, **environment}, capture_output=True, text=True, timeout=120
    )


C_AND_PYTHON = """
import ctypes, os, sys
from trainer.output.native_libraries import ALSA, silence_c_stderr
if {silence_c_stderr}:
    silence_c_stderr()
os.environ["ALSA_CONFIG_PATH"] = "/no/such/file"
ctypes.CDLL(ALSA).snd_config_update()
ctypes.CDLL(None).perror(b"of C")
sys.stderr.write("said by us\\n")
os.write(2, b"written by us\\n")
"""


def test_what_c_code_prints_goes_nowhere_and_what_we_say_arrives() -> None:
    assert ran(C_AND_PYTHON.format(silence_c_stderr=True)).stderr == "said by us\nwritten by us\n"
    before = ran(C_AND_PYTHON.format(silence_c_stderr=False)).stderr
    assert "ALSA lib" in before
    assert "of C: " in before


WAYS_OUT = """
from trainer.errors import MissingHereError
from trainer.output.portaudio import PortAudioPlayer, device_names
told = "found"
for look in (PortAudioPlayer, device_names):
    try:
        look()
    except MissingHereError as error:
        told = error.key
print(told)
"""


@pytest.mark.parametrize(
    ("config", "broken"),
    [("pcm.!default {{ type plug slave.pcm nothere }}", False), ("", True), ("pcm.x {{ type", True), (None, True)],
    ids=["a device that is not there", "empty", "cut off", "missing"],
)
def test_a_broken_alsa_configuration_is_told_in_our_words_only(
    tmp_path: Path, config: str | None, broken: bool
) -> None:
    """A real PortAudio: without the look beforehand it ends the whole process where the configuration is empty."""
    path = tmp_path / "asound.conf"
    if config is not None:
        path.write_text(config.replace("{{", "{").replace("}}", "}"))
    read = str(path) if broken else f"{ALSA_CONF}:{path}"
    done = ran(WAYS_OUT, ALSA_CONFIG_PATH=read)
    assert done.stderr == ""
    assert (done.stdout == "alsa_broken\n") is broken
    assert done.returncode == 0


def test_only_a_configuration_that_has_no_devices_is_broken(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    assert not native_libraries.alsa_is_broken()
    monkeypatch.setenv("ALSA_CONFIG_PATH", str(tmp_path / "none"))
    assert native_libraries.alsa_is_broken()
    monkeypatch.setattr(native_libraries, "ALSA", "libnothere.so.9")
    assert not native_libraries.alsa_is_broken()
