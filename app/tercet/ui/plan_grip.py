"""A grip on the edge between two blocks: dragged by the mouse or moved by keys, whole weeks."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from tercet.language import tr
from tercet.ui import theme, words


class Grip(QWidget):
    """Tells by how many weeks its edge is moved; Enter or letting go keeps it, Esc does not."""

    moved = Signal(int, int)  # its number, weeks from where it was
    let_go = Signal(int, bool)  # its number, whether to keep it

    def __init__(self, parent: QWidget, number: int) -> None:
        super().__init__(parent)
        self._number = number
        self._weeks = 0
        self._from: float | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.SizeVerCursor)

    def name(self, first: str, second: str, edge: date) -> None:
        """Say between what it lies."""
        self.setAccessibleName(
            tr(
                "Edge between {first} and {second}, {day}. Up and down move it by a week, Enter "
                "keeps it.",
                first=first,
                second=second,
                day=words.short_day(edge),
            )
        )
        self.setToolTip(
            tr(
                "Between {first} and {second}: drag, or up and down, then Enter",
                first=first,
                second=second,
            )
        )

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._from = event.globalPosition().y()
        self._weeks = 0

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._from is not None:
            row = self._row_height()
            self._go(round((event.globalPosition().y() - self._from) / row))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._from is not None:
            self._from = None
            self._end(keep=True)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self._go(self._weeks + (1 if key == Qt.Key.Key_Down else -1))
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._end(keep=True)
        elif key == Qt.Key.Key_Escape and self._weeks:
            self._from = None
            self._end(keep=False)
        else:
            super().keyPressEvent(event)

    def _go(self, weeks: int) -> None:
        if weeks != self._weeks:
            self._weeks = weeks
            self.moved.emit(self._number, weeks)

    def _end(self, *, keep: bool) -> None:
        self._weeks = 0
        self.let_go.emit(self._number, keep)

    def _row_height(self) -> float:
        found = getattr(self.parentWidget(), "row_height", None)
        return float(found()) if found is not None else 24.0

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if self._weeks:
            self._end(keep=False)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        middle = self.rect().center()
        box = QRectF(0, 0, look.px(26), look.px(8))
        box.moveCenter(middle.toPointF())
        if self.hasFocus():
            painter.setPen(QPen(look.color("focus"), 2))
            painter.setBrush(look.color("pane"))
            painter.drawRoundedRect(box.adjusted(-2, -4, 2, 4), 6, 6)
        painter.setPen(QPen(look.color("text_2"), 1))
        painter.setBrush(look.color("raised"))
        painter.drawRoundedRect(box, 4, 4)
        for shift in (-1.5, 1.5):
            y = box.center().y() + shift
            painter.drawLine(int(box.center().x() - 5), int(y), int(box.center().x() + 5), int(y))
