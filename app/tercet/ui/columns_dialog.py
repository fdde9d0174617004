"""Naming the columns of a table: what each holds, what that would give, and keeping it."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from PySide6.QtCore import QDateTime, Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QButtonGroup,
    QComboBox,
    QDateTimeEdit,
    QDialog,
    QHBoxLayout,
    QRadioButton,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from tercet.formats.table import Column, Naming
from tercet.language import mark, tr
from tercet.library import naming
from tercet.library.library import Library
from tercet.library.naming import Waiting
from tercet.ui import theme
from tercet.ui.fields import ErrorLine, fit_to_screen
from tercet.ui.focus_ring import FocusRing
from tercet.ui.jobs import Answers
from tercet.ui.twin import number_table
from tercet.ui.widgets import Label, button

#: What a column may hold, by what the table holds: role, unit, words.
CHOICES: dict[str, tuple[tuple[str, str, str], ...]] = {
    "runs": (
        ("", "", mark("not used")),
        ("day", "day first", mark("day, 31/12")),
        ("day", "month first", mark("day, 12/31")),
        ("day", "", mark("day, 2026-12-31")),
        ("day", "year first", mark("day, 26-12-31")),
        ("clock", "", mark("time of day")),
        ("distance", "km", mark("distance, km")),
        ("distance", "mi", mark("distance, miles")),
        ("distance", "m", mark("distance, metres")),
        ("duration", "h:mm:ss", mark("time taken, h:mm:ss")),
        ("duration", "m:ss", mark("time taken, m:ss")),
        ("duration", "h:mm", mark("time taken, h:mm")),
        ("duration", "min", mark("time taken, minutes")),
        ("duration", "s", mark("time taken, seconds")),
        ("duration", "h", mark("time taken, hours")),
        ("duration", "days", mark("time taken, in days (1.0 is 24 h)")),
        ("heart rate", "", mark("mean heart rate")),
        ("highest heart rate", "", mark("highest heart rate")),
        ("climb", "m", mark("climb, metres")),
        ("climb", "ft", mark("climb, feet")),
        ("effort", "", mark("effort said, 0 to 10")),
        ("sport", "", mark("sport")),
        ("kind", "", mark("kind, in words")),
        ("name", "", mark("name")),
        ("note", "", mark("note")),
    ),
    "samples": (
        ("", "", mark("not used")),
        ("moment", "", mark("date and time")),
        ("moment", "day first", mark("date and time, 31/12")),
        ("moment", "month first", mark("date and time, 12/31")),
        ("day", "", mark("day, 2026-12-31")),
        ("day", "day first", mark("day, 31/12")),
        ("day", "month first", mark("day, 12/31")),
        ("clock", "", mark("time of day")),
        ("elapsed", "s", mark("seconds from the start")),
        ("elapsed", "min", mark("minutes from the start")),
        ("elapsed", "ms", mark("milliseconds from the start")),
        ("heart rate", "", mark("heart rate")),
        ("speed", "m/s", mark("speed, m/s")),
        ("speed", "km/h", mark("speed, km/h")),
        ("speed", "mi/h", mark("speed, miles/h")),
        ("pace", "min/km", mark("pace, min/km")),
        ("pace", "min/mi", mark("pace, min/mile")),
        ("distance", "m", mark("distance, metres")),
        ("distance", "km", mark("distance, km")),
        ("distance", "mi", mark("distance, miles")),
        ("latitude", "", mark("latitude")),
        ("longitude", "", mark("longitude")),
        ("altitude", "m", mark("altitude, metres")),
        ("altitude", "ft", mark("altitude, feet")),
        ("cadence", "", mark("cadence")),
        ("power", "", mark("power, W")),
        ("temperature", "", mark("temperature")),
    ),
}
HOLDS = {"runs": mark("One run a line"), "samples": mark("Samples of one run")}
#: What a column may be named, by its role.
ROLES = {
    "day": mark("day"),
    "clock": mark("time of day"),
    "moment": mark("date and time"),
    "elapsed": mark("time from the start"),
    "distance": mark("distance"),
    "duration": mark("time taken"),
    "heart rate": mark("heart rate"),
    "highest heart rate": mark("highest heart rate"),
    "climb": mark("climb"),
    "effort": mark("effort said"),
    "sport": mark("sport"),
    "kind": mark("kind"),
    "name": mark("name"),
    "note": mark("note"),
    "speed": mark("speed"),
    "pace": mark("pace"),
    "latitude": mark("latitude"),
    "longitude": mark("longitude"),
    "altitude": mark("altitude"),
    "cadence": mark("cadence"),
    "power": mark("power"),
    "temperature": mark("temperature"),
}


class ColumnsDialog(QDialog):
    """A choice over each column, and at once what the choices would give."""

    applied = Signal(object)  # Changes

    def __init__(self, library: Library, table: Waiting, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._library, self._waiting = library, table
        self._asked = 0
        self._answers = Answers(self)
        self._answers.failed.connect(self._failed)
        self.setWindowTitle(tr("Columns of {file}", file=table.file_name))
        self.holds = QButtonGroup(self)
        self.choices: list[QComboBox] = []
        self.start = QDateTimeEdit(QDateTime.currentDateTime())
        self.start.setDisplayFormat(tr("d MMM yyyy  HH:mm", "format of a date"))
        self.start.setAccessibleName(tr("When the run started"))
        self._start_row = QWidget()
        self.table = number_table(tr("First rows of the table"))
        self.given = Label("", "body_bold", wrap=True)
        self.error = ErrorLine()
        self.cancel = button(tr("Cancel"))
        self.keep = button(tr("Read it so"), primary=True)
        self._arrange()
        self._fill(table.guess.holds if table.guess.holds in CHOICES else "runs")
        self._ring = FocusRing(self)
        fit_to_screen(self, 980, 560)
        if self.choices:
            self.choices[0].setFocus(Qt.FocusReason.OtherFocusReason)

    def _arrange(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 14, 20, 14)
        column.setSpacing(8)
        column.addWidget(Label(tr("What does each column hold?"), "pane_title"))
        column.addWidget(Label(self._waiting.question, "body", "text_2", wrap=True))
        line = QHBoxLayout()
        for number, (key, text) in enumerate(HOLDS.items()):
            choice = QRadioButton(tr(text))
            choice.setChecked(key == self._waiting.guess.holds)
            self.holds.addButton(choice, number)
            line.addWidget(choice)
        line.addStretch()
        column.addLayout(line)
        self.holds.idClicked.connect(lambda number: self._fill(tuple(HOLDS)[number]))
        start = QHBoxLayout(self._start_row)
        start.setContentsMargins(0, 0, 0, 0)
        start.addWidget(Label(tr("When the run started"), "body"))
        start.addWidget(self.start)
        start.addStretch()
        self.start.dateTimeChanged.connect(self._ask)
        column.addWidget(self._start_row)
        column.addWidget(self.table, 1)
        column.addWidget(self.given)
        note = tr("Tables with the same headings are read so from now on.")
        column.addWidget(Label(note, "small", "text_2", wrap=True))
        column.addWidget(self.error)
        buttons = QHBoxLayout()
        buttons.addStretch()
        for made, call in ((self.cancel, self.reject), (self.keep, self._keep)):
            made.setAutoDefault(False)
            made.clicked.connect(call)
            buttons.addWidget(made)
        self.keep.setDefault(True)
        column.addLayout(buttons)

    def _fill(self, holds: str) -> None:
        """Show the table with a choice on top of each column."""
        told, look = self._waiting, theme.current()
        self._holds = holds
        self.table.clear()
        self.choices = []
        self.table.setColumnCount(len(told.header))
        self.table.setRowCount(len(told.rows) + 1)
        self.table.setHorizontalHeaderLabels(
            [_named(head, k) for k, head in enumerate(told.header, 1)]
        )
        self.table.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.table.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        guessed = {c.index: c for c in told.guess.columns if told.guess.holds == holds}
        for place, head in enumerate(told.header):
            choice = QComboBox()
            said = tr("What {column} holds", column=_named(head, place + 1))
            choice.setAccessibleName(said)
            for role, unit, words in CHOICES[holds]:
                choice.addItem(tr(words), (role, unit))
            choice.setCurrentIndex(_closest(holds, guessed.get(place)))
            choice.currentIndexChanged.connect(self._ask)
            self.table.setCellWidget(0, place, choice)
            self.choices.append(choice)
            for row, cells in enumerate(told.rows, 1):
                self.table.setItem(row, place, QTableWidgetItem(cells[place][:80]))
        self.table.resizeColumnsToContents()
        for place in range(len(told.header)):
            width = max(look.px(170), min(self.table.columnWidth(place), look.px(240)))
            self.table.setColumnWidth(place, width)
        self.table.setRowHeight(0, look.px(40) + 4)
        self._ask()

    @property
    def naming(self) -> Naming:
        """What is chosen."""
        chosen = [(place, *choice.currentData()) for place, choice in enumerate(self.choices)]
        columns = tuple(Column(place, role, unit) for place, role, unit in chosen if role)
        return Naming(self._holds, columns)

    @property
    def _began(self) -> datetime | None:
        asked = self.naming.find("elapsed") is not None
        if not asked:
            return None
        found = self.start.dateTime().toPython()
        assert isinstance(found, datetime)
        return found

    def _problem(self) -> str:
        named = [column.role for column in self.naming.columns]
        twice = next((role for role in named if named.count(role) > 1), "")
        if twice:
            named_twice = tr(ROLES[twice])
            return tr("Two columns are named {role}: choose one of them.", role=named_twice)
        if self._holds == "runs":
            if "day" not in named:
                return tr("Name the column that holds the day.")
            if not {"distance", "duration"} & set(named):
                return tr("Name a column of distances or of times taken.")
        elif not ({"moment", "elapsed"} & set(named) or {"day", "clock"} <= set(named)):
            return tr("Name the column that holds the time of each sample.")
        return ""

    def _ask(self, *_: Any) -> None:
        """Say what the choices would give; the newest answer counts."""
        self._start_row.setVisible(self._began is not None)
        self._asked += 1
        number, problem = self._asked, self._problem()
        self.error.clear_error()
        self.keep.setEnabled(False)
        self.given.setText(problem)
        if problem:
            return

        def then(told: tuple[str, bool]) -> None:
            if number == self._asked:
                self.given.setText(told[0])
                self.keep.setEnabled(told[1])

        given = (self._waiting.sha256, self.naming, self._began)
        self._answers.when(self._library.submit(naming.would_give, *given), then)

    def _failed(self, error: Exception) -> None:
        self.error.show_error(str(error))

    def _keep(self) -> None:
        self.keep.setEnabled(False)

        def then(changes: Any) -> None:
            self.applied.emit(changes)
            self.accept()

        given = (self._waiting.sha256, self.naming, self._began)
        self._answers.when(self._library.submit(naming.name_columns, *given), then)


def _named(head: str, number: int) -> str:
    """A column's heading, or its number where it has none."""
    return head or tr("column {n}", n=number)


def _closest(holds: str, column: Column | None) -> int:
    """The choice that a guessed column means, or not used."""
    if column is None:
        return 0
    told = [(role, unit) for role, unit, _ in CHOICES[holds]]
    if (column.role, column.unit) in told:
        return told.index((column.role, column.unit))
    return next((place for place, (role, _) in enumerate(told) if role == column.role), 0)
