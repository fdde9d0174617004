"""Zoom of the season sheet: how high a week's row is, and what is drawn at that height."""

from __future__ import annotations

from dataclasses import dataclass

#: Row heights from one week large to years, and of their blocks' headings. [px at 100 %]
ROWS = (84, 42, 28, 18, 12, 5)
HEADINGS = {84: 40, 42: 38, 32: 36, 28: 36, 18: 30, 12: 27, 5: 26}
#: What a window opens with, and the same where it is tall.
USUAL, TALL = 28, 32
#: A window from so high on is tall. [px]
TALL_WINDOW = 1000


@dataclass(frozen=True)
class Zoom:
    """One step: row and heading height. [px at 100 %]"""

    row: int = USUAL

    @property
    def heading(self) -> int:
        """Height of a block's heading."""
        return HEADINGS[self.row]

    @property
    def stairs(self) -> tuple[float, float, float]:
        """Heights of easy, moderate and hard, in the proportion of the usual row."""
        part = self.row / USUAL if self.row != TALL else 1.0
        return (max(2.0, 9.0 * part), max(3.0, 14.0 * part), max(4.0, 19.0 * part))

    @property
    def ground(self) -> float:
        """Room below the line on which the stairs stand."""
        return min(5.0, 5.0 * self.row / USUAL)

    @property
    def dated(self) -> bool:
        """Whether each week has its date and hours; else a month stands at its first week."""
        return self.row >= 18

    @property
    def worded(self) -> bool:
        """Whether there is room for words beside bars."""
        return self.row >= 18

    @property
    def textured(self) -> bool:
        """Whether the shades keep their textures; in years, height alone is read."""
        return self.row >= 12


def usual(window_height: int) -> Zoom:
    """What a window of this height opens with."""
    return Zoom(TALL if window_height >= TALL_WINDOW else USUAL)


def stepped(now: Zoom, step: int) -> Zoom:
    """The next taller (-1) or flatter (1) one; the same at either end."""
    place = ROWS.index(USUAL if now.row == TALL else now.row) + step
    return Zoom(ROWS[min(max(place, 0), len(ROWS) - 1)])
