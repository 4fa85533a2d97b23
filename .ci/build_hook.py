"""Builds what a wheel or an editable install needs: the catalogues, and the compiled step where there is a compiler."""

import runpy
import sysconfig
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

CATALOGUES = Path("trainer") / "words" / "build_catalogues.py"
KERNEL = Path("trainer") / "circuit" / "build_kernel.py"
LIBRARY = "trainer/circuit/step_kernel.so"


class BuildHook(BuildHookInterface):  # type: ignore[type-arg]
    """Hatchling calls this before it packs."""

    def initialize(self, _version: str, build_data: dict[str, Any]) -> None:
        """Compile; a compiled step names the platform in the wheel's tag: any Python 3 of it can load the library."""
        if self.target_name != "wheel":
            return
        compiled = self._module(CATALOGUES)["build"]()
        build_data["artifacts"] += [path.relative_to(self.root).as_posix() for path in compiled]
        if not self._module(KERNEL)["build"]():
            return
        build_data["pure_python"] = False
        build_data["tag"] = f"py3-none-{sysconfig.get_platform().replace('-', '_').replace('.', '_')}"
        build_data["artifacts"].append(LIBRARY)

    def _module(self, path: Path) -> dict[str, Any]:
        return runpy.run_path(str(Path(self.root) / path))
