"""Universes solved in a run of the tests are kept for that run only, and never in the user's own cache."""

import atexit
import os
import shutil
import tempfile

FOLDER = tempfile.mkdtemp(prefix="injector-ear-trainer-tests-")
os.environ["XDG_CACHE_HOME"] = FOLDER
atexit.register(shutil.rmtree, FOLDER, ignore_errors=True)

# a window opened by a command would wait for a person: only tests of the window itself have a display
for name in ("DISPLAY", "WAYLAND_DISPLAY"):
    os.environ.pop(name, None)
