"""Draws the house and lists its rooms: `python -m tests.house.tour` writes the picture and the table of docs/house.md.

Both follow from the plan in `floors.py`, and from what each package and its folders say of themselves.
"""

from __future__ import annotations

import ast
import hashlib
import json
from collections.abc import Iterator
from pathlib import Path

from tests.house.floors import FLOOR, PACKAGE, SUB_ROOMS

REPOSITORY = PACKAGE.parent
PAGE = REPOSITORY / "docs" / "house.md"
PICTURE = REPOSITORY / "assets_generated" / "house.svg"
BEGIN, END = "<!-- rooms: python -m tests.house.tour -->", "<!-- end of rooms -->"
ROW, WIDTH, GAP = 64, 1100, 8
INK, PAPER, LINE, QUIET = "#E6EAEE", "#1B2129", "#56B4E9", "#9AA7B2"


def rooms() -> dict[int, list[str]]:
    """Return the rooms by floor, from the ground up."""
    floors: dict[int, list[str]] = {}
    for room, floor in FLOOR.items():
        if not room.startswith("__"):
            floors.setdefault(floor, []).append(room)
    return dict(sorted(floors.items()))


def first_line(path: Path) -> str:
    """Return the first line of what a file says of itself; raises ValueError for one that says nothing."""
    said = ast.get_docstring(ast.parse(path.read_text("utf-8")))
    if not said:
        raise ValueError(f"{path} has no docstring")
    return said.splitlines()[0]


def files_in(folder: Path) -> str:
    """Return the files that lie in a folder itself, as names of modules."""
    return ", ".join(f"`{path.stem}`" for path in sorted(folder.glob("*.py")) if path.stem != "__init__")


def folders_of(room: str) -> Iterator[Path]:
    """Yield a room's folder and those inside it, the sub-rooms from below."""
    yield PACKAGE / room
    inner = [folder.parent for folder in (PACKAGE / room).rglob("__init__.py") if folder.parent != PACKAGE / room]
    order = {name: place for place, name in enumerate(SUB_ROOMS.get(room, ()))}
    yield from sorted(inner, key=lambda one: (order.get(one.relative_to(PACKAGE / room).parts[0], 99), str(one)))


def table() -> str:
    """Return the table of rooms: one row for each room and each folder in it."""
    rows = ["| floor | room | what it owns | its files |", "| --- | --- | --- | --- |"]
    for floor, names in rooms().items():
        for room in names:
            if (PACKAGE / f"{room}.py").is_file():
                rows.append(f"| {floor} | `{room}.py` | {first_line(PACKAGE / f'{room}.py')} | |")
                continue
            for folder in folders_of(room):
                name = folder.relative_to(PACKAGE).as_posix()
                rows.append(f"| {floor} | `{name}/` | {first_line(folder / '__init__.py')} | {files_in(folder)} |")
    return "\n".join(rows)


def picture() -> str:
    """Return the floors as a drawing, the ground below."""
    floors = rooms()
    height = ROW * len(floors) + GAP
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {height}" font-family="sans-serif">',
        "<title>The rooms of the program by floor: a room imports only from rooms below it</title>",
        f'<rect width="{WIDTH}" height="{height}" fill="#14191F"/>',
    ]
    for place, (floor, names) in enumerate(floors.items()):
        top = height - ROW * (place + 1)
        lines.append(f'<text x="16" y="{top + 34}" fill="{QUIET}" font-size="20">{floor}</text>')
        wide = (WIDTH - 60) / len(names)
        for column, room in enumerate(names):
            left = 50 + wide * column
            inner = ", ".join(SUB_ROOMS.get(room, ()))
            lines += [
                f'<rect x="{left:.0f}" y="{top}" width="{wide - GAP:.0f}" height="{ROW - GAP}" rx="6" fill="{PAPER}" stroke="{LINE}"/>',
                f'<text x="{left + 14:.0f}" y="{top + 25}" fill="{INK}" font-size="19">{room}</text>',
                f'<text x="{left + 14:.0f}" y="{top + 46}" fill="{QUIET}" font-size="14">{inner}</text>',
            ]
    return "\n".join([*lines, "</svg>"]) + "\n"


def page() -> str:
    """Return the page with its table as it follows from the code."""
    before, _begin, rest = PAGE.read_text("utf-8").partition(BEGIN)
    return f"{before}{BEGIN}\n{table()}\n{END}{rest.partition(END)[2]}"


def main() -> None:
    """Write picture, page and the picture's entry in the manifest."""
    PICTURE.write_text(picture(), "utf-8")
    PAGE.write_text(page(), "utf-8")
    manifest = PICTURE.parent / "manifest.json"
    kept = json.loads(manifest.read_text("utf-8"))
    kept[PICTURE.name] = hashlib.sha256(picture().encode("utf-8")).hexdigest()
    manifest.write_text(json.dumps(kept, indent=1) + "\n", "utf-8")


if __name__ == "__main__":
    main()
