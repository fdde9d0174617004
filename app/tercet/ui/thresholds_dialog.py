"""Thresholds: what is in force, three plain ways to better ones, and what each would change."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from threading import Event
from typing import Any, Literal

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QHBoxLayout,
    QSizePolicy,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from tercet.domain import DatedThresholds
from tercet.engine import Thresholds
from tercet.library import operations
from tercet.library.dated import in_force, with_new
from tercet.library.library import Library, Preview
from tercet.ui import words
from tercet.ui.change_part import ChangePart
from tercet.ui.fields import DayEdit, ErrorLine, fit_to_screen
from tercet.ui.flow import FlowLayout
from tercet.ui.focus_ring import FocusRing
from tercet.ui.jobs import Answers, Job
from tercet.ui.thresholds_pages import FieldError, Finder, MaximumPage, Page, RacePage, TypedPage
from tercet.ui.widgets import Label, Rule, button, clear_scroll

PageName = Literal["race", "maximum", "typed"]
PAGES: tuple[PageName, ...] = ("race", "maximum", "typed")
CAUTION = (
    "Estimates and formulas can be well off for one person. With heart disease, heart medicines, "
    "pain, illness, or after a long break, ask a doctor before training hard; stop if you feel "
    "chest pain, faintness or unusual breathlessness."
)


class ThresholdsDialog(QDialog):
    """Asks for one thing, shows what it would change, and applies it on one click."""

    applied = Signal(object)  # Changes

    def __init__(
        self,
        library: Library,
        entries: list[DatedThresholds],
        page: PageName = "typed",
        units: words.Units = "km",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Thresholds")
        self._library, self._entries, self._units = library, entries, units
        self._answers = Answers(self)
        self._answers.failed.connect(self._failed)
        self._job: Job | None = None
        self._preview: Preview | None = None
        now = in_force(entries, date.today())
        values = now.values if now is not None else Thresholds()
        known = values.hr_max if now is not None and not now.estimated else None
        self.race = RacePage(units, known)
        self.maximum = MaximumPage()
        self.typed = TypedPage(units, values)
        self.tabs = QTabWidget()
        self.start = DayEdit(date.today(), "In force from")
        self.reach = QComboBox()
        self.error = ErrorLine()
        self.change = ChangePart(units)
        self.keep = button("Keep it as it is")
        self.show_change = button("Show what it would change", primary=True)
        self.use = button("Use these", primary=True)
        self._arrange(now)
        self.tabs.setCurrentIndex(PAGES.index(page))
        self._connect()
        self._ring = FocusRing(self)
        fit_to_screen(self, 600, 690)
        self._first_field().setFocus(Qt.FocusReason.OtherFocusReason)

    def _arrange(self, now: DatedThresholds | None) -> None:
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(20, 16, 20, 8)
        column.setSpacing(10)
        column.addWidget(Label("Thresholds", "pane_title"))
        column.addWidget(Label(self._now_words(now), "body", "text_2", wrap=True))
        self.tabs.setDocumentMode(True)
        self.tabs.tabBar().setAccessibleName("Ways to thresholds")
        self.tabs.addTab(self.race, "A recent race")
        self.tabs.addTab(self.maximum, "Highest heart rate or age")
        self.tabs.addTab(self.typed, "The thresholds themselves")
        self.tabs.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        column.addWidget(self.tabs)
        column.addWidget(self.error)
        line = FlowLayout()
        self.reach.setAccessibleName("Which runs are judged by them")
        self.reach.addItem("runs before it too", "all")
        self.reach.addItem("from that day on only", "later")
        only_guess = all(entry.estimated for entry in self._entries)
        self.reach.setCurrentIndex(0 if only_guess else 1)
        for part in (Label("In force from"), self.start, self.reach):
            line.addWidget(part)
        column.addLayout(line)
        column.addWidget(Rule())
        column.addWidget(self.change)
        column.addWidget(Label(CAUTION, "small", "text_2", wrap=True))
        column.addStretch(1)
        self._scroll = clear_scroll(inside)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 12)
        whole.addWidget(self._scroll, 1)
        buttons = QHBoxLayout()
        buttons.setContentsMargins(20, 0, 20, 0)
        buttons.addStretch(1)
        for made in (self.keep, self.show_change, self.use):
            made.setAutoDefault(False)
            buttons.addWidget(made)
        whole.addLayout(buttons)
        self.use.hide()
        self.show_change.setDefault(True)

    def _connect(self) -> None:
        for page in (self.race, self.maximum, self.typed):
            page.edited.connect(self._forget)
        self.tabs.currentChanged.connect(lambda _: self._forget())
        self.start.dateChanged.connect(lambda _: self._forget())
        self.reach.currentIndexChanged.connect(lambda _: self._forget())
        self.keep.clicked.connect(self.reject)
        self.show_change.clicked.connect(self._ask)
        self.use.clicked.connect(self._apply)

    def _first_field(self) -> QWidget:
        fields = {"race": self.race.time, "maximum": self.maximum.maximum}
        return fields.get(PAGES[self.tabs.currentIndex()], self.typed.lt1_pace)

    def _now_words(self, now: DatedThresholds | None) -> str:
        if now is None:
            return "None yet: running is kept but not judged."
        about = "about " if now.estimated else ""
        said = []
        for name in ("lt1", "lt2"):
            speed, beats = getattr(now.values, f"{name}_speed"), getattr(now.values, f"{name}_hr")
            bits = []
            if speed is not None:
                bits.append(f"{about}{words.pace(speed, self._units)}")
            if beats is not None:
                bits.append(f"{about}{words.heart_rate(beats)}")
            if bits:
                said.append(f"{name.upper()} {', '.join(bits)}")
        return f"In force today: {'; '.join(said)}. From: {now.source}."

    # Doing it ----------------------------------------------------------------------------

    @property
    def preview(self) -> Preview | None:
        """What is shown of the change, which is what would be applied."""
        return self._preview

    def _forget(self) -> None:
        """What is typed is no longer what was previewed."""
        if self._job is not None:
            self._job.stop()
        self._preview = None
        self.error.clear_error()
        self.change.hide()
        self.use.hide()
        self.show_change.show()
        self.show_change.setDefault(True)

    def _ask(self) -> None:
        if self._job is not None:
            return
        page = self.tabs.currentWidget()
        assert isinstance(page, Page)
        try:
            find = page.finder(self.start.day)
        except FieldError as error:
            self.error.show_error(str(error), error.field)
            self._scroll.ensureWidgetVisible(self.error)
            return
        self.error.clear_error()
        self.change.show_waiting()
        self.show_change.setEnabled(False)
        self._start(find)

    def _start(self, find: Finder) -> None:
        everything = self.reach.currentData() == "all"
        library, before = self._library, list(self._entries)

        def call(tell: Callable[[Any], None], stop: Event) -> Preview | None:
            entries = with_new(before, find(library), everything=everything)
            preview = library.preview(entries, tell, stop)
            return None if stop.is_set() else preview

        self._job = Job(call, self)
        self._job.progressed.connect(self.change.show_progress)
        self._job.finished.connect(self._shown)
        self._job.failed.connect(self._failed)
        self._job.start()

    def _end_job(self) -> None:
        job, self._job = self._job, None
        if job is not None:
            job.wait()
            job.deleteLater()
        self.show_change.setEnabled(True)

    def _failed(self, error: Exception) -> None:
        self._end_job()
        self.change.hide()
        self.error.show_error(str(error))

    def _shown(self, preview: Preview | None) -> None:
        self._end_job()
        if preview is None:  # stopped, for something else was typed
            self.change.hide()
            return
        self._preview = preview
        estimated = any(entry.estimated for entry in self._entries)
        self.change.show_preview(preview, estimated=estimated)
        self.show_change.hide()
        self.use.show()
        self.use.setDefault(True)
        self.use.setFocus(Qt.FocusReason.OtherFocusReason)
        self._scroll.ensureWidgetVisible(self.change)

    def _apply(self) -> None:
        if self._preview is None:
            return
        self.use.setEnabled(False)
        preview, step = self._preview, "Change thresholds"
        future = self._library.submit(
            operations.set_thresholds, preview.entries, preview.judgements, step=step
        )
        self._answers.when(future, self._applied)

    def _applied(self, changes: object) -> None:
        self.applied.emit(changes)
        self.accept()

    def done(self, result: int) -> None:
        """Stop a running preview before closing."""
        if self._job is not None:
            self._job.stop()
            self._job.wait()
        super().done(result)
