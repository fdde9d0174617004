"""The list of what was understood of a paper log; its questions are built as they come in view."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPersistentModelIndex, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QListView, QWidget

from tercet.language import tr
from tercet.library.paper_log import PaperRow
from tercet.ui import theme
from tercet.ui.paper.question import Question, asked_of
from tercet.ui.paper.rows import Day, RowPainter, Rows


class Understood(QListView):
    """One row a session; Tab goes from question to question."""

    answered = Signal(object)  # Answer
    left_out = Signal(str)
    line_asked = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(tr("Understood, one row a session"))
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSelectionMode(QListView.SelectionMode.NoSelection)
        self.setEditTriggers(QListView.EditTrigger.NoEditTriggers)
        self._rows = Rows()
        self._painter = RowPainter(self._rows)
        self._left_out: tuple[str, ...] = ()
        self._built: list[tuple[QPersistentModelIndex, Question]] = []
        self.setModel(self._rows)
        self.setItemDelegate(self._painter)
        self._build = QTimer(self)
        self._build.setSingleShot(True)
        self._build.setInterval(0)
        self._build.timeout.connect(self.build_questions)
        self.verticalScrollBar().valueChanged.connect(lambda _: self._build.start())
        self.clicked.connect(self._clicked)
        self.activated.connect(self._clicked)
        theme.changed.connect(self._dress)

    def set_rows(self, rows: Sequence[PaperRow], left_out: Sequence[str]) -> None:
        """Show other rows; what looks the same stays as it is, and where one had scrolled to."""
        renew = tuple(left_out) != self._left_out
        self._left_out = tuple(left_out)
        at = self.verticalScrollBar().value()
        focus = self.window().focusWidget()
        focused = focus is not None and focus is not self and self.isAncestorOf(focus)
        if renew:
            self._rows.set_rows(())
        changed = self._rows.set_rows(rows)
        self._built = [(place, made) for place, made in self._built if place.isValid()]
        for place, made in self._built:
            made.row = self._rows.days[place.row()][0]
        if not changed:
            return
        self._measure()
        self.viewport().update()
        self.executeDelayedItemsLayout()
        self.build_questions()
        self.verticalScrollBar().setValue(at)
        if focused:
            self.focus_question()

    @property
    def days(self) -> tuple[Day, ...]:
        """What is shown, a row each."""
        return self._rows.days

    @property
    def questions(self) -> list[Question]:
        """The questions built so far, from top to bottom."""
        return [made for _, made in sorted(self._built, key=lambda item: item[0].row())]

    def focus_question(self) -> None:
        """Go to the first question, or to the list if there is none."""
        built = self.questions
        target: QWidget = built[0].buttons[0] if built and built[0].buttons else self
        target.setFocus(Qt.FocusReason.TabFocusReason)

    def build_questions(self) -> None:
        """Build the questions of the rows in view, and give their rows room."""
        changed = True
        while changed:
            changed = False
            have = {place.row() for place, _ in self._built}
            for place in self._in_view():
                row = self._rows.days[place][0]
                if place in have or asked_of(row, self._left_out) is None:
                    continue
                made = Question(row, self._left_out)
                made.answered.connect(self.answered)
                made.left_out.connect(self.left_out)
                index = self._rows.index(place)
                self.setIndexWidget(index, made)
                self._built.append((QPersistentModelIndex(index), made))
                changed = True
            if changed:
                self._measure()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Measure the questions anew."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._measure()
        self._build.start()

    def sizeHint(self) -> QSize:
        """As much as there is."""
        return QSize(400, 400)

    def _in_view(self) -> range:
        if not self._rows.days:
            return range(0)
        height = self.viewport().height()
        first = self.indexAt(self.viewport().rect().topLeft())
        start = first.row() if first.isValid() else 0
        end = start
        while end < len(self._rows.days):
            top = self.visualRect(self._rows.index(end)).top()
            if top > height:
                break
            end += 1
        return range(start, end)

    def _measure(self) -> None:
        """Ask every question built so far how high it is at this width."""
        room = self.viewport().rect()
        left = self._painter.columns(room)["words"].left() - room.left()
        heights = {}
        for place, made in self._built:
            made.place(left)
            heights[place.row()] = made.height_at(room.width())
        if heights != self._painter.below:
            self._painter.below = heights
            self.scheduleDelayedItemsLayout()
            self.executeDelayedItemsLayout()

    def _dress(self, *_: object) -> None:
        self._measure()
        self.scheduleDelayedItemsLayout()
        self._build.start()

    def _clicked(self, index: object) -> None:
        row = self._rows.days[index.row()][0]  # type: ignore[attr-defined]
        self.line_asked.emit(row.entry.number)
