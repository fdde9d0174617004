"""The heads of the plan's columns, and the length of an hour."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from tercet.language import tr
from tercet.ui import theme
from tercet.ui.plan_weeks import PlanWeeks
from tercet.ui.plan_weeks_paint import BRACKET, HOURS, WEEK_OF

_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


class ScaleStrip(QWidget):
    """Names columns as they stand in the list below."""

    def __init__(self, weeks: PlanWeeks) -> None:
        super().__init__()
        self._weeks = weeks
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(400, theme.current().px(26))

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        px = look.px
        painter = QPainter(self)
        painter.setFont(look.font("small"))
        painter.setPen(look.color("text_2"))
        height = self.height()
        painter.drawText(QRectF(px(BRACKET) - 10, 0, px(52), height), _RIGHT, tr("to go"))
        left = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        painter.drawText(QRectF(px(WEEK_OF), 0, px(70), height), left, tr("week of"))
        painter.drawText(QRectF(px(HOURS) - px(60), 0, px(60), height), _RIGHT, tr("hours"))
        hour = self._weeks.px_per_hour()
        length = next((n for n in (1, 2, 4, 8) if n * hour >= px(36)), 8)
        end = self._weeks.width() - px(14)
        start, foot = end - length * hour, height - px(5)
        painter.setPen(QPen(look.color("text_2"), 1))
        painter.drawLine(int(start), foot, int(end), foot)
        for x in (start, end):
            painter.drawLine(int(x), foot - 4, int(x), foot + 4)
        box = QRectF(start - 30, 0, length * hour + 60, foot - 2)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, tr("{n} h", n=length))
