"""Stairs of runs still to do: the silhouette of a stair as a hollow outline, and the plan rule."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPolygonF

from tercet.ui import stairs
from tercet.ui.theme import Theme


def paint_hollow(
    painter: QPainter,
    left: float,
    base: float,
    px_per_hour: float,
    seconds: Sequence[float],
    heights: Sequence[float],
    theme: Theme,
    role: str = "control",
) -> float:
    """Outline seconds by shade as one stair and return its right end [logical px].

    Time that cannot be judged follows at the height of easy, as in a filled stair.
    """
    laid, right = stairs.steps(left, px_per_hour, seconds, painter.device().devicePixelRatio())
    if not laid:
        return right
    outline = [QPointF(laid[0][1] + 0.5, base - 0.5)]
    edge = laid[0][1]
    for index, _, end in laid:
        top = base - (heights[index] if index < 3 else heights[0])
        outline += [QPointF(edge + 0.5, top + 0.5), QPointF(end - 0.5, top + 0.5)]
        edge = end - 1.0
    outline.append(QPointF(right - 0.5, base - 0.5))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(stairs.outline_pen(role, theme))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolygon(QPolygonF(outline))
    return right


def paint_plan_rule(
    painter: QPainter, left: float, base: float, length: float, theme: Theme
) -> None:
    """Draw the 2 px rule under a week or a day, as long as its plan."""
    painter.fillRect(QRectF(round(left), base + 1, max(round(length), 2), 2), theme.color("text_2"))
