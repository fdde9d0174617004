"""Both lines over the year: flat or sloping stretches in their bands, tests on top, today."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFocusEvent, QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from tercet.domain import DatedThresholds
from tercet.engine.shades import Shade
from tercet.language import mark, several, tr
from tercet.library.dated import in_force
from tercet.library.engine_words import worded
from tercet.ui import stairs, theme, words
from tercet.ui.panes import KEYBOARD

#: At most this much is shown, at least that. [days]
LONGEST, SHORTEST = 540, 90
SHADES = (
    (mark("hard"), Shade.HARD),
    (mark("moderate"), Shade.MODERATE),
    (mark("easy"), Shade.EASY),
)


@dataclass(frozen=True)
class Quantity:
    """What is drawn: pace, heart rate or power."""

    names: tuple[str, str]  # fields of LT1 and LT2
    write: Callable[[float], str]
    ticks: Callable[[float, float], Sequence[float]]

    def known(self, entry: DatedThresholds) -> bool:
        """Whether thresholds give it."""
        return all(getattr(entry.values, name) is not None for name in self.names)


def pace_quantity(units: words.Units) -> Quantity:
    """Level pace, spaced by speed."""
    metres = words.UNIT_METRES[units]

    def ticks(low: float, high: float) -> list[float]:
        slow, fast = metres / low, metres / high
        step = next((s for s in (10, 15, 30, 60, 120) if (slow - fast) / s <= 5), 300)
        first = int(fast // step + 1) * step
        return [metres / seconds for seconds in range(first, int(slow) + 1, step)]

    return Quantity(("lt1_speed", "lt2_speed"), lambda speed: words.bare_pace(speed, units), ticks)


def beats_quantity() -> Quantity:
    """Heart rate."""
    return Quantity(("lt1_hr", "lt2_hr"), words.number, _whole_ticks)


def watts_quantity() -> Quantity:
    """Running power."""
    return Quantity(("lt1_power", "lt2_power"), words.number, _whole_ticks)


def _whole_ticks(low: float, high: float) -> list[float]:
    step = next((s for s in (5, 10, 20, 50) if (high - low) / s <= 5), 100)
    return [float(b) for b in range(int(low // step + 1) * step, int(high) + 1, step)]


class HistoryChart(QWidget):
    """Painted in whole; faster is higher."""

    def __init__(self) -> None:
        super().__init__()
        self._entries: list[DatedThresholds] = []
        self._read = False  # nothing is said of a history that is still being read
        self._today = date.today()
        self._quantity = pace_quantity("km")
        self._proposed: DatedThresholds | None = None
        self._by_keys = False
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAccessibleName(tr("History of thresholds"))
        theme.changed.connect(self._relaid)

    def _relaid(self, *_: object) -> None:
        self.updateGeometry()
        self.update()

    def set(
        self,
        entries: Sequence[DatedThresholds],
        today: date,
        quantity: Quantity,
        proposed: DatedThresholds | None = None,
    ) -> None:
        """Show these; ``proposed`` is not applied and drawn as open dots."""
        self._entries = sorted(entries, key=lambda entry: entry.start)
        self._read = True
        self._today, self._quantity, self._proposed = today, quantity, proposed
        self.setAccessibleDescription(self._spoken())
        self.update()

    def _spoken(self) -> str:
        now = in_force(self._entries, self._today)
        if now is None:
            return tr("No thresholds yet.")
        values = [getattr(now.values, name) for name in self._quantity.names]
        said = [words.NOTHING if value is None else self._quantity.write(value) for value in values]
        return several(
            len(self._entries),
            mark(
                "{n} dated threshold; in force today: LT1 and LT2 {values}. "
                "Ctrl+T shows them as a table."
            ),
            mark(
                "{n} dated thresholds; in force today: LT1 and LT2 {values}. "
                "Ctrl+T shows them as a table."
            ),
            values=words.listed(said),
        )

    def sizeHint(self) -> QSize:
        """High enough for two lines."""
        return QSize(600, theme.current().px(170))

    def minimumSizeHint(self) -> QSize:
        """Low on a small screen."""
        return QSize(300, theme.current().px(130))

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the ring for keyboard use only."""
        self._by_keys = event.reason() in KEYBOARD
        super().focusInEvent(event)

    # Painting ----------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw bands, lines, tests, today and the shades."""
        look = theme.current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        font = look.font("small")
        painter.setFont(font)
        metrics = QFontMetricsF(font)
        shown = [entry for entry in self._entries if self._quantity.known(entry)]
        if not shown:
            painter.setPen(look.color("text_2"))
            text = tr("Nothing here yet. Add a test or race below, or add recordings.")
            text = text if self._read else ""
            painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, text)
            return
        left, right, top, bottom = look.px(52), look.px(150), look.px(24), look.px(24)
        area = QRectF(left, top, self.width() - left - right, self.height() - top - bottom)
        first = self._first_day(shown)
        span = max((self._today - first).days, SHORTEST)
        first = self._today - timedelta(days=span)

        def x_of(day: date) -> float:
            share = max(0.0, (day - first).days / span)
            return area.left() + share * area.width()

        low, high = self._range(shown)

        def y_of(value: float) -> float:
            return area.bottom() - (value - low) / (high - low) * area.height()

        self._grid(painter, look, metrics, area, low, high, y_of)
        self._months(painter, look, area, first, x_of)
        self._stretches(painter, look, metrics, area, x_of, y_of)
        self._now(painter, look, metrics, area, low, high, y_of)
        if self._proposed is not None and self._quantity.known(self._proposed):
            painter.setPen(QPen(look.color("text"), 1.5))
            painter.setBrush(look.color("pane"))
            x = min(max(x_of(self._proposed.start), area.left() + 6), area.right() - 10)
            for name in self._quantity.names:
                painter.drawEllipse(QPointF(x, y_of(getattr(self._proposed.values, name))), 4, 4)
        if self.hasFocus() and self._by_keys:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(look.color("focus"), 2))
            painter.drawRect(QRectF(self.rect()).adjusted(1, 1, -1, -1))

    def _first_day(self, shown: Sequence[DatedThresholds]) -> date:
        return max(min(entry.start for entry in shown), self._today - timedelta(days=LONGEST))

    def _range(self, shown: Sequence[DatedThresholds]) -> tuple[float, float]:
        ends: list[float] = []
        for entry in (*shown, *([self._proposed] if self._proposed is not None else ())):
            for name in self._quantity.names:
                value = getattr(entry.values, name)
                if value is not None:
                    half = entry.interval.get(name, 0.0)
                    ends += [value - half, value + half]
        room = 0.12 * (max(ends) - min(ends))
        return min(ends) - room, max(ends) + room

    def _grid(self, painter, look, metrics, area, low, high, y_of) -> None:  # type: ignore[no-untyped-def]
        for tick in self._quantity.ticks(low, high):
            y = round(y_of(tick)) + 0.5
            painter.setPen(look.color("rule"))
            painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))
            painter.setPen(look.color("text_2"))
            text = self._quantity.write(tick)
            painter.drawText(
                QPointF(
                    area.left() - metrics.horizontalAdvance(text) - look.px(8),
                    y + metrics.ascent() / 2 - 1,
                ),
                text,
            )

    def _months(self, painter, look, area, first, x_of) -> None:  # type: ignore[no-untyped-def]
        painter.setPen(look.color("text_2"))
        metrics = QFontMetricsF(painter.font())
        day = (first.replace(day=1) + timedelta(days=32)).replace(day=1)
        free = area.left()
        while day <= self._today:
            x = x_of(day)
            text = f"{words.month(day)} {day.year}" if day.month == 1 else words.month(day)
            painter.drawLine(QPointF(x, area.bottom() + 1), QPointF(x, area.bottom() + 4))
            wide = metrics.horizontalAdvance(text)
            if x >= free and x + wide < area.right():
                painter.drawText(QPointF(x, area.bottom() + look.px(18)), text)
                free = x + wide + look.px(16)
            day = (day + timedelta(days=32)).replace(day=1)

    def _stretches(self, painter, look, metrics, area, x_of, y_of) -> None:  # type: ignore[no-untyped-def]
        known, entries = self._quantity.known, self._entries
        ends = [entry.start for entry in entries[1:]] + [self._today]
        free = 0.0
        for k, (entry, end) in enumerate(zip(entries, ends, strict=True)):
            if not known(entry):
                continue
            begin = area.left() if k == 0 else x_of(entry.start)
            finish = x_of(end)
            if finish < area.left() or begin > area.right():
                continue
            then = next(filter(known, entries[k + 1 : k + 2]), None)
            sloping = then is not None and then.change == "linear"
            for name in self._quantity.names:
                value = getattr(entry.values, name)
                later = value if then is None else getattr(then.values, name)
                half = entry.interval.get(name, 0.0)
                if half and not sloping:
                    band = QRectF(
                        QPointF(begin, y_of(value + half)), QPointF(finish, y_of(value - half))
                    )
                    painter.fillRect(band, look.color("band"))
                painter.setPen(QPen(look.color("text"), 1.8))
                painter.drawLine(
                    QPointF(begin, y_of(value)), QPointF(finish, y_of(later if sloping else value))
                )
                if not sloping:
                    painter.setPen(QPen(look.color("text"), 1))
                    painter.drawLine(QPointF(finish, y_of(value)), QPointF(finish, y_of(later)))
            x = begin if k == 0 else x_of(entry.start)
            if k:
                painter.setPen(look.color("edge"))
                painter.drawLine(QPointF(x, area.top() - 4), QPointF(x, area.bottom()))
            source = worded(entry.source)
            source = tr("about, {source}", source=source) if entry.estimated else source
            painter.setFont(look.font("small_italic" if entry.estimated else "small"))
            start = max(x, area.left())
            room = finish - start - look.px(22)
            text = metrics.elidedText(source, Qt.TextElideMode.ElideRight, room)
            if start >= free and room > look.px(30):
                painter.fillRect(
                    QRectF(start - 3, area.top() - look.px(16), 6, 6), look.color("text")
                )
                painter.setPen(look.color("text_2"))
                at = QPointF(start + look.px(9), area.top() - look.px(9))
                painter.drawText(at, text)
                free = start + look.px(9) + metrics.horizontalAdvance(text)
            painter.setFont(look.font("small"))

    def _now(self, painter, look, metrics, area, low, high, y_of) -> None:  # type: ignore[no-untyped-def]
        now = in_force(self._entries, self._today)
        painter.fillRect(
            QRectF(area.right() - 1, area.top() - 8, 3, area.height() + 8), look.color("focus")
        )
        if now is None or not self._quantity.known(now):
            return
        lines = [getattr(now.values, name) for name in self._quantity.names]
        painter.setFont(look.font("small_bold"))
        painter.setPen(look.color("text"))
        for value in lines:
            text = self._quantity.write(value)
            painter.drawText(QPointF(area.right() + look.px(7), y_of(value) - 3), text)
        strip = area.right() + look.px(52)
        edges = [area.top(), y_of(lines[1]), y_of(lines[0]), area.bottom()]
        painter.setFont(look.font("small"))
        for (name, shade), upper, lower in zip(SHADES, edges, edges[1:], strict=False):
            box = QRectF(strip, upper, look.px(12), lower - upper)
            painter.setBrushOrigin(box.bottomLeft())
            painter.fillRect(
                box, stairs.shade_brush(shade, look, painter.device().devicePixelRatio())
            )
            if shade == Shade.EASY:
                stairs.paint_outline(painter, box, "easy_outline", look)
                painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(look.color("text_2"))
            y = (upper + lower) / 2 + metrics.ascent() / 2 - 1
            painter.drawText(QPointF(strip + look.px(20), y), tr(name))
