"""Builds the compiled step into wheels and editable installs; where there is no compiler, they go without it."""

import runpy
import sysconfig
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

BUILD = Path("trainer") / "circuit" / "build_kernel.py"
LIBRARY = "trainer/circuit/step_kernel.so"


class KernelBuildHook(BuildHookInterface):  # type: ignore[type-arg]
    """Hatchling calls this before it packs."""

    def initialize(self, _version: str, build_data: dict[str, Any]) -> None:
        """Compile, and name the platform in the wheel's tag: any Python 3 of it can load the library."""
        if self.target_name != "wheel" or not runpy.run_path(str(Path(self.root) / BUILD))["build"]():
            return
        build_data["pure_python"] = False
        build_data["tag"] = f"py3-none-{sysconfig.get_platform().replace('-', '_').replace('.', '_')}"
        build_data["artifacts"].append(LIBRARY)
