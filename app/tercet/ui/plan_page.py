"""Back from race day: the season's weeks with their blocks, what a block is for, a week to type."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import (
    QFileDialog,
    QHBoxLayout,
    QMenu,
    QScrollArea,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from tercet import week_days
from tercet.domain import Block, DatedThresholds, Failed, Race
from tercet.engine.countback import SHARES, USUAL_SHARES
from tercet.language import mark, several, tr
from tercet.library import planning
from tercet.library.views import SeasonView
from tercet.store import queries
from tercet.store.database import Store
from tercet.ui import words
from tercet.ui.folding import FoldingSplitter
from tercet.ui.page import Context, Page
from tercet.ui.plan_block import BlockPane
from tercet.ui.plan_rows import DAY, PlanRows, Span, build
from tercet.ui.plan_week import WeekPane, allowance_of
from tercet.ui.plan_weeks import PlanWeeks
from tercet.ui.plan_weeks_words import HEADINGS, table_rows
from tercet.ui.scale_strip import ScaleStrip
from tercet.ui.twin import Twin
from tercet.ui.widgets import ElidedLabel, Label, Pane, button, clear_scroll

#: Window width over text size under which the panes stack, and their height then.
STACK_BELOW, STACKED_HEIGHT = 1126, 1120
CAUTION = mark(
    "A plan is a proposal. With pain, illness, chest pain, faintness or unusual breathlessness "
    "stop and see a doctor; after an injury go by your doctor or coach, not by these weeks."
)


class PlanPage(Page):
    """Reads blocks, races and thresholds beside the season, and stores every edit at once."""

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self._view: SeasonView | None = None
        self._go_to: date | None = None  # a day whose line is to be typed in
        self._rows: PlanRows | None = None
        self._blocks: list[Block] = []
        self._races: list[Race] = []
        self._thresholds: list[DatedThresholds] = []
        self.weeks, self.block, self.week = PlanWeeks(), BlockPane(), WeekPane()
        self.scale = ScaleStrip(self.weeks)
        self.sentence = ElidedLabel("", "small", "text_2")
        self.remark = ElidedLabel("", "small_bold")
        self.remark.hide()
        self.races = button(tr("Races and goals"))
        self.calendar = button(tr("Calendar"), name=tr("Write the plan to a calendar, or read one"))
        self._arrange()
        self._connect()

    def _arrange(self) -> None:
        left, right = Pane(), QSplitter(Qt.Orientation.Vertical)
        right.setHandleWidth(10)
        right.setChildrenCollapsible(False)
        self.splitter = FoldingSplitter(
            below=STACK_BELOW, height=STACKED_HEIGHT, beside=(620, 712), stacked=(450, 550)
        )
        outer = QVBoxLayout(self)
        outer.setContentsMargins(12, 0, 12, 0)
        outer.addWidget(clear_scroll(self.splitter))
        self.splitter.put(left, right)
        head = QHBoxLayout()
        head.setSpacing(8)
        head.addWidget(Label(tr("Back from race day"), "pane_title"), 1)
        menu = QMenu(self.calendar)
        menu.addAction(tr("Write the plan as a calendar file…")).triggered.connect(self._export)
        menu.addAction(tr("Plan from a calendar file…")).triggered.connect(self._import)
        self.calendar.setMenu(menu)
        head.addWidget(self.calendar)
        head.addWidget(self.races)
        self.area: QScrollArea = clear_scroll(self.weeks)
        self.twin = Twin(self.area, tr("Weeks of the season as a table"), left)
        self.twin.show_table.toggled.connect(lambda shown: self.scale.setHidden(shown))
        caution = Label(tr(CAUTION), "small", "text_2", wrap=True)
        column = QVBoxLayout(left)
        column.setContentsMargins(1, 10, 1, 8)
        column.setSpacing(2)
        for part in (head, self.sentence, self.remark):
            row = QHBoxLayout()
            row.setContentsMargins(17, 0, 15, 0)
            if isinstance(part, QHBoxLayout):
                row.addLayout(part)
            else:
                row.addWidget(part)
            column.addLayout(row)
        column.addWidget(self.scale)
        column.addWidget(self.twin, 1)
        foot = QHBoxLayout()
        foot.setContentsMargins(17, 4, 15, 0)
        foot.addWidget(caution)
        column.addLayout(foot)
        right.addWidget(self.block)
        right.addWidget(self.week)
        right.setStretchFactor(1, 1)
        right.setSizes([270, 400])

    def _connect(self) -> None:
        acts = self.context.acts
        self.weeks.week_chosen.connect(self._choose)
        self.weeks.edge_moved.connect(self._move_edge)
        self.weeks.block_moved.connect(self._move_block)
        self.weeks.drawn.connect(self._make)
        self.weeks.previewed.connect(self._previewed)
        self.block.edited.connect(lambda block: acts.do(planning.set_block, block, quiet=True))
        self.block.dated.connect(self._date)
        self.context.answers.failed.connect(lambda _: self._show_chosen())
        self.block.split_asked.connect(self._split)
        self.block.join_asked.connect(self._join)
        self.block.remove_asked.connect(self._remove)
        self.block.made.connect(self._make)
        self.week.edited.connect(self._line)
        self.week.moved.connect(
            lambda planned_id, day, copy: (
                self._do(
                    planning.move_planned,
                    planned_id,
                    day,
                    said=tr("Moved to {day}", day=words.short_day(day)),
                )
                if not copy
                else acts.do(_copy_planned, planned_id, day)
            )
        )
        self.week.removed.connect(lambda planned_id: acts.do(planning.remove_planned, planned_id))
        self.week.copy_asked.connect(lambda first_day: acts.do(planning.copy_week, first_day))
        self.races.clicked.connect(self._count_back)

    @property
    def ring(self) -> list[QWidget]:
        """The weeks, the block's fields, the week's lines."""
        first = self.week.lines[0].text if self.week.lines else self.week
        return [self.weeks, self.block.title, first]

    # Showing -----------------------------------------------------------------------------

    def open_at(self, detail: str) -> None:
        """Go to the line of a day, ISO 8601."""
        self._go_to = date.fromisoformat(detail)

    def refresh(self, view: SeasonView) -> None:
        """Ask for what the season does not carry, then show all of it."""
        self.context.answers.when(
            self.context.library.submit(_needed), lambda found: self._show(view, *found)
        )

    def _show(
        self,
        view: SeasonView,
        blocks: list[Block],
        races: list[Race],
        thresholds: list[DatedThresholds],
    ) -> None:
        fresh = self._view is None
        self._view, self._rows = view, build(view)
        self._blocks, self._races, self._thresholds = blocks, races, thresholds
        self.weeks.set_rows(self._rows)
        rows = self._rows
        self.twin.set_numbers(lambda: (tuple(map(tr, HEADINGS)), table_rows(rows)), {0, 2})
        self.scale.update()
        self._say(self._rows)
        self._show_chosen()
        if self._go_to is not None:
            day, self._go_to = self._go_to, None
            self.weeks.choose(week_days.start_of(day))
            self.week.type_on(day)
        if fresh:
            # Once the weeks have their height: this one in the middle.
            QTimer.singleShot(0, self, self._bring_chosen)

    def _bring_chosen(self) -> None:
        rect = self.weeks.chosen_rect()
        self.area.ensureVisible(0, int(rect.center().y()), 0, self.area.viewport().height() // 2)

    def _say(self, rows: PlanRows) -> None:
        race = next(
            (r for r in self._races if rows.race is not None and r.id == rows.race.id), None
        )
        if race is None:
            self.sentence.setText(tr("No race yet. Races and goals counts a season back from one."))
        else:
            goal = words.duration(race.goal_s) if race.goal_s else ""
            said = mark("{race}, {day}, goal {goal}.") if goal else mark("{race}, {day}.")
            self.sentence.setText(tr(said, race=race.name, day=words.long_day(race.day), goal=goal))
        remark = rows.remark()
        self.remark.setText(remark)
        self.remark.setVisible(bool(remark))

    def _show_chosen(self) -> None:
        if self._rows is None or self._view is None or self.weeks.chosen is None:
            return
        first_day = self.weeks.chosen
        row = next(week for week in self._rows.weeks if week.first_day == first_day)
        span = self._rows.span_of(row)
        block = next((b for b in self._blocks if span is not None and b.id == span.id), None)
        shown = next((b for b in self._view.blocks if block is not None and b.id == block.id), None)
        if block is None or shown is None:
            self.block.show_gap(span)
        else:
            last = all(other.start <= block.start for other in self._blocks)
            self.block.show_block(block, shown, last=last)
        self.week.show_week(
            first_day, self._view, self._thresholds, allowance_of(self._view, first_day)
        )

    def _previewed(self, rows: PlanRows) -> None:
        self._say(rows)

    def _choose(self, _: date) -> None:
        self._show_chosen()
        rect = self.weeks.chosen_rect()
        self.area.ensureVisible(0, int(rect.center().y()), 0, int(rect.height()))

    # Doing -------------------------------------------------------------------------------

    def _do(self, call: Any, *args: Any, said: str = "") -> None:
        self.context.acts.do(call, *args, said=said)

    def _line(self, day: date, planned_id: int, text: str) -> None:
        if planned_id:
            self.context.acts.do(planning.edit_planned, planned_id, text, quiet=True)
        else:
            self.context.acts.do(planning.add_planned, day, text, quiet=True)

    def _move_edge(self, one: Span, two: Span, day: date) -> None:
        if one.id is not None and two.id is not None:
            self._do(planning.move_edge, one.id, two.id, day)
        elif one.id is not None:
            self._do(planning.move_edge, one.id, None, day)
        elif two.id is not None:
            block = next(block for block in self._blocks if block.id == two.id)
            self._do(planning.set_block, replace(block, start=day))

    def _move_block(self, span: Span, after: PlanRows) -> None:
        """Move a block as shown, and the edges of the blocks beside it."""
        at = next(k for k, each in enumerate(after.spans) if each.id == span.id)
        block = next(block for block in self._blocks if block.id == span.id)
        start = block.start + (after.spans[at].start - span.start)
        before, behind = after.spans[max(at - 1, 0) : at], after.spans[at + 1 : at + 2]
        beside = [next((each.id for each in part), None) for part in (before, behind)]
        self._do(planning.move_block, span.id, start, *beside)

    def _date(self, start: date, end: date) -> None:
        """Give the chosen block typed days; a block right beside it keeps to its edge."""
        block = self._chosen_block()
        if block is None or self._rows is None:
            return
        at = next(k for k, each in enumerate(self._rows.spans) if each.id == block.id)
        before, behind = self._rows.spans[max(at - 1, 0) : at], self._rows.spans[at + 1 : at + 2]
        if start != block.start and before and before[0].id is not None:
            self._do(planning.move_edge, before[0].id, block.id, start)
        elif end != block.end and behind and behind[0].id is not None:
            self._do(planning.move_edge, block.id, behind[0].id, end + DAY)
        else:
            self._do(planning.set_block, replace(block, start=start, end=end))

    def _chosen_block(self) -> Block | None:
        if self._rows is None or self.weeks.chosen is None:
            return None
        row = next(week for week in self._rows.weeks if week.first_day == self.weeks.chosen)
        span = self._rows.span_of(row)
        return next((b for b in self._blocks if span is not None and b.id == span.id), None)

    def _split(self) -> None:
        block = self._chosen_block()
        if block is not None and block.id is not None and self.weeks.chosen is not None:
            day = max(self.weeks.chosen, block.start)
            if day == block.start:
                day = self.weeks.chosen + 7 * DAY
            self._do(planning.split_block, block.id, day)

    def _join(self) -> None:
        block = self._chosen_block()
        later = [b for b in self._blocks if block is not None and b.start > block.start]
        if block is not None and block.id is not None and later:
            following = min(later, key=lambda b: b.start)
            self._do(planning.join_blocks, block.id, following.id)

    def _remove(self) -> None:
        block = self._chosen_block()
        if block is not None and block.id is not None:
            self._do(planning.remove_block, block.id)

    def _make(self, span: Span | None) -> None:
        if span is not None:
            easy, moderate, hard = SHARES.get("base", USUAL_SHARES)
            made = Block(span.start, span.end, tr("Base"), "base", easy, None, moderate, hard)
            self._do(planning.set_block, made)

    def _count_back(self) -> None:
        from tercet.ui.countback_dialog import CountBackDialog

        if self._view is None:
            return
        dialog = CountBackDialog(self.context, self._view, self._blocks, self._races, self)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.open()

    def _export(self) -> None:
        name, _ = QFileDialog.getSaveFileName(
            self, tr("Write the plan as a calendar file"), "plan.ics", tr("Calendar (*.ics)")
        )
        if name:
            self.write_calendar(Path(name))

    def write_calendar(self, path: Path) -> None:
        """Write all planned sessions and races to a calendar file."""
        from tercet.formats import calendar

        def then(entries: Any) -> None:
            try:
                path.write_bytes(calendar.write(entries))
            except OSError as error:
                self._complain(
                    tr("{file} was not written: {reason}.", file=path.name, reason=error.strerror)
                )
                return
            one, many = mark("{file} holds {n} entry"), mark("{file} holds {n} entries")
            self.context.acts.note(several(len(entries), one, many, file=path.name))

        library = self.context.library
        self.context.answers.when(library.submit(planning.calendar_entries), then)

    def _import(self) -> None:
        name, _ = QFileDialog.getOpenFileName(
            self, tr("Plan from a calendar file"), "", tr("Calendar (*.ics)")
        )
        if name:
            self.read_calendar(Path(name))

    def read_calendar(self, path: Path) -> None:
        """Plan what a calendar file holds, as one undo step; say so if it holds nothing."""
        from tercet.formats import calendar

        try:
            found = calendar.read(path.read_bytes())
        except OSError as error:
            self._complain(
                tr("{file} was not read: {reason}.", file=path.name, reason=error.strerror)
            )
            return
        if isinstance(found, list):
            self._do(planning.take_calendar, found)
            return
        reason = found.reason if isinstance(found, Failed) else tr("It is no calendar by RFC 5545.")
        self._complain(tr("{file} was not planned: {reason}", file=path.name, reason=reason))

    def _complain(self, text: str) -> None:
        self.context.answers.failed.emit(ValueError(text))


def _needed(store: Store) -> tuple[list[Block], list[Race], list[DatedThresholds]]:
    return queries.blocks(store), queries.races(store), queries.thresholds(store)


def _copy_planned(store: Store, planned_id: int, day: date) -> Any:
    return planning.move_planned(store, planned_id, day, copy=True)
