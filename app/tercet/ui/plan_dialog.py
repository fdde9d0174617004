"""Blocks and races, typed: a row each, checked as one, saved as one undo step."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QAbstractSpinBox,
    QComboBox,
    QDialog,
    QDoubleSpinBox,
    QHBoxLayout,
    QHeaderView,
    QLineEdit,
    QSpinBox,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from tercet import units, week_days
from tercet.domain import Block, Race
from tercet.language import mark, tr
from tercet.library import operations
from tercet.library.library import Library
from tercet.library.season_file import BLOCK_KINDS
from tercet.ui import theme, words
from tercet.ui.day_edit import DayEdit
from tercet.ui.fields import ErrorLine, fit_to_screen
from tercet.ui.focus_ring import FocusRing
from tercet.ui.jobs import Answers
from tercet.ui.plan_rows import kind_words
from tercet.ui.twin import number_table
from tercet.ui.widgets import Label, button

BLOCK_HEADS = (
    mark("Name"),
    mark("Kind"),
    mark("First day"),
    mark("Last day"),
    mark("Easy wanted"),
    "",
)
RACE_HEADS = (mark("Name"), mark("Day"), mark("Distance, {unit}"), "")
#: Share of easy that a new block aims at, by kind (common practice, no source).
TARGETS = {"base": 90, "recovery": 95}


class PlanDialog(QDialog):
    """Edits blocks and races."""

    applied = Signal(object)  # Changes

    def __init__(
        self,
        library: Library,
        blocks: Sequence[Block],
        races: Sequence[Race],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._library = library
        self._answers = Answers(self)
        self._answers.failed.connect(self._refused)
        self.setWindowTitle(tr("Blocks and races"))
        self.blocks = self._table(tr("Blocks"), BLOCK_HEADS)
        self.races = self._table(tr("Races"), RACE_HEADS)
        self.no_blocks = Label(tr("No blocks yet: the sheet goes by months."), "body", "text_2")
        self.no_races = Label(tr("No races yet."), "body", "text_2")
        self.add_block, self.add_race = button(tr("Add a block")), button(tr("Add a race"))
        self.error = ErrorLine()
        self.cancel, self.save = button(tr("Cancel")), button(tr("Save"), primary=True)
        self._arrange()
        for made, call in (
            (self.add_block, self._new_block),
            (self.add_race, self._new_race),
            (self.cancel, self.reject),
            (self.save, self._save),
        ):
            made.setAutoDefault(False)
            made.clicked.connect(call)
        self.save.setDefault(True)
        for block in blocks:
            self._put_block(block)
        for race in races:
            self._put_race(race)
        self._show_tables()
        self._ring = FocusRing(self)
        fit_to_screen(self, 860, 600)
        self.add_block.setFocus(Qt.FocusReason.OtherFocusReason)

    def _arrange(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 14, 20, 14)
        column.setSpacing(8)
        words = tr(
            "A block is a stretch of whole days with one purpose. Its totals start at zero. "
            "Days in no block are shown by the month."
        )
        for title, text, table, none, add, stretch in (
            (tr("Blocks"), words, self.blocks, self.no_blocks, self.add_block, 3),
            (tr("Races"), "", self.races, self.no_races, self.add_race, 2),
        ):
            head = QHBoxLayout()
            head.addWidget(Label(title, "pane_title"), 1)
            head.addWidget(add)
            column.addLayout(head)
            if text:
                column.addWidget(Label(text, "small", "text_2", wrap=True))
            column.addWidget(none)
            column.addWidget(table, stretch)
        column.addWidget(self.error)
        column.addStretch(0)
        buttons = QHBoxLayout()
        buttons.addStretch()
        buttons.addWidget(self.cancel)
        buttons.addWidget(self.save)
        column.addLayout(buttons)

    def _table(self, name: str, heads: Sequence[str]) -> QTableWidget:
        table = number_table(name)
        look = theme.current()
        table.setColumnCount(len(heads))
        for place, head in enumerate(heads):
            item = QTableWidgetItem(tr(head, unit=units.word()) if head else "")
            item.setTextAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
            table.setHorizontalHeaderItem(place, item)
        table.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        table.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        table.verticalHeader().setDefaultSectionSize(look.px(40) + 4)
        # Fields stand in cells with some room around them.
        fields = "QLineEdit, QComboBox, QAbstractSpinBox, QPushButton"
        table.setStyleSheet(f"{fields} {{ margin: 3px 3px; }}")
        header = table.horizontalHeader()
        header.setFont(look.font("small"))
        header.setHighlightSections(False)
        header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        header.setMinimumSectionSize(look.px(72))
        return table

    def _show_tables(self) -> None:
        for table, none in ((self.blocks, self.no_blocks), (self.races, self.no_races)):
            table.setVisible(table.rowCount() > 0)
            none.setVisible(table.rowCount() == 0)

    def _put_block(self, block: Block) -> None:
        row = self.blocks.rowCount()
        self.blocks.insertRow(row)
        name = QLineEdit(block.name)
        name.setProperty("before", block)
        kind = QComboBox()
        for each in BLOCK_KINDS:
            kind.addItem(kind_words(each), each)
        kind.setCurrentIndex(kind.findData(block.kind))
        share = QSpinBox()
        share.setRange(50, 100)
        share.setSuffix(" %")
        share.setValue(round(block.easy_target * 100))
        kind.currentIndexChanged.connect(
            lambda _: share.setValue(TARGETS.get(kind.currentData(), 80))
        )
        for column, (cell, said) in enumerate(
            (
                (name, tr("Block name")),
                (kind, tr("Kind of block")),
                (DayEdit(block.start, tr("First day")), tr("First day")),
                (DayEdit(block.end, tr("Last day")), tr("Last day")),
                (share, tr("Share of easy wanted")),
                (self._remover(self.blocks, tr("Remove this block")), tr("Remove this block")),
            )
        ):
            self._put(self.blocks, row, column, cell, said)

    def _put_race(self, race: Race) -> None:
        row = self.races.rowCount()
        self.races.insertRow(row)
        name = QLineEdit(race.name)
        name.setProperty("before", race)
        distance = QDoubleSpinBox()
        distance.setRange(0, 400)
        distance.setDecimals(2)
        distance.setSpecialValueText(tr("not said"))
        distance.setValue((race.distance_m or 0) / units.metres())
        # What is shown is rounded; a distance nobody touched is kept to the metre.
        distance.setProperty("metres", race.distance_m)
        distance.valueChanged.connect(
            lambda value: distance.setProperty("metres", value * units.metres() or None)
        )
        for column, (cell, said) in enumerate(
            (
                (name, tr("Race name")),
                (DayEdit(race.day, tr("Race day")), tr("Race day")),
                (distance, tr("Distance in {unit}", unit=units.word())),
                (self._remover(self.races, tr("Remove this race")), tr("Remove this race")),
            )
        ):
            self._put(self.races, row, column, cell, said)

    def _put(self, table: QTableWidget, row: int, column: int, cell: QWidget, name: str) -> None:
        cell.setAccessibleName(name)
        if isinstance(cell, (QComboBox, QAbstractSpinBox)):
            # The wheel scrolls the table; it must not change what it passes over.
            cell.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
            cell.installEventFilter(self)
        table.setCellWidget(row, column, cell)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Leave the wheel to the table unless the field has the focus."""
        passing = isinstance(watched, QWidget) and not watched.hasFocus()
        if passing and event.type() == QEvent.Type.Wheel:
            event.ignore()
            return True
        return False

    def _remover(self, table: QTableWidget, name: str) -> QWidget:
        made = button(tr("Remove"), name=name)

        def remove() -> None:
            for row in range(table.rowCount()):
                if table.cellWidget(row, table.columnCount() - 1) is made:
                    table.removeRow(row)
                    self._show_tables()
                    return

        made.clicked.connect(remove)
        return made

    def _new_block(self) -> None:
        start = week_days.start_of(date.today())
        ends = [block.end for block in self.wanted_blocks()]
        if ends:
            start = max(ends) + timedelta(days=1)
        self._put_block(Block(start, start + timedelta(days=27), tr("Base"), "base", 0.9))
        self._show_new(self.blocks)

    def _new_race(self) -> None:
        self._put_race(Race(date.today() + timedelta(days=84), tr("Race"), None))
        self._show_new(self.races)

    def _show_new(self, table: QTableWidget) -> None:
        """Bring a new row into view, its name ready to be typed over."""
        self._show_tables()
        table.scrollToBottom()
        field = table.cellWidget(table.rowCount() - 1, 0)
        assert isinstance(field, QLineEdit)
        field.selectAll()
        field.setFocus(Qt.FocusReason.OtherFocusReason)

    def wanted_blocks(self) -> list[Block]:
        """The blocks as typed."""
        out = []
        for row in range(self.blocks.rowCount()):
            name, kind, start, end, share, _ = (
                self.blocks.cellWidget(row, column) for column in range(6)
            )
            assert isinstance(name, QLineEdit) and isinstance(kind, QComboBox)
            assert isinstance(share, QSpinBox)
            out.append(_changed(name, kind.currentData(), _day(start), _day(end), share.value()))
        return out

    def wanted_races(self) -> list[Race]:
        """The races as typed."""
        out = []
        for row in range(self.races.rowCount()):
            name, day, distance, _ = (self.races.cellWidget(row, column) for column in range(4))
            assert isinstance(name, QLineEdit) and isinstance(distance, QDoubleSpinBox)
            out.append(
                replace(
                    name.property("before"),
                    day=_day(day),
                    name=name.text().strip() or tr("Race"),
                    distance_m=distance.property("metres"),
                )
            )
        return out

    def _save(self) -> None:
        blocks, races = self.wanted_blocks(), self.wanted_races()
        wrong = _wrong(blocks)
        if wrong is not None:
            text, row, column = wrong
            self.error.show_error(text, self.blocks.cellWidget(row, column))
            return
        self.error.clear_error()
        self.save.setEnabled(False)
        self._answers.when(self._library.submit(operations.set_plan, blocks, races), self._saved)

    def _saved(self, changes: object) -> None:
        self.applied.emit(changes)
        self.accept()

    def _refused(self, error: Exception) -> None:
        self.save.setEnabled(True)
        self.error.show_error(str(error))


def _wrong(blocks: Sequence[Block]) -> tuple[str, int, int] | None:
    """What is wrong with blocks as typed, and in which row and column; None if nothing is."""
    for row, block in enumerate(blocks):
        if block.end < block.start:
            right = words.short_day(block.start + timedelta(days=27))
            text = tr(
                "{block} ends before it starts: four weeks would end {day}.",
                block=block.name,
                day=right,
            )
            return text, row, 3
    ordered = sorted(range(len(blocks)), key=lambda row: blocks[row].start)
    for a, b in pairwise(ordered):
        first, second = blocks[a], blocks[b]
        if second.start <= first.end:
            right = words.short_day(first.end + timedelta(days=1))
            text = tr(
                "{first} and {second} overlap on {day}: {second} may begin on {free}.",
                first=first.name,
                second=second.name,
                day=words.short_day(second.start),
                free=right,
            )
            return text, b, 2
    return None


def _changed(name: QLineEdit, kind: str, start: date, end: date, easy: int) -> Block:
    """A block as typed; what is not shown here stays, unless other shares of easy replace it."""
    before: Block = name.property("before")
    word = kind_words(kind)
    called = name.text().strip() or f"{word[:1].upper()}{word[1:]}"
    made = replace(before, start=start, end=end, kind=kind, name=called)
    if easy == round(before.easy_target * 100):
        return made
    return replace(made, easy_target=easy / 100, moderate_target=None, hard_target=None)


def _day(widget: QWidget | None) -> date:
    assert isinstance(widget, DayEdit)
    return widget.day
