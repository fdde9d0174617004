"""Stretches of training made up for tests: runs from a few numbers, without a store."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, datetime, timedelta

import numpy as np

from tercet.domain import Block
from tercet.library.figures import Figures, Span
from tercet.library.season import block_view
from tercet.library.views import RaceView, SeasonView, SessionView

MONDAY = date(2026, 3, 2)


def run(
    number: int, day: int, easy: float, moderate: float = 0.0, hard: float = 0.0,
    *, kilometres: float = 8.0, note: str = "", name: str = "Run", effort: int | None = None,
) -> SessionView:  # fmt: skip
    """A run on a day counted from a Monday; minutes."""
    when = MONDAY + timedelta(days=day)
    seconds = (60 * easy, 60 * moderate, 60 * hard, 0.0, 0.0)
    total = sum(seconds)
    metres = tuple(1000 * kilometres * s / total if total else 0.0 for s in seconds)
    return SessionView(
        number, when, datetime(when.year, when.month, when.day, 8), name, "running", "",
        seconds, metres, total, total, 1000 * kilometres, effort=effort, note=note,  # type: ignore[arg-type]
    )  # fmt: skip


def span(
    runs: Sequence[SessionView], *, kind: str = "base", weeks: int = 4, meant: Sequence[int] = (),
    shares: tuple[float, float, float] = (0.8, 0.05, 0.15),
) -> Span:  # fmt: skip
    end = MONDAY + timedelta(days=7 * weeks - 1)
    return Span(
        "1", "Groundwork", kind, MONDAY, end, tuple(runs), frozenset(meant), shares, 1
    )  # fmt: skip


def view_of(
    runs: Sequence[SessionView], races: tuple[RaceView, ...] = (), end: date | None = None
) -> SeasonView:
    """A season with one block around all runs."""
    block = Block(runs[0].day, end or runs[-1].day, "All", "base", id=1)
    made = block_view(block, True, list(runs), [], [race.day for race in races])
    return SeasonView((made,), races, runs[-1].day, len(runs), 0, False)


def figures(
    runs: Sequence[SessionView], told: Mapping[int, dict[str, list[float | None]]],
    places: Mapping[int, str] | None = None, meant: Mapping[int, bool] | None = None,
) -> Figures:  # fmt: skip
    rows = {view.id: k for k, view in enumerate(runs)}
    spread = np.zeros((len(runs), 60), dtype=np.uint32)
    for view in runs:
        for shade, place in enumerate((20, 36, 48)):
            spread[rows[view.id], place] = round(view.seconds[shade])
    return Figures(dict(told), dict(meant or {}), frozenset(), dict(places or {}), rows, spread)
