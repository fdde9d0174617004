"""One page painted: its claim, its line, the picture, and runner, key and number at the foot."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from tercet.engine.scale import Shade
from tercet.language import tr
from tercet.library.review import pictures
from tercet.library.review.content import Page, Review
from tercet.ui.review import (
    paint_back,
    paint_blocks,
    paint_curve,
    paint_overview,
    paint_time,
    paint_words,
)
from tercet.ui.review.board import HEIGHT, WIDTH, Board, Mark
from tercet.ui.review.looks import Look

SIDE, TOP, FOOT = 56.0, 84.0, 36.0
LINE = 31.0
#: Parts of a key swatch's height that each shade fills.
KEY = (0.4, 0.7, 1.0)
_PAINT: dict[type, Callable[[Board, Any, QRectF], None]] = {
    pictures.SeasonLine: paint_overview.season_line,
    pictures.Weeks: paint_overview.weeks,
    pictures.BuildUpPicture: paint_blocks.build_up,
    pictures.CurvePicture: paint_curve.curve,
    pictures.BarPicture: paint_curve.bars,
    pictures.DotPicture: paint_time.dots,
    pictures.LevelPicture: paint_time.levels,
    pictures.VolumePicture: paint_time.volume,
    pictures.BackPicture: paint_back.back,
    pictures.Facts: paint_words.facts,
    pictures.Lines: paint_words.lines,
}
_SHADED = (
    pictures.SeasonLine,
    pictures.Weeks,
    pictures.BuildUpPicture,
    pictures.CurvePicture,
    pictures.BackPicture,
)


@dataclass(frozen=True)
class Foot:
    """What stands at the foot of every page; a page left out has the number 0, not written."""

    runner: str
    number: int
    count: int


def scale_of(width: float, height: float) -> float:
    """How much larger than 1366 by 768 a page is, by its shorter side."""
    return min(width / WIDTH, height / HEIGHT)


def paint(
    painter: QPainter, page: Page, look: Look, width: float, height: float, foot: Foot,
    spots: list[Mark] | None = None,
) -> list[Mark]:  # fmt: skip
    """Paint a page of this size, from the painter's origin; gives its words and their places.

    Width and height are in the painter's own units, and so are the places of the words. Shapes
    that lead to runs as well are added to ``spots``.
    """
    scale = scale_of(width, height)
    painter.save()
    painter.fillRect(QRectF(0.0, 0.0, width, height), look.color("pane"))
    painter.scale(scale, scale)
    board = Board(painter, look, width / scale, height / scale)
    top = _head(board, page)
    area = QRectF(SIDE, top, board.width - 2.0 * SIDE, board.height - top - FOOT - LINE - 18.0)
    if page.picture is not None:
        _PAINT[type(page.picture)](board, page.picture, area)
    elif page.missing:
        for k, line in enumerate(board.wrap(page.missing, "body", area.width())):
            board.text(area.left(), area.top() + 60.0 + k * LINE, line, "body", "text_2")
    _foot(board, page, foot)
    painter.restore()
    if spots is not None:
        spots += [_larger(spot, scale) for spot in board.spots]
    return [_larger(mark, scale) for mark in board.marks]


def _larger(mark: Mark, scale: float) -> Mark:
    rect = mark.rect
    place = QRectF(rect.x() * scale, rect.y() * scale, rect.width() * scale, rect.height() * scale)
    return replace(mark, rect=place)


def _head(board: Board, page: Page) -> float:
    """Claim, line and remark; gives where the picture begins."""
    room = board.width - 2.0 * SIDE
    role, step = "title", 52.0
    lines = board.wrap(page.title, role, room)
    if len(lines) > 2:
        role, step = "title_small", 42.0
        lines = _first(board.wrap(page.title, role, room), 3)
    y = TOP
    for line in lines:
        board.text(SIDE, y, line, role)
        y += step
    y -= step - 46.0
    for line in board.wrap(page.line, "body", room):
        board.text(SIDE, y, line, "body", "text_2")
        y += LINE
    for line in _first(board.wrap(page.remark, "italic", room - 18.0), 3):
        board.box(QRectF(SIDE, y - 21.0, 4.0, LINE - 3.0), "text")
        board.text(SIDE + 18.0, y + 2.0, line, "italic")
        y += LINE
    return y - 6.0


def foot_of(review: Review, page: Page) -> Foot:
    """The foot of a page: its number among those shown, or none where it is left out."""
    shown = review.shown
    number = next((k for k, other in enumerate(shown, 1) if other.key == page.key), 0)
    return Foot(review.runner, number, len(shown))


def _first(lines: list[str], most: int) -> list[str]:
    """The first lines, with an ellipsis where there were more."""
    kept = lines[:most]
    return [*kept[:-1], f"{kept[-1].rsplit(' ', 1)[0]} …"] if len(lines) > most else kept


def _foot(board: Board, page: Page, foot: Foot) -> None:
    base = board.height - FOOT
    if foot.number:
        number = tr("{n} of {count}", n=foot.number, count=foot.count)
        board.text(board.width - SIDE, base, number, "body", "text_2", align="right")
    name = board.fit(foot.runner, "bold", board.width * 0.3)
    board.text(SIDE, base, name, "bold")
    if not isinstance(page.picture, _SHADED):
        return
    words = (tr("easy"), tr("moderate"), tr("hard"))
    x = (board.width - sum(board.wide(word) + 68.0 for word in words)) / 2.0
    for shade, word in enumerate(words):
        size = 24.0
        height = size * KEY[shade]
        board.shade(QRectF(x, base + 2.0 - height, size, height), Shade(shade))
        board.text(x + size + 10.0, base, word, "body", "text_2")
        x += board.wide(word) + 68.0
