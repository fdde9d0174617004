"""The review as a PDF: pages of vector and real text, tables at the end, bookmarks."""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import dataclass
from threading import Event

from pypdf import PdfWriter
from pypdf.generic import BooleanObject, DictionaryObject, NameObject, TextStringObject
from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMarginsF, QRectF, QSizeF
from PySide6.QtGui import QPageLayout, QPageSize, QPainter, QPdfWriter

from tercet import __version__, language
from tercet.language import tr
from tercet.library.review.content import Page, Review
from tercet.ui.review import frame
from tercet.ui.review.board import Board
from tercet.ui.review.frame import FOOT, SIDE, TOP, Foot
from tercet.ui.review.looks import PAPERS, Look
from tercet.ui.review.writing import Progress, Stopped, title_of

#: Dots an inch that the pages are laid out in; everything on them is vector.
RESOLUTION = 144
ROW = 26.0
#: Room for a table's name and headings, between two tables, and the rows worth parting one for.
HEAD, APART, GOOD_PART = 76.0, 30.0, 8


def pdf(
    review: Review, look: Look, paper: str = "a4", progress: Progress | None = None,
    stop: Event | None = None,
) -> bytes:  # fmt: skip
    """Write the review as a PDF.

    Raises
    ------
    Stopped
        If ``stop`` is set on the way.
    """
    pages = review.shown
    _, width_mm, height_mm = PAPERS[paper]
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    size = QPageSize(QSizeF(width_mm, height_mm), QPageSize.Unit.Millimeter, paper)
    writer.setPageLayout(
        QPageLayout(size, QPageLayout.Orientation.Portrait, QMarginsF(0.0, 0.0, 0.0, 0.0))
    )
    writer.setResolution(RESOLUTION)
    writer.setTitle(title_of(review))
    writer.setCreator(f"Tercet {__version__}")
    width = width_mm / 25.4 * RESOLUTION
    height = height_mm / 25.4 * RESOLUTION
    appendix = _packed(pages, width, height)
    count = len(pages) + len(appendix)
    marks: list[tuple[str, int]] = []
    painter = QPainter(writer)
    for k, page in enumerate(pages):
        _check(stop, painter)
        if k:
            writer.newPage()
        marks.append((page.title, k))
        frame.paint(painter, page, look, width, height, frame.foot_of(review, page))
        if progress is not None:
            progress(k + 1, count)
    for k, held in enumerate(appendix, len(pages)):
        _check(stop, painter)
        writer.newPage()
        begun = [part for part in held if not part.rows[0]]
        marks += [
            (tr("Numbers of page {n}: {name}", n=part.number, name=part.page.name), k)
            for part in begun
        ]
        foot = Foot(review.runner, k + 1 - len(pages), len(appendix))
        _tables(painter, held, look, (width, height), foot)
        if progress is not None:
            progress(k + 1, count)
    painter.end()
    buffer.close()
    return _bookmarked(bytes(data.data()), title_of(review), marks, len(pages))


def _check(stop: Event | None, painter: QPainter) -> None:
    if stop is not None and stop.is_set():
        painter.end()
        raise Stopped


@dataclass(frozen=True)
class _Part:
    """Rows of a page's table, and how far down a page they stand."""

    number: int
    page: Page
    rows: tuple[int, int]  # first, and the one after the last
    top: float


def _packed(pages: Sequence[Page], width: float, height: float) -> list[list[_Part]]:
    """Tables under each other, on as few pages as hold them; one too long for a page is parted."""
    bottom = height / frame.scale_of(width, height) - FOOT - 40.0
    out: list[list[_Part]] = []
    y = bottom
    for number, page in enumerate(pages, 1):
        count, first = len(page.table.rows), 0
        while first < max(count, 1):
            # A table begins on a new page unless all of it, or a good part, has room.
            room = int((bottom - y - HEAD) // ROW)
            if room < min(count - first, GOOD_PART) or not out:
                out.append([])
                y = TOP - 40.0
                room = int((bottom - y - HEAD) // ROW)
            last = min(first + max(room, 1), count)
            out[-1].append(_Part(number, page, (first, last), y))
            y += HEAD + (last - first) * ROW + APART
            first = max(last, first + 1)
    return out


def _tables(
    painter: QPainter, held: Sequence[_Part], look: Look, size: tuple[float, float], foot: Foot
) -> None:
    """A page of tables."""
    scale = frame.scale_of(*size)
    painter.save()
    painter.fillRect(QRectF(0.0, 0.0, *size), look.color("pane"))
    painter.scale(scale, scale)
    board = Board(painter, look, size[0] / scale, size[1] / scale)
    for part in held:
        _table(board, part)
    base = board.height - FOOT
    board.text(SIDE, base, foot.runner, "cell_bold")
    words = tr("numbers, {n} of {count}", n=foot.number, count=foot.count)
    board.text(board.width - SIDE, base, words, "cell", "text_2", align="right")
    painter.restore()


def _table(board: Board, part: _Part) -> None:
    """One table, columns as wide as their words."""
    words = tr("Numbers of page {n}: {name}", n=part.number, name=part.page.name)
    board.text(SIDE, part.top + 24.0, words, "block")
    table, rows = part.page.table, part.rows
    columns = list(zip(table.headings, *table.rows, strict=True))
    wide = [
        max(board.wide(cell, "cell_bold" if k == 0 else "cell") for k, cell in enumerate(column))
        for column in columns
    ]
    room = board.width - 2.0 * SIDE
    apart = min(48.0, (room - sum(wide)) / max(len(wide) - 1, 1))
    if apart < 12.0:
        # Words give way, numbers never do.
        apart = 12.0
        over = sum(wide) + apart * (len(wide) - 1) - room
        widest = max(table.words, key=lambda k: wide[k], default=0)
        wide[widest] = max(wide[widest] - over, 60.0)
    x = SIDE
    y = part.top + 64.0
    for k, column in enumerate(columns):
        at = x if k in table.words else x + wide[k]
        align = "left" if k in table.words else "right"
        board.text(at, y, board.fit(column[0], "cell_bold", wide[k]), "cell_bold", align=align)
        for j, cell in enumerate(column[1 + rows[0] : 1 + rows[1]], 1):
            shown = board.fit(cell, "cell", wide[k])
            board.text(at, y + j * ROW + 4.0, shown, "cell", align=align)
        x += wide[k] + apart
    board.line((SIDE, board.width - SIDE), (y + 9.0, y + 9.0), "edge", 1.0)


def _bookmarked(data: bytes, title: str, marks: list[tuple[str, int]], pages: int) -> bytes:
    """Put bookmarks, title and language into the file."""
    writer = PdfWriter(clone_from=io.BytesIO(data))
    parent = None
    for words, page in marks:
        if page == pages:
            parent = writer.add_outline_item(title=tr("The numbers"), page_number=page)
        writer.add_outline_item(title=words, page_number=page, parent=parent)
    root = writer.root_object
    root[NameObject("/Lang")] = TextStringObject(language.code())
    root[NameObject("/ViewerPreferences")] = DictionaryObject(
        {NameObject("/DisplayDocTitle"): BooleanObject(True)}
    )
    writer.add_metadata({"/Title": title})
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()
