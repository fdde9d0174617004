"""A run on the wall: the session's page, read from the store, with a way back to the review."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QVBoxLayout, QWidget

from tercet.library import season
from tercet.library.season import SessionDetail
from tercet.library.views import SeasonView, SessionView
from tercet.ui.look import Look
from tercet.ui.page import Context
from tercet.ui.session_page import SessionPage
from tercet.ui.session_wiring import keep_what_is_said, show_run


class RunView(QWidget):
    """Shows one of some runs; earlier and later go among them."""

    back_asked = Signal()
    blank_asked = Signal()

    def __init__(self, context: Context) -> None:
        super().__init__()
        self._context = context
        self._view: SeasonView | None = None
        self._held: list[SessionView] = []
        self._id = 0
        self.page = SessionPage()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 0)
        column.addWidget(self.page)
        self.setFocusProxy(self.page)
        page, acts = self.page, context.acts
        page.back_asked.connect(self.back_asked)
        page.previous_asked.connect(lambda: self._step(-1))
        page.next_asked.connect(lambda: self._step(1))
        keep_what_is_said(page, acts, self._find)
        # A remote has these keys alone: on and back lead to the page, the blank key blanks.
        for key, signal in (
            ("PgDown", self.back_asked),
            ("PgUp", self.back_asked),
            ("B", self.blank_asked),
            (".", self.blank_asked),
        ):
            taken = QShortcut(QKeySequence(key), self)
            taken.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
            taken.activated.connect(signal)

    def open(self, view: SeasonView, held: Sequence[SessionView], run_id: int) -> None:
        """Open a run of these."""
        self._view, self._held, self._id = view, list(held), run_id
        self._read()

    def refresh(self, view: SeasonView) -> None:
        """Show what holds after a change."""
        self._view = view
        by_id = {session.id: session for session in view.sessions}
        self._held = [by_id[item.id] for item in self._held if item.id in by_id]
        if any(item.id == self._id for item in self._held):
            self._read()

    def save_now(self) -> None:
        """Keep a note that is being typed."""
        self.page.save_now()

    def _find(self, run_id: int) -> SessionView | None:
        return next((item for item in self._held if item.id == run_id), None)

    def _step(self, by: int) -> None:
        ids = [item.id for item in self._held]
        if self._id in ids:
            self._id = ids[min(max(ids.index(self._id) + by, 0), len(ids) - 1)]
            self._read()

    def _read(self) -> None:
        wanted = self._id
        future = self._context.library.submit(season.session_detail, wanted)
        self._context.answers.when(future, lambda detail: self._show(wanted, detail))

    def _show(self, run_id: int, detail: SessionDetail | None) -> None:
        session = self._find(run_id)
        if run_id != self._id or detail is None or session is None or self._view is None:
            return
        ends = (self._held[0].id, self._held[-1].id)
        units = Look(self._context.settings).units
        show_run(self.page, self._view, session, detail, units, among=ends)
