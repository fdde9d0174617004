"""Two seasons in weeks counted back from the race: one row a week, stairs outward from a spine."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFocusEvent, QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from tercet.language import mark, several, tr
from tercet.library.years import Past, WeekBack
from tercet.ui import stairs, theme, words
from tercet.ui.panes import KEYBOARD

#: Rows take the height there is, between these. [px at 100 %]
LEAST_ROW, ROW = 21, 32
#: Half the width of the spine, and the room of block names at the outer edges. [px at 100 %]
SPINE, NAMES = 62, 144
HEIGHTS = (8.0, 12.5, 17.0)
#: What the last row of the spine is.
RACE, LAST, END = mark("race"), mark("last"), mark("end")


class BackRows(QWidget):
    """The rows of two pasts; the longer begins first."""

    def __init__(self) -> None:
        super().__init__()
        self._left: list[WeekBack] = []
        self._right: list[WeekBack] = []
        self._ends = (RACE, RACE)
        self._ring = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        theme.changed.connect(self._dress)

    def _dress(self, *_: object) -> None:
        self.updateGeometry()
        self.update()

    def show_pasts(
        self, left: tuple[Past, Sequence[WeekBack]] | None,
        right: tuple[Past, Sequence[WeekBack]] | None,
    ) -> None:  # fmt: skip
        """Show weeks as :func:`tercet.library.years.weeks_back` gives them."""
        self._left = list(left[1]) if left else []
        self._right = list(right[1]) if right else []
        self._ends = tuple(  # type: ignore[assignment]
            RACE if side and side[0].race is not None else LAST for side in (left, right)
        )
        said = [
            several(len(side[1]), mark("{name}, {n} week"), mark("{name}, {n} weeks"), name=name)
            for side, name in ((side, side[0].name) for side in (left, right) if side)
        ]
        self.setAccessibleName(
            tr("Weeks counted back: {one} beside {other}", one=said[0], other=said[1])
            if len(said) == 2
            else tr("Weeks counted back: {one}", one="".join(said))
        )
        self._dress()

    @property
    def rows(self) -> int:
        """Number of rows."""
        return max(len(self._left), len(self._right))

    def sizeHint(self) -> QSize:
        return QSize(600, theme.current().px(LEAST_ROW) * self.rows + 6)

    def minimumSizeHint(self) -> QSize:
        return QSize(360, self.sizeHint().height())

    def _row(self) -> int:
        """Height of a row. [px]"""
        look = theme.current()
        fits = (self.height() - 6) // max(self.rows, 1)
        return min(max(fits, look.px(LEAST_ROW)), look.px(ROW))

    def _top(self, to_go: int) -> float:
        return float(self._row() * (self.rows - 1 - to_go))

    def hour_px(self) -> float:
        """Length of an hour: the longest week of either side fills its side."""
        most = max((_run(week) for week in (*self._left, *self._right)), default=1.0)
        return self._room() * 3600 / max(most, 3600.0)

    def _room(self) -> float:
        look = theme.current()
        return max(self.width() / 2 - look.px(SPINE) - look.px(NAMES) - 16, 40.0)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the focus where the keyboard brought it."""
        self._ring = event.reason() in KEYBOARD
        super().focusInEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        painter = QPainter(self)
        for mirrored, weeks in ((True, self._left), (False, self._right)):
            self._paint_blocks(painter, weeks, mirrored, look)
            for week in weeks:
                self._paint_week(painter, week, mirrored, look)
        self._paint_spine(painter, look)
        if self.hasFocus() and self._ring:
            painter.setPen(look.color("focus"))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(self.rect()).adjusted(0.5, 0.5, -1, -1))

    def _paint_spine(self, painter: QPainter, look: theme.Theme) -> None:
        middle, row = self.width() / 2, self._row()
        painter.setFont(look.font("small"))
        painter.setPen(look.color("text_2"))
        for to_go in range(self.rows):
            rect = QRectF(middle - look.px(20), self._top(to_go), look.px(40), row)
            last = tr(self._ends[0] if self._ends[0] == self._ends[1] else END)
            painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, str(to_go) if to_go else last)

    def _paint_week(
        self, painter: QPainter, week: WeekBack, mirrored: bool, look: theme.Theme
    ) -> None:
        row, top = self._row(), self._top(week.to_go)
        middle, spine = self.width() / 2, look.px(SPINE)
        base = top + row - 4.0
        inner = middle - spine if mirrored else middle + spine
        outer = inner - self._room() if mirrored else inner + self._room()
        painter.fillRect(
            QRectF(min(inner, outer), base + 1, abs(inner - outer), 1), look.color("rule")
        )
        hours = QRectF(middle - spine, top, look.px(40), row)
        if not mirrored:
            hours.moveLeft(middle + look.px(22))
        side = Qt.AlignmentFlag.AlignRight if mirrored else Qt.AlignmentFlag.AlignLeft
        ran = _run(week)
        if ran > 0:
            painter.setFont(look.font("small_bold"))
            painter.setPen(look.color("text"))
            text = words.hours(ran)
            painter.drawText(hours, Qt.AlignmentFlag.AlignVCenter | side, text)
        else:
            painter.setFont(look.font("small_italic"))
            painter.setPen(look.color("text_2"))
            why = tr("no runs")
            if week.why:
                why = tr("no runs: “{why}”, from notes", why=week.why)
            box = QRectF(min(inner, outer) + 6, top, abs(inner - outer) - 12, row)
            metrics = QFontMetricsF(painter.font())
            why = metrics.elidedText(why, Qt.TextElideMode.ElideRight, box.width())
            painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | side, why)
        painter.save()
        if mirrored:
            # Drawn rightward, then mirrored: easy next to the spine, hard outermost.
            painter.translate(2 * inner, 0)
            painter.scale(-1, 1)
        heights = stairs.heights(HEIGHTS, look)
        end = stairs.paint_stair(painter, inner, base, self.hour_px(), week.seconds, heights, look)
        painter.restore()
        if week.races:
            x = 2 * inner - end - look.px(16) if mirrored else end + look.px(5)
            stairs.paint_pennant(painter, x, top + 4, base, look)

    def _paint_blocks(
        self, painter: QPainter, weeks: list[WeekBack], mirrored: bool, look: theme.Theme
    ) -> None:
        """Brackets and names of blocks at the outer edge."""
        row = self._row()
        font = look.font("block")
        metrics = QFontMetricsF(font)
        side = Qt.AlignmentFlag.AlignLeft if mirrored else Qt.AlignmentFlag.AlignRight
        for name, group in groupby(weeks, key=lambda week: week.block):
            held = list(group)
            if not name:
                continue
            top = self._top(held[-1].to_go)
            bottom = self._top(held[0].to_go) + row
            x = 2.0 if mirrored else self.width() - 4.0
            painter.fillRect(QRectF(x, top + 3, 2, bottom - top - 6), look.color("edge"))
            left = 12.0 if mirrored else self.width() - 12.0 - look.px(NAMES - 10)
            box = QRectF(left, top, look.px(NAMES - 10), row)
            painter.setFont(font)
            painter.setPen(look.color("text"))
            shown = metrics.elidedText(name, Qt.TextElideMode.ElideRight, box.width())
            painter.drawText(box, Qt.AlignmentFlag.AlignVCenter | side, shown)


def _run(week: WeekBack) -> float:
    return sum(week.seconds[:3]) + week.seconds[4]
