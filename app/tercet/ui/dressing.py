"""Puts another style sheet on a window part by part, so that no turn of the event loop is long."""

from __future__ import annotations

from collections.abc import Sequence

import shiboken6
from PySide6.QtCore import QChildEvent, QEvent, QObject, Qt, QTimer
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QStackedWidget, QWidget

from tercet.ui import theme
from tercet.ui.widgets import Label

#: What is in view has been laid out and painted after so long. [ms]
SETTLED_MS = 200
#: The name that Qt gives what a scroll area scrolls.
VIEWPORT = "qt_scrollarea_viewport"


class Dressing(QObject):
    """What is in view is dressed at once, hidden pages one after the other while nothing else is.

    The program's own style sheet stays as it was when the window was made: changing that goes
    through every widget in one go. The sheet of a part comes before it. Dialogs and pages that
    come later are dressed as they come.
    """

    def __init__(self, window: QWidget, whole: QWidget, pages: QStackedWidget) -> None:
        super().__init__(window)
        self._holders = (window, whole, pages)
        self._sheet = ""  # none of its own yet
        self._waiting: list[QWidget] = []
        self._next = QTimer(self)
        self._next.timeout.connect(self._dress_next)
        for holder in self._holders:
            holder.installEventFilter(self)
        pages.currentChanged.connect(lambda _: self._dress(pages.currentWidget()))
        window.destroyed.connect(lambda: theme.put_off(self))
        theme.changed.connect(self._told)
        theme.dress_in_parts(self)

    @property
    def dressed(self) -> QWidget:
        """The window."""
        return self._holders[0]

    def put_on(self, sheet: str, others: Sequence[QWidget] = ()) -> None:
        """Put a style sheet on all there is and all that comes, and in the end on others."""
        self._sheet = sheet
        self.dressed.setUpdatesEnabled(False)  # not before all are told of the look
        for holder in self._holders:
            holder.setPalette(QPalette())  # the program's, now and not with the next events
        parts = [
            part
            for holder in self._holders
            for part in holder.children()
            if isinstance(part, QWidget) and part not in self._holders
        ]
        # A hidden window, such as a dialog, may be shown before its turn.
        later = [part for part in parts if not (part.isVisible() or part.isWindow())]
        for part in parts:
            if part not in later:
                self._dress(part)
        self._waiting = [*later, *others]
        self._next.start(SETTLED_MS)

    def _told(self, _: theme.Theme) -> None:
        self.dressed.setUpdatesEnabled(True)
        # Fields in view take their font as they are told.
        QTimer.singleShot(0, self, lambda: _write_hints(self.dressed))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Dress what is new: pages before they are seen, dialogs once they are made whole."""
        kind = event.type()
        window, _, pages = self._holders
        if watched is window and kind == QEvent.Type.Close:
            theme.put_off(self)
        elif kind == (QEvent.Type.ChildAdded if watched is pages else QEvent.Type.ChildPolished):
            assert isinstance(event, QChildEvent)
            part = event.child()
            if isinstance(part, QWidget) and part not in self._holders:
                self._dress(part)
        return False

    def _dress(self, part: QWidget | None) -> None:
        if part is None or part.styleSheet() == self._sheet:
            return
        # A sheet puts back the fonts of before it; those set since are this look's. A label
        # takes its own with the sheet.
        chosen = [
            (widget, widget.font())
            for widget in (part, *part.findChildren(QWidget))
            if widget.testAttribute(Qt.WidgetAttribute.WA_SetFont) and not isinstance(widget, Label)
        ]
        part.setStyleSheet(self._sheet)
        for widget, font in chosen:
            if widget.font() != font:
                widget.setFont(font)
        _write_hints(part)

    def _dress_next(self) -> None:
        while self._waiting and not shiboken6.isValid(self._waiting[0]):
            self._waiting.pop(0)
        self._next.setInterval(0)
        if self._waiting:
            self._dress(self._waiting.pop(0))
        else:
            self._next.stop()


def _write_hints(part: QWidget) -> None:
    """Hints in empty fields are painted in the font of what scrolls there: the field's own."""
    for port in part.findChildren(QWidget, VIEWPORT):
        area = port.parentWidget()
        if area is not None and port.font() != area.font():
            port.setFont(area.font())
