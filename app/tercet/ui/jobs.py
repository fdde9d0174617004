"""Work off the GUI thread: short questions to the store, and long jobs with progress and stop."""

from __future__ import annotations

import logging
import time
from collections.abc import Callable
from concurrent.futures import Future
from threading import Event, Thread
from typing import Any

from PySide6.QtCore import QObject, Qt, Signal

#: Progress reaches the screen at most this often. [s]
PROGRESS_EVERY_S = 0.1

log = logging.getLogger(__name__)


class Answers(QObject):
    """Brings results of futures to the GUI thread, in the order in which they ended."""

    failed = Signal(object)
    _ended = Signal(object, object, object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._waiting = 0
        self._ended.connect(self._deliver, Qt.ConnectionType.QueuedConnection)

    @property
    def waiting(self) -> int:
        """How many questions are not answered yet."""
        return self._waiting

    def when(
        self,
        future: Future[Any],
        then: Callable[[Any], None],
        failed: Callable[[BaseException], None] | None = None,
    ) -> None:
        """Call ``then`` with the result in the GUI thread; an exception goes to ``failed``."""
        self._waiting += 1
        future.add_done_callback(lambda done: self._ended.emit(done, then, failed))

    def _deliver(
        self,
        future: Future[Any],
        then: Callable[[Any], None],
        failed: Callable[[BaseException], None] | None,
    ) -> None:
        self._waiting -= 1
        if future.cancelled():
            return
        error = future.exception()
        if error is not None:
            log.error("a call to the store failed", exc_info=error)
            if failed is not None:
                failed(error)
            self.failed.emit(error)
            return
        then(future.result())


class Job(QObject):
    """One long call in a thread of its own.

    The call gets a function to tell progress and an Event that is set when it should stop.
    """

    progressed = Signal(object)
    finished = Signal(object)
    failed = Signal(object)
    _ended = Signal(object, object)

    def __init__(
        self, call: Callable[[Callable[[Any], None], Event], Any], parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self._call = call
        self._stop = Event()
        self._told = 0.0
        self._ended.connect(self._deliver, Qt.ConnectionType.QueuedConnection)
        self._thread = Thread(target=self._run, name="tercet-job", daemon=True)

    def start(self) -> None:
        """Start; signals come in the GUI thread."""
        self._thread.start()

    def stop(self) -> None:
        """Ask the call to stop; ``finished`` still comes with what was done."""
        self._stop.set()

    def wait(self) -> None:
        """Wait for the thread to end."""
        self._thread.join()

    @property
    def running(self) -> bool:
        """Whether the thread still runs."""
        return self._thread.is_alive()

    def _run(self) -> None:
        try:
            self._ended.emit(self._call(self._tell, self._stop), None)
        except Exception as error:  # handed to the GUI thread, shown and logged there
            self._ended.emit(None, error)

    def _tell(self, progress: Any) -> None:
        now = time.monotonic()
        if now - self._told >= PROGRESS_EVERY_S:
            self._told = now
            self.progressed.emit(progress)

    def _deliver(self, result: Any, error: Exception | None) -> None:
        if error is not None:
            log.error("a job failed", exc_info=error)
            self.failed.emit(error)
        else:
            self.finished.emit(result)
