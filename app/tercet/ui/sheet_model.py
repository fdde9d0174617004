"""The season sheet as a table: rows are block headings and weeks, columns the gutter and days."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QLocale, QModelIndex, QPersistentModelIndex, Qt

from tercet import week_days
from tercet.language import tr
from tercet.library.views import SeasonView
from tercet.ui import sheet_planned, sheet_rows, words
from tercet.ui.sheet_rows import Cell, Row, Sheet

Index = QModelIndex | QPersistentModelIndex
_ROOT = QModelIndex()
_ACCESSIBLE = Qt.ItemDataRole.AccessibleTextRole
_DISPLAY = Qt.ItemDataRole.DisplayRole


class SheetModel(QAbstractTableModel):
    """Rows of a season; without one it is empty."""

    def __init__(self) -> None:
        super().__init__()
        self.sheet: Sheet | None = None

    def set_season(self, season: SeasonView, cap_s: float | None = None) -> None:
        """Show another season, or the same one after a change."""
        self.beginResetModel()
        self.sheet = sheet_rows.build(season, cap_s)
        self.endResetModel()

    def rows(self) -> tuple[Row, ...]:
        """All rows, top to bottom."""
        return self.sheet.rows if self.sheet else ()

    def cell(self, index: Index) -> Cell | None:
        """The day under an index; ``None`` for a heading, the gutter and nothing."""
        if not index.isValid() or index.column() == 0:
            return None
        cells = self.rows()[index.row()].cells
        return cells[index.column() - 1] if cells else None

    def rowCount(self, parent: Index = _ROOT) -> int:
        return 0 if parent.isValid() else len(self.rows())

    def columnCount(self, parent: Index = _ROOT) -> int:
        return 0 if parent.isValid() else 8

    def data(self, index: Index, role: int = _DISPLAY) -> Any:
        if role not in (_ACCESSIBLE, _DISPLAY) or not index.isValid():
            return None
        row = self.rows()[index.row()]
        if row.week is None:
            return sheet_rows.heading_spoken(row) if index.column() == 0 else ""
        cell = self.cell(index)
        if cell is None:
            return sheet_rows.week_spoken(row)
        if role == _ACCESSIBLE:
            planned = sheet_planned.spoken(cell)
            said = sheet_rows.cell_spoken(cell)
            return f"{said}, {planned}" if planned else said
        return ", ".join(words.hours(length) for length in cell.lengths)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = _DISPLAY) -> Any:
        if role not in (_ACCESSIBLE, _DISPLAY):
            return None
        if orientation == Qt.Orientation.Vertical:
            row = self.rows()[section]
            return row.block.name if row.week is None else sheet_rows.week_spoken(row)
        if section == 0:
            return tr("Week")
        long = (
            QLocale.FormatType.LongFormat if role == _ACCESSIBLE else QLocale.FormatType.ShortFormat
        )
        return QLocale().standaloneDayName(week_days.weekdays()[section - 1] + 1, long)

    def flags(self, index: Index) -> Qt.ItemFlag:
        enabled = Qt.ItemFlag.ItemIsEnabled
        cell = self.cell(index)
        return enabled | Qt.ItemFlag.ItemIsSelectable if cell and cell.inside else enabled
