"""The runs behind a number, to open one of them."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QDialog, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from tercet.language import tr
from tercet.library.views import SessionView
from tercet.ui import theme, words
from tercet.ui.widgets import Label


class Behind(QDialog):
    """Lists runs; Enter or a click opens one, Esc goes back."""

    session_asked = Signal(int)

    def __init__(self, heading: str, sessions: Sequence[SessionView], parent: QWidget) -> None:
        super().__init__(parent)
        look = theme.current()
        self.setWindowTitle(tr("Runs behind this number"))
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        column = QVBoxLayout(self)
        column.addWidget(Label(heading, "pane_title", wrap=True))
        self.list = QListWidget()
        self.list.setAccessibleName(tr("Runs"))
        for session in sessions:
            said = f"{words.short_day(session.day)}   {words.hours(session.running_s)}   "
            item = QListWidgetItem(f"{said}{session.name}")
            item.setData(Qt.ItemDataRole.UserRole, session.id)
            self.list.addItem(item)
        self.list.setFont(look.font("body"))
        self.list.setCurrentRow(0)
        self.list.itemActivated.connect(self._open)
        self.list.itemClicked.connect(self._open)
        column.addWidget(self.list)
        column.addWidget(Label(tr("Enter opens a run, Esc goes back."), "small", "text_2"))
        self.resize(look.px(420), look.px(420))

    def _open(self, item: QListWidgetItem) -> None:
        self.session_asked.emit(int(item.data(Qt.ItemDataRole.UserRole)))
        self.accept()
