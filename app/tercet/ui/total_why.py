"""Answers the season page's questions how a total came about, from the store."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import QObject, QPoint
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent

from tercet.library import counted
from tercet.library.counted import Behind
from tercet.library.library import Library
from tercet.library.views import BlockView
from tercet.ui.jobs import Answers
from tercet.ui.season_page import SeasonPage
from tercet.ui.total_values import STAYS_MS, say
from tercet.ui.total_words import block_total, total_words


class TotalWhy(QObject):
    """Asks the store when a total is pointed at, and brings the answer to where it was asked."""

    def __init__(self, library: Library, answers: Answers, page: SeasonPage) -> None:
        super().__init__(page)
        self._library, self._answers, self._page = library, answers, page
        page.build_up.why_asked.connect(self._of_pane)
        page.sheet.total_asked.connect(self._of_block)

    def _of_pane(self, first: date, last: date) -> None:
        def show(told: Behind) -> None:
            self._page.build_up.show_why(first, last, told)

        self._answers.when(self._library.submit(counted.behind, first, last), show)

    def _of_block(self, block: BlockView, at: QPoint) -> None:
        def show(told: Behind) -> None:
            sheet = self._page.sheet
            if sheet.isVisible():
                text = total_words(block_total(block), told)
                QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(sheet, text))
                say(text, at, sheet.viewport(), STAYS_MS)

        self._answers.when(self._library.submit(counted.behind, block.start, block.end), show)
