"""When a run started whose watch had no clock: asked once, for one file or all alike."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from PySide6.QtCore import QDateTime, Signal
from PySide6.QtWidgets import QCheckBox, QDateTimeEdit, QDialog, QHBoxLayout, QVBoxLayout, QWidget

from tercet.language import tr
from tercet.library import naming
from tercet.library.library import Library
from tercet.store.queries import FileRow
from tercet.ui.fields import ErrorLine, fit_to_screen
from tercet.ui.focus_ring import FocusRing
from tercet.ui.jobs import Answers
from tercet.ui.widgets import Label, button


class StartDialog(QDialog):
    """A day and a time of day, and whether other such files moved by the same difference."""

    applied = Signal(object)  # Changes

    def __init__(self, library: Library, file: FileRow, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._library, self._file = library, file
        self._answers = Answers(self)
        self.setWindowTitle(tr("When did the run start?"))
        self.start = QDateTimeEdit(QDateTime.currentDateTime())
        self.start.setDisplayFormat(tr("d MMM yyyy  HH:mm", "pattern of a date, as Qt reads it"))
        self.start.setCalendarPopup(True)
        self.start.setAccessibleName(tr("When the run started"))
        self.alike = QCheckBox(tr("Move the other files without a clock by the same difference"))
        self.error = ErrorLine()
        self.cancel, self.keep = button(tr("Cancel")), button(tr("Take it in"), primary=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 14, 20, 14)
        column.setSpacing(8)
        column.addWidget(Label(file.name, "pane_title", wrap=True))
        column.addWidget(Label(file.problem, "body", "text_2", wrap=True))
        column.addWidget(self.start)
        column.addWidget(self.alike)
        column.addWidget(self.error)
        column.addStretch()
        line = QHBoxLayout()
        line.addStretch()
        for made, call in ((self.cancel, self.reject), (self.keep, self._keep)):
            made.setAutoDefault(False)
            made.clicked.connect(call)
            line.addWidget(made)
        self.keep.setDefault(True)
        column.addLayout(line)
        self._ring = FocusRing(self)
        fit_to_screen(self, 520, 260)

    def _keep(self) -> None:
        def then(changes: Any) -> None:
            self.applied.emit(changes)
            self.accept()

        def failed(error: BaseException) -> None:
            self.error.show_error(str(error))

        start = self.start.dateTime().toPython()
        assert isinstance(start, datetime)
        told = self._library.submit(
            naming.tell_start, self._file.sha256, start, alike=self.alike.isChecked()
        )
        self._answers.when(told, then, failed)
