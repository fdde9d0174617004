"""The bar that says what was done and offers to undo it; it never takes the focus."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QTimer, Signal
from PySide6.QtGui import QAccessible, QAccessibleEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QWidget

from tercet.ui.widgets import Label, button

#: How long it stays, longer while pointed at. [ms]
STAYS_MS = 10_000


class UndoBar(QFrame):
    """Lies over the lower left corner of its parent."""

    undo_asked = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setProperty("raised", True)
        line = QHBoxLayout(self)
        line.setContentsMargins(14, 4, 8, 4)
        self.words = Label("", "body")
        self.undo = button("Undo")
        self.undo.clicked.connect(self.undo_asked)
        self.keys = Label("Ctrl+Z", "small", "text_2")
        line.addWidget(self.words)
        line.addWidget(self.undo)
        line.addWidget(self.keys)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(STAYS_MS)
        self._timer.timeout.connect(self._leave)
        parent.installEventFilter(self)
        self.hide()

    def say(self, done: str) -> None:
        """Say what was done."""
        self._show(done, undo=True)

    def complain(self, problem: str) -> None:
        """Say what could not be done; nothing was changed."""
        self._show(problem, undo=False)

    def _show(self, text: str, *, undo: bool) -> None:
        self.words.setText(text)
        self.undo.setVisible(undo)
        self.keys.setVisible(undo)
        self.setAccessibleName(text)
        self.show()
        self._place()
        self.raise_()
        self._timer.start()
        QAccessible.updateAccessibility(QAccessibleEvent(self, QAccessible.Event.Alert))

    def _leave(self) -> None:
        if self.underMouse() or self.undo.hasFocus():
            self._timer.start()
        else:
            self.hide()

    def _place(self) -> None:
        parent = self.parentWidget()
        if parent is None:
            return
        self.adjustSize()
        self.setFixedWidth(min(self.sizeHint().width(), parent.width() - 48))
        self.move(24, parent.height() - self.height() - 36)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow the parent's size."""
        if event.type() == QEvent.Type.Resize and self.isVisible():
            self._place()
        return False

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stay in the corner."""
        super().resizeEvent(event)
        parent = self.parentWidget()
        if parent is not None:
            self.move(24, parent.height() - self.height() - 36)
