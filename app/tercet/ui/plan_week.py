"""One week of the plan: what it still allows, and its days, a line a session."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from tercet import language, units, week_days
from tercet.domain import DatedThresholds
from tercet.engine.allowance import Allowance
from tercet.engine.shades import Thresholds
from tercet.language import mark, tr
from tercet.library.views import ZERO, PlannedView, SeasonView, SessionView
from tercet.ui import words
from tercet.ui.amounts import amount_words
from tercet.ui.panes import scroll_to
from tercet.ui.plan_allowance import AllowanceLine
from tercet.ui.plan_line import PlanLine
from tercet.ui.plan_rows import DAY
from tercet.ui.widgets import ElidedLabel, Label, Pane, button, clear_scroll

#: Said beside the title, for the lines show none of it.
KEYS = mark("Enter: next day. Ctrl+Enter: another line. Drag a day, or M, to move.")


class WeekPane(Pane):
    """Shows a week to type in; what is done is told, nothing is stored here."""

    edited = Signal(object, int, str)
    moved = Signal(int, object, bool)  # planned id, day, copy
    removed = Signal(int)
    copy_asked = Signal(object)  # Monday

    def __init__(self) -> None:
        super().__init__()
        self._first_day: date | None = None
        self._extra: date | None = None  # a day with one more line to type in
        self._view: SeasonView | None = None
        self._thresholds: list[DatedThresholds] = []
        self._target: int | None = None
        self.title = Label("", "pane_title")
        self.copy = button(tr("Copy to next week"))
        self.copy.clicked.connect(lambda: self.copy_asked.emit(self._first_day))
        self.allowance = AllowanceLine()
        self.longer = Label("", "small", wrap=True)
        self.lines: list[PlanLine] = []
        self._inside = QWidget()
        self._rows = QVBoxLayout(self._inside)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(1)
        self._rows.addStretch(1)
        area = clear_scroll(self._inside)
        head = QHBoxLayout()
        head.setSpacing(12)
        head.addWidget(self.title)
        head.addWidget(ElidedLabel(tr(KEYS), "small", "text_2"), 1)
        head.addWidget(self.copy)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 12, 8)
        column.setSpacing(6)
        column.addLayout(head)
        column.addWidget(self.allowance)
        column.addWidget(self.longer)
        column.addWidget(area, 1)

    def show_week(
        self,
        first_day: date,
        view: SeasonView,
        thresholds: list[DatedThresholds],
        week: tuple[Allowance | None, str],
    ) -> None:
        """Show a week of the season, its lines judged by these thresholds."""
        if first_day != self._first_day:
            self._extra = None
        self._first_day, self._view, self._thresholds = first_day, view, thresholds
        self.title.setText(tr("Week of {day}", day=words.short_day(first_day)))
        over = first_day + 7 * DAY <= view.today
        self.allowance.show_week(week[0], week[1], over=over)
        planned, run = _of_week(view, first_day)
        self.longer.setText(too_long(view, first_day))
        self.longer.setVisible(bool(self.longer.text()))
        wanted: list[tuple[date, PlannedView | None, SessionView | None]] = []
        for k in range(7):
            day = first_day + k * DAY
            wanted += _lines_of(day, planned.get(day, []), run.get(day, []))
            if self._extra == day:
                wanted.append((day, None, None))
        self.copy.setEnabled(any(item is not None for _, item, _ in wanted))
        self._fit(len(wanted))
        lengths = [item.running_s for _, item, _ in wanted if item is not None]
        lengths += [session.running_s for _, _, session in wanted if session is not None]
        full = max([*lengths, 5400.0])
        before: date | None = None
        for line, (day, item, session) in zip(self.lines, wanted, strict=True):
            line.first = day != before
            before = day
            line.turn_to(day)
            line.show_line(
                item,
                f"{language.short_weekday(day.weekday())} {day.day}",
                self._values(day),
                full,
                session.seconds if session is not None else ZERO,
                session.name if session is not None else "",
                today=day == view.today,
            )

    def _values(self, day: date) -> Thresholds | None:
        from tercet.library.dated import in_force

        found = in_force(self._thresholds, day)
        return found.values if found is not None else None

    def _fit(self, count: int) -> None:
        while len(self.lines) < count:
            line = PlanLine(date.min, first=True)
            line.edited.connect(self.edited)
            line.next_asked.connect(lambda line=line: self._go_on(line))
            line.another_asked.connect(lambda line=line: self._another(line))
            line.dropped.connect(self._dropped)
            line.key_target.connect(self._aim)
            line.key_ended.connect(self._aimed)
            line.delete_asked.connect(self.removed)
            self._rows.insertWidget(len(self.lines), line)
            self.lines.append(line)
        while len(self.lines) > count:
            gone = self.lines.pop()
            gone.hide()
            gone.deleteLater()

    # Moving about ------------------------------------------------------------------------

    def _go_on(self, line: PlanLine) -> None:
        at = self.lines.index(line)
        later = [other for other in self.lines[at + 1 :] if other.day != line.day]
        if later:
            self._into(later[0])

    def type_on(self, day: date) -> None:
        """Go to the last line of a day, or to a new one where all of them hold something."""
        inside = [line for line in self.lines if line.day == day]
        if inside and inside[-1].item is not None:
            self._another(inside[-1])
        elif inside:
            self._into(inside[-1])

    def _another(self, line: PlanLine) -> None:
        self._extra = line.day
        self._again()
        inside = [other for other in self.lines if other.day == line.day]
        self._into(inside[-1])

    def _into(self, line: PlanLine) -> None:
        line.text.setFocus(Qt.FocusReason.TabFocusReason)
        scroll_to(line)

    def _again(self) -> None:
        if self._first_day is not None and self._view is not None:
            shown = self._first_day, self._view, self._thresholds
            self.show_week(*shown, self._allowance())

    def _allowance(self) -> tuple[Allowance | None, str]:
        assert self._view is not None and self._first_day is not None
        return allowance_of(self._view, self._first_day)

    def _dropped(self, planned_id: int, day: date, copy: bool) -> None:
        self.moved.emit(planned_id, day, copy)

    def _aim(self, line: PlanLine, step: int) -> None:
        """Rule the day that a session moved by keys would go to; step 0 begins."""
        if step == 0 or self._target is None:
            self._target = week_days.column_of(line.day)
        self._target = min(max(self._target + step, 0), 6)
        for other in self.lines:
            other.target(week_days.column_of(other.day) == self._target and other.first)

    def _aimed(self, line: PlanLine, keep: bool, copy: bool) -> None:
        target, self._target = self._target, None
        for other in self.lines:
            other.target(False)
        if keep and target is not None and line.item is not None and self._first_day is not None:
            day = self._first_day + target * DAY
            if day != line.day or copy:
                self.moved.emit(line.item.id, day, copy)


def allowance_of(view: SeasonView, first_day: date) -> tuple[Allowance | None, str]:
    """A week's allowance in its block's measure; of a week cut by two blocks the larger part."""
    from tercet.library.plans import week_allowance

    parts = [
        (sum(week.inside), block, week)
        for block in view.blocks
        for week in block.weeks
        if week.first_day == first_day
    ]
    if not parts:
        return None, "time"
    _, block, week = max(parts, key=lambda part: part[0])
    return week_allowance(block, week), block.measure


def too_long(view: SeasonView, first_day: date) -> str:
    """Which planned sessions of a week are longer than its block wants, in a sentence."""
    said = []
    for block in view.blocks:
        if block.longest is None:
            continue
        for week in block.weeks:
            for item in (item for items in week.planned for item in items):
                length = item.running_s if block.measure == "time" else sum(item.metres[:3])
                if week.first_day == first_day and length > block.longest + 59.0:
                    wanted = amount_words(block.longest, block.measure)
                    sentence = (
                        mark("{day} is longer than the longest run wanted, {amount} h.")
                        if block.measure == "time"
                        else mark("{day} is longer than the longest run wanted, {amount} {unit}.")
                    )
                    day = language.short_weekday(item.day.weekday())
                    said.append(tr(sentence, day=day, amount=wanted, unit=units.word()))
    return " ".join(said)


def _of_week(
    view: SeasonView, first_day: date
) -> tuple[dict[date, list[PlannedView]], dict[date, list[SessionView]]]:
    planned: dict[date, list[PlannedView]] = {}
    run: dict[date, list[SessionView]] = {}
    for block in view.blocks:
        for week in block.weeks:
            if week.first_day != first_day:
                continue
            for k in range(7):
                day = first_day + k * DAY
                planned.setdefault(day, []).extend(week.planned[k])
                run.setdefault(day, []).extend(s for s in week.days[k] if s.sport == "running")
    return planned, run


def _lines_of(
    day: date, planned: list[PlannedView], run: list[SessionView]
) -> list[tuple[date, PlannedView | None, SessionView | None]]:
    """Lines of a day: each planned session beside its run, then runs that nobody planned."""
    by_id = {session.id: session for session in run}
    lines: list[tuple[date, PlannedView | None, SessionView | None]] = [
        (day, item, by_id.pop(item.run_id, None) if item.run_id is not None else None)
        for item in planned
    ]
    lines += [(day, None, session) for session in by_id.values()]
    return lines or [(day, None, None)]
