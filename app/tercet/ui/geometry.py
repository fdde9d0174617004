"""Where the window stood the last time, or a place for it on a screen it has not been on."""

from __future__ import annotations

from PySide6.QtCore import QByteArray, QSize
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget

#: The size at first, if the screen has room for it. [px]
FIRST = QSize(1366, 768)
#: Of a small screen this much is left to title bar and panels. [px]
FRAME = QSize(4, 40)
#: So much of the window must lie on one screen to be taken hold of. [px]
LEAST = QSize(160, 80)


def place(window: QWidget, saved: object) -> None:
    """Put a window where it stood; where that screen is gone, on the one it would open on."""
    if isinstance(saved, QByteArray) and window.restoreGeometry(saved):
        frame = window.frameGeometry()
        for screen in QGuiApplication.screens():
            shared = screen.availableGeometry().intersected(frame)
            if shared.width() >= LEAST.width() and shared.height() >= LEAST.height():
                return
        window.move(window.screen().availableGeometry().topLeft())
        return
    window.resize(FIRST.boundedTo(window.screen().availableSize() - FRAME))
