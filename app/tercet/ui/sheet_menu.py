"""The menu of the season sheet: what can be done with the session chosen, or with several."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QPoint
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from tercet.ui.session_head import KINDS

if TYPE_CHECKING:
    from tercet.ui.window import MainWindow


class SheetMenu(QMenu):
    """Opens where it is asked for; its entries say how many sessions they act on."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self.setAccessibleName("What to do with the chosen sessions")

    def ask(self, where: QPoint) -> None:
        """Open at a place of the screen."""
        self.clear()
        window = self._window
        sheet = window.season_page.sheet
        chosen = sheet.chosen_sessions()
        some = f"{len(chosen)} sessions" if len(chosen) > 1 else "the session"
        if len(chosen) == 1:
            self._add("Open", lambda: window.sessions.open(chosen[0]))
        if chosen:
            kinds = QMenu(f"Kind of {some}", self)
            for kind in KINDS:
                action = QAction(kind, kinds)
                action.triggered.connect(
                    lambda _=False, kind=kind: window.acts.set_kind_of(chosen, kind)
                )
                kinds.addAction(action)
            self.addMenu(kinds)
            self._add(f"Delete {some}", window.delete_session)
            self.addSeparator()
        self._add("Find…", window.season_page.search.begin)
        self._add("Go to today", sheet.scroll_to_today)
        self._add("Taller rows", lambda: sheet.zoom(-1))
        self._add("Flatter rows", lambda: sheet.zoom(1))
        self.popup(where)

    def _add(self, text: str, call: Callable[[], Any]) -> None:
        action = QAction(text, self)
        action.triggered.connect(lambda _=False: call())
        self.addAction(action)
