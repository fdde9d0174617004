"""One window for one store: a second start hands its files to the first and brings it forward.

It goes through a local socket of this user alone; nothing leaves the computer.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtNetwork import QLocalServer, QLocalSocket
from PySide6.QtWidgets import QWidget

#: How long a second start waits for the first to answer. [ms]
PATIENCE_MS = 3_000


def name_of(folder: Path) -> str:
    """Name of the socket of a store's window."""
    return f"tercet-{hashlib.sha256(str(folder).encode()).hexdigest()[:20]}"


def hand_over(folder: Path, paths: Sequence[Path]) -> bool:
    """Give files to the window that holds the store; False if none answers."""
    socket = QLocalSocket()
    socket.connectToServer(name_of(folder))
    if not socket.waitForConnected(PATIENCE_MS):
        return False
    socket.write(json.dumps([str(path) for path in paths]).encode() + b"\n")
    answered = socket.waitForReadyRead(PATIENCE_MS)
    socket.disconnectFromServer()
    return answered


class Door(QObject):
    """Listens for second starts on one store."""

    asked = Signal(object)  # list[Path]: files to take in, maybe none

    def __init__(self, folder: Path, parent: QObject) -> None:
        super().__init__(parent)
        self._name = name_of(folder)
        self._server = QLocalServer(self)
        self._server.setSocketOptions(QLocalServer.SocketOption.UserAccessOption)
        self._server.newConnection.connect(self._answer)

    def open(self) -> None:
        """Begin to listen; what a crash has left there is cleared away, for we hold the store."""
        QLocalServer.removeServer(self._name)
        self._server.listen(self._name)

    def close(self) -> None:
        """Listen no more."""
        self._server.close()

    def _answer(self) -> None:
        socket = self._server.nextPendingConnection()
        socket.readyRead.connect(lambda: self._read(socket))
        socket.disconnected.connect(socket.deleteLater)

    def _read(self, socket: QLocalSocket) -> None:
        if not socket.canReadLine():
            return
        files: list[str] = []
        with suppress(ValueError, UnicodeDecodeError):
            files = [str(name) for name in json.loads(bytes(socket.readLine().data()).decode())]
        socket.write(b"here\n")
        socket.flush()
        self.asked.emit([Path(name) for name in files])


def bring_forward(window: QWidget) -> None:
    """Bring a window to the front."""
    window.setWindowState(window.windowState() & ~Qt.WindowState.WindowMinimized)
    window.show()
    window.raise_()
    window.activateWindow()
