"""A set on the bench, drawn: oxygen uptake by work and recovery, and heart rate below it."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from tercet.engine.shades import Shade
from tercet.engine.uptake import LEAD_S, NEAR, Predicted
from tercet.language import tr
from tercet.ui import stairs, theme, words
from tercet.ui.charts.canvas import polygon

_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
#: Lowest uptake drawn, as a share of the highest.
FLOOR = 0.4


class BenchChart(QWidget):
    """Two plots over one time axis; both columns of the bench share their ranges."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self._name = name
        self._set: Predicted | None = None
        self._minutes, self._beats = 25.0, (100.0, 190.0)
        self._lt2: float | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        theme.changed.connect(self._dress)

    def show_set(
        self,
        predicted: Predicted | None,
        minutes: float,
        beats: tuple[float, float],
        lt2: float | None,
    ) -> None:
        """Show a set over so many minutes and this range of heart rates."""
        self._set, self._minutes, self._beats, self._lt2 = predicted, minutes, beats, lt2
        self.update()

    def _dress(self, *_: object) -> None:
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(330, theme.current().px(360))

    def minimumSizeHint(self) -> QSize:
        look = theme.current()
        return QSize(look.px(240), look.px(250))

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        px = look.px
        painter = QPainter(self)
        line = px(20)
        left, right = float(px(40)), float(self.width() - px(8))
        usable = self.height() - 3 * line - px(18)
        upper = QRectF(left, line, right - left, usable * 0.58)
        lower = QRectF(left, upper.bottom() + line + px(20), right - left, usable * 0.42 - px(12))
        painter.setFont(look.font("small_bold"))
        painter.setPen(look.color("text"))
        head = QRectF(0, 0, self.width() - px(8), line)
        painter.drawText(head, _LEFT, tr("Oxygen uptake, % of highest"))
        painter.setFont(look.font("small"))
        painter.setPen(look.color("text_2"))
        if self.width() > px(310):
            painter.drawText(head, _RIGHT, tr("near highest: over 90"))
        for share in (0.5, 0.75, 1.0):
            y = _at(share, FLOOR, 1.06, upper)
            self._grid(painter, upper, y, f"{share * 100:.0f}")
        low, high = self._beats
        painter.setFont(look.font("small_bold"))
        painter.setPen(look.color("text"))
        over = QRectF(0, lower.top() - line - px(8), self.width(), line)
        painter.drawText(over, _LEFT, tr("Heart rate, /min"))
        step = 20 if high - low < 90 else 30
        for beats in range(math.ceil(low / step) * step, int(high) + 1, step):
            self._grid(painter, lower, _at(beats, low, high, lower), str(beats))
        self._minutes_axis(painter, lower)
        if self._set is None:
            return
        self._uptake(painter, upper)
        if np.isfinite(self._set.heart_rate).any():
            self._heart(painter, lower)

    def _grid(self, painter: QPainter, area: QRectF, y: float, text: str) -> None:
        look = theme.current()
        painter.fillRect(QRectF(area.left(), round(y), area.width(), 1), look.color("rule"))
        painter.setFont(look.font("small"))
        painter.setPen(look.color("text_2"))
        painter.drawText(QRectF(0, y - 10, area.left() - 6, 20), _RIGHT, text)

    def _minutes_axis(self, painter: QPainter, area: QRectF) -> None:
        look = theme.current()
        painter.fillRect(QRectF(area.left(), area.bottom(), area.width(), 1), look.color("text_2"))
        painter.setFont(look.font("small"))
        painter.setPen(look.color("text_2"))
        step = next(n for n in (1, 2, 5, 10, 20, 30, 60) if self._minutes / n <= 6)
        last = int(self._minutes // step) * step
        for minute in range(0, last + 1, step):
            x = area.left() + minute / self._minutes * area.width()
            text = tr("{n} min", n=minute) if minute == last else str(minute)
            box = QRectF(x - 40, area.bottom() + 2, 80, look.px(18))
            if box.right() > self.width():
                box.moveRight(self.width() - 2)
                painter.drawText(box, _RIGHT, text)
            else:
                painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)

    def _x(self, area: QRectF) -> np.ndarray:
        assert self._set is not None
        count = len(self._set.uptake)
        seconds = np.arange(count, dtype=np.float64)
        return area.left() + seconds / 60.0 / self._minutes * area.width()

    def _uptake(self, painter: QPainter, area: QRectF) -> None:
        assert self._set is not None
        look = theme.current()
        x = self._x(area)
        y = np.clip(self._set.uptake, FLOOR, 1.0)
        y = area.bottom() - (y - FLOOR) / (1.06 - FLOOR) * area.height()
        work = self._set.work
        cuts = np.flatnonzero(np.diff(work.astype(np.int8))) + 1
        edges = [0, *cuts.tolist(), len(work)]
        dpr = painter.device().devicePixelRatio()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for begin, end in pairwise(edges):
            last = min(end + 1, len(work))
            across = np.concatenate([x[begin : begin + 1], x[begin:last], x[last - 1 : last]])
            up = np.concatenate([[area.bottom()], y[begin:last], [area.bottom()]])
            shade = Shade.HARD if work[begin] else Shade.EASY
            painter.setBrushOrigin(QPointF(x[begin], area.bottom()))
            painter.setBrush(stairs.shade_brush(shade, look, dpr))
            painter.setPen(QPen(look.color("pane"), 1.0))
            painter.drawPolygon(polygon(across, up))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(look.color("text"), 1.4))
        painter.drawPolyline(polygon(x, y))
        near = _at(NEAR, FLOOR, 1.06, area)
        halo = QPen(look.color("pane"), 3.4)
        pen = QPen(look.color("text"), 1.6)
        pen.setDashPattern([4.0, 2.5])
        for each in (halo, pen):
            painter.setPen(each)
            painter.drawLine(QPointF(area.left(), near), QPointF(area.right(), near))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        foot = QRectF(area.left(), area.bottom(), area.width(), 1)
        painter.fillRect(foot, look.color("text_2"))

    def _heart(self, painter: QPainter, area: QRectF) -> None:
        assert self._set is not None
        look = theme.current()
        low, high = self._beats
        if self._lt2 is not None and low < self._lt2 < high:
            y = _at(self._lt2, low, high, area)
            pen = QPen(look.color("text_2"), 1.2)
            pen.setDashPattern([1.5, 2.5])
            painter.setPen(pen)
            painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))
            painter.setFont(look.font("small"))
            box = QRectF(area.right() - 80, y - look.px(18), 80, look.px(17))
            painter.drawText(box, _RIGHT, f"LT2 {words.number(self._lt2)}")
        y_line = area.bottom() - (self._set.heart_rate - low) / (high - low) * area.height()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(look.color("text"), 1.8))
        painter.drawPolyline(polygon(self._x(area), y_line))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)

    def describe(self, text: str) -> None:
        """Say the picture in a sentence."""
        self.setAccessibleName(self._name)
        self.setAccessibleDescription(text)


def _at(value: float, low: float, high: float, area: QRectF) -> float:
    return area.bottom() - (value - low) / (high - low) * area.height()


def minutes_of(predicted: Predicted) -> float:
    """Length of a set as drawn, with the minute before it. [min]"""
    return len(predicted.work) / 60.0


def session_s(predicted: Predicted) -> float:
    """Length of a set from its first repetition to the end of its last recovery. [s]"""
    return float(len(predicted.work) - LEAD_S)
