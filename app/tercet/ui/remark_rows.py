"""What stands out, line by line, and the week to come with its cautions."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from tercet.domain import Planned
from tercet.language import mark, short_weekday, tr
from tercet.library.insight import WeekRow
from tercet.library.next_week import NextWeek
from tercet.library.standing import CAUTION, Remark
from tercet.ui import theme, words
from tercet.ui.flow import FlowLayout
from tercet.ui.widgets import Label, button


class RemarkRow(QWidget):
    """The number, what it counts, a sentence or two, the next steps."""

    step_asked = Signal(object, object)  # Remark, Step
    put_away = Signal(object)

    def __init__(self, remark: Remark) -> None:
        super().__init__()
        look = theme.current()
        self.remark = remark
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 8, 0, 10)
        grid.setHorizontalSpacing(look.px(10))
        grid.setVerticalSpacing(4)
        grid.setColumnMinimumWidth(0, look.px(76))
        grid.setColumnStretch(1, 1)
        top = Qt.AlignmentFlag.AlignTop
        grid.addWidget(Label(remark.number, "big"), 0, 0, top)
        grid.addWidget(Label(remark.title, "body_bold", wrap=True), 0, 1)
        text = Label(remark.text, "body", "text_2", wrap=True)
        if remark.source:
            text.setToolTip(remark.source)
            text.setAccessibleDescription(remark.source)
        grid.addWidget(text, 1, 1)
        self.buttons = []
        line = FlowLayout()
        for step in remark.steps:
            made = button(step.words, name=f"{step.words}: {remark.title}")
            made.clicked.connect(lambda _=False, step=step: self.step_asked.emit(remark, step))
            if step.lines:
                told = tr("Writes into the plan. {what}", what=written(step.lines))
                made.setToolTip(told)
                made.setAccessibleDescription(told)
                made.clicked.connect(lambda _=False, made=made: made.setEnabled(False))
            self.buttons.append(made)
        away = button(
            tr("Put away"), name=tr("Put away for this stretch: {title}", title=remark.title)
        )
        away.setProperty("flat", True)
        away.setToolTip(tr("Hide this line for this stretch; it comes back if it grows"))
        away.clicked.connect(lambda: self.put_away.emit(remark))
        self.buttons.append(away)
        for made in self.buttons:
            made.setProperty("slim", True)
            line.addWidget(made)
        grid.addLayout(line, 2, 1)
        self.setAccessibleName(f"{remark.number} {remark.title}. {remark.text}")


def written(lines: Sequence[Planned]) -> str:
    """Lines of the plan with their days: ``Tue 12 May: 30 min easy``."""
    told = ((f"{words.weekday(line.day)} {words.short_day(line.day)}", line) for line in lines)
    return "; ".join(tr("{day}: {what}", day=day, what=line.notation) for day, line in told)


class NextWeekPart(QWidget):
    """What next week asks for, as planned lines to be put into the plan, with the cautions."""

    plan_asked = Signal()
    open_asked = Signal()

    def __init__(self, week: NextWeek, suggested: Sequence[Planned] = ()) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 6)
        column.setSpacing(4)
        column.addWidget(
            Label(tr("Week of {day}", day=words.short_day(week.first_day)), "body_bold")
        )
        for text in week.lines:
            column.addWidget(Label(text, "body", "text_2", wrap=True))
        self.into_plan = button(tr("Put into the plan"))
        self.into_plan.setProperty("slim", True)
        self.into_plan.clicked.connect(self._once)
        shown = button(tr("Open the plan"))
        shown.setProperty("slim", True)
        shown.clicked.connect(self.open_asked)
        if suggested:
            column.addWidget(Label(tr("As lines of the plan, to be changed there:"), "small_bold"))
            grid = QGridLayout()
            grid.setHorizontalSpacing(theme.current().px(10))
            grid.setVerticalSpacing(1)
            grid.setColumnStretch(1, 1)
            for row, item in enumerate(suggested):
                grid.addWidget(Label(short_weekday(item.day.weekday()), "small", "text_2"), row, 0)
                grid.addWidget(Label(item.notation, "small", wrap=True), row, 1)
            column.addLayout(grid)
        elif week.amounts is not None:
            told = tr("The plan of this week holds what is suggested.")
            column.addWidget(Label(told, "small", "text_2", wrap=True))
        column.addWidget(Label(tr(CAUTION), "small", "text_2", wrap=True))
        line = FlowLayout()
        for made in ([self.into_plan] if suggested else []) + [shown]:
            line.addWidget(made)
        column.addLayout(line)

    def _once(self) -> None:
        self.into_plan.setEnabled(False)
        self.plan_asked.emit()


class WeeksPart(QWidget):
    """The latest weeks: time, distance, load by effort said, monotony, strain, days off."""

    HEADS = (
        mark("week of"),
        mark("time"),
        mark("distance"),
        mark("load"),
        mark("monotony"),
        mark("strain"),
        mark("days off"),
    )
    HELP = mark(
        "Load is effort (CR-10) times minutes; monotony its mean over its spread by day, strain "
        "their product (Foster 1998). A dash: an effort was not said."
    )

    def __init__(self, weeks: tuple[WeekRow, ...]) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 6)
        column.setSpacing(4)
        column.addWidget(Label(tr("Weeks"), "body_bold"))
        grid = QGridLayout()
        grid.setHorizontalSpacing(theme.current().px(6))
        grid.setVerticalSpacing(1)
        sides = [Qt.AlignmentFlag.AlignLeft, *[Qt.AlignmentFlag.AlignRight] * 6]
        for place, head in enumerate(self.HEADS):
            grid.addWidget(Label(tr(head), "small", "text_2"), 0, place, sides[place])
        for row, week in enumerate(weeks, start=1):
            for place, cell in enumerate(self._cells(week)):
                grid.addWidget(Label(cell, "small"), row, place, sides[place])
        column.addLayout(grid)
        column.addWidget(Label(tr(self.HELP), "small", "text_2", wrap=True))

    @staticmethod
    def _cells(week: WeekRow) -> list[str]:
        load = week.load
        told = [words.NOTHING] * 3
        if load is not None:
            told[0] = words.number(load.total)
            if load.monotony is not None and load.strain is not None:
                told[1:] = [words.number(load.monotony, 1), words.number(load.strain)]
        return [
            words.short_day(week.first_day),
            words.hours(week.seconds),
            words.distance(week.metres),
            *told,
            str(week.days_off),
        ]


def headed(title: str, about: str = "") -> QHBoxLayout:
    """A pane's title with a few words at its right."""
    head = QHBoxLayout()
    head.addWidget(Label(title, "pane_title"), 1)
    if about:
        head.addWidget(Label(about, "small", "text_2"))
    return head
