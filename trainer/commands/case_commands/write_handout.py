"""Writes a handout: one page on a case, for a customer or a class."""

from __future__ import annotations

from pathlib import Path

from trainer.cases.files.whole_file import write_bytes
from trainer.commands.call.result import Result
from trainer.desk.case_source import find_case
from trainer.desk.handout_page import handout_html


def write_handout(named: str, output: Path) -> Result:
    """Write a case's handout to a file."""
    content = handout_html(find_case(named).case).encode("utf-8")
    write_bytes(output, content)
    return Result((f"{output}: {len(content) // 1000} kB",), {"file": str(output), "bytes": len(content)})
