"""The foot of the window: what is kept, and the way to the recordings pane."""

from __future__ import annotations

from datetime import date, datetime

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from tercet import language
from tercet.language import mark, several, tr
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
        self.right = QPushButton(tr("Recordings"))
        self.right.setProperty("flat", True)
        self.right.clicked.connect(self.recordings_asked)
        self.right.setAccessibleDescription(tr("Opens the recordings pane"))
        line.addWidget(self.left, 1)
        line.addWidget(self.right)
        self._line = line

    def hold(self, part: QWidget) -> None:
        """Take in what else is told here, left of the button."""
        self._line.insertWidget(1, part)

    def show_counts(self, view: SeasonView) -> None:
        """Say how many sessions are kept."""
        count = view.session_count
        if view.other_sports:
            one = mark("{n} session, {other} of other sports apart, all kept on this computer")
            many = mark("{n} sessions, {other} of other sports apart, all kept on this computer")
        else:
            one = mark("{n} session, all kept on this computer")
            many = mark("{n} sessions, all kept on this computer")
        self.left.setText(several(count, one, many, other=view.other_sports))

    def show_import(self, last: str, problems: int, *, running: bool) -> None:
        """Say when the last import was and what needs a look."""
        if running:
            self.right.setText(tr("Import running"))
            return
        if not last:
            self.right.setText(tr("Recordings"))
        elif problems:
            one = mark("Last import {when}, {n} needs a look")
            many = mark("Last import {when}, {n} need a look")
            self.right.setText(several(problems, one, many, when=_when(last)))
        else:
            self.right.setText(tr("Last import {when}", when=_when(last)))


def _when(taken_in: str) -> str:
    moment = datetime.fromisoformat(taken_in).astimezone()
    if moment.date() == date.today():
        return f"{moment:%H:%M}"
    return tr(
        "{day} {month} {year}",
        day=moment.day,
        month=language.short_month(moment.month),
        year=moment.year,
    )
