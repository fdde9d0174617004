"""The menu of the season sheet: what can be done with the session chosen, or with several."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QPoint
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from tercet.language import mark, several, tr
from tercet.library.session_kinds import KINDS

if TYPE_CHECKING:
    from tercet.ui.window import MainWindow


class SheetMenu(QMenu):
    """Opens where it is asked for; its entries say how many sessions they act on."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self.setAccessibleName(tr("What to do with the chosen sessions"))

    def ask(self, where: QPoint) -> None:
        """Open at a place of the screen."""
        self.clear()
        window = self._window
        sheet = window.season_page.sheet
        chosen = sheet.chosen_sessions()
        count = len(chosen)
        if count == 1:
            self._add(tr("Open"), lambda: window.sessions.open(chosen[0]))
        if chosen:
            kinds = QMenu(
                several(count, mark("Kind of the session"), mark("Kind of {n} sessions")), self
            )
            for kind in KINDS:
                action = QAction(tr(kind.said), kinds)
                action.triggered.connect(
                    lambda _=False, kind=kind: window.acts.set_kind_of(chosen, kind)
                )
                kinds.addAction(action)
            self.addMenu(kinds)
            delete = several(count, mark("Delete the session"), mark("Delete {n} sessions"))
            self._add(delete, window.delete_session)
            self.addSeparator()
        self._add(tr("Find…"), window.season_page.search.begin)
        self._add(tr("Go to today"), sheet.scroll_to_today)
        self._add(tr("Taller rows"), lambda: sheet.zoom(-1))
        self._add(tr("Flatter rows"), lambda: sheet.zoom(1))
        self.popup(where)

    def _add(self, text: str, call: Callable[[], Any]) -> None:
        action = QAction(text, self)
        action.triggered.connect(lambda _=False: call())
        self.addAction(action)
