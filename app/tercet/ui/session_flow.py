"""Brings sessions from the store to their page, and their traces to the season page's card."""

from __future__ import annotations

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QStackedWidget

from tercet.library import corrections, season
from tercet.library.library import Library
from tercet.library.season import SessionDetail
from tercet.library.views import SeasonView, SessionView
from tercet.ui import words
from tercet.ui.jobs import Answers
from tercet.ui.made_from import made_from_words
from tercet.ui.season_page import SeasonPage
from tercet.ui.session_page import SessionPage
from tercet.ui.stretch_menu import stretch_words
from tercet.ui.user_actions import Actions
from tercet.ui.why import why


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
        self._library, self._answers, self._acts = library, answers, acts
        self._pages, self._season_page, self._page = pages, season_page, page
        self._view: SeasonView | None = None
        self._drawn: SessionView | None = None
        self.current: int | None = None
        self.units: words.Units = "km"
        page.previous_asked.connect(lambda: self.step(-1))
        page.next_asked.connect(lambda: self.step(1))
        page.shade_said.connect(self._shade)
        page.repetition_said.connect(self._repetition)
        page.belt_said.connect(
            lambda run, length, speed: self._acts.do(
                corrections.set_belt_speed, run, speed, 0.0, length
            )
        )
        page.said_taken_back.connect(lambda run: self._acts.do(corrections.take_back, run))
        season_page.session_asked.connect(self.open)
        season_page.trace_wanted.connect(self._small_trace)

    def _shade(self, run_id: int, start: float, end: float, letter: str) -> None:
        session = self.find(run_id)
        whole = session is not None and start <= 0.0 and end > session.elapsed_s
        where = "" if whole else stretch_words(start, end)
        self._acts.do(corrections.shade_stretch, run_id, start, end, letter, where)

    def _repetition(self, run_id: int, start: float, end: float) -> None:
        where = stretch_words(start, end)
        self._acts.do(corrections.make_repetition, run_id, start, end, where)

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
        future = self._library.submit(season.session_detail, run_id)
        self._answers.when(future, lambda detail: self._show(session, detail))

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
        block, week = _place(view, session)
        self._page.words.show_run(session.id, detail.typed)
        self._page.show_session(
            session,
            detail.trace,
            block_name=block,
            week_number=week,
            made_from=made_from_words(session, detail),
            mends=[f"{name}: {count} s" for name, count in detail.mends.items()],
            has_previous=view.sessions[0].id != session.id,
            has_next=view.sessions[-1].id != session.id,
            why=lambda second: why(detail, second, self.units),
            units=self.units,
        )
        self._drawn = session
        if self._pages.currentWidget() is not self._page:
            self._pages.setCurrentWidget(self._page)
            self._page.setFocus(Qt.FocusReason.OtherFocusReason)

    def _small_trace(self, run_id: int) -> None:
        future = self._library.submit(season.session_detail, run_id)
        self._answers.when(future, lambda detail: self._season_page.show_trace(run_id, detail))


def _place(view: SeasonView, session: SessionView) -> tuple[str, int]:
    """Name of the block and number of the week that hold a session."""
    for block in view.blocks:
        for number, week in enumerate(block.weeks, 1):
            if any(held.id == session.id for day in week.days for held in day):
                return block.name, number
    return "", 0
