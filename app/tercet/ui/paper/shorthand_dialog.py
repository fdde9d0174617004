"""This runner's shorthand: what their own words mean, listed, edited, deleted."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QAbstractItemView,
    QDialog,
    QHBoxLayout,
    QHeaderView,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from tercet.formats.paper import Shorthand
from tercet.formats.paper.shorthand import key_of
from tercet.language import mark, tr
from tercet.library.paper_keep import check_shorthand
from tercet.ui import theme
from tercet.ui.fields import ErrorLine, fit_to_screen
from tercet.ui.widgets import Label, button

#: How the table says that a word says nothing of how hard it was.
NOTHING = mark("not judged")


class ShorthandDialog(QDialog):
    """A table of words and meanings; ``chosen`` gives the whole of it."""

    chosen = Signal(object)  # Shorthand

    def __init__(self, own: Shorthand, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bare = own.bare
        self.setWindowTitle(tr("Shorthand"))
        column = QVBoxLayout(self)
        column.setSpacing(10)
        column.addWidget(Label(tr("Shorthand"), "pane_title"))
        said = tr(
            "What this runner's own words mean, such as T for threshold. A single letter counts as "
            "typed, longer words in capitals or not. Runs that were kept stay as they are."
        )
        column.addWidget(Label(said, "small", "text_2", wrap=True))
        self.table = QTableWidget(0, 2)
        self.table.setAccessibleName(tr("Words and what they mean"))
        self.table.setHorizontalHeaderLabels([tr("Word"), tr("Means")])
        self.table.verticalHeader().hide()
        self.table.setTabKeyNavigation(False)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        header = self.table.horizontalHeader()
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        header.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        column.addWidget(self.table, 1)
        self.error = ErrorLine()
        column.addWidget(self.error)
        line = QHBoxLayout()
        self.add = button(tr("Add a word"))
        self.delete = button(tr("Delete"))
        self.cancel = button(tr("Cancel"))
        self.use = button(tr("Use these"), primary=True)
        self.add.clicked.connect(lambda: self._row("", "", edit=True))
        self.delete.clicked.connect(self._delete)
        self.cancel.clicked.connect(self.reject)
        self.use.clicked.connect(self._use)
        for made in (self.add, self.delete):
            made.setAutoDefault(False)
            line.addWidget(made)
        line.addStretch(1)
        line.addWidget(self.cancel)
        line.addWidget(self.use)
        column.addLayout(line)
        for word, meaning in sorted(own.words.items()):
            self._row(word, tr(NOTHING) if meaning == "run" else meaning)
        if own.words:
            self.table.selectRow(0)
        shortcut = QShortcut(QKeySequence(Qt.Key.Key_Delete), self.table)
        shortcut.setContext(Qt.ShortcutContext.WidgetShortcut)
        shortcut.activated.connect(self._delete)
        fit_to_screen(self, 460, 440)

    @property
    def words(self) -> dict[str, str]:
        """What the table says; rows without a word are left out."""
        found = {}
        for row in range(self.table.rowCount()):
            word, meaning = (self._text(row, column) for column in (0, 1))
            if word:
                found[key_of(word)] = "run" if meaning in {NOTHING, tr(NOTHING)} else meaning
        return found

    def _text(self, row: int, column: int) -> str:
        item = self.table.item(row, column)
        return item.text().strip() if item is not None else ""

    def _row(self, word: str, meaning: str, *, edit: bool = False) -> None:
        row = self.table.rowCount()
        self.table.insertRow(row)
        for column, text in enumerate((word, meaning)):
            self.table.setItem(row, column, QTableWidgetItem(text))
        self.table.setRowHeight(row, theme.current().px(32))
        if edit:
            self.table.setCurrentCell(row, 0)
            item = self.table.item(row, 0)
            self.table.setFocus(Qt.FocusReason.OtherFocusReason)
            if item is not None:
                self.table.editItem(item)

    def _delete(self) -> None:
        row = self.table.currentRow()
        if row >= 0:
            self.table.removeRow(row)

    def _use(self) -> None:
        try:
            check_shorthand(self.words)
        except ValueError as error:
            self.error.show_error(f"{error}.", self.table)
            return
        self.chosen.emit(Shorthand(self.words, self._bare))
        self.accept()
