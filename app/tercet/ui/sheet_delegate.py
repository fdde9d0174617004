"""Painting of the season sheet's rows: headings, gutter, days."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QPainter,
    QPainterPath,
    QPen,
    QPolygonF,
)
from PySide6.QtWidgets import QStyledItemDelegate, QStyleOptionViewItem, QWidget

from tercet.language import tr
from tercet.library.views import SessionView
from tercet.ui import sheet_layout, sheet_marks, sheet_planned, sheet_rows, words
from tercet.ui.sheet_layout import Bar, Layout
from tercet.ui.sheet_model import SheetModel
from tercet.ui.sheet_rows import Cell, Row
from tercet.ui.sheet_zoom import Zoom
from tercet.ui.stairs import (
    heights,
    paint_cut,
    paint_outline,
    paint_pennant,
    paint_stair,
)
from tercet.ui.theme import Theme

UNLIT = 0.25  # what is left of a session that a search did not find
_LEFT_MIDDLE = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_RIGHT_MIDDLE = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_COLORS = ("pane", "sunken", "rule", "edge", "control", "text", "text_2", "text_3")
_SHARE_FONTS = {
    (False, False): "small",
    (False, True): "small_italic",
    (True, False): "small_bold",
    (True, True): "small_bold_italic",
}
_FONTS = ("block", "small", "small_bold", "small_italic", "small_bold_italic")


class SheetDelegate(QStyledItemDelegate):
    """Paints what SheetModel holds; the view sets what is marked, selected and ringed."""

    def __init__(self, model: SheetModel, theme: Theme, parent: QWidget) -> None:
        super().__init__(parent)
        self._model = model
        self.layout = Layout(48.0, (64,) * 7)
        self.marked: date | None = None
        self.part = 0
        self.current: tuple[int, int] | None = None
        self.ring = False
        self.found: frozenset[int] | None = None  # what a search found, if one is on
        self.chosen: frozenset[int] = frozenset()  # several sessions for one action
        self.stretch: tuple[date, date] | None = None  # first and last day of those chosen
        self.zoom = Zoom()
        self.set_theme(theme)

    def set_theme(self, theme: Theme) -> None:
        """Take over another look."""
        self.theme = theme
        self.colors: dict[str, QColor] = {
            name: theme.color(name) for name in (*_COLORS, "focus", "selected", "band")
        }
        self.fonts: dict[str, QFont] = {name: theme.font(name) for name in _FONTS}
        self.metrics = {name: QFontMetricsF(font) for name, font in self.fonts.items()}
        self.set_zoom(self.zoom)
        self._bars: dict[tuple[int, int], tuple[Bar, ...]] = {}

    def set_zoom(self, zoom: Zoom) -> None:
        """Take over another row height."""
        self.zoom = zoom
        self.heights = heights(zoom.stairs, self.theme)
        plain = replace(self.theme, texture="off")
        self._bar_theme = self.theme if zoom.textured else plain

    def set_layout(self, layout: Layout) -> None:
        """Take over other widths."""
        self.layout = layout
        self._bars.clear()

    def bars(self, row: int, column: int) -> tuple[Bar, ...]:
        """Where the sessions of a day stand, kept for the next use."""
        key = (row, column)
        if key not in self._bars:
            cell = self._model.rows()[row].cells[column - 1]
            sheet = self._model.sheet
            assert sheet is not None
            self._bars[key] = sheet_layout.bars(cell, self.layout.px_per_hour, sheet.cap_s)
        return self._bars[key]

    def extra(self, cell: Cell) -> float:
        """Room after a day's bars for a race's name or the hours of a cut bar [px]."""
        sheet = self._model.sheet
        room = 0.0
        if cell.race:
            text = self.metrics["small_bold"].horizontalAdvance(cell.race)
            room += min(text, self.theme.px(72)) + self.theme.px(22)
        if sheet is not None and sum(cell.lengths) - sheet.cap_s > 1.0:
            longest = max(cell.sessions, key=sheet_rows.session_length)
            others = sum(cell.lengths) - sheet_rows.session_length(longest)
            if _easy_to(longest, sheet.cap_s - others):
                return room + 10.0
            room += self.metrics["small_bold"].horizontalAdvance(cut_words(longest)) + 12.0
        return room

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        rect: QRect = option.rect
        number, column = index.row(), index.column()
        row = self._model.rows()[number]
        if row.week is None:
            if column == 0:
                self._heading(painter, rect, row)
            return
        if self.marked == row.week.first_day:
            painter.fillRect(rect, self.colors["band"])
        elif row.this_week:
            painter.fillRect(rect, self.colors["sunken"])
        if column == 0:
            self._gutter(painter, rect, row)
        else:
            self._day(painter, rect, row.cells[column - 1], number, column)

    def _heading(self, painter: QPainter, rect: QRect, row: Row) -> None:
        px = self.theme.px
        block = row.block
        share, short = sheet_rows.share_words(block)
        share_font = _SHARE_FONTS[short, block.estimated]
        run, planned = sheet_rows.run_words(block), sheet_planned.block_plan_s(block)
        if planned:
            hours = words.hours(planned)
            whole = tr("{run} of {hours} planned", run=run, hours=hours)
            run = whole if run else tr("{hours} planned", hours=hours)
        texts = [sheet_rows.length_words(block), run]
        right = rect.right() - px(12)
        room = right - rect.left() - px(13)
        share_width = self._width(share_font, share) + (px(18) if short else 0)
        needed = share_width + sum(self._width("small", text) + px(12) for text in texts)
        name = block.name
        if self._width("block", name) + needed > room:
            name = shortened(name)
        while texts and self._width("block", name) + needed > room:
            needed -= self._width("small", texts.pop(0)) + px(12)
        x = rect.left() + px(13)
        lower = px(4 if self.zoom.dated else 0)
        line = QRectF(x, rect.top() + lower, room, rect.height() - lower)
        painter.setFont(self.fonts["block"])
        painter.setPen(self.colors["text"])
        limit = max(px(40), room - needed)
        name = self.metrics["block"].elidedText(name, Qt.TextElideMode.ElideRight, limit)
        painter.drawText(line, _LEFT_MIDDLE, name)
        line.setLeft(x + self._width("block", name) + px(12))
        painter.setFont(self.fonts["small"])
        painter.setPen(self.colors["text_2"])
        for text in filter(None, texts):
            painter.drawText(line, _LEFT_MIDDLE, text)
            line.setLeft(line.left() + self._width("small", text) + px(12))
        painter.setFont(self.fonts[share_font])
        if short:
            height = self.metrics[share_font].height() + px(3 if self.zoom.dated else 1)
            box = QRectF(line.left(), line.center().y() - height / 2, share_width, height)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(self.colors["text"], 1.4))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(box, 4, 4)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, share)
        else:
            painter.drawText(line, _LEFT_MIDDLE, share)

    def _gutter(self, painter: QPainter, rect: QRect, row: Row) -> None:
        px = self.theme.px
        if row.week is not None and sheet_marks.holds(self.stretch, row.week):
            sheet_marks.paint_stretch(painter, rect, self.colors)
        top, bottom = (4 if row.first else 0), (3 if row.last else 0)
        bracket = QRect(rect.left() + px(11), rect.top() + top, 2, rect.height() - top - bottom)
        painter.fillRect(bracket, self.colors["text" if row.current else "edge"])
        day, hours = sheet_rows.week_words(row)
        line = QRectF(rect).adjusted(px(21), 0, -px(4), 0)
        if not self.zoom.dated:
            # A block's first week names its month unless the next one's name stands too close.
            limit = (17 if self.zoom.textured else 31) if row.first else 7 * self.zoom.textured
            if row.week is None or row.week.first_day.day > limit:
                return
            day, hours = words.month(row.week.first_day), ""
            line = self._within_block(line, row)
        ink = "text" if row.this_week else "text_3" if row.future else "text_2"
        painter.setPen(self.colors[ink])
        painter.setFont(self.fonts["small_bold" if row.this_week else "small"])
        painter.drawText(line, _LEFT_MIDDLE, day)
        painter.setPen(self.colors["text_3" if hours == "0:00" else "text"])
        painter.setFont(self.fonts["small" if hours == "0:00" else "small_bold"])
        if not hours and row.week is not None:
            planned = sheet_planned.week_plan_s(row.block, row.week)
            hours = words.hours(planned) if planned else ""
            painter.setPen(self.colors["text_3"])
            painter.setFont(self.fonts["small_italic"])
        painter.drawText(line, _RIGHT_MIDDLE, hours)

    def _within_block(self, line: QRectF, row: Row) -> QRectF:
        """Give a word that is higher than its row room in the rows beside it, of its block."""
        assert row.week is not None
        over = max(0.0, self.metrics["small"].height() - line.height())
        before = (row.week.first_day - row.block.start).days // 7 * line.height()
        after = (row.block.end - row.week.first_day).days // 7 * line.height()
        up = min(max(before, 0.0), over, max(over / 2, over - after))
        return line.adjusted(0, -up, 0, over - up)

    def _day(self, painter: QPainter, rect: QRect, cell: Cell, row: int, column: int) -> None:
        if not cell.inside:
            return
        base = self.baseline(rect)
        here = self.current == (row, column)
        placed = self.bars(row, column)
        if here:
            sheet_marks.paint_chosen(painter, self.part_rect(rect, placed), self.colors)
        start = rect.left() + (int(sheet_layout.LEFT) if column == 1 else 0)
        end = rect.right() + 1 - (self.theme.px(12) if column == 7 else 0)
        painter.fillRect(QRectF(start, base, end - start, 1), self.colors["rule"])
        right = float(rect.left()) + sheet_layout.LEFT
        for bar, session in zip(placed, cell.sessions, strict=True):
            right = self._session(painter, rect, base, bar, session)
        if cell.planned:
            span = (float(rect.left()) + sheet_layout.LEFT, right, float(rect.right()))
            hour, tall = self.layout.px_per_hour, self.heights
            right = sheet_planned.paint_day(
                painter, cell, span, base, hour, tall, self.theme, selected=here
            )
        if cell.race:
            gap = 7 if cell.sessions or cell.planned else 2
            self._pennant(painter, rect, right + gap, base, cell.race)
        if cell.today:
            sheet_marks.paint_today(painter, rect, self.colors)
        if here and self.ring:
            ground = self.part_rect(rect, placed)
            # A race's name takes the height that the gap would cut off.
            gap = len(placed) < 2 and self.zoom.dated and not cell.race
            sheet_marks.paint_ring(painter, ground, self.colors, gap=gap)

    def _session(
        self, painter: QPainter, rect: QRect, base: float, bar: Bar, session: SessionView
    ) -> float:
        """Draw a session's bar, chosen with others or found by a search where it is."""
        left = rect.left() + bar.left
        if session.id in self.chosen:
            ground = QRectF(left - 3, rect.top() + 1, bar.width + 6, rect.height() - 2)
            painter.fillRect(ground, self.colors["selected"])
            painter.fillRect(
                QRectF(ground.left(), ground.top(), ground.width(), 2), self.colors["focus"]
            )
        if self.found is None:
            return self._bar(painter, rect, base, bar, session)
        lit = session.id in self.found
        painter.setOpacity(1.0 if lit else UNLIT)
        right = self._bar(painter, rect, base, bar, session)
        painter.setOpacity(1.0)
        if lit:
            painter.fillRect(QRectF(left, base + 1, bar.width, 2), self.colors["text"])
        return right

    def baseline(self, rect: QRect) -> float:
        """Where the stairs of a row stand."""
        return rect.bottom() + 1.0 - round(self.zoom.ground * self.theme.scale)

    def part_rect(self, rect: QRect, placed: tuple[Bar, ...]) -> QRectF:
        """Ground of the selected day, or of the selected one of its sessions."""
        whole = QRectF(rect).adjusted(2, 1, -1, -1)
        if len(placed) > 1:
            edges = (0.0, *sheet_layout.part_edges(placed, rect.width()), float(rect.width()))
            part = min(self.part, len(placed) - 1)
            if part:
                whole.setLeft(rect.left() + edges[part] - 1)
            if part < len(placed) - 1:
                whole.setRight(rect.left() + edges[part + 1] - 1)
        return whole

    def _bar(
        self, painter: QPainter, rect: QRect, base: float, bar: Bar, session: SessionView
    ) -> float:
        x, limit = rect.left() + bar.left, rect.right() + 1.0
        hour = self.layout.px_per_hour
        if bar.cut:
            painter.save()
            top = base - self.heights[2]
            ends = QPolygonF(
                [
                    QPointF(x - 1, base + 1),
                    QPointF(x - 1, top),
                    QPointF(x + bar.width + 5, top),
                    QPointF(x + bar.width - 1, base + 1),
                ]
            )
            path = QPainterPath()
            path.addPolygon(ends)
            painter.setClipPath(path, Qt.ClipOperation.IntersectClip)
        if session.sport != "running":
            width = max(2.5, session.moving_s * hour / 3600.0)
            box = QRectF(round(x), base - self.heights[0], round(width), self.heights[0])
            paint_outline(painter, box, "control", self.theme)
            right = box.right()
        else:
            right = paint_stair(
                painter,
                x,
                base,
                hour,
                session.seconds,
                self.heights,
                self._bar_theme,
                estimated=session.estimated,
            )
        if bar.cut:
            painter.restore()
            right = self._cut(painter, x, x + bar.width, limit, base, session)
        return right

    def _cut(
        self,
        painter: QPainter,
        start: float,
        end: float,
        cell_right: float,
        base: float,
        session: SessionView,
    ) -> float:
        """Draw a cut end's two strokes, and the hours: over easy if only that shows, or beside."""
        paint_cut(painter, end, base, self.heights[1], self.theme)
        if not self.zoom.worded:
            return end + 8
        painter.setPen(self.colors["text"])
        texts = (cut_words(session), words.hours(sheet_rows.session_length(session)))
        height = self.theme.px(17)
        painter.setFont(self.fonts["small_bold"])
        over = _easy_to(session, (end - start) * 3600.0 / self.layout.px_per_hour)
        for text in texts if over else ():
            width = self._width("small_bold", text) + 2
            if width < end - start or text is texts[-1]:
                box = QRectF(end - width - 2, base - self.heights[0] - height + 2, width, height)
                painter.drawText(box, _RIGHT_MIDDLE, text)
                return end + 8
        box = QRectF(end + 10, base - height, cell_right - end - 10, height)
        fitting = [t for t in texts if self._width("small_bold", t) <= box.width()]
        painter.drawText(box, _LEFT_MIDDLE, (*fitting, texts[-1])[0])
        return cell_right

    def _pennant(self, painter: QPainter, rect: QRect, x: float, base: float, name: str) -> None:
        px = self.theme.px
        top = max(float(rect.top() + 2), base - px(20)) if self.zoom.dated else base - px(9)
        paint_pennant(painter, x, top, base, self.theme)
        if not self.zoom.worded:
            return
        box = QRectF(x + px(14), top - px(3), rect.right() - x - px(14), px(17))
        painter.setFont(self.fonts["small_bold"])
        painter.setPen(self.colors["text"])
        metrics, right = self.metrics["small_bold"], Qt.TextElideMode.ElideRight
        painter.drawText(box, _LEFT_MIDDLE, metrics.elidedText(name, right, box.width()))

    def _width(self, font: str, text: str) -> float:
        return self.metrics[font].horizontalAdvance(text) if text else 0.0


def _easy_to(session: SessionView, seconds: float) -> bool:
    """Whether the part of a cut bar that shows holds nothing but easy."""
    return session.sport == "running" and session.seconds[0] >= seconds


def cut_words(session: SessionView) -> str:
    """What stands beside a cut bar: its hours, and its hard minutes, which may be cut away."""
    text = words.hours(sheet_rows.session_length(session))
    hard = session.seconds[2] if session.sport == "running" else 0.0
    if hard < 30.0:
        return text
    return tr("{hours} with {hard} hard", hours=text, hard=words.hours(hard))


def shortened(name: str) -> str:
    """Take a long name's first word, with an ellipsis."""
    first, _, rest = name.partition(" ")
    return f"{first}…" if rest else name
