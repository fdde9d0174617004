"""Searching the season: a field over the sheet whose findings light up in it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from tercet.language import mark, several, tr
from tercet.library.views import SeasonView
from tercet.ui.sheet import SeasonSheet
from tercet.ui.widgets import ElidedLabel, Label, button

EXAMPLE = mark("june race, hard > 10 min, treadmill, left calf")


class SearchBar(QWidget):
    """A field, how many runs it found, and ways to the next and the previous one."""

    closed = Signal()

    def __init__(self, sheet: SeasonSheet) -> None:
        super().__init__()
        self._sheet = sheet
        self._view: SeasonView | None = None
        self.found: tuple[int, ...] = ()
        column, line = QVBoxLayout(self), QHBoxLayout()
        column.setContentsMargins(12, 6, 12, 6)
        column.addLayout(line)
        self.field = QLineEdit()
        self.field.setPlaceholderText(tr(EXAMPLE))
        self.field.setAccessibleName(tr("Find runs by date, words, kind or shade"))
        self.field.textChanged.connect(self._search)
        self.said = ElidedLabel("", "small", "text_2")
        self.previous = button(tr("Previous"))
        self.next = button(tr("Next"))
        self.close_button = button(tr("Close"))
        self.previous.clicked.connect(lambda: self.step(-1))
        self.next.clicked.connect(lambda: self.step(1))
        self.close_button.clicked.connect(self.leave)
        line.addWidget(self.field, 2)
        line.addWidget(self.said, 1)
        for made in (self.previous, self.next, self.close_button):
            line.addWidget(made)
        self.wrong = Label("", "small", "not_read", wrap=True)
        self.wrong.hide()
        column.addWidget(self.wrong)
        sheet.next_found.connect(self.step)
        self.hide()

    def begin(self) -> None:
        """Show the field and take the focus."""
        self.show()
        self.field.selectAll()
        self.field.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self._search()

    def leave(self) -> None:
        """Put the field away; nothing is lit up any more."""
        self.hide()
        self.found = ()
        self._sheet.light_up(None)
        self._sheet.setFocus(Qt.FocusReason.OtherFocusReason)
        self.closed.emit()

    def set_season(self, view: SeasonView) -> None:
        """Search in another season."""
        self._view = view
        if not self.isHidden():
            self._search()

    def step(self, step: int) -> None:
        """Go to the next (1) or previous (-1) of what was found, from the current session on."""
        if not self.found:
            return
        at = self._sheet.selected_session()
        if at in self.found:
            place = (self.found.index(at) + step) % len(self.found)
        else:
            place = 0 if step > 0 else -1
        self._sheet.select_session(self.found[place])
        self._tell()

    def _search(self) -> None:
        from tercet.library import search

        text = self.field.text().strip()
        if self._view is None or not text:
            self.found = ()
            self._sheet.light_up(None)
            self._say("")
            return
        try:
            wanted = search.parse(text, {race.day for race in self._view.races})
        except search.SearchError as error:
            self.found = ()
            self._sheet.light_up(())
            self._say(str(error), wrong=True)
            return
        self.found = tuple(session.id for session in self._view.sessions if wanted(session))
        self._sheet.light_up(self.found)
        self._tell()

    def _tell(self) -> None:
        count, at = len(self.found), self._sheet.selected_session()
        if at in self.found and count > 1:
            self._say(tr("{at} of {n} found", at=self.found.index(at) + 1, n=count))
        else:
            self._say(
                several(count, mark("{n} found"), mark("{n} found")) if count else tr("none found")
            )

    def _say(self, text: str, *, wrong: bool = False) -> None:
        self.said.setText("" if wrong else text)
        self.wrong.setText(text if wrong else "")
        self.wrong.setVisible(wrong)
        self.field.setAccessibleDescription(text)
        for made in (self.previous, self.next):
            made.setEnabled(bool(self.found))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter goes to the next one, Shift+Enter to the previous, Esc puts the field away."""
        if event.key() == Qt.Key.Key_Escape:
            self.leave()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.step(-1 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1)
        else:
            super().keyPressEvent(event)
