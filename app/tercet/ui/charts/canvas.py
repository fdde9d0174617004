"""What the charts share: a still canvas, axes with our own labels, and drawing in pixels."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QFont,
    QFontMetricsF,
    QMouseEvent,
    QPaintEngine,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPen,
    QPixmap,
    QPolygonF,
    QTransform,
    QWheelEvent,
)
from PySide6.QtWidgets import QFrame, QSizePolicy

from tercet.engine.scale import Floats
from tercet.ui import theme as themes
from tercet.ui.panes import BACK, KEYBOARD


def polygon(x: Floats, y: Floats) -> QPolygonF:
    """A line of points, shape (n,) each [px]."""
    return pg.functions.arrayToQPolygonF(x, y)


@dataclass(frozen=True)
class Mapper:
    """From a chart's own coordinates to logical pixels, with the pixels of its plot area."""

    transform: QTransform
    area: QRectF

    def x(self, value: float) -> float:
        """Pixel column of a value."""
        return self.transform.m11() * value + self.transform.dx()

    def y(self, value: float) -> float:
        """Pixel row of a value."""
        return self.transform.m22() * value + self.transform.dy()

    @property
    def foot(self) -> float:
        """The value at the plot area's foot."""
        return (self.area.bottom() - self.transform.dy()) / self.transform.m22()

    def polygon(self, x: Floats, y: Floats) -> QPolygonF:
        """Map a line of points, shape (n,) each, at once."""
        return polygon(
            self.transform.m11() * x + self.transform.dx(),
            self.transform.m22() * y + self.transform.dy(),
        )

    def between(self, x: Floats, low: Floats, high: Floats) -> QPolygonF:
        """Map the area between two lines over the same ``x``."""
        return self.polygon(np.concatenate((x, x[::-1])), np.concatenate((high, low[::-1])))


class Drawing(pg.GraphicsObject):
    """An item that fills its view and is painted in pixels, so that textures never stretch."""

    def __init__(self, paint: Callable[[QPainter, Mapper], None], z: float = 0.0) -> None:
        super().__init__()
        self._paint = paint
        self.setZValue(z)

    def boundingRect(self) -> QRectF:
        return self.viewRect()

    def viewTransformChanged(self) -> None:
        super().viewTransformChanged()
        self.prepareGeometryChange()

    def paint(self, painter: QPainter, *_: object) -> None:
        transform = painter.worldTransform()
        painter.save()
        painter.resetTransform()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint(painter, Mapper(transform, transform.mapRect(self.viewRect())))
        painter.restore()


class KeptDrawing(Drawing):
    """A drawing that is kept as a picture until it, its place or the theme changes."""

    def __init__(self, paint: Callable[[QPainter, Mapper], None], z: float = 0.0) -> None:
        super().__init__(self._from_picture, z)
        self._anew = paint
        self._picture: tuple[object, QPixmap] | None = None

    def forget(self) -> None:
        """Draw anew at the next paint: what is shown has changed."""
        self._picture = None

    def _from_picture(self, painter: QPainter, mapper: Mapper) -> None:
        if painter.paintEngine().type() != QPaintEngine.Type.Raster:
            self._anew(painter, mapper)  # lines and words on paper and in drawings
            return
        dpr = painter.device().devicePixelRatio()
        place = mapper.area.toAlignedRect()
        if place.isEmpty():  # squeezed to nothing while its neighbours are laid out
            return
        key = (mapper.transform, place, dpr, themes.current())
        if self._picture is None or self._picture[0] != key:
            pixels = QPixmap((QSizeF(place.size()) * dpr).toSize())
            pixels.setDevicePixelRatio(dpr)
            pixels.fill(Qt.GlobalColor.transparent)
            own = QPainter(pixels)
            own.setRenderHints(painter.renderHints())
            own.translate(-place.topLeft())
            self._anew(own, mapper)
            own.end()
            self._picture = (key, pixels)
        painter.drawPixmap(place.topLeft(), self._picture[1])


class Axis(pg.AxisItem):
    """An axis whose labels are given, ``(value, words)``, in the small font.

    ``stroke`` is the length of the strokes outside the plot; ``level`` lifts labels of a left
    axis to stand beside the value.
    """

    def __init__(self, side: str, stroke: float = 0.0) -> None:
        super().__init__(side)
        self._stroke = stroke
        self._marks: Sequence[tuple[float, str]] = ()
        self.setStyle(tickLength=0, showValues=False)

    def set_marks(self, marks: Sequence[tuple[float, str]]) -> None:
        """Show these labels instead of the ones before."""
        self._marks = tuple(marks)
        self.update()

    def paint(self, painter: QPainter, *_: object) -> None:
        view = self.linkedView()
        if view is None:
            return
        look = themes.current()
        font = look.font("small")
        metrics = QFontMetricsF(font)
        size = self.size()
        upright = self.orientation in ("left", "right")
        low, high = view.viewRange()[1 if upright else 0]
        if not high > low:
            return
        painter.setFont(font)
        painter.setPen(look.color("text_2"))
        length = size.height() if upright else size.width()
        for value, words in self._marks:
            along = (value - low) / (high - low) * length
            width = metrics.horizontalAdvance(words)
            if upright:
                top = min(max(length - along - metrics.height() / 2.0, 0.0), length)
                right = size.width() - look.px(8)
                painter.drawText(QPointF(right - width, top + metrics.ascent()), words)
                continue
            if self._stroke:
                painter.drawLine(QPointF(along, 0.0), QPointF(along, self._stroke))
            left = min(max(along - width / 2.0, 0.0), max(length - width, 0.0))
            painter.drawText(QPointF(left, self._stroke + look.px(2) + metrics.ascent()), words)


class Canvas(pg.GraphicsLayoutWidget):
    """A chart without menu, zoom or drag that follows the theme and shows keyboard focus."""

    def __init__(self) -> None:
        super().__init__()
        self._ring = False
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Ignored)
        self.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.ci.layout.setContentsMargins(0.0, 0.0, 0.0, 0.0)
        self.ci.layout.setSpacing(0.0)
        themes.changed.connect(self.restyle)

    def make_plot(self, left: Axis, foot: Axis) -> pg.PlotItem:
        """Make a still plot with our axes; it is not shown yet.

        pyqtgraph leaves menus behind with every plot, so plots are kept and used again.
        """
        plot = pg.PlotItem(axisItems={"left": left, "bottom": foot}, enableMenu=False)
        plot.hideButtons()
        plot.layout.setContentsMargins(0.0, 0.0, 0.0, 0.0)
        plot.layout.setSpacing(0.0)
        plot.setMouseEnabled(False, False)
        plot.vb.setDefaultPadding(0.0)
        plot.vb.disableAutoRange()
        return plot

    def restyle(self, *_: object) -> None:
        """Take the theme in force; charts lay themselves out anew."""
        if self.closed:
            return
        self.setBackground(themes.current().color("pane"))
        self.lay_out()
        self.redraw()

    def lay_out(self) -> None:
        """Set ranges, labels and sizes for the data, the theme and the size at hand."""

    def redraw(self) -> None:
        """Paint everything anew."""
        self.scene().update()
        self.viewport().update()

    def resizeEvent(self, event: object) -> None:
        super().resizeEvent(event)
        # pyqtgraph resizes while it is being built, and once more after it has closed.
        if hasattr(self, "_ring") and not self.closed:
            self.lay_out()

    def wheelEvent(self, event: QWheelEvent) -> None:
        event.ignore()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        super().mousePressEvent(event)
        event.accept()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        super().mouseReleaseEvent(event)
        event.accept()

    def focusInEvent(self, event: QFocusEvent) -> None:
        self._ring = event.reason() in KEYBOARD or (self._ring and event.reason() in BACK)
        super().focusInEvent(event)
        self.viewport().update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        self._ring = self._ring and event.reason() in BACK
        super().focusOutEvent(event)
        self.viewport().update()

    def show_ring(self) -> None:
        """Show the focus ring, for a key was used."""
        self._ring = True
        self.viewport().update()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self._ring:
            painter = QPainter(self.viewport())
            painter.setPen(QPen(themes.current().color("focus"), 2.0))
            painter.drawRect(QRectF(self.viewport().rect()).adjusted(1.0, 1.0, -1.0, -1.0))
            painter.end()


def line_pen(color: QColor, width: float = 1.0, dashes: Sequence[float] | None = None) -> QPen:
    """A pen for lines; ``dashes`` are pixels on and off."""
    pen = QPen(color, width)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    if dashes is not None:
        pen.setDashPattern([length / width for length in dashes])
    return pen


def stroke(painter: QPainter, line: QPolygonF, pen: QPen) -> None:
    """Draw an open line."""
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolyline(line)


def level_line(painter: QPainter, left: float, right: float, y: float, pen: QPen) -> None:
    """Draw a level line on the middle of a row of pixels, so that it is crisp."""
    painter.setPen(pen)
    row = math.floor(y) + 0.5
    painter.drawLine(QPointF(left, row), QPointF(right, row))


def upright_line(painter: QPainter, x: float, top: float, bottom: float, pen: QPen) -> None:
    """Draw an upright line on the middle of a column of pixels, or between two if it is even."""
    painter.setPen(pen)
    column = math.floor(x) + (0.5 if round(pen.widthF()) % 2 else 0.0)
    painter.drawLine(QPointF(column, top), QPointF(column, bottom))


def halo_text(
    painter: QPainter, left: float, baseline: float, words: str, font: QFont, color: QColor
) -> None:
    """Write on a chart with a halo in the pane's colour, for lines may pass below."""
    path = QPainterPath()
    path.addText(QPointF(left, baseline), font, words)
    painter.strokePath(path, QPen(themes.current().color("pane"), 3.4))
    painter.setFont(font)
    painter.setPen(color)
    painter.drawText(QPointF(left, baseline), words)
