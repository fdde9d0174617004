"""Painting the build-up by block, in pixels."""

from __future__ import annotations

import math
from dataclasses import dataclass
from datetime import date
from functools import lru_cache

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QFontMetricsF, QImage, QPainter, QPolygonF, QTransform

from tercet.engine.scale import Shade
from tercet.language import tr
from tercet.library.views import RaceView
from tercet.ui import words
from tercet.ui.charts.buildup_shape import BlockShape, gap
from tercet.ui.charts.canvas import (
    Mapper,
    halo_text,
    level_line,
    line_pen,
    stroke,
    upright_line,
)
from tercet.ui.stairs import shade_brush
from tercet.ui.theme import Theme

RULING_PITCH = 4.0
TARGET_DASHES = (7.0, 3.0)
NARROW = 12.0


@dataclass(frozen=True)
class Picture:
    """All that is painted: blocks, today, races and the whole units to mark up and down."""

    shapes: tuple[BlockShape, ...]
    today: date
    races: tuple[RaceView, ...]
    current: BlockShape | None
    ups: tuple[int, ...]
    downs: tuple[int, ...]

    def drawn_as(self, other: Picture) -> bool:
        """Whether both are painted alike."""

        def around(it: Picture) -> tuple[object, ...]:
            current = [shape is it.current for shape in it.shapes]
            return it.today, it.races, it.ups, it.downs, current

        return around(self) == around(other) and all(
            one.drawn_as(another) for one, another in zip(self.shapes, other.shapes, strict=True)
        )


def end_words(shape: BlockShape) -> str:
    """Label at a block's end: ``90 %``, ``about 90 %`` or ``short, 75 %``."""
    if shape.share is None:
        return ""
    label = words.share(shape.share, estimated=shape.block.estimated)
    if not shape.short:
        return label
    if label == words.share(shape.block.easy_target, estimated=shape.block.estimated):
        label = f"{words.number(math.floor(shape.share * 1000.0) / 10.0, 1)} %"
        label = tr("about {value}", value=label) if shape.block.estimated else label
    return tr("short, {share}", share=label)


def paint_build_up(painter: QPainter, mapper: Mapper, picture: Picture, theme: Theme) -> None:
    """Paint grid, blocks, today and labels, from the ground up."""
    if not picture.shapes:
        return
    area = mapper.area
    head = QFontMetricsF(theme.font("block")).height() + theme.px(6)
    plot_top = area.top() + head
    for mark in (*picture.ups, *(-m for m in picture.downs)):
        level_line(
            painter, area.left(), area.right(), mapper.y(mark), line_pen(theme.color("rule"))
        )
    for shape in picture.shapes:
        if shape.share is not None:
            _paint_areas(painter, mapper, shape, theme)
    level_line(
        painter, area.left(), area.right(), mapper.y(0.0), line_pen(theme.color("text_2"), 1.4)
    )
    for shape in picture.shapes:
        _paint_gap(painter, mapper, shape, theme)
        _paint_target(painter, mapper, shape, theme)
        if len(shape.ahead):
            pen = line_pen(theme.color("easy_outline"), 1.8)
            pen.setDashPattern([1.2, 2.2])
            stroke(painter, mapper.polygon(shape.ahead_x, shape.ahead), pen)
    last = -NARROW
    pen = line_pen(theme.color("edge"))
    for edge in sorted({e for shape in picture.shapes for e in (shape.left, shape.right)}):
        x = min(max(mapper.x(edge), area.left()), area.right() - 1.0)
        if x - last >= NARROW:
            upright_line(painter, x, plot_top, area.bottom(), pen)
            last = x
    _paint_races(painter, mapper, picture, theme)
    day = picture.today.toordinal()
    if picture.shapes[0].left <= day < picture.shapes[-1].right:
        pen = line_pen(theme.color("focus"), 2.0)
        upright_line(painter, mapper.x(day + 1.0), plot_top, area.bottom(), pen)
    _paint_names(painter, mapper, picture, theme)
    _paint_end_labels(painter, mapper, picture, theme)


def paint_marked(
    painter: QPainter, mapper: Mapper, first: date, last: date, theme: Theme, width: float = 1.0
) -> None:
    """Paint the ground of marked days, both included, with its two edges."""
    left, right = mapper.x(first.toordinal()), mapper.x(last.toordinal() + 1)
    top = mapper.area.top() + QFontMetricsF(theme.font("block")).height() + theme.px(6)
    band = QRectF(left, top, max(right - left, 2.0), mapper.area.bottom() - top)
    painter.fillRect(band, theme.color("selected"))
    for x in (band.left(), band.right()):
        upright_line(painter, x, top, band.bottom(), line_pen(theme.color("focus"), width))


def _fill(painter: QPainter, polygon: QPolygonF, shade: Shade, theme: Theme) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(shade_brush(shade, theme, painter.device().devicePixelRatio()))
    painter.drawPolygon(polygon)


def _paint_areas(painter: QPainter, mapper: Mapper, shape: BlockShape, theme: Theme) -> None:
    x, zero = shape.x, np.zeros(len(shape.x))
    painter.setBrushOrigin(QPointF(mapper.x(shape.left), mapper.y(0.0)))
    _fill(painter, mapper.between(x, zero, shape.easy), Shade.EASY, theme)
    stroke(painter, mapper.polygon(x, shape.easy), line_pen(theme.color("easy_outline"), 1.3))
    below = -shape.moderate
    lowest = below - shape.hard
    _fill(painter, mapper.between(x, below, zero), Shade.MODERATE, theme)
    _fill(painter, mapper.between(x, lowest, below), Shade.HARD, theme)
    if shape.hard[-1] > 0.0 and shape.moderate[-1] > 0.0:
        parting = line_pen(theme.color("pane"), 1.2)
        stroke(painter, mapper.polygon(x, below), parting)


def _paint_gap(painter: QPainter, mapper: Mapper, shape: BlockShape, theme: Theme) -> None:
    """Rule the part that is short with flat lines."""
    edges = gap(shape)
    if edges is None:
        return
    x, low, high = edges
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrushOrigin(QPointF(0.0, math.floor(mapper.y(0.0))))
    painter.setBrush(ruling_brush(theme, painter.device().devicePixelRatio()))
    painter.drawPolygon(mapper.between(x, low, high))


@lru_cache(maxsize=16)
def ruling_brush(theme: Theme, dpr: float) -> QBrush:
    """Flat ink lines of 1 px, 4 px apart, on the pane; the first at the brush's origin."""
    side = 4.0 * RULING_PITCH
    pixels = max(1, round(side * dpr))
    tile = QImage(pixels, pixels, QImage.Format.Format_ARGB32_Premultiplied)
    tile.fill(theme.color("pane"))
    painter = QPainter(tile)
    painter.scale(pixels / side, pixels / side)
    for n in range(4):
        painter.fillRect(QRectF(0.0, n * RULING_PITCH, side, 1.0), theme.color("text"))
    painter.end()
    brush = QBrush(tile)
    brush.setTransform(QTransform.fromScale(side / pixels, side / pixels))
    return brush


def _paint_target(painter: QPainter, mapper: Mapper, shape: BlockShape, theme: Theme) -> None:
    drawn = np.isfinite(shape.target)
    # On blocks of a few pixels the dashes would only hide what they run over.
    if not drawn.any() or mapper.x(shape.right) - mapper.x(shape.left) < NARROW:
        return
    line = mapper.polygon(shape.x[drawn], shape.target[drawn])
    stroke(painter, line, line_pen(theme.color("pane"), 3.4))
    stroke(painter, line, line_pen(theme.color("text"), 1.7, TARGET_DASHES))


def _paint_races(painter: QPainter, mapper: Mapper, picture: Picture, theme: Theme) -> None:
    """A pennant in ink standing on the foot of the plot on each race's day."""
    first, last = picture.shapes[0].left, picture.shapes[-1].right
    ink = theme.color("text")
    for race in picture.races:
        day = race.day.toordinal()
        if not first <= day < last:
            continue
        x, foot = mapper.x(day + 0.5), mapper.area.bottom()
        width, height = theme.px(7), theme.px(13)
        upright_line(painter, x, foot - height, foot, line_pen(ink))
        side = -1.0 if x + width > mapper.area.right() else 1.0
        x = math.floor(x) + 0.5
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(ink)
        painter.drawPolygon(
            QPolygonF(
                [
                    QPointF(x, foot - height),
                    QPointF(x + side * width, foot - height + theme.px(3)),
                    QPointF(x, foot - height + theme.px(6)),
                ]
            )
        )


def fitting_name(name: str, room: float, metrics: QFontMetricsF) -> str:
    """The name, or its first word and an ellipsis, or as much of that word as fits, or nothing."""
    if metrics.horizontalAdvance(name) <= room:
        return name
    first = name.split()[0] if name.split() else ""
    for length in range(len(first), 2, -1):
        short = f"{first[:length]}…"
        if metrics.horizontalAdvance(short) <= room:
            return short
    return ""


def _paint_names(painter: QPainter, mapper: Mapper, picture: Picture, theme: Theme) -> None:
    font = theme.font("block")
    metrics = QFontMetricsF(font)
    painter.setFont(font)
    day = picture.today.toordinal()
    for shape in picture.shapes:
        left = mapper.x(shape.left) + theme.px(3)
        name = fitting_name(shape.block.name, mapper.x(shape.right) - left, metrics)
        painter.setPen(theme.color("text_3" if shape.left > day else "text"))
        painter.drawText(QPointF(left, mapper.area.top() + metrics.ascent()), name)


def end_labels(
    mapper: Mapper, picture: Picture, metrics: QFontMetricsF, gap: float
) -> list[list[tuple[QRectF, str]]]:
    """Place the shares at the blocks' ends, today's first: the lines of each, in their boxes.

    A share wider than its block is broken in two lines, unless it is today's and there is room
    behind today; one that would touch another stands higher, or is left out.
    """
    area, high = mapper.area, metrics.height()
    taken: list[QRectF] = []
    placed = []
    order = [s for s in reversed(picture.shapes) if s is not picture.current]
    for shape in [picture.current, *order] if picture.current else order:
        label = end_words(shape)
        if not label:
            continue
        start, end = mapper.x(shape.left), mapper.x(shape.x[-1])
        lines, width = [label], metrics.horizontalAdvance(label)
        left = end - gap - width
        if left < start and shape is picture.current and end + gap + width <= area.right():
            left = end + gap
        elif left < start:
            lines = label.replace(", ", ",\n").split("\n")
            width = max(map(metrics.horizontalAdvance, lines))
            left = end - gap - width
        if shape is not picture.current and mapper.x(shape.right) - start < 0.45 * width:
            continue
        tip = float(np.nanmax((shape.easy[-1], shape.target[-1])))
        foot = mapper.y(tip) - gap + metrics.descent()
        left = min(max(left, area.left()), area.right() - width)
        rect = QRectF(left, foot - len(lines) * high, width, len(lines) * high)
        for _ in range(3):
            if not any(rect.adjusted(-gap, 0, gap, 0).intersects(other) for other in taken):
                break
            rect.translate(0.0, -high)
        else:
            continue
        if rect.top() < area.top():
            continue
        taken.append(rect)
        wide = [metrics.horizontalAdvance(line) for line in lines]
        placed.append(
            [
                (QRectF(rect.right() - wide[k], rect.top() + k * high, wide[k], high), line)
                for k, line in enumerate(lines)
            ]
        )
    return placed


def _paint_end_labels(painter: QPainter, mapper: Mapper, picture: Picture, theme: Theme) -> None:
    font = theme.font("small_bold")
    metrics = QFontMetricsF(font)
    for lines in end_labels(mapper, picture, metrics, theme.px(5)):
        for box, words_of in lines:
            baseline = box.bottom() - metrics.descent()
            halo_text(painter, box.left(), baseline, words_of, font, theme.color("text"))
