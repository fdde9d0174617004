"""The squad: one line a runner, on one scale, in the order of their next races."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QInputDialog,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from tercet.language import mark, tr
from tercet.library import roster
from tercet.library.roster import SquadRow
from tercet.library.views import SeasonView
from tercet.store.errors import StoreError
from tercet.ui import theme
from tercet.ui.fields import ErrorLine
from tercet.ui.page import Context, Page
from tercet.ui.record_flow import RecordFlow
from tercet.ui.squad_line import SquadLine, column_lefts, wanted_s
from tercet.ui.widgets import ElidedLabel, Label, Pane, Rule, button, clear_scroll

HEADS = (
    mark("runner"),
    mark("race"),
    mark("block so far, hours"),
    mark("easy"),
    mark("worth a word"),
)
WORDS = mark(
    "Wanted shares are each block's own. Order is by race day, then by name, never by a number."
)
ALONE = mark(
    "Add a runner makes another runner's record, kept apart from this one; Take in a record merges "
    "a copy of this runner's."
)


class Heads(QWidget):
    """The heads of the columns."""

    def __init__(self, lines: QWidget) -> None:
        super().__init__()
        self._lines = lines  # as wide as what stands below, beside its scroll bar
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._dress(theme.current())
        theme.changed.connect(self._dress)

    def _dress(self, look: theme.Theme) -> None:
        self.setFixedHeight(look.px(28))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw them over their columns."""
        look = theme.current()
        painter = QPainter(self)
        painter.fillRect(self.rect(), look.color("sunken"))
        font = look.font("small")
        painter.setFont(font)
        painter.setPen(look.color("text_2"))
        metrics = QFontMetricsF(font)
        y = (self.height() + metrics.ascent() - metrics.descent()) / 2
        room = self._lines.width()
        lefts = [*column_lefts(room, look), float(room)]
        for k, text in enumerate(HEADS):
            width = lefts[k + 1] - lefts[k] - look.px(8)
            shown = metrics.elidedText(tr(text), Qt.TextElideMode.ElideRight, width)
            painter.drawText(int(lefts[k]), int(y), shown)


class SquadPage(Page):
    """Shows all runners of the store; a line opens its runner."""

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self.lines: list[SquadLine] = []
        self._today = date.today()
        outer = QVBoxLayout(self)
        outer.setContentsMargins(12, 0, 12, 0)
        pane = Pane()
        outer.addWidget(pane)
        column = QVBoxLayout(pane)
        column.setContentsMargins(1, 10, 1, 1)
        column.setSpacing(8)
        self.record = RecordFlow(context)
        self.error = ErrorLine()
        self.error.setContentsMargins(15, 0, 15, 0)
        for made in (self.record.take, self.record.hand):
            made.clicked.connect(self.error.clear_error)
        self.add = button(tr("Add a runner"))
        self.add.clicked.connect(self._add)
        column.addLayout(self._head())
        for part in (self.error, self.record.bar):
            column.addWidget(part)
        inside = QWidget()
        column.addWidget(Heads(inside))
        self._rows = QVBoxLayout(inside)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(0)
        self._rows.addStretch(1)
        column.addWidget(clear_scroll(inside), 1)
        column.addWidget(Rule())
        self._foot = Label(tr(WORDS), "small", "text_2", wrap=True)
        self._foot.setContentsMargins(15, 2, 15, 8)
        column.addWidget(self._foot)

    def _head(self) -> QHBoxLayout:
        head = QHBoxLayout()
        head.setContentsMargins(15, 0, 15, 0)
        head.setSpacing(8)
        head.addWidget(Label(tr("Squad"), "pane_title"))
        about = ElidedLabel(
            tr("one line a runner, the current block so far, all on one scale"), "small", "text_2"
        )
        about.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        head.addWidget(about, 1)
        for made in (self.record.take, self.record.hand, self.add):
            head.addWidget(made)
        return head

    @property
    def ring(self) -> list[QWidget]:
        """The lines, and the buttons above."""
        current = [line for line in self.lines if self._is_current(line.row)]
        buttons: list[QPushButton] = [self.record.take, self.record.hand, self.add]
        return [*current, *buttons]

    def refresh(self, view: SeasonView) -> None:
        """Read all runners' seasons beside the window."""
        self._today = view.today
        future = self.context.library.submit(lambda store: roster.squad(store.folder, view.today))
        self.context.answers.when(future, self.show_rows)

    def _is_current(self, row: SquadRow) -> bool:
        return row.runner.folder == self.context.library.folder

    def show_rows(self, rows: list[SquadRow]) -> None:
        """Draw a line for each."""
        self._foot.setText(tr(WORDS if len(rows) > 1 else ALONE))
        focused = next((line.row.runner.folder for line in self.lines if line.hasFocus()), None)
        for line in self.lines:
            self._rows.removeWidget(line)
            line.deleteLater()
        amounts = [sum(row.block.seconds[:3]) for row in rows if row.block is not None]
        full = max([*amounts, *(wanted_s(row) for row in rows)], default=0.0) * 1.04
        self.lines = []
        self.record.runner = next((r.runner.name for r in rows if self._is_current(r)), "")
        for place, row in enumerate(rows):
            line = SquadLine(row, self._today, full, current=self._is_current(row))
            line.opened.connect(self._open)
            line.moved.connect(lambda step, place=place: self._move(place + step))
            self._rows.insertWidget(place, line)
            self.lines.append(line)
            if row.runner.folder == focused:
                line.setFocus(Qt.FocusReason.OtherFocusReason)

    def _move(self, place: int) -> None:
        if 0 <= place < len(self.lines):
            self.lines[place].setFocus(Qt.FocusReason.OtherFocusReason)

    def _open(self, folder: Path) -> None:
        if folder == self.context.library.folder:
            self.page_asked.emit("season")
        else:
            self.runner_asked.emit(folder)

    def _add(self) -> None:
        name, given = QInputDialog.getText(self, tr("Add a runner"), tr("Name"))
        if given:
            self.add_named(name)

    def add_named(self, name: str) -> None:
        """Make a store for another runner and open it."""
        self.error.clear_error()
        try:
            folder = roster.add(self.context.library.folder, name)
        except (ValueError, StoreError) as error:
            self.error.show_error(str(error))
            return
        self.runner_asked.emit(folder)

    def close_quietly(self) -> None:
        """Stop what runs."""
        self.record.close_quietly()
