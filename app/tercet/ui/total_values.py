"""The row of a total's values, which says on pointing, on focus and on a key how it came about."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import QEvent, QPoint, QRect, QRectF, Qt, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleEvent,
    QEnterEvent,
    QFocusEvent,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QToolTip, QWidget

from tercet.language import tr
from tercet.ui import theme
from tercet.ui.panes import KEYBOARD
from tercet.ui.total_words import Total

#: What was asked for by key stays up so long, unless the focus goes. [ms]
STAYS_MS = 60_000


def say(text: str, at: QPoint, widget: QWidget, stays_ms: int = -1) -> None:
    """Show lines of text in a small window that wraps them."""
    QToolTip.showText(at, wrapped(text), widget, QRect(), stays_ms)


def wrapped(text: str) -> str:
    """Lines as a tool tip that wraps; plain text would run over the screen."""
    return "".join(f"<p>{escape(line)}</p>" for line in text.split("\n"))


class TotalValues(QWidget):
    """Holds the values; ``asked`` wants :meth:`show_why`."""

    asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.why = ""
        self._total: Total | None = None
        self._ring = self._by_key = False
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAccessibleName(tr("Totals, and how they came about"))

    def forget(self, total: Total | None) -> None:
        """Take away what was said, if another total is shown now."""
        if total != self._total:
            self._total = total
            self._tell("")

    def show_why(self, text: str) -> None:
        """Say how the total came about."""
        self._tell(text)
        if self._by_key and self.hasFocus():
            self._by_key = False
            say(text, self.mapToGlobal(self.rect().bottomLeft()), self, STAYS_MS)

    def _tell(self, text: str) -> None:
        if text == self.why:
            return
        self.why = text
        self.setToolTip(wrapped(text) if text else "")
        self.setAccessibleDescription(text.replace("\n", " "))
        QAccessible.updateAccessibility(
            QAccessibleEvent(self, QAccessible.Event.DescriptionChanged)
        )

    def enterEvent(self, event: QEnterEvent) -> None:
        """Have the answer ready when the pointer rests."""
        super().enterEvent(event)
        self.asked.emit()

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self._ring = self._by_key = event.reason() in KEYBOARD
        self.asked.emit()
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self._ring = self._by_key = False
        QToolTip.hideText()
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_W, Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._by_key = True
            self.asked.emit()
        elif event.key() == Qt.Key.Key_Escape and QToolTip.isVisible():
            QToolTip.hideText()
        else:
            super().keyPressEvent(event)

    def event(self, event: QEvent) -> bool:
        """Let no single key act as a shortcut elsewhere while it asks here."""
        if event.type() == QEvent.Type.ShortcutOverride:
            assert isinstance(event, QKeyEvent)
            if event.key() == Qt.Key.Key_W and not event.modifiers():
                event.accept()
                return True
        return super().event(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the ring while the keyboard is here."""
        if not self._ring:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(theme.current().color("focus"), 2))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 5, 5)
