"""Painting the build-up by block."""

from __future__ import annotations

import math

import numpy as np
from PySide6.QtCore import QRectF

from tercet.engine.scale import Shade
from tercet.language import tr
from tercet.library.review.pictures import BuildUpPart, BuildUpPicture
from tercet.ui.review.board import Along, Board

LEFT = 84.0
STEPS = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000)
DASHES = (10.0, 5.0)


def whole_marks(extent: float, pixels: float, apart: float, most: int = 4) -> list[int]:
    """Whole hours to mark from zero, left out, up to an extent."""
    for step in STEPS:
        if extent < step:
            return []
        if math.floor(extent / step) <= most and step / extent * pixels >= apart:
            return list(range(step, math.floor(extent) + 1, step))
    return []


def build_up(board: Board, picture: BuildUpPicture, area: QRectF) -> None:
    """Grid, areas, targets, edges, today and labels, from the ground up."""
    parts = picture.parts
    up = max((max(_tops(part), default=0.0) for part in parts), default=0.0) or 1.0
    down = max((max(_bottoms(part), default=0.0) for part in parts), default=0.0)
    plot = QRectF(
        area.left() + LEFT, area.top() + 72.0, area.width() - LEFT, area.height() - 72.0 - 34.0
    )
    # Room for the labels over the highest block, which may take two lines.
    head = 66.0 if any(", " in part.label for part in parts) else 34.0
    per_hour = (plot.height() - head) / (up + down * 1.04)
    zero = plot.top() + head + up * per_hour
    first, last = parts[0].left, parts[-1].right
    per_day = plot.width() / (last - first)
    spans = [
        (plot.left() + (left - first) * per_day, plot.left() + (right - first) * per_day)
        for left, right in picture.spans or ((first, last),)
    ]
    marks = [*whole_marks(up, up * per_hour, 32.0)]
    below = [-m for m in whole_marks(down, down * per_hour, 32.0, 2)]
    for mark in (*marks, *below):
        y = zero - mark * per_hour
        for left, right in spans:
            board.line((left, right), (y, y), "rule", 1.0)
        board.text(
            plot.left() - 14.0, y + 8.0, tr("{n} h", n=abs(mark)), color="text_2", align="right"
        )
    board.text(plot.left() - 14.0, zero + 8.0, "0", color="text_2", align="right")

    def x_of(day: float) -> float:
        return plot.left() + (day - first) * per_day

    for part in parts:
        _areas(board, part, x_of, zero, per_hour)
    for left, right in spans:
        board.line((left, right), (zero, zero), "text_2", 1.6)
    for part in parts:
        _target(board, part, x_of, zero, per_hour)
    for edge in sorted({edge for part in parts for edge in (part.left, part.right)}):
        board.line((x_of(edge),) * 2, (plot.top(), plot.bottom()), "edge", 1.2)
    if picture.today is not None:
        board.line((x_of(picture.today),) * 2, (plot.top(), plot.bottom()), "focus", 3.0)
    for part in parts:
        room = x_of(part.right) - x_of(part.left) - 6.0
        name = board.fit(part.name, "block", room)
        board.text(x_of(part.left) + 4.0, area.top() + 26.0, name, "block")
        wanted = next((said for said in part.wanted if board.wide(said) <= room), "")
        board.text(x_of(part.left) + 4.0, area.top() + 56.0, wanted, "body", "text_2")
    for day, name in picture.months:
        width = board.wide(name)
        x = min(x_of(day), plot.right() - width)
        if board.free(QRectF(x - 12.0, plot.bottom() + 8.0, width + 24.0, 26.0)):
            board.line((x_of(day),) * 2, (plot.bottom(), plot.bottom() + 6.0), "text_2", 1.2)
            board.text(x, plot.bottom() + 31.0, name, color="text_2")
    for row, part in enumerate(parts):
        left = x_of(part.left)
        board.spot(QRectF(left, plot.top(), x_of(part.right) - left, plot.height()), row)
        _end_label(board, part, x_of, zero - max(_tops(part), default=0.0) * per_hour, row, plot)


def _tops(part: BuildUpPart) -> list[float]:
    return [*part.easy, *(value for value in part.target if value is not None)]


def _bottoms(part: BuildUpPart) -> list[float]:
    return [m + h for m, h in zip(part.moderate, part.hard, strict=True)]


def _areas(board: Board, part: BuildUpPart, x_of: Along, zero: float, per_hour: float) -> None:
    if not part.days or not any(part.easy):
        return
    x = np.array([x_of(day) for day in part.days])
    flat = np.full(len(x), zero)
    easy = zero - np.array(part.easy) * per_hour
    middle = zero + np.array(part.moderate) * per_hour
    lowest = middle + np.array(part.hard) * per_hour
    board.area(x, flat, easy, Shade.EASY)
    board.line(x, easy, "easy_outline", 1.8)
    board.area(x, middle, flat, Shade.MODERATE)
    board.area(x, lowest, middle, Shade.HARD)
    if part.hard[-1] > 0.0 and part.moderate[-1] > 0.0:
        board.line(x, middle, "pane", 1.6)


def _target(board: Board, part: BuildUpPart, x_of: Along, zero: float, per_hour: float) -> None:
    drawn = [k for k, value in enumerate(part.target) if value is not None]
    if len(drawn) < 2:
        return
    x = np.array([x_of(part.days[k]) for k in drawn])
    wanted = zero - np.array([part.target[k] for k in drawn], dtype=np.float64) * per_hour
    easy = zero - np.array([part.easy[k] for k in drawn]) * per_hour
    if (wanted < easy - 0.5).any():
        board.ruled(x, easy, np.minimum(easy, wanted))
    board.halo_line(x, wanted, DASHES)


def _end_label(
    board: Board, part: BuildUpPart, x_of: Along, y: float, row: int, plot: QRectF
) -> None:
    """The share at a block's end; in a narrow block the word short stands above it."""
    if not part.label or not part.days:
        return
    whole = board.wide(part.label, "bold")
    if x_of(part.right) - x_of(part.left) < 0.3 * whole:
        return
    narrow = x_of(part.days[-1]) - 6.0 - whole < x_of(part.left) - 4.0
    lines = part.label.split(", ")[::-1] if narrow else [part.label]
    width = max(board.wide(line, "bold") for line in lines)
    right = min(max(x_of(part.days[-1]) - 6.0, plot.left() + width), plot.right())
    height = 28.0 * (len(lines) - 1)
    for lift in (8.0, 38.0, 68.0):
        top = y - lift
        if board.free(
            QRectF(right - width - 6.0, top - 20.0 - height, width + 12.0, 24.0 + height)
        ):
            for k, line in enumerate(lines):
                place = top - 28.0 * k
                board.text(right, place, line, "bold", align="right", halo=True, row=row)
            return
