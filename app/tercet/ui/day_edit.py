"""A day to be typed in any usual form, stepped by keys, or chosen in a calendar."""

from __future__ import annotations

import re
from datetime import MAXYEAR, MINYEAR, date

from PySide6.QtCore import QDate, QEvent, QLocale, QPoint, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QIcon, QKeyEvent, QTextCharFormat
from PySide6.QtWidgets import QCalendarWidget, QFrame, QLineEdit, QSizePolicy, QVBoxLayout

from tercet import language, week_days
from tercet.language import tr
from tercet.ui import marks, theme
from tercet.ui.amounts import mark_wrong

_ISO = re.compile(r"(?P<year>\d{4})-(?P<month>\d\d?)-(?P<day>\d\d?)")
_DOTTED = re.compile(r"(?P<day>\d\d?)\.\s*(?P<month>\d\d?)\.?\s*(?P<year>\d{4})?")
_NAMED = re.compile(r"(?P<day>\d\d?)\.?\s*(?P<name>[^\W\d]{3,})\.?,?\s*(?P<year>\d{4})?")
_NAME_FIRST = re.compile(r"(?P<name>[^\W\d]{3,})\.?\s*(?P<day>\d\d?)\.?,?\s*(?P<year>\d{4})?")
_DAY_ALONE = re.compile(r"(?P<day>\d\d?)\.?")
_ENGLISH = "january february march april may june july august september october november december"


def day_of(text: str, near: date) -> date | None:
    """Read a day as it is typed: "17 Sep 2026", "Sep 17", "17.9.", "2026-09-17", "17".

    Parameters
    ----------
    text : str
    near : date
        Where no year is said, the one that brings the day nearest to this; where no month is
        said, this one's.

    Returns
    -------
    date or None
        None for what names no day; with strokes (3/4) it could be two, and names none.
    """
    plain = text.strip()
    forms = (_ISO, _DOTTED, _NAMED, _NAME_FIRST, _DAY_ALONE)
    found = next((each for form in forms if (each := form.fullmatch(plain))), None)
    if found is None:
        return None
    parts = found.groupdict()
    month = _month(parts["name"]) if "name" in parts else int(parts.get("month") or near.month)
    if "month" not in parts and "name" not in parts:
        return _date(near.year, near.month, int(parts["day"]))
    if parts.get("year"):
        return _date(int(parts["year"]), month, int(parts["day"]))
    years = (near.year, near.year - 1, near.year + 1)
    possible = [day for year in years if (day := _date(year, month, int(parts["day"])))]
    return min(possible, key=lambda day: abs(day - near), default=None)


def _month(name: str) -> int:
    """A month by its name or the beginning of it, in the language chosen or in English; else 0."""
    plain = name.casefold()
    for number, english in enumerate(_ENGLISH.split(), 1):
        if english.startswith(plain) or language.month(number).casefold().startswith(plain):
            return number
    return 0


def _date(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def _qdate(day: date) -> QDate:
    return QDate(day.year, day.month, day.day)


class DayEdit(QLineEdit):
    """A day, written as the sheet writes it, with the year.

    It is told once it was typed whole. Up and down go by days, Page up and down by months;
    Alt with down, or a click on the arrow, opens a calendar.
    """

    dateChanged = Signal(QDate)

    def __init__(self, day: date, name: str) -> None:
        super().__init__()
        self._day = day
        self.setAccessibleName(name)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self._arrow = self.addAction(QIcon(), QLineEdit.ActionPosition.TrailingPosition)
        self._arrow.setToolTip(tr("Choose in a calendar"))
        self._arrow.triggered.connect(self.open_calendar)
        self.textEdited.connect(lambda _: mark_wrong(self, ""))
        self._dress()
        theme.changed.connect(self._dress)
        self._write()

    @property
    def day(self) -> date:
        """The day last typed whole, or chosen."""
        return self._day

    def setDate(self, day: QDate | date) -> None:
        """Show a day, unless another is being typed; tell it if it is another one."""
        if isinstance(day, QDate) and not (day.isValid() and MINYEAR <= day.year() <= MAXYEAR):
            return  # a calendar's heading, chosen by its keys, is no day
        found = day.toPython() if isinstance(day, QDate) else day
        assert isinstance(found, date)
        changed, self._day = found != self._day, found
        if not (self.hasFocus() and self.isModified()):
            self._write()
        if changed:
            self.dateChanged.emit(_qdate(found))

    def _write(self) -> None:
        self.setText(QLocale().toString(_qdate(self._day), tr("d MMM yyyy", "format of a date")))
        self.setCursorPosition(0)
        self.setModified(False)
        mark_wrong(self, "")

    def take(self) -> bool:
        """Take what is typed; False, and the field says so, if it names no day."""
        if not self.isModified():
            return True
        found = day_of(self.text(), self._day)
        if found is None:
            example = QLocale().toString(_qdate(self._day), tr("d MMM yyyy", "format of a date"))
            mark_wrong(self, tr("Give a day such as {example}.", example=example))
            return False
        self.setModified(False)
        self.setDate(_qdate(found))
        self._write()
        return True

    def _step(self, days: int, months: int) -> None:
        if self.take():
            self.setDate(_qdate(self._day).addMonths(months).addDays(days))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Step with keys; Enter takes what is typed, and goes on only from a day."""
        key = event.key()
        steps = {
            Qt.Key.Key_Up: (1, 0),
            Qt.Key.Key_Down: (-1, 0),
            Qt.Key.Key_PageUp: (0, 1),
            Qt.Key.Key_PageDown: (0, -1),
        }
        alt = event.modifiers() & Qt.KeyboardModifier.AltModifier
        if key == Qt.Key.Key_F4 or (key == Qt.Key.Key_Down and alt):
            self.open_calendar()
        elif key in steps:
            self._step(*steps[Qt.Key(key)])
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not self.take():
            event.accept()
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take what is typed; what names no day gives way to the day that holds."""
        if event.reason() != Qt.FocusReason.PopupFocusReason and not self.take():
            self._write()
        super().focusOutEvent(event)

    def open_calendar(self) -> None:
        """Open a calendar below the field, its weeks as the user counts them."""
        frame = QFrame(self, Qt.WindowType.Popup)
        frame.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        frame.setProperty("calendar", True)
        calendar = QCalendarWidget()
        calendar.setFirstDayOfWeek(Qt.DayOfWeek(week_days.first_weekday() + 1))
        calendar.setVerticalHeaderFormat(QCalendarWidget.VerticalHeaderFormat.NoVerticalHeader)
        plain = QTextCharFormat()
        plain.setForeground(theme.current().color("text"))
        for weekend in (Qt.DayOfWeek.Saturday, Qt.DayOfWeek.Sunday):
            calendar.setWeekdayTextFormat(weekend, plain)
        calendar.setSelectedDate(_qdate(self._day))

        def choose(day: QDate) -> None:
            frame.close()
            self.setModified(False)
            self.setDate(day)
            self.setFocus(Qt.FocusReason.PopupFocusReason)

        calendar.clicked.connect(choose)
        calendar.activated.connect(choose)
        column = QVBoxLayout(frame)
        column.setContentsMargins(1, 1, 1, 1)
        column.addWidget(calendar)
        frame.adjustSize()
        frame.move(self._room_for(frame.sizeHint()))
        frame.show()
        calendar.setFocus(Qt.FocusReason.PopupFocusReason)

    def _room_for(self, size: QSize) -> QPoint:
        """Below the field, or above it where the screen ends."""
        below = self.mapToGlobal(QPoint(0, self.height()))
        room = self.screen().availableGeometry()
        if below.y() + size.height() > room.bottom():
            below = self.mapToGlobal(QPoint(0, -size.height()))
        below.setX(max(min(below.x(), room.right() - size.width()), room.left()))
        return below

    def sizeHint(self) -> QSize:
        """As wide as the widest day."""
        pattern = tr("d MMM yyyy", "format of a date")
        days = (QLocale().toString(QDate(2028, month, 28), pattern) for month in range(1, 13))
        wide, usual = self.fontMetrics().horizontalAdvance, super().sizeHint()
        around = usual.width() - 17 * wide("x")  # a plain line is made for so many
        return QSize(max(map(wide, days)) + around + theme.current().px(28), usual.height())

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def event(self, event: QEvent) -> bool:
        """Keep the arrows' keys to the field where they would go on to the next."""
        if event.type() == QEvent.Type.ShortcutOverride:
            assert isinstance(event, QKeyEvent)
            if event.key() in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown, Qt.Key.Key_F4):
                event.accept()
                return True
        return super().event(event)

    def _dress(self) -> None:
        look = theme.current()
        paths = marks.marks(look.hex("text_2"), look.hex("text_on_accent"))
        self._arrow.setIcon(QIcon(paths["down"]))
        self.updateGeometry()
