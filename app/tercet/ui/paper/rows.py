"""The understood side of a paper log: its rows as a list, painted; questions carry buttons."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QPersistentModelIndex,
    QRect,
    QRectF,
    QSize,
    Qt,
)
from PySide6.QtGui import QFontMetrics, QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from tercet.language import mark, tr
from tercet.library import paper_log
from tercet.library.paper_log import PaperRow
from tercet.library.written import CLOCKS
from tercet.ui import stairs, theme, words

#: The rows of one day that stand in one.
Day = tuple[PaperRow, ...]
Index = QModelIndex | QPersistentModelIndex
ROW = Qt.ItemDataRole.UserRole
#: Height of a row [px at 100 % text], and the height of the part with its words.
HEIGHT = 40
#: Under this width over text size the written distance is left out, and the stair is narrower.
NARROW = 560
_SHADES = (mark("{hours} easy"), mark("{hours} moderate"), mark("{hours} hard"))
_GROUNDS = {paper_log.GUESSED: "check", paper_log.ASKED: "not_read"}


def day_words(day: date) -> str:
    """Weekday and day: ``Tue 5 Nov``; the year is said by the first of each year."""
    return f"{words.weekday(day)} {words.short_day(day)}"


class Rows(QAbstractListModel):
    """The rows of a page."""

    def __init__(self) -> None:
        super().__init__()
        self.days: tuple[Day, ...] = ()
        self._shown: list[tuple[object, ...]] = []
        self.longest_s = 3600.0

    def set_rows(self, rows: Sequence[PaperRow]) -> bool:
        """Show other rows, leaving alone those that look the same; says whether any changed."""
        days = by_day(rows)
        before, after = self._shown, [shown(day) for day in days]
        self._shown = after
        most = min(len(before), len(after))
        first = next((k for k in range(most) if before[k] != after[k]), most)
        rest = most - first
        last = next((k for k in range(rest) if before[-1 - k] != after[-1 - k]), rest)
        gone, come = len(before) - first - last, len(after) - first - last
        nothing = QModelIndex()
        if gone:
            self.beginRemoveRows(nothing, first, first + gone - 1)
            self.days = (*self.days[:first], *self.days[first + gone :])
            self.endRemoveRows()
        if come:
            self.beginInsertRows(nothing, first, first + come - 1)
        # Where nothing that is shown changed, the places in the text may have.
        self.days = days
        self.longest_s = max([3600.0, *(sum(row.running_s for row in day) for day in days)])
        if come:
            self.endInsertRows()
        return bool(gone or come)

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        """How many rows."""
        return 0 if parent.isValid() else len(self.days)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """A day, and the same as one sentence."""
        day = self.days[index.row()]
        if role == ROW:
            return day
        spoken = (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole)
        if role in spoken:
            return "; ".join(sentence(row) for row in day)
        if role == Qt.ItemDataRole.ToolTipRole:
            return "; ".join(row.words for row in day) or None
        return None


def shown(day: Day) -> tuple[object, ...]:
    """All of a day that is to be seen; where its words stand in the text is not."""
    return tuple(
        (
            (row.state, row.words, row.lengths, row.seconds, row.about, row.race_m, row.here),
            (row.entry.number, row.entry.start),
            [(item.text, item.question, item.readings) for item in row.entry.unclear],
            [(item.text, item.reading, item.others) for item in row.entry.guesses],
        )
        for row in day
    )


def by_day(rows: Sequence[PaperRow]) -> tuple[Day, ...]:
    """Put the sessions of a day into one row, if nothing is asked of them."""
    days: list[list[PaperRow]] = []
    for row in rows:
        last = days[-1][-1] if days else None
        if (
            last is not None
            and last.state == row.state == paper_log.READ
            and last.entry.start is not None
            and row.entry.start is not None
            and last.entry.start.date() == row.entry.start.date()
        ):
            days[-1].append(row)
        else:
            days.append([row])
    return tuple(tuple(day) for day in days)


def when(row: PaperRow) -> str:
    """The day of a row in words; the line's number where the day is not known."""
    start = row.entry.start
    if start is None:
        return tr("Line {number}", number=row.entry.number)
    half = CLOCKS.get(start.hour, "day")
    return f"{day_words(start.date())} {half}" if half != "day" else day_words(start.date())


def lasts(*rows: PaperRow) -> str:
    """Running time; with about where some of it follows from typical speeds."""
    seconds = sum(row.running_s for row in rows)
    if rows[0].state in (paper_log.REST, paper_log.ASKED, paper_log.LEFT_OUT) and not seconds:
        return ""
    hours = words.hours(seconds)
    return tr("about {value}", value=hours) if any(row.about for row in rows) else hours


def remark(row: PaperRow) -> str:
    """What a row says of itself, other than what was run."""
    if row.state == paper_log.LEFT_OUT:
        return tr("left out, not kept")
    return row.here


def sentence(row: PaperRow) -> str:
    """A row for a screen reader."""
    shades = zip(_SHADES, row.seconds, strict=False)
    told = [tr(shade, hours=words.hours(value)) for shade, value in shades if value]
    if row.seconds[4]:
        told.append(tr("{hours} not judged", hours=words.hours(row.seconds[4])))
    parts = [when(row), row.words, row.lengths, lasts(row), *told, remark(row)]
    parts += [
        tr("not read: {typed}. {question}", typed=item.text, question=item.question)
        for item in row.entry.unclear
    ]
    parts += [f"{g.text}: {g.reading}?" for g in row.entry.guesses]
    return ", ".join(part for part in parts if part)


class RowPainter(QStyledItemDelegate):
    """Paints one row: day, words, written distance, stair, time."""

    def __init__(self, model: Rows) -> None:
        super().__init__()
        self._model = model
        #: Heights of the questions below rows by their place, as far as they are built.
        self.below: dict[int, int] = {}

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """One line, and room for the question below it."""
        below = self.below.get(index.row(), 0)
        return QSize(0, theme.current().px(HEIGHT) + below)

    def columns(self, rect: QRect) -> dict[str, QRect]:
        """Where the parts of a row stand."""
        look = theme.current()
        px = look.px
        narrow = rect.width() / look.scale < NARROW
        left, right, height = rect.left() + px(16), rect.right() - px(12), px(HEIGHT)
        time = px(78)
        stair = min(px(190), rect.width() // 4) if narrow else rect.width() * 29 // 100
        day = QFontMetrics(look.font("small")).horizontalAdvance("Wed 28 Nov am") + px(10)
        lengths = 0 if narrow else px(84)
        top = rect.top()
        stair_left = right - time - stair
        words_left = left + day
        words_width = stair_left - px(12) - lengths - words_left
        return {
            "day": QRect(left, top, day - px(6), height),
            "words": QRect(words_left, top, words_width, height),
            "lengths": QRect(words_left + words_width, top, lengths, height),
            "stair": QRect(stair_left, top, stair, height),
            "time": QRect(right - time, top, time, height),
        }

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Draw the row."""
        day: Day = index.data(ROW)
        row = day[0]
        look = theme.current()
        rect: QRect = option.rect
        state: QStyle.StateFlag = option.state
        painter.save()
        self._ground(painter, rect, row, look)
        if state & QStyle.StateFlag.State_HasFocus and state & QStyle.StateFlag.State_Active:
            painter.setPen(look.color("focus"))
            painter.drawRect(rect.adjusted(1, 1, -2, -2))
        place = self.columns(rect)
        quiet = row.state in (paper_log.REST, paper_log.HERE, paper_log.LEFT_OUT)
        start = row.entry.start
        named = when(row) if len(day) == 1 or start is None else day_words(start.date())
        _text(painter, place["day"], named, look, "small", "text_2")
        role = "body_italic" if quiet else "body"
        told = " + ".join(item.words for item in day)
        told = f"“{told}”" if row.state == paper_log.ASKED else told
        if remark(row):
            told = f"{remark(row)}: {told}"
        room = place["words"]
        if row.state == paper_log.REST:
            room = room.united(place["time"])
        elif not any(item.lengths for item in day):
            room = room.united(place["lengths"])
        _text(painter, room, told, look, role, "text_2" if quiet else "text")
        right = Qt.AlignmentFlag.AlignRight
        if place["lengths"].width() and room.right() < place["lengths"].right():
            lengths = " + ".join(item.lengths for item in day if item.lengths)
            _text(painter, place["lengths"], lengths, look, "small", "text_2", right)
        self._stairs(painter, place["stair"], day, look)
        about = any(item.about for item in day)
        time_role = "small_italic" if about else "body_bold"
        color = "text_2" if quiet or about else "text"
        _text(painter, place["time"], lasts(*day), look, time_role, color, right)
        painter.restore()

    def _ground(self, painter: QPainter, rect: QRect, row: PaperRow, look: theme.Theme) -> None:
        if row.state in _GROUNDS:
            role = _GROUNDS[row.state]
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(look.color(f"{role}_ground"))
            painter.drawRoundedRect(QRectF(rect).adjusted(1, 1, -1, -2), 5, 5)
            painter.setBrush(look.color(role))
            band = QRectF(rect.left() + 5, rect.top() + 6, 4, rect.height() - 13)
            painter.drawRoundedRect(band, 2, 2)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        else:
            foot = QRect(rect.left() + 8, rect.bottom(), rect.width() - 16, 1)
            painter.fillRect(foot, look.color("rule"))

    def _stairs(self, painter: QPainter, room: QRect, day: Day, look: theme.Theme) -> None:
        """Draw a day's stairs side by side, or what is said in their place."""
        row = day[0]
        if row.state == paper_log.ASKED and not row.running_s:
            _text(painter, room, tr("Not read"), look, "body_bold", "not_read")
            return
        base = room.center().y() + look.px(10)
        scale = (room.width() - look.px(8) - stairs.DOUBLE_GAP) * 3600.0 / self._model.longest_s
        heights = stairs.heights(stairs.SHEET_HEIGHTS, look)
        end = float(room.left())
        for item in day:
            if item.running_s:
                end = stairs.paint_stair(painter, end, base, scale, item.seconds, heights, look)
            if item.race_m is not None:
                top = base - look.px(21)
                stairs.paint_pennant(painter, end + look.px(7), top, base, look)
                end += look.px(20)
            end += stairs.DOUBLE_GAP


def _text(
    painter: QPainter,
    room: QRect,
    text: str,
    look: theme.Theme,
    role: str,
    color: str,
    align: Qt.AlignmentFlag = Qt.AlignmentFlag.AlignLeft,
) -> None:
    font = look.font(role)
    painter.setFont(font)
    painter.setPen(look.color(color))
    shown = QFontMetrics(font).elidedText(text, Qt.TextElideMode.ElideRight, room.width())
    painter.drawText(room, align | Qt.AlignmentFlag.AlignVCenter, shown)
