"""One runner's line on the squad page: names, race, the block so far, its share, one word."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from tercet.engine.shades import easy_share
from tercet.language import mark, several, tr
from tercet.library.roster import SquadRow
from tercet.ui import stairs, theme, words

#: Columns as shares of the width: runner, race, block so far, easy, a word.
COLUMNS = (0.15, 0.165, 0.34, 0.12, 0.225)
HEIGHT = 88
#: A runner without a run for longer than this is worth a word. [days]
QUIET_DAYS = 7


def one_word(row: SquadRow, today: date) -> str:
    """The one thing worth a word, or nothing."""
    if row.runner.problem:
        return tr("cannot be read")
    if row.last_run is None:
        return tr("no runs yet")
    if (today - row.last_run).days > QUIET_DAYS:
        return tr("no runs since {day}", day=words.short_day(row.last_run))
    if row.estimated:
        return tr("thresholds estimated")
    return ""


def where(row: SquadRow) -> str:
    """The block and its week."""
    if row.block is None:
        return tr("no block today")
    if row.block.id is None:
        return tr("unplanned")
    return tr(
        "{block}, week {week} of {weeks}", block=row.block.name, week=row.week, weeks=row.weeks
    )


def race_words(row: SquadRow, today: date) -> tuple[str, str]:
    """The next race, and how far it is."""
    if row.race_day is None:
        return tr("no race ahead"), ""
    days = (row.race_day - today).days
    away = several(days, mark("in {n} day"), mark("in {n} days")) if days else tr("today")
    return f"{row.race}, {words.short_day(row.race_day)}", away


def wanted_s(row: SquadRow) -> float:
    """Running time wanted in the whole block; nothing where it is counted in metres. [s]"""
    if row.block is None or row.block.measure != "time":
        return 0.0
    return sum(week.wanted or 0.0 for week in row.block.weeks)


def share_words(row: SquadRow) -> tuple[str, str, bool]:
    """Share of easy, what is wanted, and whether it is short of that."""
    share = easy_share(row.block.seconds) if row.block is not None else None
    if row.block is None or share is None:
        return "", "", False
    wanted = round(row.block.easy_target * 100)
    planned = row.block.id is not None
    short = planned and round(share * 100) < wanted
    text = words.share(share, estimated=row.estimated)
    said = tr("short of {wanted}", wanted=wanted) if short else tr("wanted {wanted}", wanted=wanted)
    return text, said if planned else "", short


class SquadLine(QWidget):
    """A line that opens its runner by Enter or a click."""

    opened = Signal(object)  # the runner's folder
    moved = Signal(int)  # the focus is to go up (-1) or down (1)

    def __init__(self, row: SquadRow, today: date, full_s: float, *, current: bool) -> None:
        super().__init__()
        self.row, self._today, self._full = row, today, max(full_s, 3600.0)
        self._current = current
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(self.spoken())
        self.setToolTip(row.runner.problem or self.spoken())
        theme.changed.connect(self._dress)

    def _dress(self, _: object) -> None:
        self.updateGeometry()
        self.update()

    def spoken(self) -> str:
        """The whole line in words."""
        row = self.row
        race, away = race_words(row, self._today)
        share, wanted, _ = share_words(row)
        ran = ""
        if row.block is not None:
            ran = tr("{hours} run", hours=words.spoken(sum(row.block.seconds[:3])))
        parts = [row.runner.name, where(row), f"{race} {away}".strip(), ran, share, wanted]
        parts.append(self._before())
        return ", ".join(part for part in (*parts, one_word(row, self._today)) if part)

    def sizeHint(self) -> QSize:
        """As high as three lines of text and their air."""
        return QSize(600, theme.current().px(HEIGHT))

    def minimumSizeHint(self) -> QSize:
        """Never flatter."""
        return QSize(320, theme.current().px(HEIGHT))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Open it, or go to the next line."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self.opened.emit(self.row.runner.folder)
        elif event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self.moved.emit(-1 if event.key() == Qt.Key.Key_Up else 1)
        else:
            super().keyPressEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Open it."""
        if event.button() == Qt.MouseButton.LeftButton and self.rect().contains(event.pos()):
            self.opened.emit(self.row.runner.folder)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the columns."""
        look = theme.current()
        painter = QPainter(self)
        if self._current or self.hasFocus():
            painter.fillRect(self.rect(), look.color("selected"))
            painter.fillRect(0, 0, 3, self.height(), look.color("focus"))
        painter.fillRect(0, self.height() - 1, self.width(), 1, look.color("rule"))
        lefts = column_lefts(self.width(), look)
        race, away = race_words(self.row, self._today)
        self._two(painter, lefts[0], lefts[1], self.row.runner.name, where(self.row), "block")
        self._two(painter, lefts[1], lefts[2], race, away, "body")
        self._block(painter, lefts[2], lefts[3] - look.px(16), look)
        self._share(painter, lefts[3], lefts[4], look)
        word = one_word(self.row, self._today)
        self._two(painter, lefts[4], self.width() - look.px(16), word, "", "body")

    def _two(
        self, painter: QPainter, left: float, right: float, upper: str, lower: str, role: str
    ) -> None:
        look = theme.current()
        room = right - left - look.px(12)
        middle = self.height() / 2
        for text, kind, color, up in (
            (upper, role, "text", True),
            (lower, "small", "text_2", False),
        ):
            font = look.font(kind)
            metrics = QFontMetricsF(font)
            painter.setFont(font)
            painter.setPen(look.color(color))
            shown = metrics.elidedText(text, Qt.TextElideMode.ElideRight, room)
            y = middle - look.px(4) if up else middle + metrics.ascent() + look.px(3)
            if not lower:
                y = middle + metrics.ascent() / 2 - look.px(1)
            if text:
                painter.drawText(QPointF(left, y), shown)

    def _block(self, painter: QPainter, left: float, right: float, look: theme.Theme) -> None:
        block = self.row.block
        foot = self.height() / 2 + look.px(6)
        font = look.font("small")
        painter.setFont(font)
        painter.setPen(look.color("text_2"))
        ran = sum(block.seconds[:3]) + block.seconds[4] if block is not None else 0.0
        line = foot + QFontMetricsF(font).ascent() + look.px(7)
        if block is None or ran <= 0:
            said = self._before() if block is None else tr("no runs in this block")
            shown = QFontMetricsF(font).elidedText(said, Qt.TextElideMode.ElideRight, right - left)
            painter.drawText(QPointF(left, self.height() / 2 + look.px(4)), shown)
            return
        per_hour = (right - left) * 3600.0 / self._full
        heights = stairs.heights((11, 17, 23), look)
        stairs.paint_stair(
            painter, left, foot, per_hour, block.seconds, heights, look,
            estimated=self.row.estimated,
        )  # fmt: skip
        wanted = wanted_s(self.row)
        if wanted:
            rule = QRectF(left, foot + 2, wanted / 3600.0 * per_hour, 2)
            painter.fillRect(rule, look.color("text_2"))
        painter.setPen(look.color("text_2"))
        painter.setFont(font)
        said = tr("{hours} run", hours=words.hours(ran))
        if wanted:
            hours, of = words.hours(ran), words.hours(wanted)
            said = tr("{hours} run of {wanted} wanted", hours=hours, wanted=of)
        painter.drawText(QPointF(left, line), said)

    def _before(self) -> str:
        """The block before today, in words."""
        last = self.row.last
        if last is None:
            return ""
        ran = words.hours(sum(last.seconds[:3]) + last.seconds[4])
        return tr(
            "last {block}, {hours} run, ended {day}",
            block=last.name,
            hours=ran,
            day=words.short_day(last.end),
        )

    def _share(self, painter: QPainter, left: float, right: float, look: theme.Theme) -> None:
        share, wanted, short = share_words(self.row)
        if not share:
            return
        font = look.font("body_italic" if self.row.estimated else "body_bold")
        metrics = QFontMetricsF(font)
        middle = self.height() / 2
        if short:
            width = min(metrics.horizontalAdvance(share) + look.px(12), right - left)
            box = QRectF(left - look.px(6), middle - look.px(24), width, look.px(24))
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(look.color("text"), 1.2))
            painter.drawRoundedRect(box, 4, 4)
        self._two(painter, left, right, "", wanted or " ", "body")
        painter.setFont(font)
        painter.setPen(look.color("text"))
        painter.drawText(QPointF(left, middle - look.px(6)), share)


def column_lefts(width: int, look: theme.Theme) -> list[float]:
    """Where each column begins. [px]"""
    room, at, lefts = width - look.px(32), float(look.px(16)), []
    for share in COLUMNS:
        lefts.append(at)
        at += share * room
    return lefts
