"""Undo's and Redo's keys in a field: its own typing first, then what was done to the store."""

from __future__ import annotations

import shiboken6
from PySide6.QtCore import QEvent, QObject
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget


class UndoKeys(QObject):
    """Lets the keys go to the window's actions where the line with the focus has nothing to undo.

    A line edit keeps these keys to itself at all times, so that after Enter in a field nothing
    could be taken back by them until the focus was elsewhere.
    """

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        self._watched: QLineEdit | None = None
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        app.focusChanged.connect(self._focus_changed)

    def _focus_changed(self, _old: QWidget | None, new: QWidget | None) -> None:
        watched, self._watched = self._watched, None
        if watched is not None and shiboken6.isValid(watched):
            watched.removeEventFilter(self)
        if isinstance(new, QLineEdit) and new.window() is self._window:
            self._watched = new
            new.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Leave a key to the window that the line could do nothing with."""
        if event.type() != QEvent.Type.ShortcutOverride or not isinstance(watched, QLineEdit):
            return False
        assert isinstance(event, QKeyEvent)
        standard = QKeySequence.StandardKey
        if (event.matches(standard.Undo) and not watched.isUndoAvailable()) or (
            event.matches(standard.Redo) and not watched.isRedoAvailable()
        ):
            event.ignore()
            return True
        return False
