"""Repetitions: the book of what was run fast, and the bench that predicts what a set asks."""

from __future__ import annotations

import math
from datetime import date
from typing import TYPE_CHECKING

from PySide6.QtCore import QRectF, QSize, Qt, QTimer
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QMenu,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from tercet import units
from tercet.engine.notation import race_speed
from tercet.engine.scale import Thresholds
from tercet.language import mark, tr
from tercet.library import planning
from tercet.library.dated import in_force
from tercet.library.repetition_book import Book, BookSet, Remark, book
from tercet.library.views import SeasonView
from tercet.store import queries
from tercet.store.database import Store
from tercet.ui import theme, words
from tercet.ui.bench_chart import minutes_of
from tercet.ui.bench_set import BenchSet, Sketch
from tercet.ui.book_view import CLASS_WORDS, HEADINGS, BookView, set_words, table_rows
from tercet.ui.folding import FoldingSplitter
from tercet.ui.page import Context, Page
from tercet.ui.plan_rows import DAY
from tercet.ui.twin import Twin
from tercet.ui.widgets import ElidedLabel, Label, Pane, Rule, button, clear_scroll

if TYPE_CHECKING:
    from tercet.domain import DatedThresholds

#: Window width over text size under which the panes stack, and their height then.
STACK_BELOW, STACKED_HEIGHT = 1076, 1180
#: What a day before and after a set is planned around it (common practice, no source). [min]
WARM_UP, COOL_DOWN = 15, 10
CAUTION = mark(
    "A model of an average runner, not a measurement of this one. Hard running is for healthy "
    "days: stop with chest pain, faintness or pain, and see a doctor."
)


class _Heads(QWidget):
    """Names of the lengths over the book's columns."""

    def __init__(self, view: BookView) -> None:
        super().__init__()
        self._view = view
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(300, theme.current().px(28))

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        painter = QPainter(self)
        painter.fillRect(self.rect(), look.color("sunken"))
        painter.setFont(look.font("small_bold"))
        painter.setPen(look.color("text_2"))
        _, starts = self._view.columns()
        for name, x in zip(CLASS_WORDS, starts, strict=True):
            box = QRectF(x, 0, 120, self.height())
            painter.drawText(box, int(Qt.AlignmentFlag.AlignVCenter), tr(name))


class RepetitionsPage(Page):
    """Shows the book at the left, the bench at the right."""

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self._view: SeasonView | None = None
        self._opened = False
        self._values: Thresholds | None = None
        self._units = units.chosen()
        self._remark: Remark | None = None
        self.book, self.shorter, self.longer = (
            BookView(),
            BenchSet(tr("Left set")),
            BenchSet(tr("Right set")),
        )
        self.heads = _Heads(self.book)
        self.none = Label(
            tr(
                "No fast repetitions yet. They are found in recordings with three or more of them, "
                "and in diaries."
            ),
            "body",
            "text_2",
            wrap=True,
        )
        self.said = Label("", "body", wrap=True)
        self.how = ElidedLabel(
            tr("One upright is one repetition; its width is its length."), "small", "text_2"
        )
        self.open = button(tr("Open"))
        self.plan = button(tr("Plan this"), name=tr("Plan one of the two sets"))
        self.split_shorter = button(
            tr("Half as long"), name=tr("Right set: the same metres half as long")
        )
        self.split_longer = button(
            tr("Twice as long"), name=tr("Right set: same metres twice as long")
        )
        self.who = ElidedLabel(tr("predicted; a model, not a measurement"), "small", "text_2")
        self.closing = Label("", "body", wrap=True)
        self.missing = Label(
            tr("The bench reckons from paces at LT1 and LT2. Give them under Thresholds."),
            "body",
            "text_2",
            wrap=True,
        )
        self.give = button(tr("Thresholds"))
        self.give.clicked.connect(lambda: self.page_asked.emit("thresholds"))
        self._arrange()
        self.book.chosen.connect(self._chosen)
        self.book.open_asked.connect(self.session_asked)
        self.open.clicked.connect(self._open)
        for made in (self.shorter, self.longer):
            made.changed.connect(self._reckon)
        self.split_shorter.clicked.connect(lambda: self._split(0.5))
        self.split_longer.clicked.connect(lambda: self._split(2.0))

    def _arrange(self) -> None:
        left, right = Pane(), Pane()
        self.splitter = FoldingSplitter(
            below=STACK_BELOW, height=STACKED_HEIGHT, beside=(592, 740), stacked=(520, 620)
        )
        outer = QVBoxLayout(self)
        outer.setContentsMargins(12, 0, 12, 0)
        outer.addWidget(clear_scroll(self.splitter))
        self.splitter.put(left, right)
        head = QHBoxLayout()
        head.setContentsMargins(17, 10, 15, 6)
        head.setSpacing(12)
        head.addWidget(Label(tr("Repetition book"), "pane_title"))
        head.addWidget(
            ElidedLabel(tr("hard running by length of repetition"), "small", "text_2"), 1
        )
        self.area = clear_scroll(self.book)
        self.twin = Twin(self.area, tr("Repetitions as a table"), left)
        self.twin.show_table.toggled.connect(lambda shown: self.heads.setHidden(shown))
        foot = QHBoxLayout()
        foot.setContentsMargins(17, 6, 15, 8)
        told = QVBoxLayout()
        told.setSpacing(0)
        told.addWidget(self.said)
        told.addWidget(self.how)
        foot.addLayout(told, 1)
        foot.addWidget(self.open)
        column = QVBoxLayout(left)
        column.setContentsMargins(1, 1, 1, 1)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(self.heads)
        self.none.setContentsMargins(17, 12, 15, 0)
        column.addWidget(self.none)
        column.addWidget(self.twin, 1)
        column.addWidget(Rule())
        column.addLayout(foot)
        top = QHBoxLayout()
        top.setSpacing(12)
        top.addWidget(Label(tr("Repetition bench"), "pane_title"))
        top.addWidget(self.who, 1)
        top.addWidget(self.plan)
        self.benches = QWidget()
        self.benches.setProperty("clear", True)
        sides = QHBoxLayout(self.benches)
        sides.setContentsMargins(0, 0, 0, 0)
        sides.setSpacing(18)
        sides.addWidget(self.shorter, 1)
        sides.addWidget(self.longer, 1)
        self.again = QWidget()
        self.again.setProperty("clear", True)
        again = QHBoxLayout(self.again)
        again.setContentsMargins(0, 0, 0, 0)
        again.setSpacing(8)
        again.addWidget(
            Label(tr("At the right the same metres as at the left,"), "small", "text_2")
        )
        for made in (self.split_shorter, self.split_longer):
            made.setProperty("slim", True)
            again.addWidget(made)
        again.addStretch(1)
        column = QVBoxLayout(right)
        column.setContentsMargins(16, 10, 16, 8)
        column.setSpacing(6)
        column.addLayout(top)
        lacking = QHBoxLayout()
        lacking.addWidget(self.missing, 1)
        lacking.addWidget(self.give)
        column.addLayout(lacking)
        column.addWidget(self.again)
        column.addWidget(self.benches, 1)
        column.addWidget(self.closing)
        column.addStretch(0)
        column.addWidget(Label(tr(CAUTION), "small", "text_2", wrap=True))

    @property
    def ring(self) -> list[QWidget]:
        """The book, then the bench's fields."""
        return [self.book, self.shorter.count, self.longer.count]

    # Showing -----------------------------------------------------------------------------

    def refresh(self, view: SeasonView) -> None:
        """Gather the book anew, and the paces in force."""
        self._view = view
        self.context.answers.when(
            self.context.library.submit(_needed, view), lambda found: self._show(view, *found)
        )

    def _show(
        self, view: SeasonView, found: Book, thresholds: list[DatedThresholds], runner: str
    ) -> None:
        self.book.set_book(found)
        if found.blocks and not self._opened:
            self._opened = True
            QTimer.singleShot(0, self, self._bring_current)
        self.heads.update()
        self.none.setVisible(not found.blocks)
        self.heads.setVisible(bool(found.blocks) and not self.twin.show_table.isChecked())
        self.twin.set_numbers(lambda: (tuple(map(tr, HEADINGS)), table_rows(found)), {0, 1, 2})
        self._remark = found.remarks[0] if found.remarks else None
        said = [remark.text for remark in found.remarks[:1]]
        if len(found.remarks) > 1:
            said.append(tr("And {n} more.", n=len(found.remarks) - 1))
        self.said.setText(" ".join(said))
        self.open.setVisible(self._remark is not None)
        force = in_force(thresholds, view.today)
        values = force.values if force is not None and force.values.by_speed else None
        fresh = values != self._values or self._units != units.chosen()
        self._values = values
        self.who.setText(_predicted(runner, force is not None and force.estimated))
        self.missing.setVisible(values is None)
        self.give.setVisible(values is None)
        for part in (self.benches, self.closing, self.plan, self.again):
            part.setVisible(values is not None)
        if values is None:
            return
        if self.shorter.sketch is None:
            speed = race_speed(values, metres=3000.0) or 4.0
            self.shorter.put(Sketch(15, 200.0, None, speed, 60.0, "jog"))
            self.longer.put(Sketch(3, 1000.0, None, speed, 180.0, "jog"))
        if self._units != units.chosen():
            self._units = units.chosen()
            for bench in (self.shorter, self.longer):
                if bench.sketch is not None:
                    bench.put(bench.sketch)
        if fresh or self.shorter.predicted is None:
            self._reckon()
        self._fill_days(view.today)

    def _bring_current(self) -> None:
        """Open at the block of today: its last weeks in view, and its heading if there is room."""
        rect = self.book.current_rect()
        self.area.ensureVisible(0, int(rect.bottom()), 0, 4)
        if rect.height() < self.area.viewport().height():
            self.area.ensureVisible(0, int(rect.top()), 0, 4)

    def _chosen(self, sets: tuple[BookSet, ...]) -> None:
        self.said.setText(" ".join(map(set_words, sets)))
        self._remark = Remark("", sets[0].run_id, sets[0].day)
        self.open.setVisible(True)
        rect = self.book.chosen_rect()
        self.area.ensureVisible(0, int(rect.center().y()), 0, int(rect.height()))

    def _open(self) -> None:
        if self._remark is not None:
            self.session_asked.emit(self._remark.run_id)

    # Bench -------------------------------------------------------------------------------

    def _reckon(self) -> None:
        """Predict both sets and give them the same axes."""
        if self._values is None:
            return
        sides = (self.shorter, self.longer)
        for side in sides:
            side.reckon(self._values)
        found = [side.predicted for side in sides if side.predicted is not None]
        if len(found) < 2:
            return
        minutes = max(map(minutes_of, found))
        beats = [float(b) for each in found for b in (each.heart_rate.min(), each.heart_rate.max())]
        known = all(map(math.isfinite, beats))
        low = math.floor((min(beats) - 6) / 10) * 10 if known else 100.0
        high = math.ceil((max(beats) + 4) / 10) * 10 if known else 190.0
        for side in sides:
            side.chart.show_set(side.predicted, minutes, (low, high), self._values.lt2_hr)
        self.closing.setText(self._compared())

    def _compared(self) -> str:
        one, two = self.shorter, self.longer
        assert one.sketch is not None and two.sketch is not None
        assert one.predicted is not None and two.predicted is not None
        alike = abs(one.sketch.total_m - two.sketch.total_m) <= 0.05 * one.sketch.total_m
        pace = abs(one.sketch.speed / two.sketch.speed - 1) < 0.01
        first = ""
        if alike and pace:
            first = tr("Same metres, same pace.")
        elif alike:
            first = tr("Same metres.")
        elif pace:
            first = tr("Same pace.")
        near = one.predicted.near_s - two.predicted.near_s
        if abs(near) < 30:
            both = tr("Both are predicted to ask about alike.")
            return f"{first} {both}".strip()
        less, more = (one, two) if near < 0 else (two, one)
        assert less.predicted is not None and more.predicted is not None
        second = tr(
            "{short} at a time spend {less} near the highest uptake, {long} {more}. Broken short, "
            "a set can come back in 2 or 3 days; in long pieces it needs longer (common practice).",
            short=less.length.text(),
            less=_about(less.predicted.near_s),
            long=more.length.text(),
            more=_about(more.predicted.near_s),
        )
        return f"{first} {second}".strip()

    def _split(self, times: float) -> None:
        if self.shorter.sketch is not None:
            self.longer.put(self.shorter.sketch.split(times))
            self._reckon()

    def _fill_days(self, today: date) -> None:
        menu = self.plan.menu() or QMenu(self.plan)
        menu.clear()
        for side, name in ((self.shorter, tr("Left set")), (self.longer, tr("Right set"))):
            part = menu.addMenu(name)
            for k in range(14):
                day = today + k * DAY
                action = part.addAction(words.long_day(day))
                action.triggered.connect(lambda _=False, side=side, day=day: self._plan(side, day))
        self.plan.setMenu(menu)

    def _plan(self, side: BenchSet, day: date) -> None:
        if side.sketch is not None:
            text = f"{WARM_UP} min easy, {side.sketch.notation}, {COOL_DOWN} min easy"
            said = tr(
                "Planned for {day}: {what}", day=words.short_day(day), what=side.sketch.notation
            )
            self.context.acts.do(planning.add_planned, day, text, said=said)


def _about(seconds: float) -> str:
    if seconds < 10:
        return tr("hardly any time")
    return tr("about {time}", time=words.duration(seconds))


def _predicted(runner: str, estimated: bool) -> str:
    """For whom the bench reckons, and how surely."""
    if runner and estimated:
        said = mark(
            "predicted for {runner}; about, from estimated paces; a model, not a measurement"
        )
    elif runner:
        said = mark("predicted for {runner}; a model, not a measurement")
    elif estimated:
        said = mark("predicted; about, from estimated paces; a model, not a measurement")
    else:
        said = mark("predicted; a model, not a measurement")
    return tr(said, runner=runner)


def _needed(store: Store, view: SeasonView) -> tuple[Book, list[DatedThresholds], str]:
    return book(store, view), queries.thresholds(store), queries.setting(store, "runner")
