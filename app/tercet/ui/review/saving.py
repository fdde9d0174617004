"""Saves a review: asks where, writes in a thread of its own, tells how far it is, can stop."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from threading import Event
from typing import Any

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QObject, Signal
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QFileDialog, QWidget

from tercet.language import tr
from tercet.library.review import tables
from tercet.library.review.content import Page, Review
from tercet.ui.jobs import Job
from tercet.ui.review import frame
from tercet.ui.review.board import HEIGHT, WIDTH
from tercet.ui.review.looks import Look, look
from tercet.ui.review.writing import Stopped, title_of

#: A picture has so many pixels for one of the page.
PICTURE_SCALE = 2.0


def write_pdf(review: Review, target: Path, made: Look, size: str, tell: Any, stop: Event) -> Path:
    """Write the PDF; what stood there before stays until it is whole."""
    from tercet.ui.review import paper

    data = paper.pdf(review, made, size, lambda k, n: tell((k, n)), stop)
    tables.write_whole(target, data)
    return target


def write_html(review: Review, target: Path, made: Look, tell: Any, stop: Event) -> Path:
    """Write the HTML file."""
    from tercet.ui.review import web

    tables.write_whole(target, web.html(review, made, lambda k, n: tell((k, n)), stop))
    return target


def write_picture(review: Review, page: Page, target: Path, made: Look) -> Path:
    """Write one page as PNG or SVG, by the name's ending."""
    foot = frame.foot_of(review, page)
    if target.suffix.lower() == ".svg":
        from tercet.ui.review import web

        tables.write_whole(target, web.svg(page, made, foot).encode("utf-8"))
        return target
    size = (WIDTH * PICTURE_SCALE, HEIGHT * PICTURE_SCALE)
    image = QImage(round(size[0]), round(size[1]), QImage.Format.Format_RGB32)
    painter = QPainter(image)
    frame.paint(painter, page, made, *size, foot)
    painter.end()
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "PNG")  # type: ignore[call-overload]  # takes text, though typed as bytes
    tables.write_whole(target, bytes(data.data()))
    return target


class Saving(QObject):
    """One file at a time; ``ended`` says in words what became of it."""

    begun = Signal(str)
    progressed = Signal(int, int)
    ended = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._window = parent
        self._job: Job | None = None

    @property
    def running(self) -> bool:
        """Whether something is being written."""
        return self._job is not None

    def stop(self) -> None:
        """Stop; nothing is left of what was begun."""
        if self._job is not None:
            self._job.stop()

    def close(self) -> None:
        """Stop and wait, for the window closes."""
        if self._job is not None:
            self._job.stop()
            self._job.wait()

    def pdf(self, review: Review, ink: bool, size: str, target: Path | None = None) -> None:
        """Save as PDF, light or in black ink whatever the screen uses."""
        made = look("ink" if ink else "light", paper=True)
        place = target or self._ask(review, "PDF", "pdf")
        if place is not None:
            self._start(place, lambda tell, stop: write_pdf(review, place, made, size, tell, stop))

    def html(self, review: Review, made: Look, target: Path | None = None) -> None:
        """Save as one HTML file."""
        place = target or self._ask(review, "HTML", "html")
        if place is not None:
            self._start(place, lambda tell, stop: write_html(review, place, made, tell, stop))

    def csv(self, review: Review, target: Path | None = None) -> None:
        """Save every table into a new folder inside the one chosen."""
        place = target
        if place is None:
            asked = QFileDialog.getExistingDirectory(
                self._window, tr("Where to put the folder of tables")
            )
            place = Path(asked) if asked else None
        if place is not None:
            folder = place
            self._start(folder, lambda _tell, _stop: tables.write_tables(review, folder)[0].parent)

    def picture(self, review: Review, page: Page, made: Look, target: Path | None = None) -> None:
        """Save one page as PNG or SVG."""
        place = target
        if place is None:
            name = tables.file_name(1, page, "png").partition("-")[2]
            asked, kind = QFileDialog.getSaveFileName(
                self._window, tr("Save this page"), name, "PNG (*.png);;SVG (*.svg)"
            )
            if not asked:
                return
            kinds = ("svg", "png") if "svg" in kind else ("png", "svg")
            place = tables.with_ending(Path(asked), kinds)
        to = place
        self._start(to, lambda _tell, _stop: write_picture(review, page, to, made))

    def _ask(self, review: Review, kind: str, ending: str) -> Path | None:
        name = f"{tables.plain_name(title_of(review))}.{ending}"
        asked, _ = QFileDialog.getSaveFileName(
            self._window, tr("Save as {kind}", kind=kind), name, f"{kind} (*.{ending})"
        )
        return tables.with_ending(Path(asked), (ending,)) if asked else None

    def _start(self, place: Path, call: Callable[[Any, Event], Path]) -> None:
        if self._job is not None:
            return

        def written(tell: Any, stop: Event) -> Path | None:
            try:
                return call(tell, stop)
            except Stopped:
                return None

        self._job = Job(written, self)
        self._job.progressed.connect(lambda done: self.progressed.emit(*done))
        self._job.finished.connect(self._finished)
        self._job.failed.connect(self._failed)
        self.begun.emit(place.name)
        self._job.start()

    def _finished(self, place: Path | None) -> None:
        self._job = None
        if place is None:
            self.ended.emit(tr("Stopped. Nothing was written."))
        else:
            self.ended.emit(tr("Saved: {file}. Places are left out.", file=place.name))

    def _failed(self, error: Exception) -> None:
        self._job = None
        if isinstance(error, OSError):
            self.ended.emit(
                tr(
                    "Not saved: {why}. Choose another folder, or make room on the disk.",
                    why=error.strerror,
                )
            )
        else:
            self.ended.emit(tr("Not saved: {why}", why=error))
