"""The foot of the window: what is kept, and the way to the recordings pane."""

from __future__ import annotations

from datetime import date, datetime

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from tercet.library.views import SeasonView
from tercet.ui.widgets import ElidedLabel


class Foot(QWidget):
    """Counts at the left; a button at the right that opens the recordings pane."""

    recordings_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        line = QHBoxLayout(self)
        line.setContentsMargins(16, 2, 12, 4)
        self.left = ElidedLabel("", "small", "text_2")
        self.right = QPushButton("Recordings")
        self.right.setProperty("flat", True)
        self.right.clicked.connect(self.recordings_asked)
        self.right.setAccessibleDescription("Opens the recordings pane")
        line.addWidget(self.left, 1)
        line.addWidget(self.right)
        self._line = line

    def hold(self, part: QWidget) -> None:
        """Take in what else is told here, left of the button."""
        self._line.insertWidget(1, part)

    def show_counts(self, view: SeasonView) -> None:
        """Say how many sessions are kept."""
        count = view.session_count
        sessions = "1 session" if count == 1 else f"{count} sessions"
        other = f", {view.other_sports} of other sports apart" if view.other_sports else ""
        self.left.setText(f"{sessions}{other}, all kept on this computer")

    def show_import(self, last: str, problems: int, *, running: bool) -> None:
        """Say when the last import was and what needs a look."""
        if running:
            self.right.setText("Import running")
            return
        need = "1 needs a look" if problems == 1 else f"{problems} need a look"
        look = f", {need}" if problems else ""
        self.right.setText(f"Last import {_when(last)}{look}" if last else "Recordings")


def _when(taken_in: str) -> str:
    moment = datetime.fromisoformat(taken_in).astimezone()
    if moment.date() == date.today():
        return f"{moment:%H:%M}"
    return f"{moment.day} {moment:%b %Y}"
