"""A page to draw on: text that is recorded, stairs, shaded areas and lines, all of them vector."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPainterPath, QPen, QPolygonF

from tercet.engine.scale import Floats, Shade
from tercet.ui.review import hatch
from tercet.ui.review.looks import Look
from tercet.ui.stairs import steps

#: Page that the lengths of this package are made for.
WIDTH, HEIGHT = 1366.0, 768.0
ROLES = ("easy", "moderate", "hard")
HALO = 6.0
#: Distance along x and width of a texture's strokes, and whether they slant.
_STROKES = {
    Shade.MODERATE: (hatch.SLANTED_PITCH, 1.3, True),
    Shade.HARD: (hatch.UPRIGHT_PITCH, 1.0, False),
}
#: Under so many pixels a unit a texture is nothing but a tint: its strokes lie under a pixel apart.
SMALL = 0.15
#: From a value along an axis to its place on the page.
Along = Callable[[float], float]


@dataclass(frozen=True)
class Mark:
    """Words on the page, where they stand, and the row of the table behind them."""

    rect: QRectF
    words: str
    size: int
    row: int | None = None


class Board:
    """Draws in the units of a page whose shorter side is as that of 1366 by 768."""

    def __init__(self, painter: QPainter, look: Look, width: float, height: float) -> None:
        self.painter, self.look = painter, look
        self.width, self.height = width, height
        self.marks: list[Mark] = []
        self.spots: list[Mark] = []
        self.taken: list[QRectF] = []  # by dots that words stay clear of
        self._metrics: dict[str, QFontMetricsF] = {}
        self._grounds: dict[Shade, QColor] = {}
        # So small that no stroke of a texture covers a pixel of the device.
        self._small = abs(painter.deviceTransform().m11()) < SMALL
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)

    # Words -------------------------------------------------------------------------------

    def metrics(self, role: str) -> QFontMetricsF:
        """Metrics of a role's font."""
        if role not in self._metrics:
            self._metrics[role] = QFontMetricsF(self.look.font(role))
        return self._metrics[role]

    def wide(self, words: str, role: str = "body") -> float:
        """Width of words."""
        return self.metrics(role).horizontalAdvance(words)

    def text(
        self,
        x: float,
        baseline: float,
        words: str,
        role: str = "body",
        color: str = "text",
        *,
        align: str = "left",
        halo: bool = False,
        row: int | None = None,
    ) -> QRectF:
        """Write a line; gives the room it takes."""
        if not words:
            return QRectF(x, baseline, 0.0, 0.0)
        font, metrics = self.look.font(role), self.metrics(role)
        width = metrics.horizontalAdvance(words)
        left = x - {"left": 0.0, "right": width, "center": width / 2.0}[align]
        if halo:
            path = QPainterPath()
            path.addText(QPointF(left, baseline), font, words)
            pen = QPen(self.look.color("pane"), HALO)
            pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
            self.painter.strokePath(path, pen)
        self.painter.setFont(font)
        self.painter.setPen(self.look.color(color))
        self.painter.drawText(QPointF(left, baseline), words)
        rect = QRectF(left, baseline - metrics.capHeight(), width, metrics.capHeight())
        self.marks.append(Mark(rect, words, font.pixelSize(), row))
        return rect

    def wrap(self, words: str, role: str, room: float) -> list[str]:
        """Break words into lines no wider than the room."""
        lines: list[str] = []
        for word in words.split():
            longer = f"{lines[-1]} {word}" if lines else word
            if lines and self.wide(longer, role) <= room:
                lines[-1] = longer
            else:
                lines.append(word)
        return [self.fit(line, role, room) for line in lines]

    def fit(self, words: str, role: str, room: float) -> str:
        """The words, or their beginning and an ellipsis, or nothing."""
        if self.wide(words, role) <= room:
            return words
        for length in range(len(words) - 1, 1, -1):
            short = f"{words[:length].rstrip()}…"
            if self.wide(short, role) <= room:
                return short
        return ""

    def free(self, rect: QRectF) -> bool:
        """Whether nothing was written or drawn there that words would hide."""
        taken = (*(mark.rect for mark in self.marks), *self.taken)
        return not any(other.intersects(rect) for other in taken)

    def spot(self, rect: QRectF, row: int) -> None:
        """Let a shape without words lead to what is behind it: the row of the table."""
        self.spots.append(Mark(rect, "", 0, row))

    # Shapes ------------------------------------------------------------------------------

    def box(self, rect: QRectF, color: str) -> None:
        """Fill a rectangle."""
        self.painter.fillRect(rect, self.look.color(color))

    def line(
        self,
        x: Sequence[float] | Floats,
        y: Sequence[float] | Floats,
        color: str = "text",
        width: float = 1.8,
        dashes: Sequence[float] | None = None,
    ) -> None:
        """Draw an open line; ``dashes`` are lengths on and off."""
        pen = QPen(self.look.color(color), width)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
        if dashes is not None:
            pen.setDashPattern([length / width for length in dashes])
        self.painter.setPen(pen)
        self.painter.setBrush(Qt.BrushStyle.NoBrush)
        self.painter.drawPolyline(_polygon(x, y))

    def halo_line(self, x: Floats, y: Floats, dashes: Sequence[float] | None = None) -> None:
        """Draw a line in ink with a halo, for it runs over areas."""
        self.line(x, y, "pane", 5.0)
        self.line(x, y, "text", 2.2, dashes)

    def area(self, x: Floats, low: Floats, high: Floats, shade: Shade) -> None:
        """Fill between two lines with a shade and its texture, y downwards."""
        if len(x) < 2:
            return
        all_x, all_y = np.concatenate((x, x[::-1])), np.concatenate((high, low[::-1]))
        self.painter.setPen(Qt.PenStyle.NoPen)
        self.painter.setBrush(self._ground(shade))
        self.painter.drawPolygon(_polygon(all_x, all_y))
        self._strokes(shade, lambda p, s: hatch.in_polygon(all_x, all_y, p, slanted=s))

    def ruled(self, x: Floats, low: Floats, high: Floats) -> None:
        """Rule an area flat: what is missing."""
        all_x, all_y = np.concatenate((x, x[::-1])), np.concatenate((high, low[::-1]))
        self.painter.setPen(Qt.PenStyle.NoPen)
        self.painter.setBrush(self.look.color("pane"))
        self.painter.drawPolygon(_polygon(all_x, all_y))
        turned = hatch.in_polygon(all_y, all_x, 5.0, slanted=False)
        self.painter.setPen(QPen(self.look.color("text"), 1.0))
        for stroke in turned:
            self.painter.drawLine(
                QPointF(stroke.y1(), stroke.x1()), QPointF(stroke.y2(), stroke.x2())
            )

    def shade(self, rect: QRectF, shade: Shade) -> None:
        """Fill a rectangle with a shade, its texture and easy's outline."""
        self.painter.fillRect(rect, self._ground(shade))
        self._strokes(shade, lambda p, s: hatch.in_rect(rect, p, slanted=s))
        if shade == Shade.EASY:
            self.outline(rect, "easy_outline")

    def outline(self, rect: QRectF, color: str, dashes: Sequence[float] | None = None) -> None:
        """Outline a rectangle just inside."""
        pen = QPen(self.look.color(color), 1.2)
        pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
        if dashes is not None:
            pen.setDashPattern(list(dashes))
        self.painter.setPen(pen)
        self.painter.setBrush(Qt.BrushStyle.NoBrush)
        self.painter.drawRect(rect.adjusted(0.6, 0.6, -0.6, -0.6))

    def stair(
        self, left: float, base: float, per_hour: float, seconds: Sequence[float],
        heights: Sequence[float],
    ) -> float:  # fmt: skip
        """Draw a stair of seconds by shade; gives its right end."""
        laid, right = steps(left, per_hour, tuple(seconds)[:3], 8.0)
        for index, start, end in laid:
            height = heights[index]
            self.shade(QRectF(start, base - height, end - start, height), Shade(index))
        return right

    def pennant(self, x: float, base: float, height: float) -> None:
        """Draw a race's flag standing on ``base``."""
        ink = self.look.color("text")
        self.painter.fillRect(QRectF(x - 1.0, base - height, 2.4, height), ink)
        self.painter.setPen(Qt.PenStyle.NoPen)
        self.painter.setBrush(ink)
        part = min(height, 18.0)
        self.painter.drawPolygon(
            QPolygonF(
                [
                    QPointF(x, base - height),
                    QPointF(x + part, base - height + 0.4 * part),
                    QPointF(x, base - height + 0.8 * part),
                ]
            )
        )

    def dot(self, x: float, y: float, radius: float, color: str = "text") -> None:
        """Draw a dot with a halo."""
        self.painter.setPen(QPen(self.look.color("pane"), 1.6))
        self.painter.setBrush(self.look.color(color))
        self.painter.drawEllipse(QPointF(x, y), radius, radius)

    def _textured(self, shade: Shade) -> bool:
        return shade != Shade.EASY and not (self.look.ink and shade == Shade.HARD)

    def _ground(self, shade: Shade) -> QColor:
        """What a shade is filled with below its texture, or in small in place of both."""
        if shade not in self._grounds:
            self._grounds[shade] = self._mixed(shade)
        return self._grounds[shade]

    def _mixed(self, shade: Shade) -> QColor:
        ground = self.look.color(ROLES[shade])
        if not (self._small and self._textured(shade)):
            return ground
        texture = self.look.color(f"{ROLES[shade]}_texture")
        pitch, width, slanted = _STROKES[shade]
        part = width * (math.sqrt(2.0) if slanted else 1.0) / pitch

        def mixed(under: int, over: int) -> int:
            return round(under + part * (over - under))

        return QColor(
            mixed(ground.red(), texture.red()),
            mixed(ground.green(), texture.green()),
            mixed(ground.blue(), texture.blue()),
        )

    def _strokes(self, shade: Shade, cut: Callable[[float, bool], list[QLineF]]) -> None:
        if self._small or not self._textured(shade):
            return
        pitch, width, slanted = _STROKES[shade]
        pen = QPen(self.look.color(f"{ROLES[shade]}_texture"), width)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        self.painter.setPen(pen)
        self.painter.drawLines(cut(pitch, slanted))


def _polygon(x: Sequence[float] | Floats, y: Sequence[float] | Floats) -> QPolygonF:
    places = zip(np.asarray(x).tolist(), np.asarray(y).tolist(), strict=True)
    return QPolygonF([QPointF(a, b) for a, b in places])
