"""What hands do, in tests: dropping files on a window, pressing keys in it."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QEvent, QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QWidget

from tercet.ui.window import MainWindow


def drop(window: MainWindow, *paths: Path) -> None:
    """Drag files over the window and let them go."""
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    enter = QDragEnterEvent(
        QPoint(300, 300),
        Qt.DropAction.CopyAction,
        data,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )
    QApplication.sendEvent(window, enter)
    assert enter.isAccepted()
    let_go = QDropEvent(
        QPointF(300, 300),
        Qt.DropAction.CopyAction,
        data,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
        QEvent.Type.Drop,
    )
    QApplication.sendEvent(window, let_go)
    assert let_go.isAccepted()


def by_key(qtbot, window: QWidget, key: Qt.Key) -> None:
    """Press a key with Ctrl in the active window; keys of menus work in no other."""
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow, timeout=5_000)
    qtbot.keyClick(window, key, Qt.KeyboardModifier.ControlModifier)
