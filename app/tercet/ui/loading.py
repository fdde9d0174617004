"""Brings behind the first picture what it did not need, so that the window answers meanwhile."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from importlib import import_module
from threading import Event, Thread

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal, SignalInstance
from PySide6.QtWidgets import QWidget

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
#: A window that was not painted for so long is at rest. [ms]
REST_MS = 250
#: Each module waits at most so long for that. [s]
PATIENCE_S = 2.0


class Rest(QObject):
    """Tells threads when a window is at rest: two that work at once get in each other's way."""

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self.reached = Event()
        self._timer = QTimer(self, interval=REST_MS, singleShot=True)
        self._timer.timeout.connect(self.reached.set)
        self._timer.start()
        window.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Begin to wait anew."""
        if event.type() == QEvent.Type.UpdateRequest:
            self.reached.clear()
            self._timer.start()
        return False


class Loading(QObject):
    """Imports modules in a thread, so that the window answers meanwhile.

    With a window to spare, each module waits until that is at rest.
    """

    done = Signal()
    _ended = Signal(object)

    def __init__(
        self, parent: QObject, names: Sequence[str] = HEAVY, *, spared: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._names, self._spared = names, spared
        self._rest: Rest | None = None
        self._left = False
        self._ended.connect(self._tell, Qt.ConnectionType.QueuedConnection)
        self._thread = Thread(target=self._run, name="tercet-loading", daemon=True)

    def start(self) -> None:
        """Begin; ``done`` comes in the GUI thread."""
        if self._spared is not None:
            self._rest = Rest(self._spared)
        self._thread.start()

    @property
    def started(self) -> bool:
        """Whether loading has begun."""
        return self._thread.ident is not None

    def wait(self) -> None:
        """Leave the modules that are still to come, and wait for the thread to end."""
        self._left = True
        if self._rest is not None:
            self._rest.reached.set()
        if self._thread.is_alive():
            self._thread.join()

    def _run(self) -> None:
        try:
            for name in self._names:
                if self._rest is not None:
                    self._rest.reached.wait(PATIENCE_S)
                if self._left:
                    return
                import_module(name)
        except Exception as error:  # raised again where it is seen
            self._ended.emit(error)
        else:
            self._ended.emit(None)

    def _tell(self, error: Exception | None) -> None:
        if self._rest is not None:
            self._rest.deleteLater()
            self._rest = None
        if error is not None:
            raise error
        self.done.emit()


def in_turns(parent: QObject, steps: Iterator[None], end: SignalInstance) -> None:
    """Do what a generator does between two yields in one turn of the event loop each.

    ``end`` is a signal after which no step is taken.
    """
    timer = QTimer(parent, interval=0)

    def step() -> None:
        if next(steps, timer) is timer:
            timer.stop()
            timer.deleteLater()

    timer.timeout.connect(step)
    end.connect(timer.stop)
    timer.start()
