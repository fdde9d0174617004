"""The season plan as a list: a row a week, brackets for blocks, and grips to move their edges."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from tercet.language import mark, several, tr
from tercet.ui import stairs, theme, words
from tercet.ui.hollow import paint_hollow, paint_plan_rule
from tercet.ui.plan_grip import Grip
from tercet.ui.plan_rows import PlanRows, Span, WeekRow, kind_words

#: Columns [px at 100 %]: bracket, weeks to go, week of, hours, bars.
BRACKET, TO_GO, WEEK_OF, HOURS, BARS = 148, 190, 206, 314, 328
ROW = 24
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter


class PlanWeeks(QWidget):
    """Draws the plan; weeks are chosen by click or arrow keys, edges moved by their grips."""

    week_chosen = Signal(object)  # its Monday
    edge_moved = Signal(object, object, object)  # first span, second span, day of the new edge
    previewed = Signal(object)  # PlanRows while an edge moves

    def __init__(self) -> None:
        super().__init__()
        self._rows: PlanRows | None = None
        self._shown: PlanRows | None = None
        self.chosen: date | None = None
        self._grips: list[Grip] = []
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(tr("Weeks of the season"))
        theme.changed.connect(self._theme_changed)

    def set_rows(self, rows: PlanRows) -> None:
        """Show another plan; the chosen week stays, else this or the first to come."""
        self._rows = self._shown = rows
        first_days = [week.first_day for week in rows.weeks]
        if self.chosen not in first_days:
            ahead = [week.first_day for week in rows.weeks if week.state != "run"]
            self.chosen = (ahead or first_days[-1:])[0]
        self._place_grips()
        self._describe()
        self.updateGeometry()
        self.update()

    @property
    def rows(self) -> PlanRows | None:
        """The plan as shown, also while an edge is moved."""
        return self._shown

    @property
    def grips(self) -> list[Grip]:
        """The grips between blocks, from top to bottom."""
        return [grip for grip in self._grips if not grip.isHidden()]

    def row_height(self) -> int:
        """Height of a week's row [px]."""
        return theme.current().px(ROW)

    def sizeHint(self) -> QSize:
        count = len(self._rows.weeks) if self._rows is not None else 0
        return QSize(560, count * self.row_height() + theme.current().px(8))

    def minimumSizeHint(self) -> QSize:
        return QSize(theme.current().px(480), self.sizeHint().height())

    def choose(self, first_day: date) -> None:
        """Choose a week."""
        if self._rows is not None and any(w.first_day == first_day for w in self._rows.weeks):
            self.chosen = first_day
            self._describe()
            self.update()
            self.week_chosen.emit(first_day)

    # Grips -------------------------------------------------------------------------------

    def _place_grips(self) -> None:
        assert self._shown is not None
        spans = self._shown.spans
        while len(self._grips) < len(spans) - 1:
            grip = Grip(self, len(self._grips))
            grip.moved.connect(self._preview)
            grip.let_go.connect(self._settle)
            self._grips.append(grip)
        first = self._shown.weeks[0].first_day
        px, height = theme.current().px, self.row_height()
        for number, grip in enumerate(self._grips):
            there = number < len(spans) - 1
            if there:
                one, two = spans[number], spans[number + 1]
                there = one.id is not None or two.id is not None
                weeks = (two.start - first).days / 7
                grip.resize(px(28), px(28))
                grip.move(px(BRACKET) + 1 - px(14), round(weeks * height) - px(14) + px(4))
                grip.name(one.name, two.name, two.start)
            grip.setVisible(there)

    def _preview(self, number: int, weeks: int) -> None:
        assert self._rows is not None
        self._shown = self._rows.moved(number, weeks)
        self._place_grips()
        self.update()
        self.previewed.emit(self._shown)

    def _settle(self, number: int, keep: bool) -> None:
        assert self._rows is not None and self._shown is not None
        before, after = self._rows.spans, self._shown.spans
        one, two, edge = before[number], before[number + 1], after[number + 1].start
        if keep and edge != two.start:
            self.edge_moved.emit(one, two, edge)
            return
        self._shown = self._rows
        self._place_grips()
        self.update()
        self.previewed.emit(self._rows)

    # Keys and mouse ----------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if self._rows is None:
            return
        at = int((event.position().y() - theme.current().px(4)) // self.row_height())
        if 0 <= at < len(self._rows.weeks):
            self.choose(self._rows.weeks[at].first_day)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self._rows is None or self.chosen is None:
            return
        first_days = [week.first_day for week in self._rows.weeks]
        at = first_days.index(self.chosen)
        now = [k for k, week in enumerate(self._rows.weeks) if week.state == "now"]
        target = {
            Qt.Key.Key_Up: at - 1,
            Qt.Key.Key_Down: at + 1,
            Qt.Key.Key_Home: 0,
            Qt.Key.Key_End: len(first_days) - 1,
            Qt.Key.Key_T: now[0] if now else at,
        }.get(Qt.Key(event.key()))
        if target is None:
            super().keyPressEvent(event)
        elif 0 <= target < len(first_days):
            self.choose(first_days[target])

    def chosen_rect(self) -> QRectF:
        """Where the chosen week's row lies."""
        assert self._rows is not None
        at = next(k for k, w in enumerate(self._rows.weeks) if w.first_day == self.chosen)
        height = self.row_height()
        return QRectF(0, theme.current().px(4) + at * height, self.width(), height)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self._shown is not None:
            self._place_grips()

    def _theme_changed(self) -> None:
        if self._shown is not None:
            self._place_grips()
        self.updateGeometry()
        self.update()

    def _describe(self) -> None:
        week = next((w for w in self._rows.weeks if w.first_day == self.chosen), None)  # type: ignore[union-attr]
        if week is not None and self._shown is not None:
            self.setAccessibleDescription(week_spoken(self._shown, week))

    # Painting ----------------------------------------------------------------------------

    def px_per_hour(self) -> float:
        """Length of an hour: the longest week, run or planned, and its race, fit the width."""
        if self._rows is None:
            return 40.0
        look = theme.current()
        longest = max((max(w.run_s, w.plan_s) for w in self._rows.weeks), default=3600.0)
        room = max(self.width() - look.px(BARS) - look.px(84), look.px(100))
        return room / max(longest / 3600.0, 1.0)

    def paintEvent(self, event: QPaintEvent) -> None:
        shown = self._shown
        if shown is None:
            return
        look, height = theme.current(), self.row_height()
        painter = QPainter(self)
        top = float(look.px(4))
        chosen_span = next(
            (shown.span_of(w) for w in shown.weeks if w.first_day == self.chosen), None
        )
        hour = self.px_per_hour()
        for number, week in enumerate(shown.weeks):
            rect = QRectF(0, top + number * height, self.width(), height)
            chosen = chosen_span is not None and shown.span_of(week) == chosen_span
            if chosen:
                painter.fillRect(rect, look.color("selected"))
                painter.fillRect(QRectF(0, rect.top(), 3, height), look.color("focus"))
            self._week(painter, rect, week, hour, chosen)
        for span in shown.spans:
            self._span(painter, shown, span, span == chosen_span)
        if self.hasFocus() and self.chosen is not None:
            ring = self.chosen_rect().adjusted(5, 1, -3, -1)
            painter.setPen(QPen(look.color("focus"), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(ring, 4, 4)

    def _week(
        self, painter: QPainter, rect: QRectF, week: WeekRow, hour: float, chosen: bool
    ) -> None:
        look = theme.current()
        px, now, later = look.px, week.first_day == self.chosen, week.state == "to come"
        painter.setFont(look.font("small_bold" if now else "small"))
        painter.setPen(look.color("text" if now else "text_2"))
        to_go = (
            ""
            if week.to_go is None
            else tr("race", "in a column of weeks to go")
            if week.to_go == 0
            else str(week.to_go)
        )
        painter.drawText(QRectF(px(BRACKET) + 4, rect.top(), px(38), rect.height()), _RIGHT, to_go)
        day = words.short_day(week.first_day)
        painter.drawText(QRectF(px(WEEK_OF), rect.top(), px(70), rect.height()), _LEFT, day)
        hours = week.plan_s if later and not week.run_s else week.run_s
        painter.setFont(look.font("small_italic" if later else "small_bold"))
        painter.setPen(look.color("text_3" if later else "text"))
        box = QRectF(px(HOURS) - px(60), rect.top(), px(60), rect.height())
        painter.drawText(box, _RIGHT, words.hours(hours) if hours or not later else "")
        base = rect.bottom() - px(6)
        left = float(px(BARS))
        painter.fillRect(
            QRectF(left, base + 1, self.width() - left - px(14), 1), look.color("rule")
        )
        tall = stairs.heights((7, 11, 15), look)
        right = left
        if week.state != "run" and week.plan_s:
            role = "text_2" if chosen else "control"
            right = paint_hollow(painter, left, base, hour, week.plan, tall, look, role)
        if week.run_s:
            end = stairs.paint_stair(painter, left, base, hour, week.run, tall, look)
            right = max(right, end)
        if week.state == "run" and week.plan_s:
            paint_plan_rule(painter, left, base, week.plan_s * hour / 3600.0, look)
        if week.state == "now":
            bar = QRectF(left - px(6), rect.top() + 2, 3, rect.height() - 4)
            painter.fillRect(bar, look.color("focus"))
        if week.races:
            self._race(painter, rect, right + px(8), base, words.listed(week.races))

    def _race(self, painter: QPainter, rect: QRectF, x: float, base: float, name: str) -> None:
        look = theme.current()
        stairs.paint_pennant(painter, x, base - look.px(15), base, look)
        font = look.font("small_bold")
        painter.setFont(font)
        painter.setPen(look.color("text"))
        box = QRectF(x + look.px(15), rect.top(), self.width() - x - look.px(20), rect.height())
        text = QFontMetricsF(font).elidedText(name, Qt.TextElideMode.ElideRight, box.width())
        painter.drawText(box, _LEFT, text)

    def _span(self, painter: QPainter, shown: PlanRows, span: Span, chosen: bool) -> None:
        look, height = theme.current(), self.row_height()
        px = look.px
        first = shown.weeks[0].first_day
        begin = px(4) + (span.start - first).days / 7 * height
        end = px(4) + ((span.end - first).days + 1) / 7 * height
        x = px(BRACKET)
        planned = span.id is not None
        pen = QPen(look.color("text" if chosen and planned else "control"), 2)
        if not planned:
            pen.setDashPattern([2.0, 2.0])
        painter.setPen(pen)
        painter.drawLine(QPointF(x + 1, begin + px(5)), QPointF(x + 1, end - px(5)))
        room = x - px(18) - px(20)
        painter.setFont(look.font("block" if planned else "small_italic"))
        painter.setPen(look.color("text" if planned else "text_2"))
        metrics = QFontMetricsF(painter.font())
        name = metrics.elidedText(span.name, Qt.TextElideMode.ElideRight, room)
        painter.drawText(QRectF(px(18), begin, room, height), _LEFT, name)
        if not planned:
            return
        painter.setFont(look.font("small"))
        painter.setPen(look.color("text_2"))
        for line, text in enumerate(span_words(shown, span), 1):
            if begin + (line + 1) * height <= end + 1:
                fits = QFontMetricsF(painter.font()).elidedText(
                    text, Qt.TextElideMode.ElideRight, room
                )
                box = QRectF(px(18), begin + line * height - px(3), room, height)
                painter.drawText(box, _LEFT, fits)


def span_words(shown: PlanRows, span: Span) -> tuple[str, ...]:
    """What stands under a block's name: its kind and weeks, then hours and share of easy."""
    days = (span.end - span.start).days + 1
    weeks = round(days / 7) or 1
    run = shown.run_in(span)
    easy = shown.easy_in(span)
    hours = sum(run[:3]) + run[4]
    kind = kind_words(span.kind)
    length = several(weeks, mark("{kind}, {n} week"), mark("{kind}, {n} weeks"), kind=kind)
    if easy is None:
        return (length,)
    told = tr("{time}, {share} easy", time=words.hours(hours), share=words.share(easy))
    return length, told


HEADINGS = (
    mark("Week of"),
    mark("To go"),
    mark("Block"),
    mark("Run"),
    mark("Planned"),
    mark("Easy"),
    mark("Moderate"),
    mark("Hard"),
)


def table_rows(rows: PlanRows) -> list[tuple[str, ...]]:
    """All weeks, a row each, under :data:`HEADINGS`; the shades are those run."""
    out = []
    for week in rows.weeks:
        span = rows.span_of(week)
        to_go = "" if week.to_go is None else str(week.to_go)
        planned = words.hours(week.plan_s) if week.plan_s else ""
        shades = [words.hours(value) if week.run_s else "" for value in week.run[:3]]
        name = span.name if span is not None else ""
        run = words.hours(week.run_s) if week.run_s else ""
        out.append((words.short_day(week.first_day), to_go, name, run, planned, *shades))
    return out


def week_spoken(shown: PlanRows, week: WeekRow) -> str:
    """A week for a screen reader."""
    span = shown.span_of(week)
    parts = [tr("Week of {day}", day=words.long_day(week.first_day))]
    if span is not None:
        parts.append(span.name if span.id is None else f"{span.name}, {kind_words(span.kind)}")
    if week.to_go:
        parts.append(
            several(week.to_go, mark("{n} week to the race"), mark("{n} weeks to the race"))
        )
    if week.run_s:
        parts.append(tr("{time} run", time=words.spoken(week.run_s)))
    if week.plan_s:
        parts.append(tr("{time} planned", time=words.spoken(week.plan_s)))
    parts += [tr("race {name}", name=name) for name in week.races]
    return ", ".join(parts)
