"""What the room sees: one page over the whole screen, or a run, or nothing."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QPointF, Qt, QTimer, Signal
from PySide6.QtGui import QCursor, QKeyEvent, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from tercet.language import tr
from tercet.library.review.content import Page
from tercet.ui.review.frame import Foot
from tercet.ui.review.looks import Look
from tercet.ui.review.page_view import PageView, paint_pointer

#: The pointer hides after so long. [ms]
POINTER_MS = 2_000
#: How large it is. [px]
POINTER_PX = 44.0
ON = (Qt.Key.Key_Right, Qt.Key.Key_Space, Qt.Key.Key_PageDown, Qt.Key.Key_Down)
BACK = (Qt.Key.Key_Left, Qt.Key.Key_PageUp, Qt.Key.Key_Up, Qt.Key.Key_Backspace)
ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
#: Stands for the last page, however many there are.
LAST = 10_000


class Keys(QObject):
    """Keys of presenting, alike on the wall and on the presenter's screen."""

    turned = Signal(int)
    jumped = Signal(int)
    blanked = Signal()
    ended = Signal()
    run_asked = Signal()

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._digits = ""

    def press(self, event: QKeyEvent) -> bool:
        """Take a key; gives whether it was one of ours."""
        key = Qt.Key(event.key())
        text = event.text()
        if text.isdigit() and len(text) == 1:
            self._digits += text
            return True
        digits, self._digits = self._digits, ""
        if key in ENTER and digits:
            self.jumped.emit(int(digits) - 1)
        elif key in ON:
            self.turned.emit(1)
        elif key in BACK:
            self.turned.emit(-1)
        elif key == Qt.Key.Key_Home:
            self.jumped.emit(0)
        elif key == Qt.Key.Key_End:
            self.jumped.emit(LAST)
        elif key in (Qt.Key.Key_B, Qt.Key.Key_Period):
            self.blanked.emit()
        elif key == Qt.Key.Key_Escape:
            self.ended.emit()
        elif key in (Qt.Key.Key_O, *ENTER):
            self.run_asked.emit()
        else:
            # Remotes send F5 to begin, and some again and again.
            return key == Qt.Key.Key_F5
        return True


def pointer(ratio: float) -> QCursor:
    """A pointer that is seen from the back of a room."""
    made = QPixmap(round(POINTER_PX * ratio), round(POINTER_PX * ratio))
    made.setDevicePixelRatio(ratio)
    made.fill(Qt.GlobalColor.transparent)
    painter = QPainter(made)
    paint_pointer(painter, QPointF(POINTER_PX / 2.0, POINTER_PX / 2.0), POINTER_PX / 2.0 - 3.0)
    painter.end()
    return QCursor(made, round(POINTER_PX / 2.0), round(POINTER_PX / 2.0))


class Blank(QWidget):
    """A dark screen."""

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(tr("The screen is blank; B brings the page back"))

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), Qt.GlobalColor.black)


class Wall(QWidget):
    """Full screen; what was pressed or clicked is told by signals."""

    turned = Signal(int)
    jumped = Signal(int)
    ended = Signal()
    row_asked = Signal(int)
    run_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setWindowTitle(tr("Review"))
        self.view = PageView(fills=True)
        self.view.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.view.arrow = pointer(self.devicePixelRatio())
        self.view.row_asked.connect(self.row_asked)
        self._blank = Blank()
        self._run: QWidget | None = None
        self._before: QWidget = self.view
        self._stack = QStackedWidget()
        self._stack.addWidget(self.view)
        self._stack.addWidget(self._blank)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._stack)
        self.keys = Keys(self)
        self.keys.turned.connect(self.turn_by)
        self.keys.jumped.connect(self.jumped)
        self.keys.blanked.connect(self.toggle_blank)
        self.keys.ended.connect(self.ended)
        self.keys.run_asked.connect(self.run_asked)
        self._pointer = QTimer(self)
        self._pointer.setSingleShot(True)
        self._pointer.setInterval(POINTER_MS)
        self._pointer.timeout.connect(self._hide_pointer)
        self.setMouseTracking(True)
        self.view.installEventFilter(self)
        self._pointer.start()

    @property
    def blank(self) -> bool:
        """Whether the room sees nothing."""
        return self._stack.currentWidget() is self._blank

    @property
    def on_run(self) -> bool:
        """Whether the room sees a run."""
        return self._run is not None and self._stack.currentWidget() is self._run

    def show_page(self, page: Page, look: Look, foot: Foot) -> None:
        """Put a page up, at once."""
        self.view.show_page(page, look, foot)
        self.setAccessibleName(
            tr(
                "Page {n} of {count}: {title}. {line}",
                n=foot.number,
                count=foot.count,
                title=page.title,
                line=page.line,
            )
        )

    def toggle_blank(self) -> None:
        """Blank the screen, or bring back what was there."""
        if self.blank:
            self._stack.setCurrentWidget(self._before)
        else:
            self._before = self._stack.currentWidget() or self.view
            self._stack.setCurrentWidget(self._blank)

    def add_run(self, run: QWidget) -> None:
        """Take the view of runs."""
        self._run = run
        self._stack.addWidget(run)

    def show_run(self, shown: bool) -> None:
        """Show the run, or the page again."""
        if shown and self._run is not None:
            self._stack.setCurrentWidget(self._run)
            self._run.setFocus(Qt.FocusReason.OtherFocusReason)
            self.unsetCursor()
        else:
            self._stack.setCurrentWidget(self.view)
            self.setFocus(Qt.FocusReason.OtherFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not self.keys.press(event):
            super().keyPressEvent(event)

    def turn_by(self, by: int) -> None:
        """Turn a page; from a blank screen or a run come back to the page first."""
        if self.blank:
            self.toggle_blank()
        elif self.on_run:
            self.ended.emit()
        else:
            self.turned.emit(by)

    def _hide_pointer(self) -> None:
        if not self.on_run:
            self.view.setCursor(Qt.CursorShape.BlankCursor)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if watched is self.view and event.type() == QEvent.Type.MouseMove:
            if self.view.cursor().shape() == Qt.CursorShape.BlankCursor:
                self.view.setCursor(self.view.arrow)
            self._pointer.start()
        return super().eventFilter(watched, event)
