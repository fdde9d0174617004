"""The focus ring round buttons: outside a gap, and only while the keyboard is used."""

from __future__ import annotations

import shiboken6
from PySide6.QtCore import QEvent, QObject, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QApplication, QTabBar, QWidget

from tercet.ui import theme

#: Room between the ring and what it surrounds, and its own width. [px]
GAP, WIDTH = 2, 2
_MOVES = (QEvent.Type.Move, QEvent.Type.Resize, QEvent.Type.Show, QEvent.Type.Hide)


class FocusRing(QWidget):
    """Lies over a window and its dialogs, round the button that has the focus.

    Fields show the focus by their border; the sheet and the charts draw their own.
    """

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._round: QWidget | None = None
        self._watched: list[QWidget] = []
        self.hide()
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        app.focusChanged.connect(self._focus_changed)
        theme.changed.connect(self._look_changed)

    def _look_changed(self) -> None:
        self._place()

    def _focus_changed(self, _old: QWidget | None, new: QWidget | None) -> None:
        for widget in self._watched:
            if shiboken6.isValid(widget):
                widget.removeEventFilter(self)
        self._watched, self._round = [], None
        window = self._window
        if (
            isinstance(new, (QAbstractButton, QTabBar))
            and new.window() is window
            and window.testAttribute(Qt.WidgetAttribute.WA_KeyboardFocusChange)
        ):
            self._round = new
            step: QWidget | None = new
            while step is not None and step is not window:
                step.installEventFilter(self)
                self._watched.append(step)
                step = step.parentWidget()
        self._place()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow what the ring surrounds."""
        if event.type() in _MOVES:
            self._place()
        return False

    def _place(self) -> None:
        """Surround what is in view of the button."""
        widget = self._round
        if widget is not None and not shiboken6.isValid(widget):
            widget = self._round = None
        seen = widget.visibleRegion().boundingRect() if widget is not None else QRect()
        if widget is None or not widget.isVisible() or seen.isEmpty():
            self.hide()
            return
        room = GAP + WIDTH
        corner = widget.mapTo(self._window, seen.topLeft())
        around = QRect(corner, seen.size()).adjusted(-room, -room, room, room)
        self.setGeometry(around & self._window.rect())
        self.show()
        self.raise_()
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the gap and the ring."""
        look = theme.current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        half = WIDTH / 2
        outer = QRectF(self.rect()).adjusted(half, half, -half, -half)
        painter.setPen(QPen(look.color("pane"), GAP))
        painter.drawRoundedRect(outer.adjusted(GAP, GAP, -GAP, -GAP), 5, 5)
        painter.setPen(QPen(look.color("focus"), WIDTH))
        painter.drawRoundedRect(outer, 7, 7)
