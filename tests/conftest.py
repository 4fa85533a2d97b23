"""What holds for every test: solved universes are kept for the run only, and no outcome hangs on a machine's speed."""

import atexit
import os
import shutil
import tempfile

from hypothesis import settings

pytest_plugins = ["tests.outside_programs"]

FOLDER = tempfile.mkdtemp(prefix="injector-ear-trainer-tests-")
os.environ["XDG_CACHE_HOME"] = FOLDER
atexit.register(shutil.rmtree, FOLDER, ignore_errors=True)

# a window opened by a command would wait for a person: only tests of the window itself have a display
for name in ("DISPLAY", "WAYLAND_DISPLAY"):
    os.environ.pop(name, None)

# the same examples every time, and none that fails because the machine was busy
settings.register_profile("steady", deadline=None, derandomize=True)
settings.load_profile("steady")
