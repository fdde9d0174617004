"""The repetition book, drawn: a row a week, one upright a repetition, as wide as it is long."""

from __future__ import annotations

import math

from PySide6.QtCore import QEvent, QPoint, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFontMetricsF,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from tercet import units
from tercet.engine.repetition_book import CLASSES, LONG
from tercet.engine.shades import Shade
from tercet.language import mark, tr
from tercet.library.repetition_book import Book, BookBlock, BookSet, BookWeek
from tercet.ui import stairs, theme, words

#: Columns of the week's date and from where the lengths begin. [px at 100 %]
DATE, LENGTHS = 42, 110
ROW, HEAD = 24, 30
#: What the engine's lengths are called, and what is said of a block with none longer.
CLASS_WORDS = (
    mark("to 100 m"), mark("200 m"), mark("300 m"), mark("400 m"), mark("longer"),
)  # fmt: skip
_NONE_LONGER = (
    mark("{total}, all 100 m or shorter"),
    mark("{total}, all 200 m or shorter"),
    mark("{total}, all 300 m or shorter"),
    mark("{total}, all 400 m or shorter"),
)
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter


class BookView(QWidget):
    """Cells with repetitions are stepped through by arrows; Enter opens their run."""

    chosen = Signal(object)  # tuple of BookSet
    open_asked = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self._book = Book((), ())
        self._most = [0.0] * len(CLASSES)  # of each length, in its fullest week [m]
        self._at: tuple[int, int] | None = None  # place among rows, length
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(tr("Repetition book"))
        theme.changed.connect(self._dress)

    def set_book(self, book: Book) -> None:
        """Show another book."""
        self._book = book
        weeks = [week for block in book.blocks for week in block.weeks]
        self._most = [
            max((_metres(week.of_length(place)) for week in weeks), default=0.0)
            for place in range(len(CLASSES))
        ]
        self._at = self._at if self._at is not None and self._sets(self._at) else None
        self._dress()

    def _dress(self, *_: object) -> None:
        self.updateGeometry()
        self.update()

    def rows(self) -> list[tuple[BookBlock, BookWeek | None]]:
        """Headings (no week) and weeks, from top to bottom."""
        out: list[tuple[BookBlock, BookWeek | None]] = []
        for block in self._book.blocks:
            out.append((block, None))
            out += [(block, week) for week in block.weeks]
        return out

    def _height(self, week: BookWeek | None) -> int:
        return theme.current().px(HEAD if week is None else ROW)

    def sizeHint(self) -> QSize:
        return QSize(500, sum(self._height(week) for _, week in self.rows()) + 4)

    def minimumSizeHint(self) -> QSize:
        return QSize(theme.current().px(460), self.sizeHint().height())

    # Places ------------------------------------------------------------------------------

    def columns(self) -> tuple[float, list[float]]:
        """Pixels a metre, and where each length begins: one scale for all of them."""
        look, most = theme.current(), self._most
        metrics = QFontMetricsF(look.font("small_bold"))
        least = [metrics.horizontalAdvance(tr(name)) + look.px(14) for name in CLASS_WORDS]
        room = self.width() - look.px(LENGTHS) - look.px(58)
        scale = room / max(sum(most), 1.0)
        for _ in range(5):
            # Lengths that are rare keep the room of their name; the scale gives way.
            wide = sum(w for m, w in zip(most, least, strict=True) if m * scale + 14 <= w)
            metres = sum(m for m, w in zip(most, least, strict=True) if m * scale + 14 > w)
            gaps = 14.0 * sum(m * scale + 14 > w for m, w in zip(most, least, strict=True))
            scale = max((room - wide - gaps), 20.0) / metres if metres else scale
        starts, x = [], float(look.px(LENGTHS))
        for m, w in zip(most, least, strict=True):
            starts.append(x)
            x += max(m * scale + 14, w)
        return scale, starts

    def _sets(self, at: tuple[int, int]) -> tuple[BookSet, ...]:
        rows = self.rows()
        week = rows[at[0]][1] if at[0] < len(rows) else None
        return week.of_length(at[1]) if week is not None else ()

    def _cell(self, at: tuple[int, int]) -> QRectF:
        scale, starts = self.columns()
        rows = self.rows()
        top = sum(self._height(week) for _, week in rows[: at[0]])
        total = _metres(self._sets(at))
        width = max(total * scale, 8.0) + 6
        return QRectF(starts[at[1]] - 4, top + 1, width + 4, self._height(rows[at[0]][1]) - 2)

    def cells(self) -> list[tuple[int, int]]:
        """All cells with repetitions, in reading order."""
        return [
            (row, place)
            for row, (_, week) in enumerate(self.rows())
            if week is not None
            for place in range(len(CLASSES))
            if week.of_length(place)
        ]

    def _find(self, point: QPoint) -> tuple[int, int] | None:
        return next((at for at in self.cells() if self._cell(at).contains(point.toPointF())), None)

    # Hands -------------------------------------------------------------------------------

    def _choose(self, at: tuple[int, int] | None) -> None:
        self._at = at
        if at is not None:
            self.setAccessibleDescription(" ".join(map(set_words, self._sets(at))))
            self.chosen.emit(self._sets(at))
        self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._choose(self._find(event.position().toPoint()))

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        self._open()

    def _open(self) -> None:
        if self._at is not None:
            self.open_asked.emit(self._sets(self._at)[0].run_id)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        cells = self.cells()
        key = event.key()
        if not cells or key not in (*_STEPS, Qt.Key.Key_Return, Qt.Key.Key_Enter):
            super().keyPressEvent(event)
            return
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._open()
            return
        if self._at not in cells:
            self._choose(cells[-1])
            return
        down, right = _STEPS[Qt.Key(key)]
        row, place = self._at
        if right:
            at = cells.index(self._at) + right
            if 0 <= at < len(cells):
                self._choose(cells[at])
            return
        ahead = [c for c in cells if (c[0] - row) * down > 0]
        if ahead:
            self._choose(min(ahead, key=lambda c: (abs(c[0] - row), abs(c[1] - place))))

    def current_rect(self) -> QRectF:
        """Where the block of today lies, or else the last one; nothing without repetitions."""
        top, found = 0.0, QRectF()
        for block, week in self.rows():
            height = self._height(week)
            if week is None:
                found = QRectF(0, top, self.width(), height)
            elif found.isValid():
                found.setHeight(found.height() + height)
            top += height
            if block.current and week is block.weeks[-1]:
                break
        return found

    def chosen_rect(self) -> QRectF:
        """Where the chosen cell lies, or nothing."""
        return self._cell(self._at) if self._at is not None else QRectF()

    def event(self, event: QEvent) -> bool:
        """Say what a cell holds while the pointer rests on it."""
        if event.type() == QEvent.Type.ToolTip:
            assert isinstance(event, QHelpEvent)
            at = self._find(event.pos())
            if at is None:
                QToolTip.hideText()
            else:
                QToolTip.showText(
                    event.globalPos(), "\n".join(map(set_words, self._sets(at))), self
                )
            return True
        return super().event(event)

    # Painting ----------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        painter = QPainter(self)
        scale, starts = self.columns()
        top = 0.0
        for row, (block, week) in enumerate(self.rows()):
            height = self._height(week)
            rect = QRectF(0, top, self.width(), height)
            top += height
            if not rect.intersects(event.rect().toRectF()):
                continue
            if week is None:
                self._heading(painter, rect, block)
            else:
                self._week(painter, rect, block, week, scale, starts)
                if self._at is not None and self._at[0] == row:
                    ring = self._cell(self._at)
                    role = "focus" if self.hasFocus() else "control"
                    painter.setPen(QPen(look.color(role), 2))
                    painter.setBrush(Qt.BrushStyle.NoBrush)
                    painter.drawRoundedRect(ring, 4, 4)

    def _heading(self, painter: QPainter, rect: QRectF, block: BookBlock) -> None:
        look = theme.current()
        painter.setFont(look.font("block"))
        painter.setPen(look.color("text"))
        line = rect.adjusted(look.px(17), look.px(4), -look.px(12), 0)
        wide = QFontMetricsF(painter.font()).horizontalAdvance(block_words(block))
        painter.drawText(line, _LEFT, block_words(block))
        painter.setFont(look.font("small"))
        painter.setPen(look.color("text_2"))
        painter.drawText(line.adjusted(wide + look.px(12), 1, 0, 0), _LEFT, metres_words(block))

    def _week(
        self,
        painter: QPainter,
        rect: QRectF,
        block: BookBlock,
        week: BookWeek,
        scale: float,
        starts: list[float],
    ) -> None:
        look = theme.current()
        px = look.px
        bracket = look.color("text" if block.current else "edge")
        painter.fillRect(QRectF(px(18), rect.top() + 1, 2, rect.height() - 1), bracket)
        painter.setFont(look.font("small"))
        painter.setPen(look.color("text_2"))
        day = rect.adjusted(px(30), 0, 0, 0)
        painter.drawText(day, _LEFT, words.short_day(week.first_day))
        foot = QRectF(px(LENGTHS), rect.bottom() - 2, rect.width() - px(LENGTHS) - px(14), 1)
        painter.fillRect(foot, look.color("rule"))
        brush = stairs.shade_brush(Shade.HARD, look, painter.device().devicePixelRatio())
        tall = px(17)
        for place, start in enumerate(starts):
            x = start
            for item in week.of_length(place):
                for metres in item.reps.metres:
                    width = max(round(metres * scale) - 1.0, 2.0)
                    box = QRectF(round(x), rect.bottom() - 3 - tall, width, tall)
                    painter.setBrushOrigin(box.bottomLeft())
                    painter.fillRect(box, brush)
                    x += max(metres * scale, 3.0)
            if place == LONG and block.kind == "base" and x > start:
                painter.setPen(QPen(look.color("text"), 1.4))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.setRenderHint(QPainter.RenderHint.Antialiasing)
                box = QRectF(start - 4, rect.bottom() - 6 - tall, x - start + px(42), tall + 6)
                painter.drawRoundedRect(box, 4, 4)
                painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
                painter.setFont(look.font("small_bold"))
                painter.drawText(
                    QRectF(x + px(6), box.top(), px(36), box.height()), _LEFT, tr("long")
                )


_STEPS = {
    Qt.Key.Key_Up: (-1, 0),
    Qt.Key.Key_Down: (1, 0),
    Qt.Key.Key_Left: (0, -1),
    Qt.Key.Key_Right: (0, 1),
}


def block_words(block: BookBlock) -> str:
    """A block's name with its year, unless the name has it already."""
    return block.name if block.years in block.name else f"{block.name} {block.years}"


def metres_words(block: BookBlock) -> str:
    """A block's fast metres: ``13.6 km, 3.0 km in long ones``."""
    total = units.distance(sum(block.metres))
    longer = block.metres[LONG]
    if longer > 0:
        long_ones = units.distance(longer)
        text = tr("{total}, {longer} in long ones", total=total, longer=long_ones)
    else:
        longest = max((k for k, m in enumerate(block.metres) if m > 0), default=0)
        text = tr(_NONE_LONGER[longest], total=total)
    return tr("{amount} so far", amount=text) if block.current else text


HEADINGS = (
    mark("Block"), mark("Day"), mark("Length"), mark("Count"),
    mark("Fastest"), mark("Slowest"), mark("Uneven"), mark("Recovery"),
)  # fmt: skip


def table_rows(book: Book) -> list[tuple[str, ...]]:
    """All sets of a book, a row each, under :data:`HEADINGS`."""
    rows: list[tuple[str, ...]] = []
    for block in book.blocks:
        for week in block.weeks:
            for item in week.sets:
                reps = item.reps
                rest = "" if reps.recovery_s is None else words.duration(reps.recovery_s)
                rows.append(
                    (
                        block_words(block),
                        words.short_day(item.day),
                        tr(CLASS_WORDS[reps.length]),
                        str(len(reps.metres)),
                        words.duration(min(reps.seconds)),
                        words.duration(max(reps.seconds)),
                        f"{words.number(100 * reps.unevenness, 1)} %",
                        rest,
                    )
                )
    return rows


def set_words(item: BookSet) -> str:
    """One set: count and length, times, evenness, recovery."""
    reps = item.reps
    count = len(reps.metres)
    mean = sum(reps.metres) / count
    low, high = min(reps.seconds), max(reps.seconds)
    times = words.duration(low)
    if math.floor(low + 0.5) != math.floor(high + 0.5):
        times = tr("{low} to {high}", low=times, high=words.duration(high))
    length = words.bout(round(mean / 10) * 10)
    parts = [
        tr("{n} {times} about {length}", n=count, times="\N{MULTIPLICATION SIGN}", length=length),
        times,
    ]
    if count > 1:
        uneven = words.number(100 * reps.unevenness, 1)
        parts.append(tr("speeds {uneven} % uneven", uneven=uneven))
    if reps.recovery_s is not None:
        parts.append(tr("recovery {time}", time=words.duration(reps.recovery_s)))
    return f"{words.short_day(item.day)}: {', '.join(parts)}."


def _metres(sets: tuple[BookSet, ...]) -> float:
    return sum((item.reps.total_m for item in sets), 0.0)
