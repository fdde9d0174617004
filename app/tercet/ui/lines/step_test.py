"""A lactate step test on the page: typed, pasted or opened; its candidates; one for each line."""

from __future__ import annotations

import math
from datetime import date
from pathlib import Path

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import (
    QFileDialog,
    QHBoxLayout,
    QHeaderView,
    QLineEdit,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from tercet.domain import DatedThresholds
from tercet.engine.shades import Thresholds
from tercet.language import mark, tr
from tercet.library import step_table
from tercet.library.library import Library
from tercet.store.lines_queries import KeptTest
from tercet.ui import theme, words
from tercet.ui.charts.lactate_curve import LactateChart
from tercet.ui.fields import ErrorLine
from tercet.ui.flow import FlowLayout
from tercet.ui.lines.source import completed
from tercet.ui.lines.words import MAXIMAL
from tercet.ui.thresholds_pages import FieldError, Finder, Page
from tercet.ui.widgets import Label, button

ROWS = 10
_HINT = mark(
    "Type or paste the steps: speed or pace, heart rate, lactate. At least five, each faster than "
    "the one before."
)
KEEP_AFTER_MS = 600
#: Two methods differ by about so much: half-widths of what is taken from a test. [share]
SPEED_HALF, BEATS_HALF = 0.03, 4.0


class StepTestPage(Page):
    """The table at the left, candidates and curve at the right."""

    kept = Signal(object)  # rows to keep, as they were typed

    def __init__(self, units: words.Units = "km") -> None:
        super().__init__()
        self._units = units
        self._now: DatedThresholds | None = None
        self._filling = False
        # What is typed is kept after a pause, not at every cell.
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(KEEP_AFTER_MS)
        self._pause.timeout.connect(lambda: self.kept.emit(self.typed))
        self.test_id: int | None = None
        self.table = QTableWidget(ROWS, len(step_table.COLUMNS))
        self.table.setHorizontalHeaderLabels(
            [tr("km/h, pace"), tr("heart rate"), tr("lactate"), tr("step, min")]
        )
        self.table.setAccessibleName(tr("Step test: one step a row"))
        self.table.verticalHeader().hide()
        self.table.setTabKeyNavigation(True)
        self.resting = QLineEdit()
        self.resting.setPlaceholderText("1.1")
        self.resting.setAccessibleName(tr("Lactate at rest, if taken"))
        self.paste = button(tr("Paste"), name=tr("Paste a table"))
        self.open_file = button(tr("Open…"), name=tr("Open a table of a step test"))
        self.clear = button(tr("Clear"))
        self.error = ErrorLine()
        self.chart = LactateChart(units)
        self.hint = Label(" ".join((tr(_HINT), tr(MAXIMAL))), "small", "text_2", wrap=True)
        self._arrange()
        self.table.cellChanged.connect(lambda *_: self._changed())
        self.resting.editingFinished.connect(self._changed)
        self.paste.clicked.connect(self.paste_table)
        self.open_file.clicked.connect(self._open)
        self.clear.clicked.connect(lambda: self.fill([], ""))
        self.chart.chosen.connect(self.edited)
        theme.changed.connect(self._restyle)
        self._restyle()
        self.fill([], "")

    def _arrange(self) -> None:
        left = QVBoxLayout()
        left.addWidget(self.table, 1)
        rest = QWidget()
        pair = QHBoxLayout(rest)
        pair.setContentsMargins(0, 0, 0, 0)
        pair.addWidget(Label(tr("at rest"), "small", "text_2"))
        pair.addWidget(self.resting)
        buttons = FlowLayout()
        for made in (self.paste, self.open_file, self.clear, rest):
            buttons.addWidget(made)
        left.addLayout(buttons)
        right = QVBoxLayout()
        for part in (self.error, self.hint, self.chart):
            right.addWidget(part)
        right.addStretch(1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 8, 0, 0)
        row.setSpacing(16)
        row.addLayout(left, 38)
        row.addLayout(right, 62)

    def _restyle(self, *_: object) -> None:
        look = theme.current()
        self.table.setFont(look.font("small"))
        self.table.horizontalHeader().setFont(look.font("small"))
        self.table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        self.table.verticalHeader().setDefaultSectionSize(look.px(26))
        self.table.setMinimumHeight(look.px(26 * 8))
        self.resting.setFixedWidth(look.px(56))
        self.table.setMinimumWidth(look.px(310))

    # Filling -----------------------------------------------------------------------------

    def show_now(self, now: DatedThresholds | None) -> None:
        """Know what is in force, for what the test does not say."""
        self._now = now

    def show_kept(self, kept: KeptTest | None) -> None:
        """Show the latest kept test, unless it is the one that is shown."""
        if kept is None or kept.id == self.test_id or any(self._cells()):
            self.test_id = kept.id if kept is not None else self.test_id
            return
        self.test_id = kept.id
        self.fill(kept.rows.get("rows", []), kept.rows.get("resting", ""))

    def fill(self, rows: list[list[str]], resting: str) -> None:
        """Put rows into the table."""
        self._filling = True
        self.table.setRowCount(max(ROWS, len(rows) + 1))
        for k in range(self.table.rowCount()):
            for column in range(self.table.columnCount()):
                text = rows[k][column] if k < len(rows) else ""
                item = QTableWidgetItem(text)
                item.setTextAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
                self.table.setItem(k, column, item)
        self.resting.setText(resting)
        self._filling = False
        self._changed(keep=False)

    def unkept(self) -> dict[str, object] | None:
        """What was typed and waits to be kept, once; None if nothing does."""
        if not self._pause.isActive():
            return None
        self._pause.stop()
        return self.typed

    def paste_table(self) -> None:
        """Take the table on the clipboard."""
        self._take(QGuiApplication.clipboard().text(), tr("the clipboard"))

    def _open(self) -> None:
        name, _ = QFileDialog.getOpenFileName(
            self,
            tr("Open a table of a step test"),
            "",
            ";;".join((tr("Tables (*.csv *.txt *.tsv)"), tr("All files (*)"))),
        )
        if name:
            self.read_file(Path(name))

    def read_file(self, path: Path) -> None:
        """Take a table from a text file."""
        try:
            text = path.read_text(encoding="utf-8-sig", errors="replace")
        except OSError as error:
            self.error.show_error(
                tr("{file} cannot be read: {why}.", file=path.name, why=error.strerror)
            )
            return
        self._take(text, path.name)

    def _take(self, text: str, place: str) -> None:
        rows = step_table.rows_of(text)
        if not rows:
            self.error.show_error(
                tr(
                    "There is no table in {place}. A line a step is right, such as 12.0 146 1.3.",
                    place=place,
                )
            )
            return
        self.fill(rows, self.resting.text())
        self._pause.start()

    def _cells(self) -> list[str]:
        return [
            (item.text() if (item := self.table.item(row, column)) is not None else "")
            for row in range(self.table.rowCount())
            for column in range(self.table.columnCount())
        ]

    @property
    def typed(self) -> dict[str, object]:
        """What is in the table, to be kept."""
        cells, width = self._cells(), self.table.columnCount()
        rows = [cells[k : k + width] for k in range(0, len(cells), width)]
        return {"rows": [row for row in rows if any(row)], "resting": self.resting.text()}

    def _changed(self, *, keep: bool = True) -> None:
        if self._filling:
            return
        typed = self.typed
        rows = typed["rows"]
        assert isinstance(rows, list)
        self.error.clear_error()
        self.hint.setVisible(not rows)
        test = None
        if rows:
            try:
                test = self._test()
            except ValueError as error:
                self.error.show_error(str(error))
        self.chart.set(test)
        self.chart.setVisible(test is not None)
        if keep and test is not None:
            self._pause.start()
        self.edited.emit()

    def _test(self):  # type: ignore[no-untyped-def]
        rows = self.typed["rows"]
        return step_table.test_of(rows, self.resting.text(), words.UNIT_METRES[self._units])  # type: ignore[arg-type]

    # Giving ------------------------------------------------------------------------------

    def finder(self, start: date) -> Finder:
        try:
            self._test()
        except step_table.CellError as error:
            self.table.setCurrentCell(error.row, error.column)
            raise FieldError(str(error), self.table) from error
        except ValueError as error:
            raise FieldError(str(error), self.table) from error
        one, two = self.chart.choice("LT1"), self.chart.choice("LT2")
        if one is None or two is None:
            raise FieldError(tr("No method found a line for both LT1 and LT2 in it."), self.table)
        if one.speed >= two.speed:
            lt1, lt2 = (words.bare_pace(item.speed, self._units) for item in (one, two))
            said = tr(
                "LT1 must be slower than LT2: {lt1} and {lt2}. Choose others.", lt1=lt1, lt2=lt2
            )
            raise FieldError(said, self.table)
        values = {"lt1_speed": one.speed, "lt2_speed": two.speed}
        interval = {"lt1_speed": SPEED_HALF * one.speed, "lt2_speed": SPEED_HALF * two.speed}
        if math.isfinite(one.heart_rate) and math.isfinite(two.heart_rate):
            values |= {"lt1_hr": one.heart_rate, "lt2_hr": two.heart_rate}
            interval |= {"lt1_hr": BEATS_HALF, "lt2_hr": BEATS_HALF}
        source = f"step test: {one.method}, {two.method}"
        try:
            entry = completed(
                Thresholds(**values), interval, self._now, start, source, estimated=False
            )
        except ValueError as error:
            raise FieldError(str(error), self.table) from error

        def find(_: Library) -> DatedThresholds:
            return entry

        return find
