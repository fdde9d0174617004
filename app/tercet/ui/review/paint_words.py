"""Painting pages of words: rows of a number and what it is, and lines for the next block."""

from __future__ import annotations

from PySide6.QtCore import QRectF

from tercet.language import mark, several
from tercet.library.review.pictures import Facts, Lines
from tercet.ui.review.board import Board


def facts(board: Board, picture: Facts, area: QRectF) -> None:
    """One row a number: the number, what it is, and when, or a sentence below."""
    first = max((board.wide(number, "value") for number, _, _ in picture.rows), default=0.0)
    first = area.left() + first + 36.0
    last = max((board.wide(when) for _, _, when in picture.rows), default=0.0)
    below = last > area.width() * 0.4
    step = min(104.0 if below else 66.0, area.height() / max(len(picture.rows), 1))
    for row, (number, what, more) in enumerate(picture.rows):
        top = area.top() + row * step
        board.spot(QRectF(area.left(), top, area.width(), step), row)
        y = top + (44.0 if below else 0.75 * step)
        board.text(area.left(), y, number, "value", row=row)
        if below:
            board.text(first, top + 32.0, board.fit(what, "bold", area.right() - first), "bold")
            for k, line in enumerate(board.wrap(more, "body", area.right() - first)[:2]):
                board.text(first, top + 62.0 + 29.0 * k, line, color="text_2")
        else:
            shown = board.fit(what, "body", area.right() - last - first - 24.0)
            board.text(first, y - 2.0, shown)
            board.text(area.right(), y - 2.0, more, color="text_2", align="right")
        board.line((area.left(), area.right()), (top + step,) * 2, "rule", 1.0)


def lines(board: Board, picture: Lines, area: QRectF) -> None:
    """Numbered lines in a hand as large as they fit, and the cautions below a rule."""
    foot = [board.wrap(caution, "body", area.width() - 10.0) for caution in picture.cautions]
    height = sum(len(part) for part in foot) * 32.0 + 16.0
    room = area.height() - height - 30.0
    for role, step, apart in (("big", 40.0, 18.0), ("body", 31.0, 8.0)):
        wrapped = [board.wrap(line, role, area.width() - 60.0) for line in picture.lines]
        if sum(len(parts) * step + apart for parts in wrapped) <= room:
            break
    y = area.top() + step
    for number, parts in enumerate(wrapped, 1):
        if y + (len(parts) - 1) * step > area.top() + room:
            left = len(wrapped) - number + 1
            words = several(left, mark("and {n} more line"), mark("and {n} more lines"))
            board.text(area.left() + 52.0, y, words, "italic", "text_2")
            break
        board.text(area.left(), y, str(number), role, "text_2")
        for part in parts:
            board.text(area.left() + 52.0, y, part, role)
            y += step
        y += apart
    _cautions(board, foot, area, height)


def _cautions(board: Board, foot: list[list[str]], area: QRectF, height: float) -> None:
    top = area.bottom() - height
    board.line((area.left(), area.right()), (top, top), "edge", 1.2)
    y = top + 34.0
    for part in foot:
        for line in part:
            board.text(area.left(), y, line, "body", "text_2")
            y += 32.0
