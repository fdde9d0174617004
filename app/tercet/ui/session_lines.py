"""Many sessions in a list, a line each; a line is worded when it comes into view."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Any

from PySide6.QtCore import (
    QItemSelection,
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    QStringListModel,
    Qt,
)
from PySide6.QtWidgets import QAbstractItemView, QListView

from tercet import language, units
from tercet.language import tr
from tercet.library import session_kinds
from tercet.library.pieces import Correctable
from tercet.ui import words

Index = QModelIndex | QPersistentModelIndex
_SAID = (
    Qt.ItemDataRole.DisplayRole,
    Qt.ItemDataRole.AccessibleTextRole,
    Qt.ItemDataRole.ToolTipRole,
)


class SessionLines(QListView):
    """Sessions of which one or many are chosen."""

    def __init__(self, sessions: Sequence[Correctable], chosen: Collection[int] = ()) -> None:
        super().__init__()
        self._sessions = sessions
        self.setAccessibleName(tr("Sessions"))
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setUniformItemSizes(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._lines = _Lines(sessions)
        self.setModel(self._lines)
        self._choose({row for row, each in enumerate(sessions) if each.id in chosen})

    @property
    def chosen(self) -> list[int]:
        """Ids of the sessions chosen, in the order in which they stand."""
        rows = sorted(index.row() for index in self.selectionModel().selectedRows())
        return [self._sessions[row].id for row in rows]

    def _choose(self, rows: Collection[int]) -> None:
        """Choose rows, and bring the last of them into view."""
        picked = QItemSelection()
        for row in rows:
            picked.select(self._lines.index(row), self._lines.index(row))
        how = QItemSelectionModel.SelectionFlag
        self.selectionModel().select(picked, how.ClearAndSelect)
        if rows:
            last = self._lines.index(max(rows))
            self.selectionModel().setCurrentIndex(last, how.NoUpdate)
            self.scrollTo(last)


class _Lines(QStringListModel):
    """The sessions, a row each; rows are counted in Qt, for a list asks four times for each."""

    def __init__(self, sessions: Sequence[Correctable]) -> None:
        super().__init__([""] * len(sessions))
        self._sessions = sessions

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        return _line(self._sessions[index.row()]) if role in _SAID else None


def _line(session: Correctable) -> str:
    start = session.start
    day = tr(
        "{day} {month} {year}",
        day=start.day,
        month=language.short_month(start.month),
        year=start.year,
    )
    name = session.name or session_kinds.name(session.sport, session.kind)
    length = f", {units.distance(session.distance_m)}" if session.distance_m else ""
    lasted = f", {words.duration(session.elapsed_s)}" if session.elapsed_s else ""
    when = words.at_clock(day, start, session.clock)
    return f"{when}  {name}{lasted}{length}"
