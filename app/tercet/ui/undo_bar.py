"""The bar that says what was done and offers to undo it; it never takes the focus."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QPoint, QTimer, Signal
from PySide6.QtGui import QAccessible, QAccessibleEvent, QKeySequence
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QWidget

from tercet.language import tr
from tercet.ui import theme
from tercet.ui.widgets import ElidedLabel, Label, button

#: How long it stays, longer while pointed at. [ms]
STAYS_MS = 10_000


class UndoBar(QFrame):
    """Lies over the words at the window's foot, and covers nothing that can be pressed."""

    undo_asked = Signal()
    redo_asked = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setProperty("raised", True)
        self._forward = False
        self._below: QWidget | None = None
        self._covered: QLabel | None = None
        self._line = line = QHBoxLayout(self)
        line.setContentsMargins(14, 0, 8, 0)
        self.words = ElidedLabel("", "body")
        self.undo = button(tr("Undo"))
        self.undo.setProperty("slim", True)
        self.undo.clicked.connect(self._asked)
        self.keys = Label(_keys("Ctrl+Z"), "small", "text_2")
        line.addWidget(self.words, 1)
        line.addWidget(self.undo)
        line.addWidget(self.keys)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(STAYS_MS)
        self._timer.timeout.connect(self._leave)
        parent.installEventFilter(self)
        theme.changed.connect(self._look_changed)
        self.hide()

    def lie_over(self, strip: QWidget, words: QLabel) -> None:
        """Lie over all of these words at the left of a strip, up to what stands beside them."""
        self._below, self._covered = strip, words
        strip.installEventFilter(self)
        words.installEventFilter(self)

    def say(self, done: str) -> None:
        """Say what was done, with a way back."""
        self._forward = False
        self._show(done, tr("Undo"), _keys("Ctrl+Z"))

    def say_undone(self, taken_back: str) -> None:
        """Say what was taken back, with a way forward."""
        self._forward = True
        self._show(taken_back, tr("Redo"), _keys("Ctrl+Y"))

    def complain(self, problem: str) -> None:
        """Say what could not be done; nothing was changed."""
        self._show(problem, "", "")

    def tell(self, done: str) -> None:
        """Say what was done outside the store, where there is nothing to take back."""
        self._show(done, "", "")

    def _show(self, text: str, action: str, keys: str) -> None:
        self.words.setText(text)
        self.undo.setText(action)
        self.keys.setText(keys)
        self.undo.setAccessibleName(f"{action}: {text}")
        for part in (self.undo, self.keys):
            part.setVisible(bool(action))
        self.setAccessibleName(text)
        self._place()
        self.show()
        self.raise_()
        self._timer.start()
        QAccessible.updateAccessibility(QAccessibleEvent(self, QAccessible.Event.Alert))

    def _asked(self) -> None:
        (self.redo_asked if self._forward else self.undo_asked).emit()

    def _leave(self) -> None:
        if self.underMouse() or self.undo.hasFocus():
            self._timer.start()
        else:
            self.hide()

    def _look_changed(self) -> None:
        if self.isVisible():
            self._place()

    def _place(self) -> None:
        parent = self.parentWidget()
        if parent is None:
            return
        height = max(theme.current().px(30), self.undo.minimumSizeHint().height() + 2)
        self._line.activate()
        wanted = self.sizeHint().width() + 8
        strip, covered = self._below, self._covered
        if strip is None or covered is None:
            foot = theme.current().px(44)
            width = min(wanted, parent.width() - 48)
            self.setGeometry(24, parent.height() - height - foot, width, height)
            return
        corner = strip.mapTo(parent, QPoint(0, 0))
        room = covered.geometry().right() - 8
        words = covered.fontMetrics().horizontalAdvance(covered.text())
        # A rest of the words beside it would read as if it went on with what is said here.
        wanted = max(wanted, covered.x() + words + 4)
        # In a narrow window the way back counts for more than the way to the recordings.
        if room < self.minimumSizeHint().width():
            room = strip.width() - 16
        height = min(height, strip.height())
        top = corner.y() + (strip.height() - height) // 2
        self.setGeometry(corner.x() + 8, top, min(wanted, room), height)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow the window's and the strip's size."""
        kinds = QEvent.Type
        moved = (kinds.Resize, kinds.Move, kinds.Show, kinds.Hide, kinds.LayoutRequest)
        if event.type() in moved and self.isVisible():
            self._place()
        return False


def _keys(keys: str) -> str:
    """Keys as the language names them."""
    return QKeySequence(keys).toString(QKeySequence.SequenceFormat.NativeText)
