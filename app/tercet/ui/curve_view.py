"""The intensity curve as it is painted: time over intensity, filled by shade, beside two others."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import (
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPen,
    QPolygonF,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from tercet.engine.curve import Curve
from tercet.engine.scale import Floats, Shade
from tercet.engine.shades import whole_shares
from tercet.language import mark, tr
from tercet.library.shape import Drawn
from tercet.ui import stairs, theme

DASHES, DOTS = (6.0, 4.0), (1.5, 3.0)
NAMES = (mark("Easy"), mark("Moderate"), mark("Hard"))


class CurveView(QWidget):
    """One stretch's curve; the small form has no words of its own and opens on Enter or a click."""

    opened = Signal()

    def __init__(self, *, small: bool = False) -> None:
        super().__init__()
        self._small = small
        self._drawn: Drawn | None = None
        self._paces = ("", "")
        self._highest = 0.0
        self._arc = True
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        if small:
            self.setCursor(Qt.CursorShape.PointingHandCursor)
        self._dress(theme.current())
        theme.changed.connect(self._dress)

    def _dress(self, look: theme.Theme) -> None:
        if self._small:
            self.setFixedHeight(look.px(88))
        else:
            self.setMinimumHeight(look.px(160))
        self.update()

    def show_curve(self, drawn: Drawn | None, paces: tuple[str, str], highest: float = 0.0) -> None:
        """Show a stretch; ``highest`` is the top of the common scale, 0 for the curve's own."""
        self._drawn, self._paces, self._highest = drawn, paces, highest
        self.setAccessibleDescription(self.sentence())
        self.update()

    def show_arc(self, shown: bool) -> None:
        """Show the common arc, or leave it out."""
        self._arc = shown
        self.update()

    def sentence(self) -> str:
        """What the curve shows, for reading aloud."""
        if self._drawn is None:
            return tr("Nothing has been judged in this stretch.")
        whole = whole_shares(self._drawn.shares)
        wanted = whole_shares(self._drawn.span.shares)
        return tr(
            "{stretch}: {easy} per cent easy, {moderate} moderate, {hard} hard; wanted {wanted}.",
            stretch=self._drawn.span.name,
            easy=whole[0],
            moderate=whole[1],
            hard=whole[2],
            wanted=f"{wanted[0]}, {wanted[1]}, {wanted[2]}",
        )

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self._small and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self.opened.emit()
        else:
            super().keyPressEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._small and self.rect().contains(event.position().toPoint()):
            self.opened.emit()

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._drawn is not None:
            self._paint(painter, self._drawn, look)
        if self.hasFocus() and self._small:
            painter.setPen(QPen(look.color("focus"), 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(self.rect()).adjusted(1, 1, -1, -1))

    def _paint(self, painter: QPainter, drawn: Drawn, look: theme.Theme) -> None:
        line = QFontMetricsF(look.font("small")).height()
        foot = look.px(8) if self._small else 2 * line + look.px(16)
        top = look.px(4) if self._small else line + look.px(8)
        area = QRectF(2, top, self.width() - 4, max(self.height() - foot - top, 20.0))
        shown = [c for c in (drawn.run, drawn.wanted) if c is not None]
        highest = self._highest or max(float(c.density.max()) for c in shown)
        curve = drawn.run or drawn.wanted
        at, lt2 = curve.at, curve.lt2

        def place(values: Floats, density: Floats) -> tuple[Floats, Floats]:
            x = area.left() + (values - at[0]) / (at[-1] - at[0]) * area.width()
            return x, area.bottom() - np.minimum(density / highest, 1.04) * area.height()

        lines = [float(place(np.array([v]), np.zeros(1))[0][0]) for v in (1.0, lt2)]
        painter.setPen(QPen(look.color("rule"), 1.0))
        for boundary in lines:
            column = round(boundary) + 0.5
            painter.drawLine(QPointF(column, area.top()), QPointF(column, area.bottom()))
        if drawn.run is not None:
            x, y = place(at, drawn.run.density)
            self._fill(painter, x, y, area, lines, look)
            if self._arc and not self._small:
                self._stroke(painter, place(at, drawn.arc.density), look, "text_2", 1.3, DOTS)
            self._stroke(painter, place(at, drawn.wanted.density), look, "text", 1.5, DASHES)
            self._stroke(painter, (x, y), look, "text", 1.8)
        painter.setPen(QPen(look.color("text_2"), 1.0))
        base = round(area.bottom()) + 0.5
        painter.drawLine(QPointF(area.left(), base), QPointF(area.right(), base))
        if self._small and drawn.run is None:
            painter.setFont(look.font("small"))
            painter.setPen(look.color("text_2"))
            painter.drawText(area, Qt.AlignmentFlag.AlignCenter, tr("under 3 hours: no curve"))
        if not self._small:
            self._words(painter, drawn, area, lines, highest, look)

    def _fill(
        self, painter: QPainter, x: Floats, y: Floats, area: QRectF, lines: list[float],
        look: theme.Theme,
    ) -> None:  # fmt: skip
        dpr = self.devicePixelRatioF()
        whole = QPolygonF([QPointF(a, b) for a, b in zip(x.tolist(), y.tolist(), strict=True)])
        whole.append(QPointF(area.right(), area.bottom()))
        whole.append(QPointF(area.left(), area.bottom()))
        shape = QPainterPath()
        shape.addPolygon(whole)
        shape.closeSubpath()
        edges = (area.left(), *lines, area.right())
        for k, shade in enumerate((Shade.EASY, Shade.MODERATE, Shade.HARD)):
            # Touching shades are parted by the pane's own colour.
            left = edges[k] + (0.6 if k else 0.0)
            right = edges[k + 1] - (0.6 if k < 2 else 0.0)
            painter.save()
            painter.setClipRect(QRectF(left, area.top() - 40, right - left, area.height() + 40))
            painter.setBrushOrigin(QPointF(area.left(), area.bottom()))
            painter.fillPath(shape, stairs.shade_brush(shade, look, dpr))
            painter.restore()

    @staticmethod
    def _stroke(
        painter: QPainter, line: tuple[Floats, Floats], look: theme.Theme, role: str, width: float,
        dashes: tuple[float, float] | None = None,
    ) -> None:  # fmt: skip
        points = [QPointF(a, b) for a, b in zip(line[0].tolist(), line[1].tolist(), strict=True)]
        if dashes is not None:
            painter.setPen(QPen(look.color("pane"), width + 1.8))
            painter.drawPolyline(QPolygonF(points))
        pen = QPen(look.color(role), width)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        if dashes is not None:
            pen.setDashPattern([length / width for length in dashes])
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPolyline(QPolygonF(points))

    def _words(
        self, painter: QPainter, drawn: Drawn, area: QRectF, lines: list[float], highest: float,
        look: theme.Theme,
    ) -> None:  # fmt: skip
        bold, small = look.font("small_bold"), look.font("small")
        metrics = QFontMetricsF(bold)
        base = area.bottom() + look.px(6) + metrics.ascent()
        edges = (area.left(), *lines, area.right())
        painter.setFont(bold)
        painter.setPen(look.color("text"))
        end = area.left()
        for k, share in enumerate(whole_shares(drawn.shares)):
            name = tr(NAMES[k])
            words = f"{name}  {share} %"
            width = metrics.horizontalAdvance(words)
            left = max((edges[k] + edges[k + 1] - width) / 2, end)
            painter.drawText(QPointF(min(left, area.right() - width), base), words)
            end = left + width + look.px(12)
        painter.setFont(small)
        painter.setPen(look.color("text_2"))
        metrics = QFontMetricsF(small)
        base += metrics.height() + look.px(2)
        painter.drawText(QPointF(area.left(), base), tr("slow jog"))
        out = metrics.horizontalAdvance(tr("flat out"))
        painter.drawText(QPointF(area.right() - out, base), tr("flat out"))
        for x, words in zip(lines, self._paces, strict=True):
            width = metrics.horizontalAdvance(words)
            left = x - width / 2
            if x == lines[0]:
                left = min(left, (lines[0] + lines[1]) / 2 - width - look.px(4))
            else:
                left = max(left, (lines[0] + lines[1]) / 2 + look.px(4))
            painter.drawText(QPointF(left, base), words)
        if drawn.run is None:
            return
        self._name(painter, drawn.wanted, tr("wanted"), area, highest, look, 0.76, left=True)
        if self._arc:
            self._name(painter, drawn.arc, tr("common arc"), area, highest, look, 1.3)

    @staticmethod
    def _name(
        painter: QPainter, curve: Curve, words: str, area: QRectF, highest: float,
        look: theme.Theme, where: float, *, left: bool = False,
    ) -> None:  # fmt: skip
        """Write a line's name outside it, right of where it falls or left of where it rises."""
        k = int(np.argmin(np.abs(curve.at - where)))
        x = area.left() + (curve.at[k] - curve.at[0]) / (curve.at[-1] - curve.at[0]) * area.width()
        y = area.bottom() - curve.density[k] / highest * area.height()
        font = look.font("small")
        path = QPainterPath()
        aside = -QFontMetricsF(font).horizontalAdvance(words) - look.px(8) if left else look.px(8)
        path.addText(QPointF(x + aside, y - look.px(4)), font, words)
        painter.strokePath(path, QPen(look.color("pane"), 3.4))
        painter.fillPath(path, look.color("text_2"))
