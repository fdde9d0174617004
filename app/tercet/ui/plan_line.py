"""One line of a planned week: day, what was typed, the stair it is understood as, a question."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QRectF, Qt, Signal
from PySide6.QtGui import (
    QInputMethodEvent,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QTextCharFormat,
)
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QHBoxLayout,
    QLineEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from tercet.engine.shades import Thresholds
from tercet.language import mark, tr
from tercet.library.plans import Understood, understand
from tercet.library.views import ZERO, Five, PlannedView
from tercet.ui import theme, words
from tercet.ui.plan_tag import MIME, DayTag, LineStair
from tercet.ui.widgets import ElidedLabel, Label, button

if TYPE_CHECKING:
    from tercet.formats.paper import Unclear


#: What is heard of a line, by its state: with a time and without.
_TIMED = {
    "to run": mark("still to run {time}"),
    "done": mark("run {time}"),
    "missed": mark("missed {time}"),
    "rest": mark("rest {time}"),
}
_UNTIMED = {
    "to run": mark("still to run"),
    "done": mark("run"),
    "missed": mark("missed"),
    "rest": mark("rest"),
    "": mark("nothing planned"),
}


class PlanLine(QFrame):
    """A line to type in; tells when it was changed, and where it is dropped on."""

    edited = Signal(object, int, str)  # day, planned id or 0, text
    next_asked = Signal()
    another_asked = Signal()
    dropped = Signal(int, object, bool)  # planned id, day, copy
    key_target = Signal(object, int)  # this line, days
    key_ended = Signal(object, bool, bool)
    delete_asked = Signal(int)
    typed = Signal()

    def __init__(self, day: date, *, first: bool) -> None:
        super().__init__()
        self.day, self.first = day, first
        self.item: PlannedView | None = None
        self.values: Thresholds | None = None
        self._full, self._run, self._run_name = 7200.0, ZERO, ""
        self._target = self._adding = self._waiting = False
        self.tag, self.text = DayTag(), QLineEdit()
        self.text.setFrame(False)
        self.text.installEventFilter(self)
        self.text.textEdited.connect(self._typed)
        self.text.editingFinished.connect(self._finished)
        self.stair = LineStair()
        self.hours = Label("", "small")
        self.hours.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.question = ElidedLabel("", "small", "check")
        self.answers = [button("") for _ in range(2)]
        self.again = button(tr("Type it again"))
        for made in (*self.answers, self.again):
            made.setProperty("slim", True)
            made.setFocusPolicy(Qt.FocusPolicy.TabFocus)  # a click does not end the typing
        self.again.clicked.connect(self._type_again)
        for made in self.answers:
            made.clicked.connect(lambda _=False, made=made: self._answered(made))
        self.tag.key_moved.connect(lambda step: self.key_target.emit(self, step))
        self.tag.key_ended.connect(lambda keep, copy: self.key_ended.emit(self, keep, copy))
        self.tag.move_begun.connect(lambda: self.key_target.emit(self, 0))
        self.tag.delete_asked.connect(self._delete)
        line = QHBoxLayout()
        line.setSpacing(6)
        line.addWidget(self.tag)
        line.addWidget(self.text, 1)
        line.addWidget(self.stair)
        line.addWidget(self.hours)
        asked = QHBoxLayout()
        asked.setSpacing(6)
        asked.addSpacing(66)
        asked.addWidget(self.question, 1)
        for made in (*self.answers, self.again):
            asked.addWidget(made)
        self._asked = QWidget()
        self._asked.setProperty("clear", True)
        asked.setContentsMargins(0, 0, 0, 0)
        self._asked.setLayout(asked)
        column = QVBoxLayout(self)
        column.setContentsMargins(4, 0, 4, 0)
        column.setSpacing(0)
        column.addLayout(line)
        column.addWidget(self._asked)
        self._asked.hide()
        self.setAcceptDrops(True)
        self._dress()
        theme.changed.connect(self._dress)

    # Showing -----------------------------------------------------------------------------

    def turn_to(self, day: date) -> None:
        """Become a line of another day; what was typed and stored is that day's own."""
        if day != self.day:
            self.day = day
            self.item = None
            self._adding = self._waiting = False
            self.text.setModified(False)

    def show_line(
        self,
        item: PlannedView | None,
        day_words: str,
        values: Thresholds | None,
        full: float,
        run: Five = ZERO,
        run_name: str = "",
        *,
        today: bool = False,
    ) -> None:
        """Show a planned session, or an empty line of the day, with the run beside it."""
        self.item, self.values, self._full = item, values, full
        self._run, self._run_name = run, run_name
        self.tag.show_day(day_words, item.id if item is not None else 0, bold=today)
        if item is not None:
            self._adding = False
        if not (self.text.hasFocus() and self.text.isModified()) and not self._waiting:
            self.text.setText(item.notation if item is not None else "")
            self.text.setCursorPosition(0)
        self.text.setPlaceholderText(run_name)
        self.text.setAccessibleName(tr("Plan for {day}", day=words.long_day(self.day)))
        self.understood()
        if self._waiting and not self._adding:
            self._waiting = False
            self._finished()

    def understood(self) -> Understood:
        """Show what the line as typed comes to."""
        text = self.text.text()
        sense = understand(text, self.values) if text.strip() else Understood()
        self.stair.set(self._run, sense.seconds, self._full)
        run = sum(self._run[:3]) + self._run[4]
        seconds = run or sense.running_s
        self.hours.setText(words.hours(seconds) if seconds else "")
        state = self.item.state if self.item is not None else ""
        if state == "missed" and not run:
            self.hours.setText(tr("missed"))
        time = words.spoken(seconds)
        if not seconds:
            heard = tr(_UNTIMED[state])
        elif state:
            heard = tr(_TIMED[state], time=time)
        else:
            heard = time
        self.stair.setAccessibleName(heard)
        self._ask(sense.unclear[0] if sense.unclear else None, len(sense.unclear))
        self._mark(sense.unclear)
        return sense

    def _ask(self, piece: Unclear | None, count: int) -> None:
        self._asked.setVisible(piece is not None)
        self.update()
        if piece is None:
            return
        asked = [tr('"{words}" adds nothing yet.', words=piece.text), piece.question]
        if count > 1:
            asked.append(tr("And {n} more.", n=count - 1))
        self.question.setText(" ".join(asked))
        for number, made in enumerate(self.answers):
            there = number < len(piece.readings)
            made.setVisible(there)
            if there:
                reading = piece.readings[number]
                made.setText(tr("Yes, {reading}", reading=reading) if number == 0 else reading)
                made.setAccessibleName(
                    tr('Read "{words}" as {reading}', words=piece.text, reading=reading)
                )
                made.setProperty("reading", (piece.start, piece.end, reading))

    def _mark(self, unclear: Sequence[Unclear]) -> None:
        """Draw a wavy line below what is not understood."""
        look = theme.current()
        marked = []
        for piece in unclear:
            form = QTextCharFormat()
            form.setUnderlineStyle(QTextCharFormat.UnderlineStyle.WaveUnderline)
            form.setUnderlineColor(look.color("check"))
            start = piece.start - self.text.cursorPosition()
            kind = QInputMethodEvent.AttributeType.TextFormat
            marked.append(QInputMethodEvent.Attribute(kind, start, piece.end - piece.start, form))
        QApplication.sendEvent(self.text, QInputMethodEvent("", marked))

    def target(self, on: bool) -> None:
        """Rule the line as the place a session would move to."""
        if on != self._target:
            self._target = on
            self.update()

    # Typing ------------------------------------------------------------------------------

    def _typed(self) -> None:
        self.understood()
        self.typed.emit()

    def _finished(self) -> None:
        before = self.item.notation if self.item is not None else ""
        if self.text.isModified() and self.text.text().strip() != before:
            if self._adding:  # it has no name yet to be changed by
                self._waiting = True
                return
            self.text.setModified(False)
            self._adding = self.item is None
            self.edited.emit(self.day, self.item.id if self.item else 0, self.text.text())

    def _delete(self) -> None:
        if self.item is not None:
            self.delete_asked.emit(self.item.id)

    def _answered(self, made: QPushButton) -> None:
        start, end, words_read = made.property("reading")
        text = self.text.text()
        self.text.setText(text[:start] + words_read + text[end:])
        self.text.setModified(True)
        self.understood()
        self._finished()
        self.text.setFocus(Qt.FocusReason.OtherFocusReason)

    def _type_again(self) -> None:
        sense = understand(self.text.text(), self.values)
        self.text.setFocus(Qt.FocusReason.OtherFocusReason)
        if sense.unclear:
            piece = sense.unclear[0]
            self.text.setSelection(piece.start, piece.end - piece.start)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Enter goes to the next day, with Ctrl another line of this day begins."""
        if event.type() == QEvent.Type.KeyPress:
            assert isinstance(event, QKeyEvent)
            if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
                self._finished()
                ctrl = event.modifiers() & Qt.KeyboardModifier.ControlModifier
                (self.another_asked if ctrl else self.next_asked).emit()
                return True
        return False

    # Dropping ----------------------------------------------------------------------------

    def dragEnterEvent(self, event) -> None:  # type: ignore[no-untyped-def]
        if event.mimeData().hasFormat(MIME):
            event.acceptProposedAction()
            self.target(True)

    def dragLeaveEvent(self, event) -> None:  # type: ignore[no-untyped-def]
        self.target(False)

    def dropEvent(self, event) -> None:  # type: ignore[no-untyped-def]
        self.target(False)
        data = bytes(event.mimeData().data(MIME).data())
        if data.isdigit():
            copy = bool(event.modifiers() & Qt.KeyboardModifier.AltModifier)
            event.acceptProposedAction()
            self.dropped.emit(int(data), self.day, copy)

    # Painting ----------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        painter = QPainter(self)
        asked = not self._asked.isHidden()
        if asked:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(look.color("check_ground"))
            painter.drawRoundedRect(QRectF(self.rect()), 5, 5)
        else:
            foot = QRectF(6, self.height() - 1, self.width() - 10, 1)
            painter.fillRect(foot, look.color("rule"))
        if self.tag.bold and self.first:
            painter.fillRect(QRectF(0, 2, 3, self.height() - 4), look.color("focus"))
        if self._target:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(look.color("focus"), 2))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 5, 5)

    def _dress(self) -> None:
        look = theme.current()
        self.hours.setFixedWidth(look.px(50))
        self.text.setStyleSheet(
            "QLineEdit { background: transparent; border-color: transparent; padding: 0 4px;"
            f" min-height: {look.px(24)}px; }}"
            f"QLineEdit:hover {{ border: 1px solid {look.hex('control')}; }}"
            f"QLineEdit:focus {{ border: 2px solid {look.hex('focus')}; padding: 0 3px; }}"
        )
