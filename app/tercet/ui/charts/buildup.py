"""Build-up by block: every block starts at zero, easy rises, moderate and hard hang below."""

from __future__ import annotations

import math
from collections.abc import Sequence
from datetime import date, timedelta

import numpy as np
from PySide6.QtCore import QEvent, QPointF, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QKeyEvent, QMouseEvent, QPainter

from tercet import week_days
from tercet.language import mark, tr
from tercet.library.views import BuildUp, RaceView
from tercet.ui import theme as themes
from tercet.ui import words
from tercet.ui.charts.buildup_paint import Picture, end_words, paint_build_up, paint_marked
from tercet.ui.charts.buildup_shape import (
    DOWN_STEPS,
    UP_STEPS,
    BlockShape,
    block_shape,
    current_shape,
    month_starts,
    whole_marks,
)
from tercet.ui.charts.canvas import Axis, Canvas, Drawing, KeptDrawing, Mapper

MOST_UP, MOST_DOWN = 3, 2
DAY = timedelta(days=1)
Days = tuple[date, date]


class BuildUpChart(Canvas):
    """The chart itself; pointing at a week, or stepping by arrow keys, names its Monday.

    Dragging along it, or Shift and the arrow keys, chooses a stretch of whole weeks; a click or
    Esc lets it go.
    """

    week_pointed = Signal(object)
    stretch_chosen = Signal(object)  # its first and last day, or None

    def __init__(self) -> None:
        super().__init__()
        self._left, self._foot = Axis("left"), Axis("bottom", stroke=4.0)
        self._plot = self.make_plot(self._left, self._foot)
        self.addItem(self._plot, row=0, col=0)
        self._picture = self._laid = Picture((), date.min, (), None, (), ())
        self._made: tuple[object, dict[int, tuple[BuildUp, BlockShape]]] = None, {}
        self._week: date | None = None
        self._stretch: Days | None = None
        self._from: date | None = None  # Monday of the week where a stretch was begun
        self._dragged = False
        self._unit = "time"
        self._units: words.Units = "km"
        self._plot.addItem(Drawing(self._paint_week, z=-10.0))
        self._drawn = KeptDrawing(self._paint_picture)
        self._plot.addItem(self._drawn)
        self.setAccessibleName(tr("Build-up by block"))
        self.restyle()

    @property
    def shapes(self) -> tuple[BlockShape, ...]:
        """The blocks as drawn, oldest first, in hours, kilometres or miles."""
        return self._picture.shapes

    @property
    def current(self) -> BlockShape | None:
        """The block holding today, else the last one with runs."""
        return current_shape(self._picture.shapes, self._picture.today)

    def set_data(
        self,
        blocks: Sequence[BuildUp],
        today: date,
        races: Sequence[RaceView],
        unit: str,
        units: words.Units = "km",
    ) -> None:
        """Draw these blocks.

        Parameters
        ----------
        blocks : sequence of BuildUp
            Oldest first, in seconds or metres.
        today : date
            Sums after it are not drawn.
        races : sequence of RaceView
            Marked at the foot.
        unit : str
            ``"time"`` or ``"metres"``, the unit of the sums.
        units : str
            ``"km"`` or ``"miles"``.
        """
        self._unit, self._units = unit, units
        per_unit = 3600.0 if unit == "time" else words.UNIT_METRES[units]
        key = (today, unit, per_unit)
        before = self._made[1] if self._made[0] == key else {}
        made = {}
        for block in blocks:
            # A block of which nothing has changed is the same object, and keeps its shape.
            held = before.get(id(block))
            made[id(block)] = held or (block, block_shape(block, today, unit, per_unit))
        self._made = key, made
        shapes = tuple(shape for _, shape in made.values())
        self._picture = Picture(shapes, today, tuple(races), current_shape(shapes, today), (), ())
        self.lay_out()
        self.redraw()

    def mark_week(self, first_day: date | None) -> None:
        """Mark the week that begins on this day, or none."""
        if first_day != self._week:
            self._week = first_day
            self.setToolTip(self._week_words(first_day))
            self.redraw()

    @property
    def stretch(self) -> Days | None:
        """First and last day of the stretch chosen."""
        return self._stretch

    def mark_stretch(self, stretch: Days | None) -> None:
        """Mark a stretch that was chosen elsewhere, or none."""
        if stretch != self._stretch:
            self._stretch = stretch
            self.redraw()

    @property
    def unit_word(self) -> str:
        """What stands behind a number of the scale: ``h``, ``km`` or ``mi``."""
        return tr("h") if self._unit == "time" else tr(words.UNIT_WORDS[self._units])

    def lay_out(self) -> None:
        look = themes.current()
        line = QFontMetricsF(look.font("small")).height()
        name_line = QFontMetricsF(look.font("block")).height()
        head = name_line + look.px(6)
        foot = line + look.px(8)
        shapes = self._picture.shapes
        left = min((s.left for s in shapes), default=0.0)
        right = max((s.right for s in shapes), default=1.0)
        top = max(1.0, *(s.top for s in shapes)) if shapes else 1.0
        bottom = max((s.bottom for s in shapes), default=0.0)
        height = max(self.height() - foot, 1.0)
        room = max(height - head - 1.6 * line - look.px(8), 1.0)
        per_unit = room / (top + bottom)
        top_extent = top + 1.6 * line / per_unit
        bottom_extent = bottom + look.px(8) / per_unit
        ups = whole_marks(top_extent, top_extent * per_unit, line, MOST_UP, UP_STEPS)
        below = bottom_extent * per_unit
        downs = whole_marks(bottom_extent, below, line, MOST_DOWN, DOWN_STEPS)
        labels = [(0.0, "0"), *((float(m), f"{m} {self.unit_word}") for m in ups)]
        labels += [(-float(m), f"{m} {self.unit_word}") for m in downs]
        metrics = QFontMetricsF(look.font("small"))
        gutter = max(metrics.horizontalAdvance(text) for _, text in labels) + look.px(12)
        self._left.setWidth(math.ceil(gutter))
        self._foot.setHeight(math.ceil(foot))
        self._left.set_marks(labels)
        width = max(self.width() - gutter, 1.0)
        months = month_starts(left, right, int(width / (3.2 * line)))
        spans = right - left > 400.0
        self._foot.set_marks(
            [
                (float(d.toordinal()), str(d.year) if spans and d.month == 1 else words.month(d))
                for d in months
            ]
        )
        self._picture = Picture(
            shapes, self._picture.today, self._picture.races, self._picture.current, ups, downs
        )
        if not self._picture.drawn_as(self._laid):
            self._drawn.forget()
        self._laid = self._picture
        self._plot.vb.setRange(
            xRange=(left, right),
            yRange=(-bottom_extent, top_extent + head / per_unit),
            padding=0.0,
        )

    def _paint_picture(self, painter: QPainter, mapper: Mapper) -> None:
        paint_build_up(painter, mapper, self._picture, themes.current())

    def _paint_week(self, painter: QPainter, mapper: Mapper) -> None:
        if not self._picture.shapes:
            return
        look = themes.current()
        if self._stretch is not None:
            paint_marked(painter, mapper, *self._stretch, look, 2.0)
        if self._week is not None:
            paint_marked(painter, mapper, self._week, self._week + 6 * DAY, look)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        super().mousePressEvent(event)
        if event.button() == Qt.MouseButton.LeftButton:
            self._from, self._dragged = self._week_at(event.position()), False

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        super().mouseMoveEvent(event)
        week = self._week_at(event.position())
        self._point(week)
        pressed = bool(event.buttons() & Qt.MouseButton.LeftButton)
        if not pressed or self._from is None or week is None:
            return
        if self._dragged or week != self._from:
            self._dragged = True
            self._choose(self._from, week)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        super().mouseReleaseEvent(event)
        if event.button() == Qt.MouseButton.LeftButton:
            if not self._dragged:
                self._let_go()
            self._from, self._dragged = None, False

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._point(None)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        shapes = self._picture.shapes
        step = {Qt.Key.Key_Left: -7, Qt.Key.Key_Right: 7}.get(Qt.Key(event.key()))
        extending = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        if event.key() == Qt.Key.Key_Escape and self._stretch is not None:
            self._let_go()
        elif event.key() == Qt.Key.Key_Escape and self._week is not None:
            self._point(None)
        elif step is None or not shapes:
            event.ignore()
        else:
            self.show_ring()
            first, last = shapes[0].block.start, shapes[-1].block.end
            start = self._week or week_days.start_of(min(max(self._picture.today, first), last))
            wanted = start + timedelta(days=step) if self._week else start
            wanted = min(max(wanted, week_days.start_of(first)), week_days.start_of(last))
            self._point(wanted)
            self._from = (self._from or start) if extending else None
            if self._from is not None:
                self._choose(self._from, wanted)

    def _choose(self, one: date, other: date) -> None:
        """Choose the weeks from one to another."""
        stretch = (min(one, other), max(one, other) + 6 * DAY)
        if stretch != self._stretch:
            self.mark_stretch(stretch)
            self.stretch_chosen.emit(stretch)

    def _let_go(self) -> None:
        self._from = None
        if self._stretch is not None:
            self.mark_stretch(None)
            self.stretch_chosen.emit(None)

    def _point(self, first_day: date | None) -> None:
        if first_day != self._week:
            self.mark_week(first_day)
            self.week_pointed.emit(first_day)

    def _week_at(self, position: QPointF) -> date | None:
        shapes = self._picture.shapes
        scene = self.mapToScene(position.toPoint())
        if not shapes or not self._plot.vb.sceneBoundingRect().contains(scene):
            return None
        day = math.floor(self._plot.vb.mapSceneToView(scene).x())
        if not any(shape.left <= day < shape.right for shape in shapes):
            return None
        return week_days.start_of(date.fromordinal(day))

    def _week_words(self, first_day: date | None) -> str:
        """Block, week and what had been run in the block by its end."""
        if first_day is None:
            return ""
        first, last = first_day.toordinal(), first_day.toordinal() + 7
        lines = []
        for shape in self._picture.shapes:
            if shape.right <= first or shape.left >= last:
                continue
            lines.append(
                tr(
                    "{block}, week of {day}",
                    block=shape.block.name,
                    day=words.short_day(first_day),
                )
            )
            k = int(np.searchsorted(shape.x, min(last, shape.right), side="right")) - 1
            if shape.share is not None and shape.x[0] < last and k > 0:
                lines.append(
                    tr("so far in the block: {values}", values=self.values_words(shape, k))
                )
            if k == len(shape.x) - 1 and shape.share is not None and last >= shape.right:
                lines.append(end_words(shape))
        return "\n".join(lines)

    def values_words(self, shape: BlockShape, k: int = -1) -> str:
        """Easy, moderate and hard at a point of a block, in words."""
        return ", ".join(
            tr(shade, value=self.value(values[k]))
            for shade, values in (
                (mark("easy {value}"), shape.easy),
                (mark("moderate {value}"), shape.moderate),
                (mark("hard {value}"), shape.hard),
            )
        )

    def value(self, amount: float) -> str:
        """An amount in the chart's unit: ``7:24``, or ``84.2 km``."""
        if self._unit == "time":
            return words.hours(amount * 3600.0)
        return words.distance(abs(amount) * words.UNIT_METRES[self._units], self._units)
