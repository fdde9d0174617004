"""Painting of an intensity curve: what was run, filled by shade, under what was wanted."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen, QPolygonF

from tercet.engine.curve import Curve
from tercet.engine.scale import Floats, Shade
from tercet.language import tr
from tercet.library.shape import Drawn
from tercet.ui import stairs, theme
from tercet.ui.charts.canvas import polygon

DASHES, DOTS = (6.0, 4.0), (1.5, 3.0)


def across(curve: Curve, values: Floats, area: QRectF) -> Floats:
    """Columns of intensities."""
    at = curve.at
    return area.left() + (values - at[0]) / (at[-1] - at[0]) * area.width()


def boundaries(drawn: Drawn, area: QRectF) -> list[float]:
    """Columns of the two thresholds."""
    curve = drawn.run or drawn.wanted
    return across(curve, np.array([1.0, curve.lt2]), area).tolist()


def paint_curve(
    painter: QPainter, drawn: Drawn, area: QRectF, highest: float, look: theme.Theme, *,
    arc: bool = False,
) -> None:  # fmt: skip
    """Paint a stretch into an area of which ``highest`` is the top, and perhaps the common arc."""
    lines = boundaries(drawn, area)
    painter.setPen(QPen(look.color("rule"), 1.0))
    for boundary in lines:
        column = round(boundary) + 0.5
        painter.drawLine(QPointF(column, area.top()), QPointF(column, area.bottom()))
    if drawn.run is not None:
        run = _place(drawn.run, drawn.run, area, highest)
        _fill(painter, run, area, lines, look)
        if arc:
            placed = _place(drawn.run, drawn.arc, area, highest)
            _stroke(painter, placed, look, "text_2", 1.3, DOTS)
        placed = _place(drawn.run, drawn.wanted, area, highest)
        _stroke(painter, placed, look, "text", 1.5, DASHES)
        _stroke(painter, run, look, "text", 1.8)
    painter.setPen(QPen(look.color("text_2"), 1.0))
    base = round(area.bottom()) + 0.5
    painter.drawLine(QPointF(area.left(), base), QPointF(area.right(), base))


def paint_small(
    painter: QPainter, drawn: Drawn, area: QRectF, highest: float, look: theme.Theme
) -> None:
    """Paint a stretch without words of its own, unless it is too short for a curve."""
    paint_curve(painter, drawn, area, highest, look)
    if drawn.run is None:
        painter.setFont(look.font("small"))
        painter.setPen(look.color("text_2"))
        painter.drawText(area, Qt.AlignmentFlag.AlignCenter, tr("under 3 hours: no curve"))


def _place(scale: Curve, curve: Curve, area: QRectF, highest: float) -> QPolygonF:
    """A curve's line in the area; it never rises far over the top."""
    x = across(scale, scale.at, area)
    y = area.bottom() - np.minimum(curve.density / highest, 1.04) * area.height()
    return polygon(x, y)


def _fill(
    painter: QPainter, line: QPolygonF, area: QRectF, lines: list[float], look: theme.Theme
) -> None:
    dpr = painter.device().devicePixelRatioF()
    shape = QPainterPath()
    shape.addPolygon(line)
    shape.lineTo(area.bottomRight())
    shape.lineTo(area.bottomLeft())
    shape.closeSubpath()
    edges = (area.left(), *lines, area.right())
    for k, shade in enumerate((Shade.EASY, Shade.MODERATE, Shade.HARD)):
        # Touching shades are parted by the pane's own colour.
        left = edges[k] + (0.6 if k else 0.0)
        right = edges[k + 1] - (0.6 if k < 2 else 0.0)
        painter.save()
        clip = QRectF(left, area.top() - 40, right - left, area.height() + 40)
        painter.setClipRect(clip, Qt.ClipOperation.IntersectClip)
        painter.setBrushOrigin(area.bottomLeft())
        painter.fillPath(shape, stairs.shade_brush(shade, look, dpr))
        painter.restore()


def _stroke(
    painter: QPainter, line: QPolygonF, look: theme.Theme, role: str, width: float,
    dashes: tuple[float, float] | None = None,
) -> None:  # fmt: skip
    if dashes is not None:
        painter.setPen(QPen(look.color("pane"), width + 1.8))
        painter.drawPolyline(line)
    pen = QPen(look.color(role), width)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    if dashes is not None:
        pen.setDashPattern([length / width for length in dashes])
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolyline(line)
