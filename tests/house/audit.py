"""Looks the pinned packages up among the known vulnerabilities: `python -m tests.house.audit`.

Where the service that knows them does not answer, that is printed and nothing fails.
"""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
from pathlib import Path

from tests.house.constraints import CONSTRAINTS


def main() -> None:
    """Print every known vulnerability of a pinned package; exit with 1 where there is one."""
    with tempfile.TemporaryDirectory(prefix="audit-") as folder:
        subprocess.run([sys.executable, "-m", "venv", folder], check=True)
        python = str(Path(folder) / "bin" / "python")
        installed = subprocess.run(
            [python, "-m", "pip", "install", "-q", "pip-audit>=2.7"], capture_output=True, check=False
        )
        if installed.returncode:
            print("not audited: pip-audit cannot be installed here")
            return
        call = [python, "-m", "pip_audit", "-r", str(CONSTRAINTS), "--no-deps", "--disable-pip", "-f", "json",
                "--progress-spinner", "off"]  # fmt: skip
        done = subprocess.run(call, capture_output=True, text=True, check=False)
    try:
        packages = json.loads(done.stdout)["dependencies"]
    except (ValueError, KeyError):
        reason = (done.stderr.strip().splitlines() or ["no reason given"])[-1]
        print(f"not audited: the service of known vulnerabilities does not answer here ({reason})")
        return
    audited = [one for one in packages if "skip_reason" not in one]
    if not audited:
        print(f"not audited: the index here knows none of {len(packages)} pinned packages' vulnerabilities")
        return
    known = [(one, found) for one in audited for found in one["vulns"]]
    for one, found in known:
        mended = ", ".join(found["fix_versions"]) or "no version"
        print(f"{one['name']} {one['version']}: {found['id']}, mended in {mended}")
    print(f"{len(audited)} of {len(packages)} pinned packages audited, {len(known)} known vulnerabilities")
    sys.exit(1 if known else 0)


if __name__ == "__main__":
    main()
