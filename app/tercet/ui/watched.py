"""Looks at the watched folder from time to time and takes in what is new there."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from threading import Event
from typing import Any

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from tercet.language import tr
from tercet.library import watching
from tercet.library.watching import Watch
from tercet.ui.imports_controller import Imports
from tercet.ui.jobs import Answers, Job

#: Between two looks; a file that grew between them waits for the next. [ms]
EVERY_MS = 5_000


class Watched(QObject):
    """The folder is read in a thread of its own; nothing is looked at while an import runs."""

    named = Signal(str)  # the watched folder, or nothing

    def __init__(self, imports: Imports, window: QWidget) -> None:
        super().__init__(window)
        self._imports, self._window = imports, window
        self._answers = Answers(self)
        self._watch: Watch | None = None
        self._job: Job | None = None
        self._timer = QTimer(self)
        self._timer.setInterval(EVERY_MS)
        self._timer.timeout.connect(self.look)
        self._begin()

    def choose(self) -> None:
        """Ask which folder to watch."""
        name = QFileDialog.getExistingDirectory(self._window, tr("Watch a folder"))
        if name:
            self.set_folder(name)

    def set_folder(self, name: str) -> None:
        """Watch a folder, or with an empty name none."""
        told = self._imports.library.submit(watching.set_folder, name)
        self._answers.when(told, lambda _: self._begin())

    def _begin(self) -> None:
        self._answers.when(self._imports.library.submit(watching.begin), self._begun)

    def _begun(self, watch: Watch | None) -> None:
        self._watch = watch
        self.named.emit(str(watch.folder) if watch is not None else "")
        if watch is None:
            self._timer.stop()
            return
        self._timer.start()
        self.look()

    def look(self) -> None:
        """Look now, unless a look or an import is under way."""
        watch = self._watch
        if watch is None or self._job is not None or self._imports.running:
            return

        def call(_tell: Callable[[Any], None], _stop: Event) -> list[Path]:
            return watching.look(watch)

        self._job = Job(call, self)
        self._job.finished.connect(self._found)
        self._job.failed.connect(lambda _: self._found([]))
        self._job.start()

    def _found(self, files: list[Path]) -> None:
        job, self._job = self._job, None
        if job is not None:
            job.wait()
            job.deleteLater()
        if files and self._timer.isActive():
            self._imports.take_in(files)

    def close(self) -> None:
        """Look no more."""
        self._timer.stop()
        if self._job is not None:
            self._job.wait()
