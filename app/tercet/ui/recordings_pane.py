"""The recordings pane: drop or choose files, see them read, and what each one became."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import Qt, QUrl, Signal
from PySide6.QtGui import QDesktopServices, QGuiApplication
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QHBoxLayout,
    QHeaderView,
    QProgressBar,
    QScrollArea,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from tercet.library.importing import Progress, Report
from tercet.library.operations import Taken
from tercet.store.queries import FileRow
from tercet.ui import theme
from tercet.ui.widgets import BandRow, DropZone, Label, Pane, button

#: What a file became, as the list says it, in the order of the filter.
OUTCOMES = {
    "new": "New",
    "already here": "Already here",
    "same run": "Same run",
    "other sport": "Other sport",
    "season file": "Season file",
    "passed over": "Passed over",
    "refused": "Not read",
}
STATES = {"refused": "Not read", "passed over": "Passed over", "run": "Check"}


class RecordingsPane(Pane):
    """Slides over the season's right side; the sheet beside it fills as files arrive."""

    choose_asked = Signal()
    close_asked = Signal()
    stop_asked = Signal()
    skip_asked = Signal(str)  # content of a file
    summary_changed = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Recordings")
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 12, 16, 12)
        column.setSpacing(10)
        head = QHBoxLayout()
        head.addWidget(Label("Recordings", "pane_title"))
        head.addStretch()
        self.choose = button("Choose files…")
        self.choose.clicked.connect(self.choose_asked)
        self.close_button = button("Close")
        self.close_button.clicked.connect(self.close_asked)
        head.addWidget(self.choose)
        head.addWidget(self.close_button)
        column.addLayout(head)

        self.zone = DropZone()
        inside = QVBoxLayout(self.zone)
        inside.setContentsMargins(16, 18, 16, 18)
        self.zone_title = Label("Drop recordings here", "block")
        self.zone_words = Label(
            "FIT, TCX or GPX, single files or a folder; the originals are not touched",
            "small",
            "text_2",
            wrap=True,
        )
        for label in (self.zone_title, self.zone_words):
            label.setAlignment(Qt.AlignmentFlag.AlignCenter)
            inside.addWidget(label)
        column.addWidget(self.zone)

        self._running = QWidget()
        running = QVBoxLayout(self._running)
        running.setContentsMargins(0, 0, 0, 0)
        line = QHBoxLayout()
        self.counter = Label("", "body_bold")
        self.current = Label("", "small", "text_2")
        self.stop = button("Stop")
        self.stop.clicked.connect(self.stop_asked)
        line.addWidget(self.counter)
        line.addWidget(self.current, 1)
        line.addWidget(self.stop)
        running.addLayout(line)
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName("Files read")
        running.addWidget(self.bar)
        self._running.hide()
        column.addWidget(self._running)

        self.summary = Label("", "body", "text_2", wrap=True)
        self.summary.hide()
        column.addWidget(self.summary)

        self._problems_head = QWidget()
        problems_line = QHBoxLayout(self._problems_head)
        problems_line.setContentsMargins(0, 4, 0, 0)
        self.problems_title = Label("Needs a look", "pane_title")
        problems_line.addWidget(self.problems_title)
        problems_line.addStretch()
        self.copy = button("Copy as text")
        self.copy.clicked.connect(self._copy)
        problems_line.addWidget(self.copy)
        column.addWidget(self._problems_head)
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QScrollArea.Shape.NoFrame)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.viewport().setAutoFillBackground(False)
        self._list = QWidget()
        self._list.setAutoFillBackground(False)
        self._rows = QVBoxLayout(self._list)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(8)
        self._rows.addStretch()
        self._scroll.setWidget(self._list)
        column.addWidget(self._scroll, 2)

        self._taken_head = QWidget()
        taken_line = QHBoxLayout(self._taken_head)
        taken_line.setContentsMargins(0, 4, 0, 0)
        taken_line.addWidget(Label("Last import", "pane_title"))
        taken_line.addStretch()
        self.filter = QComboBox()
        self.filter.setAccessibleName("Which files to list")
        self.filter.currentIndexChanged.connect(self._fill_table)
        taken_line.addWidget(self.filter)
        column.addWidget(self._taken_head)
        self.table = QTableWidget(0, 3)
        self.table.setHorizontalHeaderLabels(["File", "What it is", "Why"])
        self.table.setAccessibleName("Files of the last import")
        self.table.verticalHeader().hide()
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.table.setShowGrid(False)
        self.table.horizontalHeader().setSectionResizeMode(2, QHeaderView.ResizeMode.Stretch)
        column.addWidget(self.table, 3)
        self._taken: list[Taken] = []
        self._problems: list[FileRow] = []
        self.set_problems([])
        self._show_taken([])

    def hover(self, count: int | None, unreadable: Sequence[str] = ()) -> None:
        """Say what a drop would add; None when nothing hovers."""
        self.zone.set_active(count is not None)
        if count is None:
            self.zone_title.setText("Drop recordings here")
            self.zone_words.setText(
                "FIT, TCX or GPX, single files or a folder; the originals are not touched"
            )
            return
        self.zone_title.setText(
            "1 file would be added" if count == 1 else f"{count} files would be added"
        )
        if unreadable:
            self.zone_words.setText(f"Not recordings by their names: {', '.join(unreadable)}")

    def begin(self) -> None:
        """An import starts."""
        self.summary.hide()
        self._running.show()
        self.bar.setRange(0, 0)
        self.counter.setText("Looking for files")
        self.current.setText("")
        self.stop.setEnabled(True)
        self._show_taken([])

    def progress(self, now: Progress) -> None:
        """An import goes on."""
        self.bar.setRange(0, max(now.total, 1))
        self.bar.setValue(now.done)
        if now.current == "judging":
            self.counter.setText(f"Judging {now.done} of {now.total}")
            self.current.setText("")
            return
        self.counter.setText(f"Reading {now.done} of {now.total}")
        metrics = self.current.fontMetrics()
        width = max(self.current.width() - 4, 80)
        self.current.setText(metrics.elidedText(now.current, Qt.TextElideMode.ElideMiddle, width))

    def end(self, report: Report) -> None:
        """An import has ended or was stopped."""
        self._running.hide()
        words = report.words
        if report.stopped:
            words = f"Stopped. What was read before stays: {words}"
        self.summary.setText(words)
        self.summary.show()
        self.summary_changed.emit(words)
        self._show_taken(report.taken)

    def fail(self, problem: str) -> None:
        """An import ended by a problem of the store."""
        self._running.hide()
        self.summary.setText(problem)
        self.summary.show()

    def set_problems(self, problems: Sequence[FileRow]) -> None:
        """List the files that need a look; they stay until acted on."""
        self._problems = list(problems)
        while self._rows.count() > 1:
            item = self._rows.takeAt(0)
            widget = item.widget() if item is not None else None
            if widget is not None:
                widget.deleteLater()
        for place, row in enumerate(self._problems[:100]):
            self._rows.insertWidget(place, self._problem_row(row))
        shown = bool(self._problems)
        self.problems_title.setText(f"Needs a look  {len(self._problems)}")
        self._problems_head.setVisible(shown)
        self._scroll.setVisible(shown)

    def _problem_row(self, row: FileRow) -> QWidget:
        refused = row.status == "refused"
        frame = BandRow("not_read" if refused else "check")
        frame.setAccessibleName(f"{row.name}: {STATES[row.status]}. {row.problem}")
        column = QVBoxLayout(frame)
        column.setContentsMargins(20, 8, 12, 8)
        column.setSpacing(4)
        line = QHBoxLayout()
        name = Label(row.name, "body_bold")
        name.setToolTip(row.folder)
        line.addWidget(name, 1)
        line.addWidget(Label(STATES[row.status], "small_bold", "not_read" if refused else "check"))
        column.addLayout(line)
        column.addWidget(Label(row.problem, "small", "text_2", wrap=True))
        actions = QHBoxLayout()
        show = button("Show the file", name=f"Show {row.name}")
        show.clicked.connect(lambda: _open_folder(row.folder))
        skip = button("Skip", name=f"Skip {row.name}")
        skip.clicked.connect(lambda: self.skip_asked.emit(row.sha256))
        show.setEnabled(Path(row.folder).is_dir())
        actions.addWidget(skip)
        actions.addWidget(show)
        actions.addStretch()
        column.addLayout(actions)
        return frame

    def _show_taken(self, taken: Sequence[Taken]) -> None:
        self._taken = list(taken)
        self.filter.blockSignals(True)
        self.filter.clear()
        self.filter.addItem(f"All {len(taken)}", "")
        for outcome, word in OUTCOMES.items():
            count = sum(item.outcome == outcome for item in taken)
            if count:
                self.filter.addItem(f"{word} {count}", outcome)
        self.filter.blockSignals(False)
        self._fill_table()
        self._taken_head.setVisible(bool(taken))
        self.table.setVisible(bool(taken))
        layout = self.layout()
        if isinstance(layout, QVBoxLayout):
            # Without a list below, what there is stays at the top.
            layout.setAlignment(
                Qt.AlignmentFlag(0) if taken or self._problems else Qt.AlignmentFlag.AlignTop
            )

    def _fill_table(self) -> None:
        wanted = self.filter.currentData() or ""
        rows = [item for item in self._taken if not wanted or item.outcome == wanted]
        self.table.setRowCount(len(rows))
        look = theme.current()
        for place, item in enumerate(rows):
            texts = (Path(item.path).name, OUTCOMES[item.outcome], item.detail)
            for column, text in enumerate(texts):
                cell = QTableWidgetItem(text)
                cell.setToolTip(item.path if column == 0 else text)
                if column == 1 and item.outcome == "refused":
                    cell.setForeground(look.color("not_read"))
                self.table.setItem(place, column, cell)
        self.table.resizeColumnsToContents()
        self.table.setColumnWidth(0, min(self.table.columnWidth(0), look.px(190)))

    def _copy(self) -> None:
        text = "\n".join(
            f"{row.name}\t{STATES[row.status]}\t{row.problem}" for row in self._problems
        )
        QGuiApplication.clipboard().setText(text)


def _open_folder(folder: str) -> None:
    QDesktopServices.openUrl(QUrl.fromLocalFile(folder))
