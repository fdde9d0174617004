"""Judging anew behind the open window: begun when needed, told in the foot, stopped by hand."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QHBoxLayout, QWidget

from tercet.language import mark, several, tr
from tercet.library import judging_anew
from tercet.ui import words
from tercet.ui.jobs import Answers, Job
from tercet.ui.widgets import Label, button

if TYPE_CHECKING:
    from tercet.domain import Changes
    from tercet.library.importing import Progress
    from tercet.library.library import Library
    from tercet.ui.window import MainWindow


class Rejudging(QObject):
    """Waits while an import runs, and goes on at the next start where it was stopped."""

    def __init__(self, window: MainWindow, library: Library) -> None:
        super().__init__(window)
        self._window, self._library = window, library
        self._answers = Answers(self)
        self._job: Job | None = None
        self._left = self._stopped = False
        self.part = part = QWidget()
        line = QHBoxLayout(part)
        line.setContentsMargins(0, 0, 0, 0)
        self.told = Label("", "small", "text_2")
        self.stop = button(tr("Stop"))
        self.stop.setProperty("flat", True)
        self.stop.setAccessibleDescription(
            tr("Stops judging runs anew; it goes on at the next start")
        )
        self.stop.clicked.connect(self._stop)
        line.addWidget(self.told)
        line.addWidget(self.stop)
        part.hide()
        window.foot.hold(part)
        window.imports.begun.connect(self._pause)
        window.imports.ended.connect(lambda _: self._look())
        window.imports.failed.connect(lambda _: self._look())
        window.acts.changed.connect(self._changed)
        window.closed.connect(self._close)
        self._look()

    @property
    def running(self) -> bool:
        """Whether runs are being judged anew."""
        return self._job is not None

    def _look(self) -> None:
        """See whether an older method has judged some runs, or thresholds not of their day."""
        self._answers.when(self._library.submit(judging_anew.waiting), self._begin)

    def _changed(self, changes: Changes) -> None:
        if changes.thresholds:
            self._look()

    def _begin(self, count: int) -> None:
        if not count or self._left or self._stopped or self._job or self._window.imports.running:
            return
        library = self._library
        job = self._job = Job(lambda tell, stop: judging_anew.judge_anew(library, tell, stop), self)
        job.progressed.connect(self._progress)
        job.finished.connect(self._ended)
        job.failed.connect(lambda _: self._ended(0))
        self._tell(
            several(
                count,
                mark("1 run is judged anew"),
                mark("{n} runs are judged anew"),
            )
        )
        self.stop.show()
        job.start()

    def _progress(self, now: Progress) -> None:
        if self._stopped:
            return  # told before the stop, heard after it
        self._tell(
            tr(
                "Runs judged anew: {n} of {whole}",
                n=words.number(now.done),
                whole=words.number(now.total),
            )
        )

    def _tell(self, text: str) -> None:
        self.told.setText(text)
        self.part.show()

    def _stop(self) -> None:
        self._stopped = True
        self._pause()
        self.stop.hide()
        self._tell(tr("The rest is judged anew at the next start"))

    def _pause(self) -> None:
        if self._job is not None:
            self._job.stop()

    def _ended(self, count: int) -> None:
        job, self._job = self._job, None
        if job is not None:
            job.wait()
            job.deleteLater()
        if self._left:
            return
        if not self._stopped:
            self.part.hide()
        if count:
            self._window.refresh()

    def _close(self) -> None:
        self._left = True
        self._pause()
        if self._job is not None:
            self._job.wait()
