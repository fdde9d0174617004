"""The thresholds page: its panes, what they ask of the library, and applying a change."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from threading import Event
from typing import Any

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QComboBox, QVBoxLayout, QWidget

from tercet.domain import DatedThresholds
from tercet.language import tr
from tercet.library import lines, operations
from tercet.library.dated import in_force, with_new
from tercet.library.library import Library, Preview
from tercet.library.views import SeasonView
from tercet.ui import theme
from tercet.ui.jobs import Job
from tercet.ui.lines.change import ChangePane
from tercet.ui.lines.history import HistoryPane
from tercet.ui.lines.standing import CeilingPane, InForcePane, LookPane
from tercet.ui.lines.ways import WaysPane
from tercet.ui.look import Look
from tercet.ui.page import Context, Page
from tercet.ui.thresholds_pages import FieldError, Finder
from tercet.ui.widgets import clear_scroll

#: Window width over text size under which the right column goes under the left.
STACK_BELOW = 1040


class ThresholdsPage(Page):
    """History, ways to better lines, what a change would do; what stands, at the right."""

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self._view: SeasonView | None = None
        self._held: lines.Stored | None = None
        self._preview: Preview | None = None
        self._start = date.today()
        self._job: Job | None = None
        self._reading: Job | None = None
        self._closing = False
        units = Look(context.settings).units
        self.units = units
        self._ways: WaysPane | None = None
        self._left: QVBoxLayout | None = None
        inside = QWidget()
        self._scroll = clear_scroll(inside)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._scroll)
        self.history = HistoryPane(units)
        self.change, self.look = ChangePane(units), LookPane()
        self.standing, self.ceiling = InForcePane(units), CeilingPane(units)
        self._columns = QBoxLayout(QBoxLayout.Direction.LeftToRight, inside)
        self._columns.setContentsMargins(12, 0, 12, 0)
        self._columns.setSpacing(10)
        for panes, stretch in (
            ((self.history, self.change), 73),
            ((self.standing, self.ceiling, self.look), 27),
        ):
            column = QVBoxLayout()
            column.setSpacing(10)
            self._columns.addLayout(column, stretch)
            for pane in panes:
                column.addWidget(pane, 2 if pane is self.history else 0)
            column.addStretch(1)
            self._left = self._left or column
        self._connect()
        theme.changed.connect(self._fold)
        QTimer.singleShot(0, self, lambda: self.ways)

    @property
    def ways(self) -> WaysPane:
        """The ways to better lines: so many fields that they are built behind the first picture."""
        if self._ways is None:
            self._ways = ways = WaysPane(self.units, self._scroll.widget())
            ways.preview_asked.connect(self._ask)
            ways.edited.connect(self._forget)
            ways.test_kept.connect(self._keep_test)
            ways.recorded.span_asked.connect(lambda _: self._read_own())
            ways.recorded.read_asked.connect(self._read_again)
            assert self._left is not None
            self._left.insertWidget(1, ways)
            if self._view is not None:
                ways.begin(self._view.today)
        return self._ways

    def _connect(self) -> None:
        self.history.change_asked.connect(self._change_way)
        self.change.use_asked.connect(self._use)
        self.change.keep_asked.connect(self._forget)
        self.look.leave_asked.connect(
            lambda key: self.context.acts.do(lines.leave, key, self._today)
        )
        self.look.runs_asked.connect(lambda ids: self.session_asked.emit(ids[-1]))
        self.look.offer_asked.connect(self._offer)

    @property
    def outdated(self) -> bool:
        """Whether other units hold by now than the page was built with."""
        return Look(self.context.settings).units != self.units

    def open_at(self, detail: str) -> None:
        """Bring a way to better lines to the front, its first field with the focus."""
        field = self.ways.show_way(detail)
        QTimer.singleShot(0, self, lambda: self._begin(field))

    def _begin(self, field: QWidget) -> None:
        self._scroll.ensureWidgetVisible(self.ways)
        field.setFocus(Qt.FocusReason.OtherFocusReason)

    @property
    def ring(self) -> list[QWidget]:
        """The history, the ways, the flags."""
        ways = [self._ways.tabs.tabBar()] if self._ways is not None else []
        return [self.history.chart, *ways, *self.look.findChildren(QComboBox)]

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Put the columns below one another where the window is narrow for its text."""
        super().resizeEvent(event)
        self._fold()

    def _fold(self, *_: object) -> None:
        look = theme.current()
        narrow = self.width() / look.scale < STACK_BELOW
        way = QBoxLayout.Direction.TopToBottom if narrow else QBoxLayout.Direction.LeftToRight
        self._columns.setDirection(way)
        self.history.setMinimumHeight(look.px(224))
        self.history.setMaximumHeight(look.px(420))

    @property
    def _today(self) -> date:
        return self._view.today if self._view is not None else date.today()

    # Showing -----------------------------------------------------------------------------

    def refresh(self, view: SeasonView) -> None:
        """Ask for what is dated, typed and flagged, then show it."""
        if self._closing:
            return
        if self._view is None and self._ways is not None:
            self._ways.begin(view.today)
        self._view = view
        self.context.answers.when(self.context.library.submit(lines.stored), self._show)

    def _show(self, held: lines.Stored) -> None:
        before, self._held = self._held, held
        if before is None or before.entries != held.entries or before.prints != held.prints:
            self._forget()
            self.history.show_entries(held.entries, self._today)
        self.standing.show_entries(held.entries, self._today)
        self.look.show_flags(lines.flags(held, self._today))
        self.ways.show_held(held, self._today)
        self._read_own()

    def _read_own(self) -> None:
        """What the recordings tell, found in a thread of its own."""
        held, today, days = self._held, self._today, self.ways.recorded.span_days
        if held is None:
            return
        if self._reading is not None:
            self._reading.finished.disconnect()
            self._reading.wait()

        def call(_: Callable[[Any], None], __: Event) -> lines.Own:
            return lines.own(held, today, days)

        self._reading = Job(call, self)
        self._reading.finished.connect(self._show_own)
        self._reading.failed.connect(self.context.answers.failed)
        self._reading.start()

    def _show_own(self, own: lines.Own) -> None:
        self._reading = None
        held = self._held
        self.ceiling.show_own(own)
        now = in_force(held.entries, self._today) if held is not None else None
        self.ways.recorded.show_own(own, now)
        self.ways.tabs.updateGeometry()

    # Proposing ---------------------------------------------------------------------------

    def _forget(self) -> None:
        """What was previewed is not what is asked for any more."""
        if self._job is not None:
            self._job.stop()
        self._preview = None
        self.change.hide()
        self.ways.ready()
        if self._held is not None:
            self.history.show_entries(self._held.entries, self._today)

    def _ask(self, find: Finder, start: date, everything: bool) -> None:
        held = self._held
        if held is None:
            return
        library = self.context.library

        def entries() -> list[DatedThresholds]:
            new = find(library)
            linear = any(entry.change == "linear" for entry in held.entries)
            new = replace(new, change="linear" if linear and held.entries else "step")
            return with_new(held.entries, new, everything=everything)

        self._start = start
        self._judge(entries)

    def _change_way(self, change: str) -> None:
        held = self._held
        if held is None:
            return
        ordered = sorted(held.entries, key=lambda entry: entry.start)
        if all(entry.change == change for entry in ordered[1:]):
            return
        changed = [*ordered[:1], *(replace(entry, change=change) for entry in ordered[1:])]
        self._start = self._today
        self._judge(lambda: changed)

    def _judge(self, entries: Callable[[], list[DatedThresholds]]) -> None:
        if self._job is not None:
            self._job.stop()
            self._job.wait()
        library: Library = self.context.library
        self.change.show_waiting()
        self.ways.waiting()
        self._reveal()

        def call(tell: Callable[[Any], None], stop: Event) -> Preview | None:
            preview = library.preview(entries(), tell, stop)
            return None if stop.is_set() else preview

        self._job = Job(call, self)
        self._job.progressed.connect(self.change.show_progress)
        self._job.finished.connect(self._previewed)
        self._job.failed.connect(self._failed)
        self._job.start()

    def _reveal(self) -> None:
        """Scroll to what would change, once it has its place."""
        QTimer.singleShot(50, self.change, lambda: self._scroll.ensureWidgetVisible(self.change))

    def _failed(self, error: Exception) -> None:
        self._job = None
        self.change.hide()
        self.ways.ready()
        if self._held is not None:
            self.history.show_entries(self._held.entries, self._today)
        field = error.field if isinstance(error, FieldError) else None
        self.ways.error.show_error(str(error), field)

    def _previewed(self, preview: Preview | None) -> None:
        self._job = None
        if preview is None or self._view is None or self._held is None:
            self.ways.ready()
            return
        self._preview = preview
        old = {entry.id for entry in self._held.entries}
        new = next((entry for entry in preview.entries if entry.id not in old), None)
        self.history.show_entries(self._held.entries, self._today, new)
        self.change.show_preview(preview, self._view, self._held.entries, self._start)
        self.ways.ready()
        self.change.use.setFocus(Qt.FocusReason.OtherFocusReason)
        self._reveal()

    def _use(self) -> None:
        preview = self._preview
        if preview is None:
            return
        self._preview = None
        self.change.hide()
        self.context.acts.do(_apply, preview)

    def _read_again(self) -> None:
        """Take the fingerprints of earlier runs anew, by judging them by the same lines."""
        library = self.context.library
        self.ways.recorded.read.setEnabled(False)

        def call(tell: Callable[[Any], None], stop: Event) -> Any:
            return lines.read_again(library, tell, stop)

        job = Job(call, self)
        self._job = job
        self.change.show_waiting()
        job.progressed.connect(self.change.show_progress)
        job.failed.connect(self._failed)
        job.finished.connect(self._read)
        job.start()

    def _read(self, changes: Any) -> None:
        self._job = None
        self.change.hide()
        self.ways.recorded.read.setEnabled(True)
        self.context.acts.changed.emit(changes)

    def _keep_test(self, kind: str, rows: object, test_id: object) -> None:
        self.context.acts.do(lines.keep_test, self.ways.start.day, kind, rows, test_id, quiet=True)

    def _offer(self, offer: str) -> None:
        self.ways.show_way(offer)
        self._scroll.ensureWidgetVisible(self.ways)

    def close_quietly(self) -> None:
        """Keep a test that was typed, stop a preview that runs."""
        self._closing = True
        steps = self._ways.steps if self._ways is not None else None
        rows = steps.unkept() if steps is not None else None
        if steps is not None and rows is not None:
            day = self.ways.start.day
            self.context.library.submit(lines.keep_test, day, "lactate", rows, steps.test_id)
        for job in (self._job, self._reading):
            if job is not None:
                job.stop()
                job.wait()


def _apply(store: Any, preview: Preview) -> Any:
    return operations.set_thresholds(
        store, preview.entries, preview.judgements, step=tr("Change thresholds")
    )
