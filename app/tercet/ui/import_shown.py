"""What the window shows of an import: its pane, its progress, its end, and files that hover."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from tercet.language import tr
from tercet.library import intake
from tercet.ui import theme
from tercet.ui.jobs import Answers
from tercet.ui.watched import Watched

if TYPE_CHECKING:
    from tercet.library.importing import Progress, Report
    from tercet.ui.imports_controller import Hover
    from tercet.ui.window import MainWindow

#: A running import shows its runs at most this often. [ms]
REFRESH_MS = 400


class ImportShown(QObject):
    """Stands between the imports and a window in which all is loaded."""

    ended = Signal(object)  # Report

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window, self._imports = window, window.imports
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(REFRESH_MS)
        self._timer.timeout.connect(window.refresh)
        imports, recordings = window.imports, window.season_page.recordings
        imports.begun.connect(self._begun)
        imports.progressed.connect(self._progress)
        imports.ended.connect(self._ended)
        imports.failed.connect(self._failed)
        imports.hovered.connect(self._hovered)
        recordings.choose_asked.connect(imports.choose_files)
        recordings.folder_asked.connect(imports.choose_folder)
        recordings.close_asked.connect(lambda: window.show_recordings(False))
        recordings.stop_asked.connect(self._stop)
        recordings.columns_asked.connect(window.acts.name_columns)
        self._answers = Answers(self)
        self._answers.when(imports.library.submit(intake.last_import), recordings.show_last)
        self.watched = Watched(imports, window)
        self.watched.named.connect(recordings.set_watched)
        recordings.watch_asked.connect(self.watched.choose)
        recordings.watch_ended.connect(lambda: self.watched.set_folder(""))
        recordings.start_asked.connect(window.acts.tell_start)

    def close(self) -> None:
        """Show nothing more."""
        self._timer.stop()
        self.watched.close()

    def _stop(self) -> None:
        self._imports.stop()
        self._window.season_page.recordings.stop.setEnabled(False)

    def _begun(self) -> None:
        self._window.show_recordings(True)
        self._window.season_page.recordings.begin()
        self._window.foot.show_import("", 0, running=True)

    def _progress(self, now: Progress) -> None:
        self._window.season_page.recordings.progress(now)
        if not self._timer.isActive():
            self._timer.start()

    def _ended(self, report: Report) -> None:
        self._window.season_page.recordings.end(report)
        if report.changes.step:
            self._window.undo_bar.say(tr("Added: {what}", what=report.words))
        self._window.refresh()
        self.ended.emit(report)

    def _failed(self, problem: str) -> None:
        self._window.season_page.recordings.fail(problem)
        self._window.refresh()

    def _hovered(self, hover: Hover | None) -> None:
        if self._window.beginning:
            self._window.empty.hover(hover)
        self._window.season_page.recordings.hover(hover)
        ring = theme.current().hex("focus")
        self._window.setStyleSheet(
            f"MainWindow {{ border: 2px solid {ring}; }}" if hover is not None else ""
        )
