"""Painting the season in a line, and week by week."""

from __future__ import annotations

from PySide6.QtCore import QRectF

from tercet.language import tr
from tercet.library.review.pictures import SeasonLine, WeekBlock, WeekRow, Weeks
from tercet.ui.review.board import Board

LINE_HEIGHTS = (56.0, 88.0, 120.0)
GAP = 14.0
#: Heights of the shades in a row of 28.
ROW_HEIGHTS = (9.0, 14.0, 19.0)
DOUBLE_GAP = 4.0


def season_line(board: Board, picture: SeasonLine, area: QRectF) -> None:
    """Big numbers in a row, and the blocks as stairs one after another."""
    step = area.width() / len(picture.values)
    for k, value in enumerate(picture.values):
        x = area.left() + k * step
        board.text(x, area.top() + 62.0, value.number, "value")
        board.text(x, area.top() + 96.0, value.word, "body", "text_2")
        board.spot(QRectF(x, area.top() + 20.0, step - 8.0, 84.0), picture.all_row)
    hours = sum(sum(part.seconds) for part in picture.parts) / 3600.0
    if not hours:
        return
    base = area.top() + area.height() * 0.68 + 20.0
    per_hour = (area.width() - GAP * (len(picture.parts) - 1)) / hours
    x = area.left()
    edges = []
    for part in picture.parts:
        end = x + sum(part.seconds) / 3600.0 * per_hour
        board.stair(x, base, per_hour, part.seconds, LINE_HEIGHTS)
        edges.append((x, end))
        board.spot(QRectF(x, base - LINE_HEIGHTS[2], end - x, LINE_HEIGHTS[2]), part.row)
        x = end + GAP
    # Where one is too narrow for the word, all go without it.
    short = any(
        board.wide(part.share) > end - left + GAP - 6.0
        for (left, end), part in zip(edges, picture.parts, strict=True)
    )
    for (left, end), part in zip(edges, picture.parts, strict=True):
        share = part.share.removesuffix(tr("{share} easy", share="")) if short else part.share
        _labels(board, left, end, base, (part.name, part.words, share), part.row)
    board.line((area.left(), area.right()), (base, base), "text_2", 1.4)
    for part_number, place, name in picture.races:
        left, end = edges[part_number]
        at = left + place * (end - left)
        board.pennant(at, base, LINE_HEIGHTS[2] + 34.0)
        _race_name(board, at, base - LINE_HEIGHTS[2] - 44.0, name, area)


def _labels(
    board: Board, left: float, end: float, base: float, words: tuple[str, str, str], row: int
) -> None:
    """Name, hours and share below a block, as short as it is narrow."""
    name, hours, share = words
    limit = board.width - 56.0
    room = end - left + GAP - 6.0
    shown = board.fit(name, "block", max(room, 60.0))
    width = max(board.wide(shown, "block"), board.wide(share), board.wide(hours))
    x = min(left, limit - width)
    y = base + 38.0
    if board.free(QRectF(x, y - 24.0, width, 90.0)):
        board.text(x, y, shown, "block")
        board.text(x, y + 33.0, hours, row=row)
        board.text(x, y + 64.0, share, "body", "text_2", row=row)


def _race_name(board: Board, at: float, y: float, name: str, area: QRectF) -> None:
    shown = board.fit(name, "body", 330.0)
    width = board.wide(shown)
    x = min(max(at - width / 2.0, area.left()), area.right() - width)
    for lift in (0.0, 32.0):
        if board.free(QRectF(x - 8.0, y - lift - 20.0, width + 16.0, 26.0)):
            board.text(x, y - lift, shown)
            return


def weeks(board: Board, picture: Weeks, area: QRectF) -> None:
    """Rows of weeks under each other, blocks parted by a little room."""
    blocks = picture.blocks
    count = sum(len(block.weeks) for block in blocks)
    if not count:
        return
    gutter, head, between = 300.0, 40.0, 0.5
    row = min(44.0, (area.height() - head) / (count + between * (len(blocks) - 1)))
    longest = [
        max((sum(map(sum, week.days[k])) for block in blocks for week in block.weeks), default=0.0)
        for k in range(7)
    ]
    columns = [max(seconds / 3600.0, 0.75) for seconds in longest]
    apart = 22.0
    left = area.left() + gutter
    per_hour = (area.right() - left - apart * 7.0) / sum(columns)
    starts = [left]
    for wide in columns:
        starts.append(starts[-1] + wide * per_hour + apart)
    for k, name in enumerate(picture.day_names):
        board.text(starts[k], area.top() + 24.0, name, "body", "text_2")
    y, last, number = area.top() + head, area.top(), 0
    for block in blocks:
        top = y
        for week in block.weeks:
            _week(board, week, starts, y + row, row, per_hour)
            board.spot(QRectF(left, y, area.right() - left, row), number)
            number += 1
            y += row
        last = _block_label(board, block, area.left(), top, y, last)
        _months(board, block, area.left() + gutter - 18.0, top, row)
        y += between * row


def _week(
    board: Board, week: WeekRow, starts: list[float], base: float, row: float, per_hour: float
) -> None:
    """One week's stairs on their line."""
    board.line((starts[0], starts[-1]), (base, base), "rule", 1.0)
    heights = tuple(height * row / 28.0 for height in ROW_HEIGHTS)
    for k, sessions in enumerate(week.days):
        x = starts[k]
        for seconds in sessions:
            x = board.stair(x, base - 0.5, per_hour, seconds, heights) + DOUBLE_GAP
        if week.race[k]:
            board.pennant(x + 3.0, base, row * 0.85)


def _block_label(
    board: Board, block: WeekBlock, left: float, top: float, bottom: float, last: float
) -> float:
    """Bracket, name and sums of a block beside its weeks; gives how far down they reach."""
    board.box(QRectF(left, top + 4.0, 3.0, max(bottom - top - 4.0, 4.0)), "control")
    y = max(top + 24.0, last + 26.0)
    if y > max(bottom, top + 24.0) + 8.0:
        return last  # too many short blocks to name each
    board.text(left + 14.0, y, board.fit(block.name, "block", 190.0), "block")
    if y + 32.0 <= max(bottom + 10.0, y + 1.0) or bottom - top > 52.0:
        whole = board.wide(block.words) <= 205.0
        parts = [block.words] if whole else block.words.split(", ", 1)
        for part in parts[: 2 if bottom - top > 84.0 else 1]:
            y += 31.0
            board.text(left + 14.0, y, board.fit(part, "body", 205.0), "body", "text_2")
    return y


def _months(board: Board, block: WeekBlock, right: float, top: float, row: float) -> None:
    """Short names of months at their first weeks, where there is room."""
    for k, week in enumerate(block.weeks):
        if not week.month:
            continue
        y = top + (k + 1) * row - 3.0
        width = board.wide(week.month)
        if board.free(QRectF(right - width, y - 26.0, width, 34.0)):
            board.text(right, y, week.month, "body", "text_3", align="right")
