"""Widths of the season sheet: one length for an hour everywhere, columns as wide as their days."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from tercet.ui.sheet_rows import Cell, Sheet
from tercet.ui.stairs import DOUBLE_GAP

Needs = tuple[tuple[tuple[float, float], ...], ...]
LEAST_S = 40 * 60.0
LEAST_PX = 44.0
#: Room at the left of a day (for the edge of today and of the selected day), and at its right.
LEFT, RIGHT = 8.0, 6.0
_MOST_PX_PER_HOUR, _LEAST_PX_PER_HOUR = 160.0, 8.0
#: Under this the names of races give way, so that the bars can be read.
_TIGHT_PX_PER_HOUR = 24.0


@dataclass(frozen=True)
class Bar:
    """Where one session stands in its day [px from the day's left edge]."""

    left: float
    width: float
    cut: bool


@dataclass(frozen=True)
class Layout:
    """Length of an hour [px] and the seven widths [px], in the week's order."""

    px_per_hour: float
    widths: tuple[int, ...]


def solve(
    sheet: Sheet, room: float, extra: Callable[[Cell], float], least: float = LEAST_PX
) -> Layout:
    """Choose the longest hour with which all seven days fit.

    Parameters
    ----------
    sheet : Sheet
        The rows.
    room : float
        Width for the seven columns together [px].
    extra : callable
        Room a day needs after its bars [px], for a race's name or the hours of a cut bar; in a
        narrow sheet it gets less of it, or none.
    least : float
        Least width of a column [px].
    """
    hour, widths = 0.0, [LEAST_PX] * 7
    days = _days(sheet, extra)
    for part in (1.0, 0.5, 0.0):
        needs = _needs(days, part)
        hour, widths = _longest_hour(needs, room, max(least, LEAST_PX))
        if hour >= _TIGHT_PX_PER_HOUR:
            break
    whole = [int(width) for width in widths]
    spare = max(0, int(room) - sum(whole))
    return Layout(hour, tuple(w + (spare + i) // 7 for i, w in enumerate(whole)))


class Solver:
    """Keeps what was solved for the last sheet: its room comes and goes with a scroll bar."""

    def __init__(self) -> None:
        self._sheet: Sheet | None = None
        self._solved: dict[tuple[float, float, float], Layout] = {}

    def solve(
        self, sheet: Sheet, room: float, scale: float, extra: Callable[[Cell], float], least: float
    ) -> Layout:
        """:func:`solve`, or what it gave before; ``extra`` depends on the text size alone."""
        if self._sheet is not sheet:
            self._sheet, self._solved = sheet, {}
        asked = (room, scale, least)
        if asked not in self._solved:
            self._solved[asked] = solve(sheet, room, extra, least)
        return self._solved[asked]


def _longest_hour(needs: Needs, room: float, least: float) -> tuple[float, list[float]]:
    """Halve the range of lengths until one fits the room."""
    low, high = _LEAST_PX_PER_HOUR, _MOST_PX_PER_HOUR
    if sum(_widths(needs, high, least)) <= room:
        low = high
    elif sum(_widths(needs, low, least)) < room:
        for _ in range(30):
            middle = (low + high) / 2.0
            fits = sum(_widths(needs, middle, least)) <= room
            low, high = (middle, high) if fits else (low, middle)
    return low, _widths(needs, low, least)


def bars(cell: Cell, px_per_hour: float, cap_s: float) -> tuple[Bar, ...]:
    """Place a day's sessions side by side; over the cap the longest is cut to what is left."""
    lengths = list(cell.lengths)
    over = cell.total_s - cap_s
    longest = max(range(len(lengths)), key=lengths.__getitem__, default=0)
    placed = []
    x = LEFT
    for index, length in enumerate(lengths):
        cut = over > 1.0 and index == longest
        width = max(2.5, (length - (over if cut else 0.0)) * px_per_hour / 3600.0)
        placed.append(Bar(x, width, cut))
        x += width + DOUBLE_GAP
    return tuple(placed)


def part_edges(placed: Sequence[Bar], width: float, least: float = 24.0) -> tuple[float, ...]:
    """Borders between the sessions of a day for pointing [px]; each part at least 24 px wide."""
    edges: list[float] = []
    for index, (a, b) in enumerate(pairwise(placed)):
        middle = (a.left + a.width + b.left) / 2.0
        floor = (edges[-1] if edges else 0.0) + least
        ceiling = width - least * (len(placed) - 1 - index)
        edges.append(max(floor, min(middle, ceiling)))
    return tuple(edges)


def _days(sheet: Sheet, extra: Callable[[Cell], float]) -> list[set[tuple[float, float, float]]]:
    """What the days of each column ask for: hours, pixels besides, and what may be left out."""

    def besides(bars: int) -> float:
        return LEFT + RIGHT + DOUBLE_GAP * max(0, bars - 1)

    return [
        {(length / 3600.0, besides(bars), 0.0) for length, bars in days.plain}
        | {(length / 3600.0, besides(bars), extra(cell)) for length, bars, cell in days.worded}
        for days in sheet.weekdays
    ]


def _needs(days: Sequence[set[tuple[float, float, float]]], part: float) -> Needs:
    """For each weekday the days that may set its width, as (hours, pixels besides)."""
    least = (LEAST_S / 3600.0, LEFT + RIGHT)
    return tuple(
        _upper({least, *((hours, fixed + part * more) for hours, fixed, more in asked)})
        for asked in days
    )


def _upper(pairs: set[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    """Keep only the days that no other one exceeds in both hours and pixels."""
    kept: list[tuple[float, float]] = []
    for hours, besides in sorted(pairs, reverse=True):
        if not kept or besides > kept[-1][1]:
            kept.append((hours, besides))
    return tuple(kept)


def _widths(needs: Needs, px_per_hour: float, least: float) -> list[float]:
    return [
        float(math.ceil(max(least, *(h * px_per_hour + besides for h, besides in days))))
        for days in needs
    ]
