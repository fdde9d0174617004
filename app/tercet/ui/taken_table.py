"""The files of an import as a table: a screenful at once, the rest while nothing else is to do."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QHeaderView, QTableWidget, QTableWidgetItem

from tercet.library.intake import Taken
from tercet.ui import theme
from tercet.ui.twin import fill_table, fit_table

#: So many rows are put in at a time; a thousand at once would hold the window up.
AT_ONCE = 100


class TakenTable(QObject):
    """Fills a table with what became of files."""

    def __init__(
        self, table: QTableWidget, outcomes: Mapping[str, str], headings: tuple[str, str, str]
    ) -> None:
        super().__init__(table)
        self._table, self._outcomes, self._headings = table, outcomes, headings
        self._order = tuple(reversed(list(outcomes)))
        self._waiting: list[Taken] = []
        self._timer = QTimer(self)
        self._timer.setInterval(0)
        self._timer.timeout.connect(self._more)
        # As wide as what is in view: looking at every row takes long.
        table.horizontalHeader().setResizeContentsPrecision(0)

    def show(self, taken: Sequence[Taken]) -> None:
        """List these, those that may need a look first."""
        self._waiting = sorted(
            taken, key=lambda item: (self._order.index(item.outcome), Path(item.path).name)
        )
        fill_table(self._table, self._headings, [], left={0, 1, 2})
        self._more()
        self.fit()
        if self._waiting:
            self._timer.start()

    def fit(self) -> None:
        """Give the columns their room; the reasons take what is over."""
        if not self._table.columnCount():
            return
        look = theme.current()
        fit_table(self._table, 2)
        header = self._table.horizontalHeader()
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Interactive)
        wanted = self._table.sizeHintForColumn(0) + look.px(16)
        self._table.setColumnWidth(0, min(wanted, look.px(190)))
        self._table.setMinimumHeight(look.px(96))

    def _more(self) -> None:
        rows, self._waiting = self._waiting[:AT_ONCE], self._waiting[AT_ONCE:]
        first = self._table.rowCount()
        self._table.setRowCount(first + len(rows))
        for row, item in enumerate(rows, first):
            words = (Path(item.path).name, self._outcomes[item.outcome], item.detail)
            cells = [QTableWidgetItem(text) for text in words]
            cells[0].setToolTip(item.path)
            cells[2].setToolTip(item.detail)
            if item.outcome == "refused":
                cells[1].setForeground(theme.current().color("not_read"))
            for column, cell in enumerate(cells):
                self._table.setItem(row, column, cell)
        if not self._waiting:
            self._timer.stop()
