"""How review pages look: light, dark, or black ink on white, with sizes for a room to read."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from PySide6.QtGui import QFont

from tercet import resources
from tercet.language import mark
from tercet.ui.theme import SANS, SERIF, Theme

#: Pixels, weight, family and slant by role, on a page of 1366 by 768; nothing under 24.
_FONTS: dict[str, tuple[int, int, str, bool]] = {
    "title": (44, 600, SERIF, False),
    "title_small": (34, 600, SERIF, False),
    "value": (44, 600, SANS, False),
    "block": (26, 600, SERIF, False),
    "body": (24, 400, SANS, False),
    "bold": (24, 600, SANS, False),
    "italic": (24, 400, SANS, True),
    "big": (30, 400, SANS, False),
    # Only for the tables at the end of what is printed.
    "cell": (15, 400, SANS, False),
    "cell_bold": (15, 600, SANS, False),
}
LOOKS = {"light": mark("Light"), "dark": mark("Dark"), "ink": mark("Black ink")}
#: Pages by name: what the user reads, and millimetres across and down.
PAPERS: dict[str, tuple[str, float, float]] = {
    "a4": (mark("A4 across"), 297.0, 210.0),
    "letter": (mark("Letter across"), 279.4, 215.9),
    "wide": ("16:9", 338.67, 190.5),
}
#: Without colour shades are told by grey, texture and height.
_INK = {
    "pane": "raised",
    "easy": "print_easy",
    "easy_outline": "print_hard",
    "moderate": "print_moderate",
    "moderate_edge": "print_hard",
    "moderate_texture": "print_hard",
    "hard": "print_hard",
    "hard_edge": "print_hard",
    "hard_texture": "print_hard",
    "focus": "print_hard",
}


@dataclass(frozen=True)
class Look(Theme):
    """Colours and fonts of review pages; ``ink`` prints without colour, on white."""

    ink: bool = False
    paper: bool = False

    def hex(self, role: str) -> str:
        """The colour of a role."""
        if self.ink:
            role = _INK.get(role, role)
        elif self.paper and role == "pane":
            role = "raised"
        palette = resources.palette()
        return (palette.dark if self.dark and not self.ink else palette.light)[role]

    def font(self, role: str) -> QFont:
        """The font of a role on review pages."""
        return QFont(_font(role))


def look(name: str, *, paper: bool = False) -> Look:
    """The look of this name; paper has a white ground."""
    if name == "ink":
        return Look(ink=True, paper=True)
    return Look(dark=name == "dark", paper=paper)


@lru_cache(maxsize=32)
def _font(role: str) -> QFont:
    pixels, weight, family, italic = _FONTS[role]
    font = QFont(family)
    font.setPixelSize(pixels)
    font.setItalic(italic)
    font.setWeight(QFont.Weight(weight))
    font.setVariableAxis(QFont.Tag("wght"), float(weight))
    if family == SERIF:
        font.setVariableAxis(QFont.Tag("opsz"), float(min(60, max(8, pixels))))
    for feature, on in (("tnum", 1), ("lnum", 1), ("liga", 0)):
        # Without ligatures a search in the file finds every word.
        font.setFeature(QFont.Tag(feature), on)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return font
