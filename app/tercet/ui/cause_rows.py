"""The rows of causes: a clay bar on a common scale, and its runs when unfolded."""

from __future__ import annotations

import math

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from tercet import units
from tercet.engine.causes import Cause
from tercet.engine.shades import Shade
from tercet.language import mark, several, tr
from tercet.library.middle import CauseRun, CauseView
from tercet.ui import stairs, theme, words
from tercet.ui.widgets import ElidedLabel, Label, button

#: At most so many runs of a cause are listed; the rest is counted in words.
MOST_RUNS = 8
HEADINGS = (mark("run"), "", mark("moderate"), "", mark("pace there"), mark("easy at"))
#: What would have kept runs easy: in one run, in several.
ON_CLIMBS = (
    mark("About {n} s {per} slower on those climbs would have kept it easy."),
    mark("About {n} s {per} slower on those climbs would have kept all of them easy."),
)
IN_THAT_PART = (
    mark("About {n} s {per} slower in that part would have kept it easy."),
    mark("About {n} s {per} slower in that part would have kept all of them easy."),
)
#: Left of the bars. [px at 100 %]
BAR_LEFT = 210


class CauseRow(QWidget):
    """One cause; Enter or a click unfolds its runs."""

    toggled = Signal()

    def __init__(self, view: CauseView, full_s: float) -> None:
        super().__init__()
        self.view, self._full = view, max(full_s, 60.0)
        self.unfolded = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        count = len(view.runs)
        self._count = several(count, mark("{n} run"), mark("{n} runs"))
        said = tr(
            "{cause}: {time} in {runs}.",
            cause=view.name,
            time=words.spoken(view.seconds),
            runs=self._count,
        )
        self.setAccessibleName(f"{said} {view.habit}")
        self._dress(theme.current())
        theme.changed.connect(self._dress)

    def _dress(self, look: theme.Theme) -> None:
        self.setFixedHeight(look.px(50))
        self.update()

    def set_unfolded(self, unfolded: bool) -> None:
        """Mark the row as the unfolded one."""
        self.unfolded = unfolded
        self.setAccessibleDescription(tr("unfolded") if unfolded else "")
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self.toggled.emit()
        else:
            super().keyPressEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self.rect().contains(event.position().toPoint()):
            self.toggled.emit()

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        painter = QPainter(self)
        if self.unfolded:
            painter.fillRect(self.rect(), look.color("selected"))
            painter.fillRect(QRectF(0, 0, 3, self.height()), look.color("focus"))
        painter.fillRect(QRectF(0, 0, self.width(), 1), look.color("rule"))
        bold, body, small = look.font("body_bold"), look.font("small_bold"), look.font("small")
        top = look.px(7) + QFontMetricsF(bold).ascent()
        low = self.height() - look.px(9)
        left, bar_left = look.px(16), look.px(16 + BAR_LEFT)
        painter.setPen(look.color("text"))
        painter.setFont(bold)
        painter.drawText(QPointF(left, top), self.view.name)
        painter.setFont(small)
        painter.setPen(look.color("text_2"))
        painter.drawText(QPointF(left, low), self._count)
        room = self.width() - bar_left - look.px(16)
        habit = QFontMetricsF(small).elidedText(self.view.habit, Qt.TextElideMode.ElideRight, room)
        painter.drawText(QPointF(bar_left, low), habit)
        length = max((room - look.px(64)) * self.view.seconds / self._full, stairs.MIN_WIDTH)
        bar = QRectF(bar_left, look.px(8), length, look.px(13))
        painter.setBrushOrigin(bar.bottomLeft())
        brush = stairs.shade_brush(Shade.MODERATE, look, self.devicePixelRatioF())
        painter.fillRect(bar, brush)
        painter.setFont(body)
        painter.setPen(look.color("text"))
        base = bar.center().y() + QFontMetricsF(body).ascent() / 2 - 1
        painter.drawText(QPointF(bar.right() + look.px(8), base), words.hours(self.view.seconds))
        if self.hasFocus():
            painter.setPen(QPen(look.color("focus"), 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(self.rect()).adjusted(1, 2, -1, -1))


class PartStair(QWidget):
    """A run's easy time and its minutes of one cause, on one scale with the others."""

    def __init__(self, run: CauseRun, full_s: float) -> None:
        super().__init__()
        self._seconds = (run.session.seconds[0], run.seconds, 0.0)
        self._full = max(full_s, 60.0)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(theme.current().px(110), theme.current().px(22))

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        painter = QPainter(self)
        scale = (self.width() - 4) * 3600 / self._full
        heights = stairs.heights((9, 14, 19), look)
        stairs.paint_stair(painter, 1, self.height() - 3, scale, self._seconds, heights, look)


class CauseRuns(QWidget):
    """The runs of the unfolded cause, and how much slower would have kept them easy."""

    session_asked = Signal(int)
    meant_said = Signal(int, bool)

    def __init__(self, view: CauseView) -> None:
        super().__init__()
        look = theme.current()
        self.setAutoFillBackground(True)
        palette = self.palette()
        palette.setColor(self.backgroundRole(), look.color("sunken"))
        self.setPalette(palette)
        column = QVBoxLayout(self)
        column.setContentsMargins(look.px(34), 6, look.px(12), 10)
        column.setSpacing(4)
        grid = QGridLayout()
        grid.setHorizontalSpacing(look.px(12))
        grid.setVerticalSpacing(2)
        grid.setColumnStretch(1, 2)
        grid.setColumnStretch(2, 2)
        for place, head in enumerate(HEADINGS):
            grid.addWidget(Label(tr(head), "small", "text_2"), 0, place)
        listed = view.runs[:MOST_RUNS]
        full = max(run.session.seconds[0] + run.seconds for run in listed)
        for row, run in enumerate(listed, start=1):
            self._add(grid, row, run, full, view.cause)
        column.addLayout(grid)
        if len(view.runs) > MOST_RUNS:
            rest = view.runs[MOST_RUNS:]
            column.addWidget(
                Label(
                    tr(
                        "And {n} more with {time}.",
                        n=len(rest),
                        time=words.hours(sum(r.seconds for r in rest)),
                    ),
                    "small",
                    "text_2",
                )
            )
        column.addWidget(Label(slower_words(view), "body_bold", wrap=True))

    def _add(self, grid: QGridLayout, row: int, run: CauseRun, full: float, cause: Cause) -> None:
        session = run.session
        day = tr(
            "{weekday} {day}",
            weekday=words.weekday(session.day),
            day=words.short_day(session.day),
        )
        cells = [
            Label(day, "body"),
            ElidedLabel(session.name, "small", "text_2"),
            PartStair(run, full),
            Label(words.hours(run.seconds), "body_bold"),
            Label(words.pace(run.speed) if math.isfinite(run.speed) else words.NOTHING, "body"),
            Label(
                words.pace(run.easy_speed)
                if math.isfinite(run.easy_speed) and cause not in (Cause.AROUND, Cause.MEANT)
                else words.NOTHING,
                "body",
            ),
        ]
        for place, cell in enumerate(cells):
            grid.addWidget(cell, row, place)
        meant = cause != Cause.MEANT
        said = button(
            tr("Meant") if meant else tr("Not meant"),
            name=tr("Say of {day}: meant or not", day=day),
        )
        said.setToolTip(
            tr("Count this run's moderate minutes as meant") if meant else tr("Find causes")
        )
        opener = button(tr("Open"), name=tr("Open {session}, {day}", session=session.name, day=day))
        said.setProperty("flat", True)
        for made in (said, opener):
            made.setProperty("slim", True)
        said.clicked.connect(lambda: self.meant_said.emit(session.id, meant))
        opener.clicked.connect(lambda: self.session_asked.emit(session.id))
        both = QHBoxLayout()
        both.setSpacing(2)
        both.addWidget(said)
        both.addWidget(opener)
        grid.addLayout(both, row, 6)


def slower_words(view: CauseView) -> str:
    """How much slower would have kept a cause's runs easy, where that can be said."""
    if view.cause == Cause.AROUND:
        return tr(
            "Walking or jogging easier between repetitions keeps recoveries out of the middle."
        )
    if view.cause == Cause.MEANT:
        return tr("Set out for as moderate: by plan, by name, in a race, or by how it was run.")
    slower = view.slower
    if slower is None:
        return tr("How much slower would have been easy is not known here.")
    metres = units.metres()
    seconds = math.ceil(metres / slower[1] - metres / slower[0])
    one, many = ON_CLIMBS if view.cause == Cause.CLIMB else IN_THAT_PART
    return tr(one if len(view.runs) == 1 else many, n=seconds, per=units.pace_word())
