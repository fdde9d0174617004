"""A runner's record out and in: the file chosen, progress with Stop, conflicts put to the user."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from threading import Event
from typing import Any

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QProgressBar, QWidget

from tercet.language import mark, tr
from tercet.library import record, record_merge, without_places
from tercet.library.importing import Progress
from tercet.library.record_report import Conflict, Merged
from tercet.library.review import tables
from tercet.library.without_places import Home
from tercet.store.database import Store
from tercet.ui.conflicts_dialog import ConflictsDialog
from tercet.ui.jobs import Job
from tercet.ui.page import Context
from tercet.ui.places_dialog import NEAR, NONE, WHOLE, PlacesDialog
from tercet.ui.widgets import ElidedLabel, button

KIND = mark("Runner's record (*.zip)")
#: What is said while it runs: at the start, and of so many.
TAKING = (mark("Taking in …"), mark("Taking in {done} of {whole}   {now}"))
WRITING = (mark("Writing …"), mark("Writing {done} of {whole}   {now}"))


class RecordFlow(QObject):
    """Two buttons and a bar that shows what runs or what came of it."""

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self._job: Job | None = None
        self._source = Path()
        self.runner = ""  # whose record it is
        self.take = button(tr("Take in a record…"))
        self.hand = button(tr("Hand over this record…"))
        self.take.clicked.connect(self._choose_source)
        self.hand.clicked.connect(self._ask_what)
        self.what: PlacesDialog | None = None
        self.bar = QWidget()
        line = QHBoxLayout(self.bar)
        line.setContentsMargins(15, 0, 15, 0)
        self.said = ElidedLabel("", "body")
        self.meter = QProgressBar()
        self.meter.setTextVisible(False)
        self.meter.setAccessibleName(tr("How far it is"))
        self.stop = button(tr("Stop"))
        self.stop.clicked.connect(self._stop)
        self.anyway = button(tr("Take it in here"))
        self.anyway.clicked.connect(lambda: self.take_in(self._source, whoever=True))
        self.anyway.hide()
        for part, stretch in ((self.said, 2), (self.meter, 1), (self.stop, 0), (self.anyway, 0)):
            line.addWidget(part, stretch)
        self.bar.hide()
        self.dialog: ConflictsDialog | None = None

    def _choose_source(self) -> None:
        name, _ = QFileDialog.getOpenFileName(
            self.bar.window(), tr("Take in a runner's record"), "", tr(KIND)
        )
        if name:
            self.take_in(Path(name))

    def _ask_what(self) -> None:
        """Ask what is to go out, with the zone round home as it was kept or is proposed."""

        def read(store: Store) -> tuple[Home | None, str]:
            return without_places.home(store), without_places.proposed(store)

        def ask(found: tuple[Home | None, str]) -> None:
            self.what = PlacesDialog(*found, self.bar.window())
            self.what.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
            self.what.chosen.connect(self._choose_target)
            self.what.forgotten.connect(self._forget_home)
            self.what.open()

        self._context.answers.when(self._context.library.submit(read), ask)

    def _forget_home(self) -> None:
        self._context.acts.do(without_places.keep, None)

    def _choose_target(self, way: str, zone: Home | None) -> None:
        titles = {
            NONE: tr("Runs without places"),
            NEAR: tr("Runs without the places near home"),
            WHOLE: tr("This runner's whole record, with the places in its recordings"),
        }
        name, _ = QFileDialog.getSaveFileName(
            self.bar.window(), titles[way], self.file_name(), tr(KIND)
        )
        if not name:
            return
        target = tables.with_ending(Path(name), ("zip",))
        if way == WHOLE:
            self.hand_over(target)
        else:
            self.hand_runs(target, zone)

    def hand_runs(self, target: Path, zone: Home | None) -> None:
        """Write the runs without places, or without those in a zone, which is kept."""
        library = self._context.library

        def call(progress: Any, stop: Event) -> bool:
            if zone is not None and zone != library.call(without_places.home):
                library.call(without_places.keep, zone)
            return without_places.write(library, target, zone, progress, stop)

        self._run(call, WRITING, lambda finished: self._written(target, finished))

    def file_name(self) -> str:
        """Name that tells one runner's record from another's."""
        bare = "".join(c if c.isalnum() or c in " -" else "_" for c in self.runner).strip()
        return f"{bare or 'record'} {datetime.now():%Y-%m-%d}.zip"

    def take_in(self, source: Path, *, whoever: bool = False) -> None:
        """Take a record in; what both sides say otherwise is asked afterwards."""
        library = self._context.library
        self._source = source

        def call(progress: Any, stop: Event) -> Merged:
            return record_merge.take_in(library, source, progress, stop, whoever=whoever)

        self._run(call, TAKING, self._taken_in)

    def hand_over(self, target: Path) -> None:
        """Write the record to a file."""
        library = self._context.library

        def call(progress: Any, stop: Event) -> bool:
            return record.write(library, target, progress=progress, stop=stop)

        self._run(call, WRITING, lambda finished: self._written(target, finished))

    def _written(self, target: Path, finished: bool) -> None:
        self._say(
            tr("Written: {file}", file=target.name)
            if finished
            else tr("Stopped. No file was written.")
        )

    def _run(self, call: Any, doing: tuple[str, str], ended: Any) -> None:
        if self._job is not None:
            return
        job = self._job = Job(call, self)
        job.progressed.connect(lambda now: self._progress(doing[1], now))
        job.finished.connect(lambda result: self._ended(ended, result))
        job.failed.connect(lambda error: self._ended(self._failed, error))
        for made in (self.take, self.hand):
            made.setEnabled(False)
        self.said.setText(tr(doing[0]))
        self.anyway.hide()
        self.meter.setRange(0, 0)
        self.meter.show()
        self.stop.setEnabled(True)
        self.stop.show()
        self.bar.show()
        job.start()

    def _progress(self, doing: str, now: Progress) -> None:
        self.meter.setRange(0, max(now.total, 1))
        self.meter.setValue(now.done)
        self.said.setText(tr(doing, done=now.done, whole=now.total, now=now.current))

    def _ended(self, then: Any, result: Any) -> None:
        job, self._job = self._job, None
        if job is not None:
            job.wait()
            job.deleteLater()
        for made in (self.take, self.hand):
            made.setEnabled(True)
        self.meter.hide()
        self.stop.hide()
        then(result)

    def _say(self, text: str) -> None:
        self.said.setText(text)
        self.bar.show()

    def _failed(self, error: Exception) -> None:
        self._say(str(error))
        self.anyway.setVisible(isinstance(error, record.OtherRunner))

    def _taken_in(self, done: Merged) -> None:
        said = mark("Stopped. Taken in: {what}.") if done.stopped else mark("Taken in: {what}.")
        self._say(tr(said, what=done.words))
        if done.changes.step:
            self._context.acts.tell(done.changes)
        if done.conflicts:
            self._ask(done, done.conflicts)

    def _ask(self, done: Merged, conflicts: list[Conflict]) -> None:
        self.dialog = ConflictsDialog(done, conflicts, self.bar.window())
        self.dialog.chosen.connect(self._settle)
        self.dialog.open()

    def _settle(self, mine: list[Conflict], theirs: list[Conflict]) -> None:
        self._context.acts.settle(mine, theirs)
        self._say(
            tr(
                "Settled: {kept} kept, {taken} taken from the other copy.",
                kept=len(mine),
                taken=len(theirs),
            )
        )

    def _stop(self) -> None:
        if self._job is not None:
            self._job.stop()
            self.stop.setEnabled(False)

    def close_quietly(self) -> None:
        """Stop and wait."""
        if self._job is not None:
            self._job.stop()
            self._job.wait()
