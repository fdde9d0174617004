"""Painting two seasons or blocks side by side, back from the race."""

from __future__ import annotations

from PySide6.QtCore import QRectF

from tercet.engine.scale import Shade
from tercet.library.review.pictures import BackPicture, BackSide
from tercet.ui.review.board import Board

HEIGHTS = (9.0, 14.0, 19.0)
#: Room for the weeks to go in the middle, and for a side's blocks at the outer edge.
SPINE, EDGE = 116.0, 170.0
LINE = 31.0
MOST = 56.0


def back(board: Board, picture: BackPicture, area: QRectF) -> None:
    """A row a week: one side grows to the left of the middle, the other to the right."""
    count = len(picture.to_go)
    top = area.top() + 74.0
    row = min(MOST, (area.bottom() - top) / max(count, 1))
    middle = area.center().x()
    longest = max((sum(w.seconds) for side in picture.sides for w in side.weeks), default=0.0)
    words = max((board.wide(w.words) for side in picture.sides for w in side.weeks), default=0.0)
    words = words + 10.0 if row >= LINE - 4.0 else 0.0
    room = middle - SPINE / 2.0 - area.left() - EDGE - words
    per_hour = room / max(longest / 3600.0, 0.5)
    for side, way in zip(picture.sides, (-1, 1), strict=True):
        edge = area.left() if way < 0 else area.right()
        align = "left" if way < 0 else "right"
        half = middle - SPINE / 2.0 - area.left()
        name = board.fit(side.name, "block", half)
        board.text(edge, area.top() + 22.0, name, "block", align=align)
        board.text(edge, area.top() + 54.0, side.words, "body", "text_2", align=align)
        for k, week in enumerate(side.weeks):
            base = top + (k + 1) * row
            start = middle + way * SPINE / 2.0
            end = _stair(board, week.seconds, start, way, base, row, per_hour)
            if week.race:
                board.pennant(end + (6.0 if way > 0 else -24.0), base, row * 0.85)
                end += way * 28.0
            if words:
                side_of = "left" if way > 0 else "right"
                board.text(end + way * 10.0, base - 5.0, week.words, color="text_2", align=side_of)
        _blocks(board, side, way, area, top, row)
    for k, to_go in enumerate(picture.to_go):
        y = top + (k + 1) * row
        board.line((area.left() + EDGE, area.right() - EDGE), (y, y), "rule", 1.0)
        board.spot(QRectF(area.left() + EDGE, y - row, area.width() - 2.0 * EDGE, row), k)
        width = board.wide(to_go)
        if (_named(to_go) or row >= LINE - 4.0) and board.free(
            QRectF(middle - width / 2.0, y - 24.0, width, 24.0)
        ):
            board.text(middle, y - 3.0, to_go, align="center", row=k)


def _named(to_go: str) -> bool:
    """Whether a week is named where there is no room for each."""
    return not to_go.isdigit() or int(to_go) % 4 == 0


def _stair(
    board: Board, seconds: tuple[float, float, float], start: float, way: int, base: float,
    row: float, per_hour: float,
) -> float:  # fmt: skip
    """Draw a stair outward from the middle; gives its outer end."""
    at = start
    for index, amount in enumerate(seconds):
        if amount <= 0.0:
            continue
        wide = max(amount / 3600.0 * per_hour, 2.5)
        height = HEIGHTS[index] * row / 28.0
        left = at if way > 0 else at - wide
        board.shade(QRectF(left, base - 0.5 - height, wide, height), Shade(index))
        at += way * (wide + 1.0)
    return at


def _blocks(board: Board, side: BackSide, way: int, area: QRectF, top: float, row: float) -> None:
    """Brackets and names of blocks at the outer edge."""
    edge = area.left() if way < 0 else area.right()
    last = top - 30.0
    for first, end, name in side.blocks:
        upper, lower = top + first * row + 3.0, top + (end + 1) * row
        board.box(QRectF(edge - (3.0 if way > 0 else 0.0), upper, 3.0, max(lower - upper, 4.0)),
                  "control")  # fmt: skip
        y = max(upper + 22.0, last + 28.0)
        if y > lower + 8.0:
            continue
        align = "left" if way < 0 else "right"
        shown = board.fit(name, "body", EDGE - 24.0)
        board.text(edge - way * 12.0, y, shown, "body", align=align)
        last = y
