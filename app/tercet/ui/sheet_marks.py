"""Marks on the season sheet: the chosen day, a chosen stretch, today, and the keyboard's ring."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta

from PySide6.QtCore import QRect, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from tercet.library.views import WeekView

Colors = Mapping[str, QColor]
#: From a week's first day to its last.
WEEK = timedelta(days=6)


def holds(stretch: tuple[date, date] | None, week: WeekView) -> bool:
    """Whether some of a week lies in a stretch, its two ends included."""
    return (
        stretch is not None and stretch[0] <= week.first_day + WEEK and week.first_day <= stretch[1]
    )


def paint_stretch(painter: QPainter, rect: QRect, colors: Colors) -> None:
    """Ground and left edge of a week's gutter that lies in the chosen stretch."""
    painter.fillRect(rect, colors["selected"])
    painter.fillRect(QRect(rect.left(), rect.top(), 3, rect.height()), colors["focus"])


def paint_chosen(painter: QPainter, ground: QRectF, colors: Colors) -> None:
    """Ground of the chosen day, with a thin edge all round it: today's is an upright."""
    painter.fillRect(ground, colors["selected"])
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(colors["focus"], 1))
    painter.drawRect(ground.adjusted(0.5, 0.5, -0.5, -0.5))


def paint_today(painter: QPainter, rect: QRect, colors: Colors) -> None:
    """Today's upright at the left of its day."""
    painter.fillRect(QRectF(rect.left() + 2, rect.top(), 3, rect.height()), colors["focus"])


def paint_ring(painter: QPainter, ground: QRectF, colors: Colors, *, gap: bool) -> None:
    """The keyboard's ring with its gap of pane colour."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    # One of several sessions stands too close to its neighbours for the gap.
    lines = ((3.0, "pane"), (1.0, "focus")) if gap else ((1.0, "focus"),)
    for inset, role in lines:
        pen = QPen(colors[role], 2)
        pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
        painter.setPen(pen)
        painter.drawRect(ground.adjusted(inset, inset, -inset, -inset))
