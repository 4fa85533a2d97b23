"""Pins what the tests of this environment ran with: `python -m tests.house.constraints` writes `.ci/constraints.txt`.

Run it with the lowest Python that the project supports: the newest packages for that one also install on later ones.
"""

from __future__ import annotations

import importlib.metadata
import sys
import tomllib
from pathlib import Path

from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

REPOSITORY = Path(__file__).parents[2]
CONSTRAINTS = REPOSITORY / ".ci" / "constraints.txt"


def asked_for() -> list[Requirement]:
    """Return the requirements of the program and of all its extras, as pyproject.toml has them."""
    project = tomllib.loads((REPOSITORY / "pyproject.toml").read_text("utf-8"))["project"]
    lines = [*project["dependencies"], *(line for extra in project["optional-dependencies"].values() for line in extra)]
    return [Requirement(line) for line in lines]


def installed_for(requirements: list[Requirement]) -> dict[str, str]:
    """Return name and version of every installed package that the requirements lead to.

    Raises PackageNotFoundError for one of the requirements themselves that is not installed.
    """
    found: dict[str, str] = {}
    reached: set[tuple[str, str]] = set()
    waiting = [(one, "") for one in requirements]
    while waiting:
        one, extra = waiting.pop()
        if one.marker is not None and not one.marker.evaluate({"extra": extra}):
            continue
        distribution = importlib.metadata.distribution(one.name)
        name = str(canonicalize_name(one.name))
        found[name] = distribution.version
        for wanted in {"", *one.extras}:
            if (name, wanted) not in reached:
                reached.add((name, wanted))
                waiting += [(Requirement(line), wanted) for line in distribution.requires or ()]
    return found


def pinned() -> dict[str, str]:
    """Return name and version of every line of the constraints file; raises ValueError for a line that is no pin."""
    lines = [line for line in CONSTRAINTS.read_text("utf-8").splitlines() if line and not line.startswith("#")]
    pairs = [line.split("==") for line in lines]
    return {str(canonicalize_name(name)): version for name, version in pairs}


def main() -> None:
    """Write the constraints file from this environment."""
    python = ".".join(map(str, sys.version_info[:3]))
    head = f"# Written by `python -m tests.house.constraints`, with Python {python}. Use: pip install -c .ci/constraints.txt\n"
    lines = sorted(f"{name}=={version}\n" for name, version in installed_for(asked_for()).items())
    CONSTRAINTS.write_text(head + "".join(lines), "utf-8")
    print(f"{CONSTRAINTS.relative_to(REPOSITORY)}: {len(lines)} packages")


if __name__ == "__main__":
    main()
