"""A file that needs a look: what it is, why, and what can be done about it."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt, QUrl, Signal
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout

from tercet.language import mark, tr
from tercet.library.unset_clock import asks_for_start
from tercet.store.queries import FileRow
from tercet.ui.widgets import BandRow, ElidedLabel, Label, button

STATES = {"refused": mark("Not read"), "passed over": mark("Passed over"), "run": mark("Check")}


class ProblemRow(BandRow):
    """One such file, until it was acted on."""

    skip_asked = Signal(str)  # content of the file, as in the others
    columns_asked = Signal(str)
    start_asked = Signal(str)

    def __init__(self, row: FileRow) -> None:
        refused = row.status == "refused"
        super().__init__("not_read" if refused else "check")
        state = tr(STATES[row.status])
        self.setAccessibleName(f"{row.name}: {state}. {row.problem}")
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 8, 12, 8)
        column.setSpacing(4)
        line = QHBoxLayout()
        name = ElidedLabel(row.name, "body_bold", mode=Qt.TextElideMode.ElideMiddle)
        line.addWidget(name, 1)
        line.addWidget(Label(state, "small_bold", "not_read" if refused else "check"))
        column.addLayout(line)
        column.addWidget(Label(row.problem, "small", "text_2", wrap=True))
        actions = QHBoxLayout()
        if refused and row.format == "CSV":
            name_columns = button(
                tr("Name the columns"), name=tr("Name the columns of {file}", file=row.name)
            )
            name_columns.clicked.connect(lambda: self.columns_asked.emit(row.sha256))
            actions.addWidget(name_columns)
        if refused and asks_for_start(row.problem):
            tell = button(
                tr("Say when it started"), name=tr("Say when {file} started", file=row.name)
            )
            tell.clicked.connect(lambda: self.start_asked.emit(row.sha256))
            actions.addWidget(tell)
        folder = _nearest_folder(row.folder)
        show = button(tr("Show the folder"), name=tr("Show the folder of {file}", file=row.name))
        show.setToolTip(row.folder)
        show.clicked.connect(lambda: _open_folder(str(folder)))
        skip = button(tr("Skip"), name=tr("Skip {file}", file=row.name))
        skip.clicked.connect(lambda: self.skip_asked.emit(row.sha256))
        show.setEnabled(folder is not None)
        actions.addWidget(skip)
        actions.addWidget(show)
        actions.addStretch()
        column.addLayout(actions)


def _nearest_folder(folder: str) -> Path | None:
    """The folder itself, or the one that the archive it is in lies in."""
    place = Path(folder)
    if place.is_dir():
        return place
    return next((up.parent for up in (place, *place.parents) if up.is_file()), None)


def _open_folder(folder: str) -> None:
    QDesktopServices.openUrl(QUrl.fromLocalFile(folder))
