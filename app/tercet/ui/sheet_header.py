"""The season sheet's header: names of the days, and the length of an hour."""

from __future__ import annotations

from PySide6.QtCore import QLocale, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter
from PySide6.QtWidgets import QHeaderView, QWidget

from tercet import week_days
from tercet.language import mark, tr
from tercet.ui.sheet_layout import LEFT
from tercet.ui.theme import Theme

_SCALES = ((3600, mark("1 h")), (7200, mark("2 h")), (1800, mark("30 min")), (900, mark("15 min")))


class SheetHeader(QHeaderView):
    """Painted by hand, so that the scale can stand in the last day's section."""

    def __init__(self, theme: Theme, parent: QWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.px_per_hour = 48.0
        self.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setSectionsClickable(False)
        self.setHighlightSections(False)
        self.setMinimumSectionSize(28)
        self.set_theme(theme)

    def set_theme(self, theme: Theme) -> None:
        """Take over another look."""
        self._theme = theme
        self.updateGeometry()
        self.viewport().update()

    def least_width(self, room: float) -> float:
        """Width that the names of the days need, if ``room`` has seven of it."""
        metrics = QFontMetricsF(self._theme.font("small_bold"))
        widest = max(metrics.horizontalAdvance(self._short(n)) for n in range(1, 8))
        wanted = widest + LEFT + self._theme.px(4)
        return wanted if 7 * wanted <= room else 0.0

    def _name(self, section: int) -> str:
        """Short name of a day, or its letter if any of the seven is too long for its column."""
        metrics = QFontMetricsF(self._theme.font("small_bold"))
        names = [self._short(n) for n in range(1, 8)]
        if all(
            metrics.horizontalAdvance(name) <= self.sectionSize(n) - LEFT
            for n, name in enumerate(names, 1)
        ):
            return names[section - 1]
        return QLocale().standaloneDayName(
            week_days.weekdays()[section - 1] + 1, QLocale.FormatType.NarrowFormat
        )

    def _short(self, section: int) -> str:
        return str(self.model().headerData(section, self.orientation()))

    def sizeHint(self) -> QSize:
        return QSize(super().sizeHint().width(), self._theme.px(32))

    def paintSection(
        self,
        painter: QPainter,
        rect: QRect,
        logicalIndex: int,
    ) -> None:
        theme = self._theme
        painter.fillRect(rect, theme.color("sunken"))
        painter.fillRect(QRect(rect.left(), rect.bottom(), rect.width(), 1), theme.color("rule"))
        if logicalIndex == 0:
            return
        font = theme.font("small_bold")
        name = self._name(logicalIndex)
        painter.setFont(font)
        painter.setPen(theme.color("text_2"))
        box = QRectF(rect).adjusted(LEFT, 0, 0, 0)
        painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, name)
        if logicalIndex == self.count() - 1:
            box.setLeft(box.left() + QFontMetricsF(font).horizontalAdvance(name) + theme.px(12))
            self._scale(painter, box.adjusted(0, 0, -theme.px(12), 0))

    def _scale(self, painter: QPainter, box: QRectF) -> None:
        """Draw the longest of a few scale bars that fits beside the day's name."""
        theme = self._theme
        metrics = QFontMetricsF(theme.font("small"))
        for seconds, scale in _SCALES:
            words = tr(scale)
            length = seconds * self.px_per_hour / 3600.0
            if metrics.horizontalAdvance(words) <= length <= box.width():
                break
        else:
            return
        ink = theme.color("text_2")
        y = box.top() + box.height() * 0.66
        left = round(box.right() - length)
        painter.fillRect(QRectF(left, y, round(length), 1), ink)
        tick = theme.px(7)
        for x in (left, left + round(length) - 1):
            painter.fillRect(QRectF(x, y - tick // 2, 1, tick), ink)
        painter.setFont(theme.font("small"))
        painter.setPen(ink)
        text = QRectF(left, y - metrics.height() - 1, round(length), metrics.height())
        painter.drawText(text, Qt.AlignmentFlag.AlignCenter, words)
