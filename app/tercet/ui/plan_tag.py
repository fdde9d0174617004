"""The two ends of a planned line: the day it is dragged by, and its stair."""

from __future__ import annotations

from PySide6.QtCore import QMimeData, QPoint, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QDrag, QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QApplication, QSizePolicy, QWidget

from tercet.language import tr
from tercet.library.views import ZERO, Five
from tercet.ui import stairs, theme
from tercet.ui.hollow import paint_hollow, paint_plan_rule

MIME = "application/x-tercet-planned"


class DayTag(QWidget):
    """The day's name; planned ones are dragged by it, or moved with M, arrows and Enter."""

    move_begun = Signal()
    key_moved = Signal(int)
    key_ended = Signal(bool, bool)  # keep, copy
    delete_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.text, self.bold, self.planned_id = "", False, 0
        self._from: QPoint | None = None
        self.moving = False
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)

    def show_day(self, text: str, planned_id: int, *, bold: bool) -> None:
        """Name the day; ``planned_id`` 0 is nothing to be moved."""
        self.text, self.bold, self.planned_id = text, bold, planned_id
        movable = bool(planned_id)
        policy = Qt.FocusPolicy.StrongFocus if movable else Qt.FocusPolicy.NoFocus
        self.setFocusPolicy(policy)
        self.setCursor(Qt.CursorShape.OpenHandCursor if movable else Qt.CursorShape.ArrowCursor)
        self.setAccessibleName(tr("{day}, move: M, arrows, Enter", day=text) if movable else text)
        self.setToolTip(tr("Drag to another day, or M, arrows and Enter") if movable else "")
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(theme.current().px(63), theme.current().px(26))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._from = event.position().toPoint() if self.planned_id else None

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._from is None:
            return
        apart = (event.position().toPoint() - self._from).manhattanLength()
        if apart >= QApplication.startDragDistance():
            self._from = None
            drag = QDrag(self)
            data = QMimeData()
            data.setData(MIME, str(self.planned_id).encode())
            drag.setMimeData(data)
            line = self.parentWidget()
            if line is not None:
                drag.setPixmap(line.grab())
            drag.exec(Qt.DropAction.MoveAction | Qt.DropAction.CopyAction)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if not self.moving and key == Qt.Key.Key_M:
            self.moving = True
            self.move_begun.emit()
        elif not self.moving and key == Qt.Key.Key_Delete:
            self.delete_asked.emit()
        elif self.moving and key in (Qt.Key.Key_Up, Qt.Key.Key_Left):
            self.key_moved.emit(-1)
        elif self.moving and key in (Qt.Key.Key_Down, Qt.Key.Key_Right):
            self.key_moved.emit(1)
        elif self.moving and key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Escape):
            self.moving = False
            alt = bool(event.modifiers() & Qt.KeyboardModifier.AltModifier)
            self.key_ended.emit(key != Qt.Key.Key_Escape, alt)
        else:
            super().keyPressEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if self.moving:
            self.moving = False
            self.key_ended.emit(False, False)
        self.update()

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        painter = QPainter(self)
        painter.setFont(look.font("small_bold" if self.bold else "small"))
        painter.setPen(look.color("text" if self.bold else "text_2"))
        painter.drawText(
            self.rect().adjusted(look.px(5), 0, 0, 0),
            int(Qt.AlignmentFlag.AlignVCenter),
            self.text,
        )
        if self.hasFocus():
            painter.setPen(QPen(look.color("focus"), 2))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 2, -1, -2), 4, 4)


class LineStair(QWidget):
    """The stair of one line: run ones filled over their plan, others hollow."""

    def __init__(self) -> None:
        super().__init__()
        self._run: Five = ZERO
        self._plan: Five = ZERO
        self._full = 7200.0
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)

    def set(self, run: Five, plan: Five, full: float) -> None:
        """Show what was run and what was planned; ``full`` seconds fill the width."""
        self._run, self._plan, self._full = run, plan, max(full, 1.0)
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(theme.current().px(150), theme.current().px(26))

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        painter = QPainter(self)
        hour = (self.width() - 10) * 3600 / self._full
        base = self.height() / 2 + look.px(8)
        tall = stairs.heights((7, 11, 15), look)
        plan = sum(self._plan[:3]) + self._plan[4]
        if sum(self._run[:3]) + self._run[4] > 0:
            stairs.paint_stair(painter, 1, base, hour, self._run, tall, look)
            if plan:
                paint_plan_rule(painter, 1, base, plan * hour / 3600.0, look)
        elif plan:
            paint_hollow(painter, 1, base, hour, self._plan, tall, look, "text_2")
