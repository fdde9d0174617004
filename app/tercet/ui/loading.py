"""Loads behind the first picture what it did not need: heavy modules, in a thread of its own."""

from __future__ import annotations

from collections.abc import Sequence
from importlib import import_module
from threading import Thread

from PySide6.QtCore import QObject, Qt, Signal

#: In the order of their use; each brings the ones below it with it.
HEAVY = (
    "numpy",
    "tercet.library.stored",
    "tercet.library.trace",
    "pyqtgraph",
    "tercet.ui.buildup_pane",
    "tercet.ui.session_card",
    "tercet.ui.recordings_pane",
    "tercet.ui.session_flow",
    "tercet.ui.session_page",
    "tercet.ui.rejudging",
)


class Loading(QObject):
    """Imports modules in a thread, so that the window answers meanwhile."""

    done = Signal()
    _ended = Signal(object)

    def __init__(self, parent: QObject, names: Sequence[str] = HEAVY) -> None:
        super().__init__(parent)
        self._names = names
        self._ended.connect(self._tell, Qt.ConnectionType.QueuedConnection)
        self._thread = Thread(target=self._run, name="tercet-loading", daemon=True)

    def start(self) -> None:
        """Begin; ``done`` comes in the GUI thread."""
        self._thread.start()

    @property
    def started(self) -> bool:
        """Whether loading has begun."""
        return self._thread.ident is not None

    def wait(self) -> None:
        """Wait for the thread to end, if it was started."""
        if self._thread.is_alive():
            self._thread.join()

    def _run(self) -> None:
        try:
            for name in self._names:
                import_module(name)
        except Exception as error:  # raised again where it is seen
            self._ended.emit(error)
        else:
            self._ended.emit(None)

    def _tell(self, error: Exception | None) -> None:
        if error is not None:
            raise error
        self.done.emit()
