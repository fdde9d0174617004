"""Brings sessions from the store to their page, and their traces to the season page's card."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, Qt, QTimer
from PySide6.QtWidgets import QStackedWidget

from tercet.library import season
from tercet.library.library import Library
from tercet.library.season import SessionDetail
from tercet.library.views import SeasonView, SessionView
from tercet.ui import words
from tercet.ui.jobs import Answers
from tercet.ui.season_page import SeasonPage
from tercet.ui.session_page import SessionPage
from tercet.ui.session_wiring import keep_what_is_said, show_run
from tercet.ui.total_why import TotalWhy
from tercet.ui.user_actions import Actions

#: Sessions kept as read; four hours at one second are about 2 MB.
MOST_KEPT = 6


class SessionFlow(QObject):
    """Opens sessions; ``current`` is the one on the page, or on its way there."""

    def __init__(
        self,
        library: Library,
        answers: Answers,
        acts: Actions,
        pages: QStackedWidget,
        season_page: SeasonPage,
        page: SessionPage,
    ) -> None:
        super().__init__(page)
        self._library, self._answers = library, answers
        self._pages, self._season_page, self._page = pages, season_page, page
        self._view: SeasonView | None = None
        self._drawn: SessionView | None = None
        self.current: int | None = None
        self.units: words.Units = "km"
        self._kept: dict[int, SessionDetail] = {}  # read since the last change, latest last
        self._changes = 0
        acts.changed.connect(self._forget)
        page.previous_asked.connect(lambda: self.step(-1))
        page.next_asked.connect(lambda: self.step(1))
        keep_what_is_said(page, acts, self.find)
        season_page.session_asked.connect(self.open)
        season_page.trace_wanted.connect(self._small_trace)
        TotalWhy(library, answers, season_page)

    def chosen(self) -> list[SessionView]:
        """The session whose page is shown, or those chosen on the sheet."""
        on_page = self._pages.currentWidget() is self._page
        chosen = [self.current] if on_page else self._season_page.sheet.chosen_sessions()
        return [found for found in map(self.find, chosen) if found is not None]

    def find(self, run_id: int | None) -> SessionView | None:
        """A session of the season, by its number."""
        sessions = self._view.sessions if self._view is not None else ()
        return next((item for item in sessions if item.id == run_id), None)

    def set_season(self, view: SeasonView, *, judged_anew: bool) -> None:
        """Take another season; the page is drawn anew if its session is another now."""
        self._view = view
        self._forget()
        session = self.find(self.current)
        if session is None:
            self.current = None
        elif self._pages.currentWidget() is self._page and (judged_anew or session != self._drawn):
            self.open(session.id)

    def open(self, run_id: int) -> None:
        """Open a session's page."""
        session = self.find(run_id)
        if session is None:
            return
        self.current = run_id
        self._read(run_id, lambda detail: self._show(session, detail))

    def step(self, step: int) -> None:
        """Open the session before (-1) or after (1)."""
        ids = [item.id for item in self._view.sessions] if self._view is not None else []
        if self.current in ids:
            place = ids.index(self.current) + step
            if 0 <= place < len(ids):
                self.open(ids[place])

    def _show(self, session: SessionView, detail: SessionDetail | None) -> None:
        view = self._view
        if detail is None or session.id != self.current or view is None:
            return
        ends = (view.sessions[0].id, view.sessions[-1].id)
        show_run(self._page, view, session, detail, self.units, among=ends)
        self._drawn = session
        if self._pages.currentWidget() is not self._page:
            # In a turn of its own: a run of hours takes as long to paint as to lay out.
            QTimer.singleShot(0, self, lambda: self._bring(session.id))

    def _bring(self, run_id: int) -> None:
        if run_id == self.current:
            self._pages.setCurrentWidget(self._page)
            self._page.setFocus(Qt.FocusReason.OtherFocusReason)

    def _small_trace(self, run_id: int) -> None:
        self._read(run_id, lambda detail: self._season_page.show_trace(run_id, detail))

    def _read(self, run_id: int, then: Callable[[SessionDetail | None], None]) -> None:
        """Read a session, unless it was read since the last change, as for its card."""
        if run_id in self._kept:
            then(self._kept[run_id])
            return
        change = self._changes

        def keep(detail: SessionDetail | None) -> None:
            if detail is not None and change == self._changes:
                self._kept[run_id] = detail
                if len(self._kept) > MOST_KEPT:
                    del self._kept[next(iter(self._kept))]
            then(detail)

        self._answers.when(self._library.submit(season.session_detail, run_id), keep)

    def _forget(self, *_: object) -> None:
        self._kept.clear()
        self._changes += 1
