"""The page that says where the middle came from, what stands out, and what next week asks."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QInputDialog,
    QLayout,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from tercet.domain import Changes
from tercet.engine.causes import Cause
from tercet.language import mark, several, tr
from tercet.library import figures, insight, next_steps, standing, suggested
from tercet.library.insight import MiddlePage as Data
from tercet.library.middle import CauseView
from tercet.library.standing import Remark, Step
from tercet.library.views import SeasonView
from tercet.ui import theme, words
from tercet.ui.cause_rows import CauseRow, CauseRuns
from tercet.ui.jobs import Job
from tercet.ui.page import Context, Page
from tercet.ui.remark_rows import NextWeekPart, RemarkRow, WeeksPart, headed, written
from tercet.ui.span_chooser import SpanChooser
from tercet.ui.widgets import Label, Pane, Rule, button, clear_scroll

#: Width over text size under which the right side goes below. [px at 100 %]
STACK_BELOW = 1000
EMPTY = mark("Nothing has been run yet. Recordings or a paper log fill this page.")
NONE = mark("Nothing moderate was run here.")


class MiddlePage(Page):
    """Causes at the left, at most five remarks at the right."""

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self._key = ""
        self._view: SeasonView | None = None
        self._open: Cause | None = None
        self.data: Data | None = None
        self.rows: list[CauseRow] = []
        self.runs: CauseRuns | None = None
        self._job: Job | None = None
        self.remarks: list[RemarkRow] = []
        self.next_week: NextWeekPart | None = None
        self.chooser = SpanChooser()
        self.chooser.chosen.connect(self.choose)
        self.back = button(tr("Intensity curve"))
        self.back.clicked.connect(lambda: self.page_asked.emit("curve"))
        self._sum = Label("", "body_bold", wrap=True)
        self._about = Label("", "small", "text_2", wrap=True)
        self.again = button(tr("Look into these runs"))
        self.again.clicked.connect(self._judge_again)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(12, 0, 12, 0)
        self._box = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._box.setSpacing(10)
        outer.addLayout(self._box)
        self._box.addWidget(self._left(), 60)
        self._box.addWidget(self._right(), 40)

    def _left(self) -> QWidget:
        pane = Pane()
        column = QVBoxLayout(pane)
        column.setContentsMargins(1, 10, 1, 6)
        column.setSpacing(4)
        head = headed(tr("Where the middle came from"))
        head.setContentsMargins(16, 0, 16, 0)
        head.setSpacing(8)
        head.addWidget(self.back)
        head.addWidget(self.chooser)
        column.addLayout(head)
        for part in (self._sum, self._about):
            part.setContentsMargins(16, 0, 16, 0)
            column.addWidget(part)
        column.addWidget(self.again, 0, Qt.AlignmentFlag.AlignLeft)
        inside = QWidget()
        self._causes = QVBoxLayout(inside)
        self._causes.setContentsMargins(0, 4, 0, 0)
        self._causes.setSpacing(0)
        self._area: QScrollArea = clear_scroll(inside)
        column.addWidget(self._area, 1)
        return pane

    def _right(self) -> QWidget:
        pane = Pane()
        column = QVBoxLayout(pane)
        column.setContentsMargins(16, 10, 4, 6)
        column.setSpacing(4)
        head = headed(tr("What stands out"), tr("at most five, weightiest first"))
        head.setContentsMargins(0, 0, 12, 0)
        column.addLayout(head)
        inside = QWidget()
        self._standing = QVBoxLayout(inside)
        self._standing.setContentsMargins(0, 0, 12, 0)
        self._standing.setSpacing(0)
        column.addWidget(clear_scroll(inside), 1)
        return pane

    @property
    def ring(self) -> list[QWidget]:
        """The causes, the first remark's first step."""
        first = self.remarks[0].buttons[:1] if self.remarks else []
        return [self.chooser, *self.rows[:1], *first]

    def open_at(self, detail: str) -> None:
        """Show a block by its first day."""
        self.choose(detail)

    def choose(self, key: str) -> None:
        """Show a stretch by its key, or today's block for ""."""
        self._key, self._open = key, None
        if self._view is not None:
            self.refresh(self._view)

    def refresh(self, view: SeasonView) -> None:
        """Read the stretch in view."""
        self._view = view
        future = self.context.library.submit(insight.middle_page, view, self._key)
        self.context.answers.when(future, self.show_data)

    def show_data(self, data: Data) -> None:
        """Show what was read; an unfolded cause stays unfolded."""
        self.data = data
        self.chooser.show_spans(data.spans, data.shown)
        self._show_sum(data)
        self._show_causes()
        self._show_standing(data)

    def _show_sum(self, data: Data) -> None:
        span, found = data.shown, data.middle
        self.again.setVisible(bool(found is not None and found.untold))
        if span is None or found is None:
            self._sum.setText(tr(EMPTY))
            self._about.setText("")
            return
        time, meant = words.hours(found.moderate_s), words.hours(found.meant_s)
        if found.meant_s >= 60:
            one = mark("{time} moderate in {n} week, {meant} of it meant")
            many = mark("{time} moderate in {n} weeks, {meant} of it meant")
        else:
            one = mark("{time} moderate in {n} week")
            many = mark("{time} moderate in {n} weeks")
        self._sum.setText(several(span.weeks, one, many, time=time, meant=meant))
        about = tr(
            "Every moderate minute has one cause. Longest first; what was meant stands last."
        )
        if found.untold:
            about = several(
                found.untold,
                mark(
                    "{n} run with {time} was judged before causes were kept. It is judged "
                    "again, by the same thresholds, to look into it."
                ),
                mark(
                    "{n} runs with {time} were judged before causes were kept. They are judged "
                    "again, by the same thresholds, to look into them."
                ),
                time=words.hours(found.untold_s),
            )
        self._about.setText(about if found.moderate_s >= 60 else tr(NONE))

    def _show_causes(self) -> None:
        data = self.data
        focused = next((row.view.cause for row in self.rows if row.hasFocus()), None)
        _clear(self._causes)
        self.rows, self.runs = [], None
        views = data.middle.causes if data is not None and data.middle is not None else ()
        full = max((view.seconds for view in views), default=0.0)
        for view in views:
            if view.cause == Cause.MEANT:
                apart = Label(tr("Meant, so not counted against the block"), "small_bold", "text_2")
                apart.setContentsMargins(16, 12, 16, 6)
                self._causes.addWidget(apart)
            row = CauseRow(view, full)
            row.toggled.connect(lambda view=view: self.unfold(view.cause))
            self._causes.addWidget(row)
            self.rows.append(row)
            if view.cause == self._open:
                row.set_unfolded(True)
                self._causes.addWidget(self._runs_of(view))
            if view.cause == focused:
                row.setFocus()
        if views:
            self._causes.addWidget(Rule())
        self._causes.addStretch(1)

    def _runs_of(self, view: CauseView) -> CauseRuns:
        self.runs = CauseRuns(view)
        self.runs.session_asked.connect(self.session_asked)
        self.runs.meant_said.connect(
            lambda number, meant: self.context.acts.do(figures.set_meant, number, meant)
        )
        return self.runs

    def unfold(self, cause: Cause) -> None:
        """Show the runs of a cause, or fold them in again; one at a time."""
        self._open = None if self._open == cause else cause
        self._show_causes()
        row = next((row for row in self.rows if row.view.cause == cause), None)
        if row is not None:
            row.setFocus(Qt.FocusReason.OtherFocusReason)
            # Once the rows have their places: as much of the runs as fits below their cause.
            QTimer.singleShot(0, row, lambda: self._bring(row))

    def _bring(self, row: CauseRow) -> None:
        for part in (self.runs, row):
            if part is not None:
                self._area.ensureWidgetVisible(part, 0, 0)

    def _show_standing(self, data: Data) -> None:
        _clear(self._standing)
        self.remarks = []
        for remark in data.remarks:
            self._standing.addWidget(Rule())
            row = RemarkRow(remark)
            row.step_asked.connect(self._step)
            row.put_away.connect(self._put_away)
            self._standing.addWidget(row)
            self.remarks.append(row)
        if data.shown is not None:
            self._standing.addWidget(Rule())
            none = tr("Nothing else stands out.") if data.remarks else tr("Nothing stands out.")
            said = Label(none, "body", "text_2")
            said.setContentsMargins(0, 8, 0, 8)
            self._standing.addWidget(said)
            if data.put_away:
                back = button(tr("Bring lines back"))
                back.setProperty("slim", True)
                key = data.shown.key
                back.clicked.connect(lambda: self.context.acts.do(standing.bring_back, key))
                self._standing.addWidget(back, 0, Qt.AlignmentFlag.AlignLeft)
        if data.next_week.lines:
            self._standing.addWidget(Rule())
            part = self.next_week = NextWeekPart(data.next_week, data.suggested)
            part.plan_asked.connect(lambda: self._plan(data))
            part.open_asked.connect(
                lambda: self.page_asked.emit(f"plan:{data.next_week.first_day}")
            )
            self._standing.addWidget(part)
        if data.weeks:
            self._standing.addWidget(Rule())
            self._standing.addWidget(WeeksPart(data.weeks))
        self._standing.addStretch(1)

    def _plan(self, data: Data) -> None:
        """Put next week's lines into the plan, as one step."""
        self.context.acts.do(suggested.plan, data.suggested, said=tr("Planned: the week to come"))

    def _step(self, remark: Remark, step: Step) -> None:
        if step.to in Cause.__members__:
            self._open = None
            self.unfold(Cause[step.to])
        elif step.to == "runs":
            self._open_run(remark)
        elif step.to == "spacing":
            self._set_spacing()
        elif step.lines:
            said = tr("Planned: {what}", what=written(step.lines))
            self.context.acts.do(next_steps.plan, step, said=said)
        else:
            self.page_asked.emit(step.to)

    def _open_run(self, remark: Remark) -> None:
        """Open the run, or the one chosen of several, the latest first."""
        span = self.data.shown if self.data is not None else None
        runs = [run for run in (span.runs if span else ()) if run.id in remark.runs]
        if len(runs) <= 1:
            number = runs[0].id if runs else next(iter(remark.runs), -1)
            self.session_asked.emit(number)
            return
        labels = [
            f"{words.weekday(run.day)} {words.short_day(run.day)}  {run.name}"
            for run in reversed(runs)
        ]
        label, chosen = QInputDialog.getItem(
            self,
            f"{remark.title[:1].upper()}{remark.title[1:]}",
            tr("Open which run?"),
            labels,
            0,
            False,
        )
        if chosen:
            self.session_asked.emit(runs[len(runs) - 1 - labels.index(label)].id)

    def _set_spacing(self) -> None:
        now = self.data.spacing if self.data is not None else 2
        days, chosen = QInputDialog.getInt(
            self,
            tr("Spacing of hard days"),
            tr(
                "Days from one hard day to the next, at least.\n"
                "Many runners over 40 take 3 or more."
            ),
            now,
            1,
            7,
        )
        if chosen:
            self.context.acts.do(standing.set_spacing, days)

    def _put_away(self, remark: Remark) -> None:
        if self.data is not None and self.data.shown is not None:
            self.context.acts.do(standing.put_away, self.data.shown.key, remark)

    def _judge_again(self) -> None:
        """Judge all runs again in a thread of its own; the season then changes as a whole."""
        self.again.setEnabled(False)
        self.again.setText(tr("Judging…"))
        library = self.context.library
        job = self._job = Job(lambda tell, stop: library.judge_all_again(tell, stop=stop), self)
        job.finished.connect(self._judged)
        job.failed.connect(lambda _: self._judged(Changes()))
        job.start()

    def _judged(self, changes: Changes) -> None:
        self.again.setEnabled(True)
        self.again.setText(tr("Look into these runs"))
        self.context.acts.changed.emit(changes)

    def close_quietly(self) -> None:
        """Stop judging: the window closes."""
        if self._job is not None and self._job.running:
            self._job.stop()
            self._job.wait()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Put the right side below where the width is short."""
        super().resizeEvent(event)
        narrow = self.width() / theme.current().scale < STACK_BELOW
        direction = QBoxLayout.Direction
        self._box.setDirection(direction.TopToBottom if narrow else direction.LeftToRight)


def _clear(layout: QLayout) -> None:
    while (held := layout.takeAt(0)) is not None:
        widget = held.widget()
        if widget is not None:
            widget.hide()
            widget.deleteLater()
