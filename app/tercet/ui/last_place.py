"""The page in view when the window closed: kept, and gone back to behind the first picture."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSettings

from tercet.ui.pages import PAGES

if TYPE_CHECKING:
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
