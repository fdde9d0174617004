"""What every further page of the window has in common: what it is given and may ask for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QSettings, Signal
from PySide6.QtWidgets import QWidget

if TYPE_CHECKING:
    from tercet.library.library import Library
    from tercet.library.views import SeasonView
    from tercet.ui.jobs import Answers
    from tercet.ui.user_actions import Actions


@dataclass(frozen=True)
class Context:
    """What a page works with; ``home`` is where it will stand."""

    library: Library
    answers: Answers
    acts: Actions
    settings: QSettings
    home: QWidget | None = None


class Page(QWidget):
    """A page that reads from the library by itself; built when it is first shown."""

    session_asked = Signal(int)  # open this session
    page_asked = Signal(str)  # go to another page, by its key
    runner_asked = Signal(object)  # open another runner, by the folder of the record

    def __init__(self, context: Context) -> None:
        super().__init__()
        self.context = context
        # Before it holds anything: a new parent goes through all that a widget holds, for it may
        # bring another style sheet. For the same reason pages put what holds others in its place
        # before they fill it.
        self.setParent(context.home)

    def refresh(self, view: SeasonView) -> None:
        """Show what holds now; called when the page is shown and after every change meanwhile."""
        raise NotImplementedError

    @property
    def outdated(self) -> bool:
        """Whether it must be built anew, since what it was built with holds no more."""
        return False

    def open_at(self, detail: str) -> None:
        """Show one thing of the page, such as a run by its number."""

    @property
    def ring(self) -> list[QWidget]:
        """What F6 goes round on this page, in order."""
        return [self]

    def close_quietly(self) -> None:
        """Keep what was typed and stop what runs: the window closes."""
