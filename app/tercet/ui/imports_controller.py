"""Files on their way in: chosen, pasted or dropped, one import at a time."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from threading import Event
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QMimeData, QObject, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog, QWidget

from tercet.language import mark, several, tr
from tercet.library.library import Library
from tercet.ui.jobs import Job

if TYPE_CHECKING:
    from tercet.library.importing import Report

READABLE = "*.fit *.tcx *.gpx *.csv *.gz *.zip *.txt *.toml"
#: Names that a recording may end in; others are named before they are let go.
ENDINGS = (".fit", ".tcx", ".gpx", ".csv", ".tsv", ".gz", ".zip", ".toml", ".txt")


@dataclass(frozen=True)
class Hover:
    """What a drop would add: files, folders not counted yet, and names that are no recording's."""

    files: int
    folders: int = 0
    odd: tuple[str, ...] = ()

    @property
    def words(self) -> str:
        """One line that says it."""
        if not self.folders:
            return several(
                self.files, mark("{n} file would be added"), mark("{n} files would be added")
            )
        if not self.files:
            return several(
                self.folders, mark("a folder would be added"), mark("{n} folders would be added")
            )
        return several(
            self.files,
            mark("{n} file and {folders} would be added"),
            mark("{n} files and {folders} would be added"),
            folders=several(self.folders, mark("a folder"), mark("{n} folders")),
        )


class Imports(QObject):
    """Takes files in; while an import runs, or before the window is ready, more of them wait."""

    begun = Signal()
    progressed = Signal(object)  # Progress
    ended = Signal(object)  # Report
    failed = Signal(str)
    hovered = Signal(object)  # Hover, or None when the files went away

    def __init__(self, library: Library, window: QWidget) -> None:
        super().__init__(window)
        self._library, self._window = library, window
        self._job: Job | None = None
        self._counts: list[Job] = []
        self._hovers = 0
        self._waiting: list[Path] = []
        self._ready = False

    @property
    def library(self) -> Library:
        """Where files are taken in."""
        return self._library

    @property
    def running(self) -> bool:
        """Whether an import runs."""
        return self._job is not None

    def set_ready(self) -> None:
        """The window can show imports now: start with what waits."""
        self._ready = True
        self._next()

    def choose_files(self) -> None:
        """Ask for files and take them in."""
        recordings, all_files = tr("Recordings"), tr("All files")
        names, _ = QFileDialog.getOpenFileNames(
            self._window,
            tr("Choose recordings"),
            "",
            f"{recordings} ({READABLE});;{all_files} (*)",
        )
        self.take_in([Path(name) for name in names])

    def choose_folder(self) -> None:
        """Ask for a folder and take in what is below it."""
        name = QFileDialog.getExistingDirectory(self._window, tr("Choose a folder of recordings"))
        self.take_in([Path(name)] if name else [])

    def paste(self) -> bool:
        """Take in files copied in a file manager; gives whether there were any."""
        files = local_files(QGuiApplication.clipboard().mimeData())
        self.take_in(files)
        return bool(files)

    def take_in(self, paths: Sequence[Path]) -> None:
        """Take in files and folders; while an import runs they wait for its end."""
        if not paths:
            return
        if not self._ready or self._job is not None:
            self._waiting += paths
            return

        def call(tell: Callable[[Any], None], stop: Event) -> Report:
            return self._library.take_in(list(paths), tell, stop)

        self._job = Job(call, self)
        self._job.progressed.connect(self.progressed)
        self._job.finished.connect(self._finished)
        self._job.failed.connect(self._failed)
        self.begun.emit()
        self._job.start()

    def stop(self) -> None:
        """Stop the import; what was read stays."""
        if self._job is not None:
            self._job.stop()

    def close(self) -> None:
        """Stop what runs and wait for it."""
        self._ready = False
        self.stop()
        for job in (*self._counts, *([self._job] if self._job else [])):
            job.wait()

    def _finished(self, report: Report) -> None:
        self._end_job()
        self.ended.emit(report)
        self._next()

    def _failed(self, error: Exception) -> None:
        self._end_job()
        self.failed.emit(tr("The import ended early: {error}", error=error))
        self._next()

    def _end_job(self) -> None:
        job, self._job = self._job, None
        if job is not None:
            job.wait()
            job.deleteLater()

    def _next(self) -> None:
        waiting, self._waiting = self._waiting, []
        self.take_in(waiting)

    # Files over the window ---------------------------------------------------------------

    def hover(self, files: Sequence[Path]) -> None:
        """Say what a drop would add; folders are counted aside, for they may be large."""
        self._hovers += 1
        folders = [place for place in files if place.is_dir()]
        single = [place for place in files if place not in folders]
        odd = tuple(p.name for p in single if not p.name.lower().endswith(ENDINGS))[:3]
        self.hovered.emit(Hover(len(single), len(folders), odd))
        if folders:
            self._count(list(files), odd, self._hovers)

    def hover_ended(self) -> None:
        """The files went away or were let go."""
        self._hovers += 1
        self.hovered.emit(None)

    def _count(self, files: list[Path], odd: tuple[str, ...], number: int) -> None:
        def call(_tell: Callable[[Any], None], _stop: Event) -> int:
            from tercet.library.sources import find_files

            return len(find_files(files))

        job = Job(call, self)

        def done(found: object) -> None:
            self._counts.remove(job)
            job.deleteLater()
            if number == self._hovers and isinstance(found, int):
                self.hovered.emit(Hover(found, 0, odd))

        self._counts.append(job)
        job.finished.connect(done)
        job.failed.connect(done)
        job.start()


def local_files(data: QMimeData | None) -> list[Path]:
    """Files and folders among what is dragged or copied; None is a clipboard without anything."""
    urls = data.urls() if data is not None else []
    return [Path(url.toLocalFile()) for url in urls if url.isLocalFile()]
