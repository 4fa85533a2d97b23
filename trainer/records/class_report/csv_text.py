"""Tables as CSV: RFC 4180, UTF-8, a point for decimals, and no cell that a spreadsheet would run as a formula."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator, Sequence

BOM = b"\xef\xbb\xbf"
RISKY = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")  # wide forms run as well
"""Beginnings that some spreadsheets take for a formula (CWE-1236)."""

NOT_DONE, NOT_DRAWN = "-", "NA"
"""A case that was not handed in, and one that the learner never had or that does not count."""

Cell = str | int | float | None


def defused(cell: Cell) -> Cell:
    """Return a cell that no spreadsheet runs: text that begins like a formula gets an apostrophe before it."""
    if not isinstance(cell, str) or cell == NOT_DONE:
        return cell
    plain = cell.replace("\x00", "")
    return f"'{plain}" if plain.startswith(RISKY) or plain.lstrip(" ").startswith(RISKY) else plain


def csv_pieces(header: Sequence[str], rows: Iterable[Sequence[Cell]], *, bom: bool = False) -> Iterator[bytes]:
    """Yield a table piece by piece; None becomes an empty cell."""
    if bom:
        yield BOM
    buffer = io.StringIO()
    writer = csv.writer(buffer, lineterminator="\r\n")
    writer.writerow(header)
    for number, row in enumerate(rows, start=1):
        writer.writerow(["" if cell is None else defused(cell) for cell in row])
        if number % 1000 == 0:
            yield _taken(buffer)
    yield _taken(buffer)


def _taken(buffer: io.StringIO) -> bytes:
    piece = buffer.getvalue().encode("utf-8", "replace")
    buffer.seek(0)
    buffer.truncate()
    return piece
