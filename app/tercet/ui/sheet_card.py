"""The card that comes up beside a bar: the same facts in words."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, Qt, QTimer
from PySide6.QtGui import QEnterEvent, QKeyEvent
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QVBoxLayout, QWidget

from tercet.language import mark, tr
from tercet.library.views import SessionView
from tercet.ui import sheet_rows, theme, words
from tercet.ui.theme import Theme

WIDTH = 336
HOVER_MS = 300
Place = tuple[int, int, int]
Found = tuple[SessionView, QRect] | None


class HoverCard(QFrame):
    """Raised, with a control border and no shadow; it stays while it is pointed at."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setProperty("raised", "true")
        self.pointed = False
        self._name, self._day = QLabel(), QLabel()
        self._hours, self._shades = QLabel(), QLabel()
        self._more, self._hint = QLabel(), QLabel()
        self._name.setWordWrap(True)
        for label in (self._name, self._day, self._hours, self._shades, self._more, self._hint):
            label.setTextFormat(Qt.TextFormat.PlainText)
        head = QGridLayout()
        head.setHorizontalSpacing(12)
        head.addWidget(self._name, 0, 0)
        head.addWidget(self._day, 0, 1, Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignRight)
        head.setColumnStretch(0, 1)
        box = QVBoxLayout(self)
        box.setContentsMargins(14, 10, 14, 10)
        box.setSpacing(5)
        box.addLayout(head)
        for label in (self._hours, self._shades, self._more, self._hint):
            label.setWordWrap(True)
            box.addWidget(label)
        self.hide()

    def show_session(
        self,
        session: SessionView,
        look: Theme,
        units: words.Units,
        beside: QRect,
        *,
        pointed: bool = False,
    ) -> None:
        """Fill the card and put it below and left of ``beside`` (parent's coordinates)."""
        self._hint.setText(tr("A click opens it") if pointed else tr("Enter opens it"))
        for label, font, ink in (
            (self._name, "block", "text"),
            (self._day, "small", "text_2"),
            (self._hours, "body_bold", "text"),
            (self._shades, "small", "text"),
            (self._more, "small", "text_2"),
            (self._hint, "small", "text_3"),
        ):
            label.setFont(look.font(font))
            palette = label.palette()
            palette.setColor(label.foregroundRole(), look.color(ink))
            label.setPalette(palette)
        self._name.setText(session.name)
        self._day.setText(
            words.at_clock(words.short_day(session.day), session.start, session.clock)
        )
        self._hours.setText(hours_line(session))
        self._shades.setText(shades_line(session))
        self._shades.setVisible(session.sport == "running")
        self._more.setText(more_line(session, units))
        self._more.setVisible(bool(self._more.text()))
        self.setFixedWidth(look.px(WIDTH))
        self.adjustSize()
        self._place(beside)
        self.show()
        self.raise_()

    def _place(self, beside: QRect) -> None:
        room = self.window().rect().adjusted(4, 4, -4, -4)
        x = min(max(beside.right() - self.width(), room.left()), room.right() - self.width())
        y = beside.bottom() + 4
        if y + self.height() > room.bottom():
            y = max(room.top(), beside.top() - 4 - self.height())
        self.move(QPoint(x, y))

    def enterEvent(self, event: QEnterEvent) -> None:
        self.pointed = True
        super().enterEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        self.pointed = False
        self.hide()
        super().leaveEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.hide()
        else:
            super().keyPressEvent(event)


class CardKeeper(QObject):
    """Brings the card up after a moment's pointing and takes it away again.

    ``find`` tells of a place (row, column, part) which session stands there and where, in the
    window's coordinates; ``None`` if there is none.
    """

    def __init__(self, sheet: QWidget, find: Callable[[Place], Found]) -> None:
        super().__init__(sheet)
        self.units: words.Units = "km"
        self._sheet, self._find = sheet, find
        self._place: Place | None = None
        self._card: HoverCard | None = None
        self._timer = QTimer(self, singleShot=True, interval=HOVER_MS)
        self._timer.timeout.connect(self._show_pointed)
        # The pointer may be on its way to the card, so leaving waits too.
        self._leaving = QTimer(self, singleShot=True, interval=HOVER_MS // 2)
        self._leaving.timeout.connect(self._left)

    @property
    def visible(self) -> bool:
        """Whether the card is up."""
        return self._card is not None and self._card.isVisible()

    def point(self, place: Place | None) -> None:
        """Tell what the pointer is over."""
        if place != self._place:
            self.hide()
            self._place = place
            if place is not None:
                self._timer.start()

    def leave(self) -> None:
        """Tell that the pointer has left the sheet."""
        self._timer.stop()
        self._place = None
        self._leaving.start()

    def show(self, place: Place, *, pointed: bool = False) -> None:
        """Bring the card up at once."""
        found = self._find(place)
        if found is None:
            return
        window = self._sheet.window()
        if self._card is None or self._card.parent() is not window:
            self._card = HoverCard(window)
        session, beside = found
        self._card.show_session(session, theme.current(), self.units, beside, pointed=pointed)

    def hide(self) -> None:
        """Take the card away."""
        self._timer.stop()
        self._leaving.stop()
        if self._card is not None:
            self._card.hide()

    def _show_pointed(self) -> None:
        if self._place is not None:
            self.show(self._place, pointed=True)

    def _left(self) -> None:
        if self._card is not None and not self._card.pointed:
            self._card.hide()


def hours_line(session: SessionView) -> str:
    """Length of the session: ``1:13 run``, or with the other sport's name."""
    if session.sport != "running":
        return " ".join((words.hours(session.moving_s), tr(session.sport)))
    return tr("{hours} run", hours=words.hours(session.running_s))


def shades_line(session: SessionView) -> str:
    """The three times in words: ``easy 0:49   moderate 0:05   hard 0:19``."""
    shown = [mark("easy"), mark("moderate"), mark("hard")]
    seconds = list(session.seconds[:3])
    if session.seconds[4] > 0.0:
        shown.append(mark("unjudged"))
        seconds.append(session.seconds[4])
    minutes = sheet_rows.whole_minutes(seconds)
    line = "   ".join(
        " ".join((tr(name), words.hours(60.0 * m))) for name, m in zip(shown, minutes, strict=True)
    )
    return tr("about {value}", value=line) if session.estimated else line


def more_line(session: SessionView, units: words.Units) -> str:
    """Pace, distance, climb and effort, as far as they are known."""
    parts = []
    length = sheet_rows.session_length(session)
    if session.distance_m > 0.0 and length > 0.0:
        if session.sport == "running":
            metres = sum(session.metres[:3]) + session.metres[4]
            parts.append(words.pace((metres or session.distance_m) / length, units))
        parts.append(words.distance(session.distance_m, units))
    if session.climb_m is not None:
        parts.append(tr("{climb} climb", climb=words.climb(session.climb_m, units)))
    if session.effort is not None:
        parts.append(tr("effort said {effort} of 10", effort=session.effort))
    return "   ".join(parts)
