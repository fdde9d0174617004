"""Painting the season plan's list: a week's row, its race, and a block's bracket with its name."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen

from tercet.language import tr
from tercet.ui import stairs, theme, words
from tercet.ui.hollow import paint_hollow, paint_plan_rule
from tercet.ui.plan_rows import PlanRows, Span, WeekRow
from tercet.ui.plan_weeks_words import span_words

#: Columns [px at 100 %]: bracket, week of, hours, bars.
BRACKET, WEEK_OF, HOURS, BARS = 148, 206, 314, 328
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter


@dataclass(frozen=True)
class Standing:
    """How a row stands in the list: its week chosen, in the chosen block, or drawn over."""

    chosen: bool = False
    lit: bool = False
    drawn: bool = False


def paint_week(
    painter: QPainter, rect: QRectF, week: WeekRow, hour: float, standing: Standing
) -> None:
    """One week: weeks to go, its day, hours, and its stair, of ``hour`` px an hour."""
    look = theme.current()
    px, later = look.px, week.state == "to come"
    if standing.lit or standing.drawn:
        painter.fillRect(rect, look.color("selected"))
        painter.fillRect(QRectF(0, rect.top(), 3, rect.height()), look.color("focus"))
    painter.setFont(look.font("small_bold" if standing.chosen else "small"))
    painter.setPen(look.color("text" if standing.chosen else "text_2"))
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
    painter.fillRect(QRectF(left, base + 1, rect.width() - left - px(14), 1), look.color("rule"))
    tall = stairs.heights((7, 11, 15), look)
    right = left
    if week.state != "run" and week.plan_s:
        role = "text_2" if standing.lit else "control"
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
        _race(painter, rect, right + px(8), base, words.listed(week.races))


def _race(painter: QPainter, rect: QRectF, x: float, base: float, name: str) -> None:
    look = theme.current()
    stairs.paint_pennant(painter, x, base - look.px(15), base, look)
    font = look.font("small_bold")
    painter.setFont(font)
    painter.setPen(look.color("text"))
    box = QRectF(x + look.px(15), rect.top(), rect.width() - x - look.px(20), rect.height())
    text = QFontMetricsF(font).elidedText(name, Qt.TextElideMode.ElideRight, box.width())
    painter.drawText(box, _LEFT, text)


def paint_span(
    painter: QPainter, shown: PlanRows, span: Span, height: float, *, chosen: bool
) -> None:
    """A block's bracket, or a gap's, beside rows of a height, with its name and words."""
    if span.end < span.start:
        return
    look = theme.current()
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
            fits = QFontMetricsF(painter.font()).elidedText(text, Qt.TextElideMode.ElideRight, room)
            box = QRectF(px(18), begin + line * height - px(3), room, height)
            painter.drawText(box, _LEFT, fits)
