"""Painting the intensity curve, and rows of bars."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QRectF

from tercet.engine.scale import Shade
from tercet.language import mark, tr
from tercet.library.review.pictures import Bar, BarPicture, CurvePicture
from tercet.ui.review.board import Along, Board

DASHES = (10.0, 5.0)


def curve(board: Board, picture: CurvePicture, area: QRectF) -> None:
    """The density now, filled by shade, and the one before as a dashed line."""
    base = area.bottom() - 76.0
    at = np.array(picture.at)
    densities = [picture.now.density, *([picture.then.density] if picture.then else [])]
    highest = max(max(density) for density in densities) or 1.0
    scale = (base - area.top() - 50.0) / highest
    span = at[-1] - at[0]

    def x_of(value: float) -> float:
        return area.left() + (value - float(at[0])) / float(span) * area.width()

    x = np.array([x_of(value) for value in at])
    y = base - np.array(picture.now.density) * scale
    lines = (-9.0, 1.0, picture.lt2, 99.0)
    for shade in (Shade.EASY, Shade.MODERATE, Shade.HARD):
        low, high = lines[shade], lines[shade + 1]
        inside = (at > low) & (at < high)
        part_at = np.concatenate(([max(low, at[0])], at[inside], [min(high, at[-1])]))
        part_x = np.array([x_of(value) for value in part_at])
        part_y = np.interp(part_at, at, y)
        board.area(part_x, np.full(len(part_x), base), part_y, shade)
    for bound in (1.0, picture.lt2):
        board.line((x_of(bound),) * 2, (area.top() + 30.0, base), "edge", 1.2)
        board.line((x_of(bound),) * 2, (float(np.interp(bound, at, y)), base), "pane", 1.6)
    board.line(x, y, "text", 2.2)
    board.line((area.left(), area.right()), (base, base), "text_2", 1.4)
    if picture.then is not None:
        board.halo_line(x, base - np.array(picture.then.density) * scale, DASHES)
    _under(board, picture, x_of, base, area)
    _names(board, picture, area)


def _under(board: Board, picture: CurvePicture, x_of: Along, base: float, area: QRectF) -> None:
    """Shares below each part, and the two boundaries in words."""
    low, high = picture.at[0], picture.at[-1]
    middles = ((low + 1.0) / 2.0, (1.0 + picture.lt2) / 2.0, (picture.lt2 + high) / 2.0)
    names = (mark("Easy {share}"), mark("Moderate {share}"), mark("Hard {share}"))
    for middle, name, share in zip(middles, names, picture.now.shares, strict=True):
        board.text(
            x_of(middle),
            base + 32.0,
            tr(name, share=share),
            "bold",
            align="center",
            row=picture.row,
        )
    for bound, words in zip((1.0, picture.lt2), picture.bounds, strict=True):
        board.text(x_of(bound), base + 66.0, words, color="text_2", align="center")
    board.text(area.left(), base + 66.0, tr("slow jog"), color="text_2")
    board.text(area.right(), base + 66.0, tr("flat out"), color="text_2", align="right")


def _names(board: Board, picture: CurvePicture, area: QRectF) -> None:
    """Names at the right with the line each is drawn by, and the earlier shares."""
    right, y = area.right(), area.top() + 28.0
    entries: list[tuple[str, tuple[float, float] | None]] = [(picture.now.name, None)]
    if picture.then is not None:
        easy, middle, hard = picture.then.shares
        entries.append((f"{picture.then.name}: {easy}, {middle}, {hard}", DASHES))
    for name, dashes in entries:
        shown = board.fit(name, "body", area.width() * 0.5)
        rect = board.text(right, y, shown, align="right", halo=True)
        start = rect.left() - 70.0
        board.line((start, start + 58.0), (y - 8.0, y - 8.0), "text", 2.2, dashes)
        y += 34.0


def bars(board: Board, picture: BarPicture, area: QRectF) -> None:
    """Rows of moderate time; what was meant stands last, under its own rule."""
    if not picture.bars:
        return
    count = len(picture.bars) + 0.4
    row = min(92.0, area.height() / count)
    gutter = max(board.wide(board.fit(bar.label, "bold", 380.0), "bold") for bar in picture.bars)
    left = area.left() + gutter + 28.0
    words = max(board.wide(bar.words) for bar in picture.bars)
    most = max(bar.amount for bar in picture.bars) or 1.0
    scale = (area.right() - left - words - 24.0) / most
    y = area.top() + 6.0
    ruled = False
    for k, bar in enumerate(picture.bars):
        if bar.meant and not ruled and k:
            board.line((area.left(), area.right()), (y + 6.0,) * 2, "rule", 1.2)
            y += 0.3 * row
            ruled = True
        _bar(board, bar, area.left(), left, y + row * 0.72, scale, k, row)
        y += row


def _bar(
    board: Board,
    bar: Bar,
    label: float,
    left: float,
    base: float,
    scale: float,
    row: int,
    high: float,
) -> None:
    high = min(34.0, high * 0.72)
    middle = base - high / 2.0 + 9.0
    board.text(label, middle, board.fit(bar.label, "bold", 380.0), "bold", row=row)
    width = max(bar.amount * scale, 2.5)
    if bar.amount > 0.0:
        board.shade(QRectF(left, base - high, width, high), Shade.MODERATE)
    board.spot(QRectF(left, base - high, width, high), row)
    board.text(left + width + 14.0, middle, bar.words, color="text_2", row=row)
