"""What the build-up chart draws, reckoned from the blocks' daily sums; no Qt."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property

import numpy as np

from tercet.engine.scale import Floats
from tercet.library.views import BlockView, BuildUp

#: No target line before this much has been run in a block.
TARGET_FROM_S = 7200.0
#: All easy would ask for endless easy running at the first hard step.
MOST_EASY = 0.99
UP_STEPS = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000)
#: There is less room below zero, so more steps are tried.
DOWN_STEPS = (1, 2, 3, 4, 5, 6, 8, 10, 15, 20, 30, 40, 50, 100, 150, 200, 300, 400, 500, 1000)


@dataclass(frozen=True, eq=False)
class BlockShape:
    """One block in the chart's unit (hours, kilometres or miles); arrays have shape (n,).

    ``left`` and ``right`` are the block's edges and ``x`` the points as ordinals; ``target`` is
    NaN where no line is drawn. ``share`` is None where nothing was judged.
    """

    block: BlockView
    left: float
    right: float
    x: Floats
    easy: Floats
    moderate: Floats
    hard: Floats
    target: Floats
    share: float | None
    short: bool
    ahead_x: Floats  # planned easy from today on, shape (m,)
    ahead: Floats

    @property
    def in_hand(self) -> float:
        """Easy less what the target asks for; negative where it is short."""
        if not len(self.x):
            return 0.0
        return float(self.easy[-1] - factor(self.block) * (self.moderate[-1] + self.hard[-1]))

    @cached_property
    def top(self) -> float:
        """Highest point drawn above zero."""
        values = np.concatenate((self.easy, self.target[np.isfinite(self.target)], self.ahead))
        return float(values.max(initial=0.0))

    @cached_property
    def bottom(self) -> float:
        """Lowest point drawn below zero, without a sign."""
        return float((self.moderate + self.hard).max(initial=0.0))

    def drawn_as(self, other: BlockShape) -> bool:
        """Whether both are drawn alike, whatever else is known of their sessions."""
        if self is other:
            return True
        names, said = ("left", "right", "share", "short"), ("name", "easy_target", "estimated")
        alike = all(getattr(self, name) == getattr(other, name) for name in names) and all(
            getattr(self.block, name) == getattr(other.block, name) for name in said
        )
        return alike and all(
            np.array_equal(getattr(self, name), getattr(other, name), equal_nan=True)
            for name in ("x", "easy", "moderate", "hard", "target", "ahead_x", "ahead")
        )


def factor(block: BlockView) -> float:
    """How much easy running one part of moderate or hard asks for: share / (1 - share)."""
    wanted = min(block.easy_target, MOST_EASY)
    return wanted / (1.0 - wanted)


def block_shape(build_up: BuildUp, today: date, unit: str, per_unit: float) -> BlockShape:
    """Cut a block's sums at the end of today and reckon its target line.

    Parameters
    ----------
    build_up : BuildUp
        Sums in seconds or metres.
    today : date
        Later days are not drawn.
    unit : str
        ``"time"`` or ``"metres"``.
    per_unit : float
        Seconds an hour, or metres a kilometre or mile.
    """
    block = build_up.block
    days = np.asarray(build_up.days, dtype=np.float64)
    kept = days <= today.toordinal() + 1
    easy, moderate, hard = (
        np.asarray(values, dtype=np.float64)[kept] / per_unit
        for values in (build_up.easy, build_up.moderate, build_up.hard)
    )
    total = easy + moderate + hard
    target_from = _target_from(block, unit) / per_unit
    enough = total >= target_from if target_from > 0.0 else np.zeros(len(total), dtype=bool)
    target = np.where(enough, factor(block) * (moderate + hard), np.nan)
    ran = bool(len(total)) and float(total[-1]) > 0.0
    return BlockShape(
        block=block,
        left=float(block.start.toordinal()),
        right=float(block.end.toordinal() + 1),
        x=days[kept],
        easy=easy,
        moderate=moderate,
        hard=hard,
        target=target,
        share=float(easy[-1] / total[-1]) if ran else None,
        short=bool(block.id is not None and ran and enough[-1] and easy[-1] < target[-1] - 1e-9),
        ahead_x=np.array([day for day, _ in build_up.easy_ahead], dtype=np.float64),
        ahead=np.array([value / per_unit for _, value in build_up.easy_ahead], dtype=np.float64),
    )


def current_shape(shapes: Sequence[BlockShape], today: date) -> BlockShape | None:
    """The block that holds today, else the last one with runs."""
    day = today.toordinal()
    for shape in shapes:
        if shape.left <= day < shape.right:
            return shape
    return next((shape for shape in reversed(shapes) if shape.share is not None), None)


def gap(shape: BlockShape) -> tuple[Floats, Floats, Floats] | None:
    """Where the target stands above easy: ``x``, lower and upper edge, or None.

    The points where the two lines cross are put in, so that the area ends where they meet.
    """
    drawn = np.isfinite(shape.target)
    if not drawn.any():
        return None
    x, easy, target = shape.x[drawn], shape.easy[drawn], shape.target[drawn]
    over = target - easy
    if not (over > 0.0).any():
        return None
    k = np.flatnonzero(over[:-1] * over[1:] < 0.0)
    part = over[k] / (over[k] - over[k + 1])
    meet = easy[k] + part * np.diff(easy)[k]
    x = np.insert(x, k + 1, x[k] + part * np.diff(x)[k])
    easy, target = np.insert(easy, k + 1, meet), np.insert(target, k + 1, meet)
    return x, easy, np.maximum(easy, target)


def whole_marks(
    extent: float, pixels: float, line: float, most: int, steps: Sequence[int]
) -> tuple[int, ...]:
    """Whole units to mark from zero (left out) to ``extent``.

    Parameters
    ----------
    extent : float
        Length of the axis in the chart's unit.
    pixels, line : float
        Its length on the screen and the height of a line of text; marks stand 1.3 lines apart.
    most : int
        How many marks at most.
    steps : sequence of int
        Distances between marks to try, smallest first.
    """
    if extent < 1.0 or pixels <= 0.0:
        return ()
    for step in steps:
        if math.floor(extent / step) <= most and step / extent * pixels >= 1.3 * line:
            return tuple(range(step, math.floor(extent) + 1, step))
    return ()


def month_starts(left: float, right: float, most: int) -> tuple[date, ...]:
    """First days of months between two ordinals, thinned to every 2nd, 3rd, 6th or 12th."""
    day = date.fromordinal(max(1, math.ceil(left)))
    year, month = (day.year, day.month) if day.day == 1 else _next_month(day.year, day.month)
    starts = []
    while date(year, month, 1).toordinal() < right:
        starts.append(date(year, month, 1))
        year, month = _next_month(year, month)
    for every in (1, 2, 3, 6, 12, 24, 60):
        kept = tuple(s for s in starts if (s.year * 12 + s.month - 1) % every == 0)
        if len(kept) <= max(1, most):
            return kept
    return ()


def _next_month(year: int, month: int) -> tuple[int, int]:
    return (year + 1, 1) if month == 12 else (year, month + 1)


def _target_from(block: BlockView, unit: str) -> float:
    """Two hours in the sums' own unit; in metres at the block's own mean speed."""
    if unit == "time":
        return TARGET_FROM_S
    judged = sum(block.seconds[:3])
    return TARGET_FROM_S * sum(block.metres[:3]) / judged if judged > 0.0 else 0.0
