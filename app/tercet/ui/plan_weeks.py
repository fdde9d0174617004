"""The season plan as a list: a row a week, brackets for blocks, and grips to move their edges."""

from __future__ import annotations

from datetime import date, timedelta

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from tercet.language import tr
from tercet.ui import theme
from tercet.ui.plan_grip import Grip
from tercet.ui.plan_rows import DAY, PlanRows, Span
from tercet.ui.plan_weeks_paint import BARS, BRACKET, Standing, paint_span, paint_week
from tercet.ui.plan_weeks_words import week_spoken

ROW = 24


class PlanWeeks(QWidget):
    """Draws the plan; weeks are chosen by click or arrow keys, edges moved by their grips."""

    week_chosen = Signal(object)  # its Monday
    edge_moved = Signal(object, object, object)  # first span, second span, day of the new edge
    previewed = Signal(object)  # PlanRows while an edge or a block moves
    block_moved = Signal(object, object)  # its span before, PlanRows after
    drawn = Signal(object)  # Span of the weeks drawn over, for a block

    def __init__(self) -> None:
        super().__init__()
        self._rows: PlanRows | None = None
        self._shown: PlanRows | None = None
        self.chosen: date | None = None
        self._grips: list[Grip] = []
        self._held: tuple[int, bool] | None = None  # row under the hand, and whether on a name
        self._drawn: tuple[int, int] | None = None  # rows drawn over, for a block
        self._followed: tuple[Span, timedelta] | None = None  # block that the choice goes with
        self._key_weeks = 0  # weeks that keys have moved the chosen block by
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(tr("Weeks of the season"))
        theme.changed.connect(self._theme_changed)

    def set_rows(self, rows: PlanRows) -> None:
        """Show another plan; the chosen week stays, else this or the first to come."""
        self._rows = self._shown = rows
        self._drawn, self._key_weeks = None, 0
        first_days = [week.first_day for week in rows.weeks]
        if self._followed is not None:
            block, inside = self._followed
            self.chosen = next((s.start + inside for s in rows.spans if s.id == block.id), None)
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
            self._drawn = self._followed = None
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
        self._show_preview()

    def _settle(self, number: int, keep: bool) -> None:
        assert self._rows is not None and self._shown is not None
        before, after = self._rows.spans, self._shown.spans
        one, two, edge = before[number], before[number + 1], after[number + 1].start
        if keep and edge != two.start:
            self.edge_moved.emit(one, two, edge)
            return
        self._shown = self._rows
        self._show_preview()

    # Keys and mouse ----------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        at = self._row_at(event.position())
        if at is not None and self._rows is not None:
            self.choose(self._rows.weeks[at].first_day)
            self._held = at, self._on_name(event.position())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        at = self._row_at(event.position(), within=self._held is not None)
        if self._held is None or at is None:
            named = at is not None and self._on_name(event.position()) and self._block_at(at)
            self.setToolTip(tr("Drag the block, or Alt with up and down") if named else "")
            self.setCursor(Qt.CursorShape.OpenHandCursor if named else Qt.CursorShape.ArrowCursor)
            return
        held, on_name = self._held
        if not self._block_at(held):
            self._draw(held, at)
        elif on_name:
            self._shift(at - held)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        self._held = None
        if self._drawn is not None:
            self._make()
        elif self._shown is not self._rows:
            self._keep_shift()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self._rows is None or self.chosen is None:
            return
        first_days = [week.first_day for week in self._rows.weeks]
        at = first_days.index(self.chosen)
        now = [k for k, week in enumerate(self._rows.weeks) if week.state == "now"]
        key, modifiers = Qt.Key(event.key()), event.modifiers()
        step = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}.get(key, 0)
        if step and modifiers & Qt.KeyboardModifier.AltModifier:
            self._key_weeks += step
            self._shift(self._key_weeks)
            return
        if step and modifiers & Qt.KeyboardModifier.ShiftModifier:
            if not self._block_at(at):
                self._draw(at, (self._drawn or (at, at))[1] + step)
            return
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self._drawn is not None:
            self._make()
            return
        target = {
            Qt.Key.Key_Up: at - 1,
            Qt.Key.Key_Down: at + 1,
            Qt.Key.Key_Home: 0,
            Qt.Key.Key_End: len(first_days) - 1,
            Qt.Key.Key_T: now[0] if now else at,
        }.get(key)
        if key == Qt.Key.Key_Escape and (self._drawn is not None or self._key_weeks):
            self._let_be()
        elif target is None:
            super().keyPressEvent(event)
        elif 0 <= target < len(first_days):
            self.choose(first_days[target])

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Alt and self._key_weeks:
            self._keep_shift()
        super().keyReleaseEvent(event)

    def _row_at(self, where: QPointF, *, within: bool = False) -> int | None:
        if self._rows is None:
            return None
        at = int((where.y() - theme.current().px(4)) // self.row_height())
        last = len(self._rows.weeks) - 1
        if within:
            return min(max(at, 0), last)
        return at if 0 <= at <= last else None

    def _on_name(self, where: QPointF) -> bool:
        return where.x() < theme.current().px(BRACKET) - theme.current().px(14)

    def _block_at(self, row: int) -> Span | None:
        """The block of a row, if it is in one."""
        assert self._rows is not None
        span = self._rows.span_of(self._rows.weeks[row])
        return span if span is not None and span.id is not None else None

    # Drawing and moving blocks -----------------------------------------------------------

    def _draw(self, start: int, end: int) -> None:
        """Draw over unplanned weeks from one row towards another, as far as the gap goes."""
        assert self._rows is not None
        gap = self._rows.span_of(self._rows.weeks[start])
        step = 1 if end >= start else -1
        reached = start
        for row in range(start, min(max(end, 0), len(self._rows.weeks) - 1) + step, step):
            if self._rows.span_of(self._rows.weeks[row]) != gap:
                break
            reached = row
        if self._drawn is not None or reached != start:
            self._drawn = start, reached
            self.update()

    def _make(self) -> None:
        """Tell what was drawn; days at its ends that another block holds are left to it."""
        assert self._rows is not None and self._drawn is not None
        first, last = sorted(self._drawn)
        weeks = self._rows.weeks
        gap = self._rows.span_of(weeks[first])
        start, end = weeks[first].first_day, weeks[last].first_day + 6 * DAY
        if gap is not None:
            start, end = max(start, gap.start), min(end, gap.end)
        self._drawn = None
        self.update()
        self.drawn.emit(Span(None, "", "", start, end))

    def _shift(self, weeks: int) -> None:
        """Show the chosen week's block moved whole by weeks."""
        assert self._rows is not None
        row = next(k for k, w in enumerate(self._rows.weeks) if w.first_day == self.chosen)
        span = self._block_at(row)
        if span is not None and span.id is not None:
            self._shown = self._rows.shifted(span.id, weeks) if weeks else self._rows
            self._show_preview()

    def _keep_shift(self) -> None:
        """Keep a block where it was moved to; the chosen week goes along with it."""
        before, after = self._rows, self._shown
        assert before is not None and after is not None and self.chosen is not None
        row = next(week for week in before.weeks if week.first_day == self.chosen)
        old = before.span_of(row)
        new = next((span for span in after.spans if old is not None and span.id == old.id), old)
        self._key_weeks = 0
        if old is None or new is None or new.start == old.start:
            self._let_be()
            return
        self._followed = old, self.chosen - old.start
        self.block_moved.emit(old, after)

    def _let_be(self) -> None:
        """Leave a block undrawn or where it was."""
        assert self._rows is not None
        self._key_weeks, self._drawn, self._shown = 0, None, self._rows
        self._show_preview()

    def _show_preview(self) -> None:
        assert self._shown is not None
        self._place_grips()
        self.update()
        self.previewed.emit(self._shown)

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
        if self._key_weeks:
            self._let_be()
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

    def _chosen_span(self, shown: PlanRows) -> Span | None:
        """The chosen week's block, also while it or its edges move; else the gap it is in."""
        assert self._rows is not None
        row = next(week for week in self._rows.weeks if week.first_day == self.chosen)
        span = self._rows.span_of(row)
        if span is None or span.id is None:
            return shown.span_of(row)
        return next((each for each in shown.spans if each.id == span.id), None)

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
        chosen_span = self._chosen_span(shown)
        hour = self.px_per_hour()
        first, last = sorted(self._drawn) if self._drawn is not None else (0, -1)
        for number, week in enumerate(shown.weeks):
            rect = QRectF(0, top + number * height, self.width(), height)
            lit = self._drawn is None and chosen_span is not None
            standing = Standing(
                week.first_day == self.chosen,
                lit and shown.span_of(week) == chosen_span,
                first <= number <= last,
            )
            paint_week(painter, rect, week, hour, standing)
        for span in shown.spans:
            paint_span(painter, shown, span, height, chosen=span == chosen_span)
        if self.hasFocus() and self.chosen is not None:
            ring = self.chosen_rect().adjusted(look.px(BRACKET) + look.px(14), 1, -3, -1)
            painter.setPen(QPen(look.color("focus"), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(ring, 4, 4)
