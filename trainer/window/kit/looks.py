"""Type and colour: what each look means, in both themes; contrast after WCAG 2.2.

The colours of meaning are those of Okabe and Ito, for colour-blind eyes; each has a second sign wherever it is used.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

Colour = tuple[int, int, int]

SMALL, BODY, LARGE = 0.88, 1.0, 1.5


@dataclass(frozen=True, slots=True)
class Look:
    """How text looks: size in em, weight, fixed width, and the role of its colour."""

    size: float = BODY
    bold: bool = False
    mono: bool = False
    role: str = "text"


LOOKS: Mapping[str, Look] = MappingProxyType(
    {
        "body": Look(),
        "bold": Look(bold=True),
        "title": Look(LARGE, bold=True),
        "small": Look(SMALL),
        "muted": Look(SMALL, role="muted"),
        "mono": Look(mono=True),
        "mono_muted": Look(SMALL, mono=True, role="muted"),
        "reading": Look(LARGE, bold=True, mono=True, role="touch"),
        "marked": Look(bold=True, role="marked"),
        "touch": Look(bold=True, role="touch"),
        "here": Look(role="here"),
        "caution": Look(bold=True, role="caution"),
        "struck": Look(role="muted"),
    }
)


def _hex(value: str) -> Colour:
    return int(value[1:3], 16), int(value[3:5], 16), int(value[5:7], 16)


_ROLES = ("fill", "text", "muted", "line", "faint", "marked", "touch", "here", "caution", "key")
_DARK = {
    "bench": "#14191F #C9D2DA #93A0AC #C9D2DA #5F6B77 #E69F00 #56B4E9 #12B886 #F08A3C #0E1216",
    "panel": "#1B2129 #DCE3E9 #98A5B1 #C9D2DA #66727E #E69F00 #56B4E9 #12B886 #F08A3C #0E1216",
    "card": "#F3EEDF #22262B #5B5F5C #22262B #85827A #8A5A00 #0B5F96 #00664A #A83F00 #E2DAC4",
}
_LIGHT = {
    "bench": "#E9EDF0 #1D242B #525D67 #2B343C #76818B #8A5A00 #0B5F96 #00664A #A83F00 #FFFFFF",
    "panel": "#DFE5E9 #1D242B #4C5761 #2B343C #707B85 #805300 #0A588B #005E44 #9C3A00 #FFFFFF",
    "card": "#FFFFFF #1D2125 #565B60 #22262B #8A8F94 #8A5A00 #0B5F96 #00664A #A83F00 #EEF0F2",
}

Theme = Mapping[str, Mapping[str, Colour]]


def _theme(table: Mapping[str, str]) -> Theme:
    return MappingProxyType(
        {
            surface: MappingProxyType({role: _hex(value) for role, value in zip(_ROLES, values.split(), strict=True)})
            for surface, values in table.items()
        }
    )


THEMES: Mapping[str, Theme] = MappingProxyType({"dark": _theme(_DARK), "light": _theme(_LIGHT)})
"""Colours by theme, surface (bench, panel, card) and role; `faint` and `line` are for shapes only."""


def contrast(first: Colour, second: Colour) -> float:
    """Return the contrast ratio of two colours, 1 to 21 (WCAG 2.2, relative luminance)."""
    light, dark = sorted((_luminance(first), _luminance(second)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def _luminance(colour: Colour) -> float:
    parts = [part / 255.0 for part in colour]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
