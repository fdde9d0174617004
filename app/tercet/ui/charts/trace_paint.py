"""Painting a session's trace, in pixels."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter

from tercet.engine.scale import Floats, Shade
from tercet.language import mark, tr
from tercet.library.trace import SessionTrace, Stretch
from tercet.ui import words
from tercet.ui.charts.canvas import (
    Mapper,
    halo_text,
    level_line,
    line_pen,
    stroke,
    upright_line,
)
from tercet.ui.charts.trace_shape import Channel, Range, columns, finite_runs, middles
from tercet.ui.charts.trace_strips import Strip
from tercet.ui.stairs import MIN_WIDTH, shade_brush
from tercet.ui.theme import Theme

DOTS = (1.5, 2.5)
#: Narrower stretches aren't parted by a line of the pane's colour.
PARTED_FROM = 4.0
#: Qt strokes many short lines much faster than a long one that goes up and down.
PIECE = 32


@dataclass(frozen=True, eq=False)
class Main:
    """What the main trace is: its channel, its boundaries, its ends and its stretches."""

    by: Channel
    values: Floats
    boundaries: tuple[float | None, float | None]
    ends: Range
    stretches: tuple[Stretch, ...]
    trace: SessionTrace
    units: words.Units
    grid: tuple[float, ...] = ()

    def with_grid(self, grid: tuple[float, ...]) -> Main:
        """The same with level lines at these values."""
        return replace(self, grid=grid)

    def boundary_words(self, index: int) -> str:
        """Name of a boundary: ``moderate from 4:41`` or ``hard from 172``."""
        value = self.boundaries[index]
        if value is None:
            return ""
        written = words.bare_pace(value, self.units) if self.by == "pace" else words.number(value)
        begins = (mark("moderate from {value}"), mark("hard from {value}"))[index]
        return tr(begins, value=written)


def paint_main(painter: QPainter, mapper: Mapper, main: Main, selected: int, theme: Theme) -> None:
    """Paint grid, shaded area, trace and the repetitions' brackets."""
    area = mapper.area
    repetitions = main.trace.repetitions
    if 0 <= selected < len(repetitions):
        chosen = repetitions[selected]
        left, right = mapper.x(chosen.start_s), mapper.x(chosen.start_s + chosen.duration_s)
        band = QRectF(left, area.top(), max(right - left, MIN_WIDTH), area.height())
        painter.fillRect(band, theme.color("selected"))
    for value in main.grid:
        pen = line_pen(theme.color("rule"))
        level_line(painter, area.left(), area.right(), mapper.y(value), pen)
    paint_stretches(painter, mapper, main.trace.seconds, main.values, main.stretches, theme)
    x, y = columns(main.trace.seconds, main.values, int(area.width()))
    paint_line(painter, mapper, x, y, theme)
    pen = line_pen(theme.color("text_2"), 1.4)
    level_line(painter, area.left(), area.right(), area.bottom() - 1.0, pen)
    _paint_parts(painter, mapper, main, theme)
    _paint_brackets(painter, mapper, main, selected, theme)


def paint_boundaries(painter: QPainter, mapper: Mapper, main: Main, theme: Theme) -> None:
    """Paint the two dotted boundaries with their names, over the area."""
    font = theme.font("small")
    pen = line_pen(theme.color("text_2"), 1.2, DOTS)
    for index, value in enumerate(main.boundaries):
        if value is None:
            continue
        y = mapper.y(value)
        level_line(painter, mapper.area.left(), mapper.area.right(), y, pen)
        name = main.boundary_words(index)
        left = mapper.area.left() + theme.px(6)
        halo_text(painter, left, y - theme.px(5), name, font, theme.color("text_2"))


def paint_line(painter: QPainter, mapper: Mapper, x: Floats, y: Floats, theme: Theme) -> None:
    """Draw a trace in ink; a gap in the data is a gap in the line."""
    pen = line_pen(theme.color("text"), 1.3)
    pen.setJoinStyle(Qt.PenJoinStyle.BevelJoin)
    for first, stop in finite_runs(y):
        for start in range(first, stop - 1, PIECE):
            part = slice(start, min(start + PIECE + 1, stop))
            stroke(painter, mapper.polygon(x[part], y[part]), pen)


def paint_strip(
    painter: QPainter,
    mapper: Mapper,
    main: Main,
    strip: Strip,
    theme: Theme,
) -> None:
    """Paint a strip below the trace: one shaded line, its dotted boundaries and its name."""
    area, seconds = mapper.area, main.trace.seconds
    paint_stretches(painter, mapper, seconds, strip.values, main.stretches, theme)
    level_line(painter, area.left(), area.right(), area.top(), line_pen(theme.color("rule")))
    for value in strip.lines:
        if value is not None:
            pen = line_pen(theme.color("text_2"), 1.2, DOTS)
            level_line(painter, area.left(), area.right(), mapper.y(value), pen)
    x, y = columns(seconds, strip.values, int(area.width()))
    paint_line(painter, mapper, x, y, theme)
    font = theme.font("small")
    baseline = area.top() + QFontMetricsF(font).ascent() + theme.px(2)
    left = area.left() + theme.px(6)
    halo_text(painter, left, baseline, strip.title, font, theme.color("text_2"))


def paint_stretches(
    painter: QPainter,
    mapper: Mapper,
    seconds: Floats,
    values: Floats,
    stretches: Sequence[Stretch],
    theme: Theme,
) -> None:
    """Fill the area under the trace, easy first, so that short hard parts aren't covered."""
    dpr = painter.device().devicePixelRatio()
    base = mapper.foot
    width = mapper.area.width()
    per_pixel = max(1.0, len(seconds) / max(width, 1.0))
    painter.setBrushOrigin(QPointF(mapper.area.left(), mapper.area.bottom()))
    painter.setPen(Qt.PenStyle.NoPen)
    partings: list[tuple[float, float]] = []
    for stretch in sorted(stretches, key=lambda s: (s.shade == Shade.UNJUDGED, s.shade)):
        if stretch.shade == Shade.NOT_RUNNING:
            continue
        if stretch.shade == Shade.UNJUDGED:
            painter.setBrush(theme.color("rule"))
        else:
            painter.setBrush(shade_brush(Shade(stretch.shade), theme, dpr))
        # One second more, so that two stretches meet.
        part = slice(stretch.first, min(stretch.stop + 1, len(seconds)))
        count = max(1, int((part.stop - part.start) / per_pixel))
        # The line's own width hides what is lost by filling to the middle of a column.
        x, y = middles(seconds[part], values[part], count)
        left, right = mapper.x(stretch.first), mapper.x(stretch.stop)
        wide = right - left
        if wide < MIN_WIDTH and stretch.shade != Shade.EASY and np.isfinite(y).any():
            top = mapper.y(float(np.nanmax(y)))
            painter.drawRect(QRectF(left, top, MIN_WIDTH, mapper.area.bottom() - top))
            continue
        for first, stop in finite_runs(y):
            foot = np.full(stop - first, base)
            above = np.maximum(y[first:stop], base)
            painter.drawPolygon(mapper.between(x[first:stop], foot, above))
        if wide >= PARTED_FROM and stretch.first > 0 and np.isfinite(values[stretch.first]):
            partings.append((left, mapper.y(max(float(values[stretch.first]), base))))
    pen = line_pen(theme.color("pane"), 1.2)
    painter.setPen(pen)
    for column, top in partings:
        painter.drawLine(QPointF(column, top), QPointF(column, mapper.area.bottom()))


def _paint_brackets(
    painter: QPainter, mapper: Mapper, main: Main, selected: int, theme: Theme
) -> None:
    """Number each repetition over an ink bracket; numbers that would touch are left out."""
    font = theme.font("small_bold")
    metrics = QFontMetricsF(font)
    row = mapper.area.top() + metrics.height() + theme.px(4)
    order = list(range(len(main.trace.repetitions)))
    if selected in order:
        order.remove(selected)
        order.insert(0, selected)
    taken: list[tuple[float, float]] = []
    for index in order:
        repetition = main.trace.repetitions[index]
        left = mapper.x(repetition.start_s)
        right = max(mapper.x(repetition.start_s + repetition.duration_s), left + MIN_WIDTH)
        chosen = index == selected
        color = theme.color("focus" if chosen else "text")
        pen = line_pen(color, 3.0 if chosen else 1.6)
        painter.setPen(pen)
        painter.drawLine(QPointF(left, row), QPointF(right, row))
        if right - left > 6.0:
            for x in (left + 0.5, right - 0.5):
                upright_line(painter, x, row, row + theme.px(4), line_pen(color))
        number = str(index + 1)
        width = metrics.horizontalAdvance(number)
        start = math.floor((left + right - width) / 2.0)
        if any(start < b + 3.0 and start + width > a - 3.0 for a, b in taken):
            continue
        taken.append((start, start + width))
        painter.setFont(font)
        painter.setPen(theme.color("text"))
        painter.drawText(QPointF(start, row - theme.px(3) - metrics.descent() + 2.0), number)


def _paint_parts(painter: QPainter, mapper: Mapper, main: Main, theme: Theme) -> None:
    """Name each part beside the repetitions over a thin line; names without room are left out."""
    font = theme.font("small")
    metrics = QFontMetricsF(font)
    row = mapper.area.top() + QFontMetricsF(theme.font("small_bold")).height() + theme.px(4)
    begun = {repetition.start_s for repetition in main.trace.repetitions}
    painter.setFont(font)
    for part in main.trace.parts:
        if part.label == "recovery" or part.start_s in begun:
            continue
        left, right = mapper.x(part.start_s) + 2.0, mapper.x(part.end_s) - 2.0
        label = tr(part.label)
        width = metrics.horizontalAdvance(label)
        painter.setPen(line_pen(theme.color("text_2")))
        if right > left:
            level_line(painter, left, right, row, line_pen(theme.color("text_2")))
        if width <= right - left:
            start = math.floor((left + right - width) / 2.0)
            painter.drawText(QPointF(start, row - theme.px(3) - metrics.descent() + 2.0), label)


def paint_stretch(painter: QPainter, mapper: Mapper, stretch: tuple[int, int], look: Theme) -> None:
    """Mark a chosen stretch: its two ends, a bar on top, and a ground to see through."""
    left, right = mapper.x(float(stretch[0])), mapper.x(float(stretch[1]))
    area = mapper.area
    ground = look.color("focus")
    ground.setAlphaF(0.14)
    painter.fillRect(QRectF(left, area.top(), right - left, area.height()), ground)
    painter.fillRect(QRectF(left, area.top(), right - left, 3.0), look.color("focus"))
    for x in (left, right):
        upright_line(painter, x, area.top(), area.bottom(), line_pen(look.color("focus"), 1.0))
