"""The recordings pane: drop or choose files, see them read, and what each one became."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QProgressBar,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from tercet.language import mark, several, tr
from tercet.library.intake import Taken
from tercet.store.queries import FileRow
from tercet.ui import theme
from tercet.ui.imports_controller import Hover
from tercet.ui.problem_row import STATES, ProblemRow
from tercet.ui.taken_table import TakenTable
from tercet.ui.twin import number_table
from tercet.ui.widgets import (
    DropZone,
    ElidedLabel,
    Label,
    Pane,
    button,
    clear_scroll,
)

if TYPE_CHECKING:
    from tercet.library.importing import Progress, Report

#: What a file became, as the list says it, in the order of the filter.
OUTCOMES = {
    "new": mark("New"),
    "already here": mark("Already here"),
    "same run": mark("Same run"),
    "other sport": mark("Other sport"),
    "season file": mark("Season file"),
    "passed over": mark("Passed over"),
    "refused": mark("Not read"),
}
DROP = mark("Drop recordings here")
DROP_WORDS = mark(
    "FIT, TCX, GPX, CSV, zip or a typed log, files or a folder; the originals stay as they are"
)


class _RowList(QScrollArea):
    """Rows as high as they are together, scrolled where that is too high."""

    def __init__(self, rows: QWidget) -> None:
        super().__init__()
        self._rows = rows
        clear_scroll(rows, self)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)

    def sizeHint(self) -> QSize:
        """As high as the rows."""
        rows = self._rows
        width = self.viewport().width()
        return QSize(200, max(rows.heightForWidth(width), rows.minimumSizeHint().height()) + 2)

    def minimumSizeHint(self) -> QSize:
        """High enough for one row."""
        return QSize(120, min(self.sizeHint().height(), theme.current().px(126)))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Ask for another height where the width changed it."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.updateGeometry()


class RecordingsPane(Pane):
    """Slides over the season's right side; the sheet beside it fills as files arrive."""

    choose_asked = Signal()
    folder_asked = Signal()
    close_asked = Signal()
    stop_asked = Signal()
    skip_asked = Signal(str)  # content of a file
    columns_asked = Signal(str)  # content of a table
    watch_asked = Signal()
    watch_ended = Signal()
    start_asked = Signal(str)  # content of a recording without a clock

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(tr("Recordings"))
        whole = QVBoxLayout(self)
        whole.setContentsMargins(1, 10, 1, 10)
        whole.setSpacing(8)
        head = QHBoxLayout()
        head.setContentsMargins(15, 0, 15, 0)
        head.addWidget(Label(tr("Recordings"), "pane_title"))
        head.addStretch()
        self.choose = button(tr("Choose files…"))
        self.choose.clicked.connect(self.choose_asked)
        self.close_button = button(tr("Close"))
        self.close_button.clicked.connect(self.close_asked)
        head.addWidget(self.choose)
        head.addWidget(self.close_button)
        whole.addLayout(head)
        # Where the height is short all below the heading is scrolled.
        inside = QWidget()
        self._all = clear_scroll(inside)
        whole.addWidget(self._all)
        column = QVBoxLayout(inside)
        column.setContentsMargins(15, 0, 15, 0)
        column.setSpacing(10)

        self.zone = DropZone()
        zone = QVBoxLayout(self.zone)
        zone.setContentsMargins(16, 12, 16, 12)
        self.zone_title = Label(tr(DROP), "block")
        self.zone_words = Label(tr(DROP_WORDS), "small", "text_2")
        for label in (self.zone_title, self.zone_words):
            label.setWordWrap(True)
            label.setAlignment(Qt.AlignmentFlag.AlignCenter)
            zone.addWidget(label)
        self.folder = button(tr("Choose a folder…"))
        self.folder.clicked.connect(self.folder_asked)
        zone.addWidget(self.folder, 0, Qt.AlignmentFlag.AlignHCenter)
        column.addWidget(self.zone)
        column.addWidget(self._watched_line())

        self._running = QWidget()
        running = QVBoxLayout(self._running)
        running.setContentsMargins(0, 0, 0, 0)
        line = QHBoxLayout()
        self.counter = Label("", "body_bold")
        self.current = ElidedLabel("", "small", "text_2", mode=Qt.TextElideMode.ElideMiddle)
        self.stop = button(tr("Stop"))
        self.stop.clicked.connect(self.stop_asked)
        line.addWidget(self.counter)
        line.addWidget(self.current, 1)
        line.addWidget(self.stop)
        running.addLayout(line)
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(tr("Files read"))
        running.addWidget(self.bar)
        self._running.hide()
        column.addWidget(self._running)

        self.summary = Label("", "body", "text_2", wrap=True)
        self.summary.hide()
        column.addWidget(self.summary)

        self._problems_head = QWidget()
        problems_line = QHBoxLayout(self._problems_head)
        problems_line.setContentsMargins(0, 4, 0, 0)
        self.problems_title = Label(tr("Needs a look"), "pane_title")
        problems_line.addWidget(self.problems_title)
        problems_line.addStretch()
        self.copy = button(tr("Copy as text"))
        self.copy.clicked.connect(self._copy)
        problems_line.addWidget(self.copy)
        column.addWidget(self._problems_head)
        self._list = QWidget()
        self._rows = QVBoxLayout(self._list)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(8)
        self._rows.addStretch()
        self._scroll = _RowList(self._list)
        column.addWidget(self._scroll)

        self._taken_head = QWidget()
        taken_line = QHBoxLayout(self._taken_head)
        taken_line.setContentsMargins(0, 4, 0, 0)
        taken_line.addWidget(Label(tr("Last import"), "pane_title"))
        taken_line.addStretch()
        self.filter = QComboBox()
        self.filter.setAccessibleName(tr("Which files to list"))
        self.filter.currentIndexChanged.connect(self._fill_table)
        taken_line.addWidget(self.filter)
        column.addWidget(self._taken_head)
        outcomes = {key: tr(word) for key, word in OUTCOMES.items()}
        self.table = number_table(tr("Files of the last import"))
        self._listed = TakenTable(self.table, outcomes, (tr("File"), tr("What it is"), tr("Why")))
        column.addWidget(self.table)
        # Without a list below, what there is stays at the top.
        self._rest = QWidget()
        self._rest.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Expanding)
        column.addWidget(self._rest)
        theme.changed.connect(self._listed.fit)
        self._taken: list[Taken] = []
        self._problems: list[FileRow] = []
        self._listed_all = False
        self._show_taken([])

    def _watched_line(self) -> QWidget:
        """Which folder is watched, and the one thing that can be done about it."""
        line = QWidget()
        row = QHBoxLayout(line)
        row.setContentsMargins(0, 0, 0, 0)
        self.watched = ElidedLabel("", "small", "text_2", mode=Qt.TextElideMode.ElideMiddle)
        self.watch = button(tr("Watch a folder…"))
        self.watch.setToolTip(tr("New files in it are taken in by themselves, at the start too"))
        self.end_watch = button(tr("Stop watching"))
        self.watch.clicked.connect(self.watch_asked)
        self.end_watch.clicked.connect(self.watch_ended)
        row.addWidget(self.watched, 1)
        row.addWidget(self.watch)
        row.addWidget(self.end_watch)
        self.set_watched("")
        return line

    def set_watched(self, folder: str) -> None:
        """Say which folder is watched; nothing for none."""
        self.watched.setText(
            tr("Watched: {folder}", folder=folder) if folder else tr("No folder is watched")
        )
        self.watch.setVisible(not folder)
        self.end_watch.setVisible(bool(folder))

    def hover(self, hover: Hover | None) -> None:
        """Say what a drop would add; None when nothing hovers."""
        self.zone.set_active(hover is not None)
        self.zone_title.setText(hover.words if hover is not None else tr(DROP))
        odd = hover.odd if hover is not None else ()
        self.zone_words.setText(
            tr("Not recordings by their names: {files}", files=", ".join(odd))
            if odd
            else tr(DROP_WORDS)
        )

    def begin(self) -> None:
        """An import starts."""
        self.summary.hide()
        self._running.show()
        self.bar.setRange(0, 0)
        self.counter.setText(tr("Looking for files"))
        self.current.setText("")
        self.stop.setEnabled(True)
        self._show_taken([])

    def progress(self, now: Progress) -> None:
        """An import goes on."""
        self.bar.setRange(0, max(now.total, 1))
        self.bar.setValue(now.done)
        if now.current == "judging":
            self.counter.setText(tr("Judging {done} of {whole}", done=now.done, whole=now.total))
            self.current.setText("")
            return
        self.counter.setText(tr("Reading {done} of {whole}", done=now.done, whole=now.total))
        if now.left_s is None:
            said = several(now.runs, mark("{n} run found"), mark("{n} runs found"))
        else:
            said = several(
                now.runs,
                mark("{n} run found, {time} left"),
                mark("{n} runs found, {time} left"),
                time=_time_left(now.left_s),
            )
        self.current.setText(f"{said}  {now.current}")

    def end(self, report: Report) -> None:
        """An import has ended or was stopped."""
        self._running.hide()
        words = report.words
        if report.stopped:
            words = tr("Stopped. What was read before stays: {words}", words=words)
        self.summary.setText(words)
        self.summary.show()
        self._show_taken(report.taken)

    def fail(self, problem: str) -> None:
        """An import ended by a problem of the store."""
        self._running.hide()
        self.summary.setText(problem)
        self.summary.show()

    def show_last(self, taken: Sequence[Taken]) -> None:
        """List what the import before the program's start brought."""
        if not self._taken and self._running.isHidden():
            self._show_taken(taken)

    def set_problems(self, problems: Sequence[FileRow]) -> None:
        """List the files that need a look; they stay until acted on."""
        if list(problems) != self._problems:
            self._problems, self._listed_all = list(problems), False
        if self.isVisible():
            self._list_problems()

    def showEvent(self, event: QShowEvent) -> None:
        """List what came in while another page was in view."""
        super().showEvent(event)
        self._list_problems()

    def _list_problems(self) -> None:
        if self._listed_all:
            return
        self._listed_all = True
        while self._rows.count() > 1:
            item = self._rows.takeAt(0)
            widget = item.widget() if item is not None else None
            if widget is not None:
                widget.deleteLater()
        for place, row in enumerate(self._problems[:100]):
            shown = ProblemRow(row)
            shown.skip_asked.connect(self.skip_asked)
            shown.columns_asked.connect(self.columns_asked)
            shown.start_asked.connect(self.start_asked)
            self._rows.insertWidget(place, shown)
        self._scroll.updateGeometry()
        self.problems_title.setText(tr("Needs a look  {n}", n=len(self._problems)))
        self._problems_head.setVisible(bool(self._problems))
        self._scroll.setVisible(bool(self._problems))

    def _show_taken(self, taken: Sequence[Taken]) -> None:
        self._taken = list(taken)
        self.filter.blockSignals(True)
        self.filter.clear()
        self.filter.addItem(tr("All {n}", n=len(taken)), "")
        for outcome, word in OUTCOMES.items():
            count = sum(item.outcome == outcome for item in taken)
            if count:
                shown = tr(word)
                self.filter.addItem(f"{shown} {count}", outcome)
        self.filter.blockSignals(False)
        self._fill_table()
        self._taken_head.setVisible(bool(taken))
        self.table.setVisible(bool(taken))
        self._rest.setVisible(not taken)

    def _fill_table(self) -> None:
        wanted = self.filter.currentData() or ""
        self._listed.show([item for item in self._taken if not wanted or item.outcome == wanted])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc closes the pane."""
        if event.key() == Qt.Key.Key_Escape:
            self.close_asked.emit()
        else:
            super().keyPressEvent(event)

    def _copy(self) -> None:
        text = "\n".join(
            "\t".join((row.name, tr(STATES[row.status]), row.problem)) for row in self._problems
        )
        QGuiApplication.clipboard().setText(text)


def _time_left(seconds: float) -> str:
    """Roughly how long, for it is only reckoned from what is done."""
    if seconds < 90:
        return tr("about {n} s", n=max(round(seconds / 10), 1) * 10)
    return tr("about {n} min", n=round(seconds / 60))
