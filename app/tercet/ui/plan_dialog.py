"""Blocks and races, typed: a row each, checked as one, saved as one undo step."""

from __future__ import annotations

from datetime import date, timedelta

from PySide6.QtCore import QDate, Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDateEdit,
    QDialog,
    QDoubleSpinBox,
    QHBoxLayout,
    QHeaderView,
    QLineEdit,
    QSpinBox,
    QTableWidget,
    QVBoxLayout,
    QWidget,
)

from tercet.domain import Block, Race
from tercet.library import operations
from tercet.library.library import Library
from tercet.library.season_file import BLOCK_KINDS
from tercet.store import queries
from tercet.ui.widgets import Label, button

#: Share of easy that a new block aims at, by kind (common practice, no source).
TARGETS = {"base": 90, "recovery": 95}


class PlanDialog(QDialog):
    """Edits blocks and races."""

    applied = Signal(object)  # Changes

    def __init__(self, library: Library, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._library = library
        self.setWindowTitle("Blocks and races")
        self.resize(820, 560)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 16, 20, 16)
        column.setSpacing(8)
        column.addWidget(Label("Blocks", "pane_title"))
        column.addWidget(
            Label(
                "A block is a stretch of whole days with one purpose. Its totals start at zero. "
                "Days in no block are shown by the month.",
                "small",
                "text_2",
                wrap=True,
            )
        )
        self.blocks = self._table(["Name", "Kind", "First day", "Last day", "Easy wanted", ""])
        column.addWidget(self.blocks, 3)
        line = QHBoxLayout()
        self.add_block = button("Add a block")
        self.add_block.clicked.connect(self._new_block)
        line.addWidget(self.add_block)
        line.addStretch()
        column.addLayout(line)
        column.addWidget(Label("Races", "pane_title"))
        self.races = self._table(["Name", "Day", "Distance, km", ""])
        column.addWidget(self.races, 2)
        foot = QHBoxLayout()
        self.add_race = button("Add a race")
        self.add_race.clicked.connect(self._new_race)
        foot.addWidget(self.add_race)
        foot.addStretch()
        column.addLayout(foot)
        self.error = Label("", "small", "not_read", wrap=True)
        self.error.hide()
        column.addWidget(self.error)
        buttons = QHBoxLayout()
        buttons.addStretch()
        cancel = button("Cancel")
        cancel.clicked.connect(self.reject)
        self.save = button("Save", primary=True)
        self.save.setDefault(True)
        self.save.clicked.connect(self._save)
        buttons.addWidget(cancel)
        buttons.addWidget(self.save)
        column.addLayout(buttons)
        for block in library.call(queries.blocks):
            self._put_block(block)
        for race in library.call(queries.races):
            self._put_race(race)

    def _table(self, heads: list[str]) -> QTableWidget:
        table = QTableWidget(0, len(heads))
        table.setHorizontalHeaderLabels(heads)
        table.verticalHeader().hide()
        table.verticalHeader().setDefaultSectionSize(44)
        table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        table.horizontalHeader().setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        table.setShowGrid(False)
        table.setTabKeyNavigation(False)
        return table

    def _put_block(self, block: Block) -> None:
        row = self.blocks.rowCount()
        self.blocks.insertRow(row)
        name = QLineEdit(block.name)
        name.setProperty("key", block.id)
        kind = QComboBox()
        kind.addItems(BLOCK_KINDS)
        kind.setCurrentText(block.kind)
        share = QSpinBox()
        share.setRange(50, 100)
        share.setSuffix(" %")
        share.setValue(round(block.easy_target * 100))
        kind.currentTextChanged.connect(lambda text: share.setValue(TARGETS.get(text, 80)))
        for column, (cell, said) in enumerate(
            (
                (name, "Block name"),
                (kind, "Kind of block"),
                (_day_edit(block.start), "First day"),
                (_day_edit(block.end), "Last day"),
                (share, "Share of easy wanted"),
                (self._remover(self.blocks, "block"), "Remove this block"),
            )
        ):
            cell.setAccessibleName(said)
            self.blocks.setCellWidget(row, column, cell)

    def _put_race(self, race: Race) -> None:
        row = self.races.rowCount()
        self.races.insertRow(row)
        name = QLineEdit(race.name)
        name.setProperty("key", race.id)
        distance = QDoubleSpinBox()
        distance.setRange(0, 400)
        distance.setDecimals(2)
        distance.setSpecialValueText("not said")
        distance.setValue((race.distance_m or 0) / 1000)
        for column, (cell, said) in enumerate(
            (
                (name, "Race name"),
                (_day_edit(race.day), "Race day"),
                (distance, "Distance in kilometres"),
                (self._remover(self.races, "race"), "Remove this race"),
            )
        ):
            cell.setAccessibleName(said)
            self.races.setCellWidget(row, column, cell)

    def _remover(self, table: QTableWidget, what: str) -> QWidget:
        made = button("Remove", name=f"Remove this {what}")

        def remove() -> None:
            for row in range(table.rowCount()):
                if table.cellWidget(row, table.columnCount() - 1) is made:
                    table.removeRow(row)
                    return

        made.clicked.connect(remove)
        return made

    def _new_block(self) -> None:
        start = _monday(date.today())
        ends = [block.end for block in self.wanted_blocks()]
        if ends:
            start = max(ends) + timedelta(days=1)
        self._put_block(Block(start, start + timedelta(days=27), "Base", "base", 0.9))
        self._name_field(self.blocks).setFocus(Qt.FocusReason.OtherFocusReason)

    def _new_race(self) -> None:
        self._put_race(Race(date.today() + timedelta(days=84), "Race", None))
        self._name_field(self.races).setFocus(Qt.FocusReason.OtherFocusReason)

    def _name_field(self, table: QTableWidget) -> QLineEdit:
        field = table.cellWidget(table.rowCount() - 1, 0)
        assert isinstance(field, QLineEdit)
        field.selectAll()
        return field

    def wanted_blocks(self) -> list[Block]:
        """The blocks as typed."""
        out = []
        for row in range(self.blocks.rowCount()):
            name, kind, start, end, share, _ = (
                self.blocks.cellWidget(row, column) for column in range(6)
            )
            assert isinstance(name, QLineEdit) and isinstance(kind, QComboBox)
            assert isinstance(share, QSpinBox)
            out.append(
                Block(
                    _day(start),
                    _day(end),
                    name.text().strip() or kind.currentText().capitalize(),
                    kind.currentText(),
                    share.value() / 100,
                    name.property("key"),
                )
            )
        return out

    def wanted_races(self) -> list[Race]:
        """The races as typed."""
        out = []
        for row in range(self.races.rowCount()):
            name, day, distance, _ = (self.races.cellWidget(row, column) for column in range(4))
            assert isinstance(name, QLineEdit) and isinstance(distance, QDoubleSpinBox)
            out.append(
                Race(
                    _day(day),
                    name.text().strip() or "Race",
                    distance.value() * 1000 or None,
                    name.property("key"),
                )
            )
        return out

    def _save(self) -> None:
        try:
            changes = self._library.call(
                operations.set_plan, self.wanted_blocks(), self.wanted_races()
            )
        except ValueError as error:
            self.error.setText(f"{error}. Move one of the two dates.")
            self.error.show()
            return
        self.applied.emit(changes)
        self.accept()


def _day_edit(day: date) -> QDateEdit:
    edit = QDateEdit(QDate(day.year, day.month, day.day))
    edit.setCalendarPopup(True)
    return edit


def _day(widget: QWidget | None) -> date:
    assert isinstance(widget, QDateEdit)
    day = widget.date().toPython()
    assert isinstance(day, date)
    return day


def _monday(day: date) -> date:
    return day - timedelta(days=day.weekday())
