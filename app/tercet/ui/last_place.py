"""The page and session in view when the window closed: gone back to behind the first picture."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSettings

from tercet.ui.pages import PAGES

if TYPE_CHECKING:
    from tercet.library.views import SeasonView
    from tercet.ui.season_page import SeasonPage
    from tercet.ui.window import MainWindow


def keep(window: MainWindow, settings: QSettings) -> None:
    """Remember the page in view."""
    page = window.pages.currentWidget()
    key = "session" if page is window.session_page else window.further.current_key
    settings.setValue("view", key or "season")


def go_back(window: MainWindow, settings: QSettings) -> None:
    """Show the page of last time, if the season still has something to show there."""
    key = str(settings.value("view", "season"))
    known = key in ("session", *(entry.key for entry in PAGES))
    if known and window.pages.currentWidget() is window.season_page:
        window.show_view(key)


def choose_session(page: SeasonPage, view: SeasonView, settings: QSettings) -> None:
    """At first show the session of last time, or else the latest one."""
    if page.had_session or not view.sessions:
        return
    kept = str(settings.value("session", ""))
    known = kept.isdigit() and int(kept) in {item.id for item in view.sessions}
    page.sheet.select_session(int(kept) if known else view.sessions[-1].id)
