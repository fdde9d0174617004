"""The further pages of the window: which there are, loaded behind it, built when first shown."""

from __future__ import annotations

from dataclasses import dataclass, replace
from importlib import import_module

from PySide6.QtCore import QObject, Qt, QTimer, Signal
from PySide6.QtWidgets import QStackedWidget, QWidget

from tercet.language import mark
from tercet.library.views import SeasonView
from tercet.ui import collector
from tercet.ui.loading import Loading
from tercet.ui.page import Context, Page


@dataclass(frozen=True)
class Entry:
    """A page: its key and title, where it is reached, its class, and its keys.

    ``group`` is "view" (a word of the top bar), "runner" (under the runner's name) or "season"
    (under the season's name). ``place`` is "module:Class", loaded when the page is first shown.
    """

    key: str
    title: str
    group: str
    place: str
    keys: str = ""


PAGES: tuple[Entry, ...] = (
    Entry(
        "curve",
        mark("Intensity curve"),
        "view",
        "tercet.ui.curve_page:IntensityCurvePage",
        "Ctrl+3",
    ),
    Entry(
        "repetitions",
        mark("Repetitions"),
        "view",
        "tercet.ui.repetitions_page:RepetitionsPage",
        "Ctrl+4",
    ),
    Entry("review", mark("Review"), "view", "tercet.ui.review.organiser:Organiser", "Ctrl+5"),
    Entry("plan", mark("Back from race day"), "season", "tercet.ui.plan_page:PlanPage", "Ctrl+P"),
    Entry(
        "thresholds", mark("Thresholds"), "runner", "tercet.ui.lines.page:ThresholdsPage", "Ctrl+H"
    ),
    Entry(
        "middle", mark("Where the middle came from"), "season", "tercet.ui.middle_page:MiddlePage"
    ),
    Entry("two", mark("Two seasons, years"), "season", "tercet.ui.two_page:TwoPage"),
    Entry("paper", mark("Paper log"), "runner", "tercet.ui.paper.page:PaperPage", "Ctrl+L"),
    Entry("squad", mark("Squad"), "runner", "tercet.ui.squad_page:SquadPage", "Ctrl+Shift+S"),
)


#: Dialogs that bring much with them.
DIALOGS = ("tercet.ui.plan_dialog", "tercet.ui.corrections_dialog")
#: So long after the season was shown the modules of the others are loaded. [ms]
LOADED_AFTER_MS = 1000


def of_group(group: str) -> list[Entry]:
    """The pages reached from one place, in order."""
    return [entry for entry in PAGES if entry.group == group]


class Pages(QObject):
    """Builds pages, shows them, and tells the one in view of every change."""

    session_asked = Signal(int)
    page_asked = Signal(str)
    runner_asked = Signal(object)

    def __init__(self, stack: QStackedWidget, context: Context) -> None:
        super().__init__(stack)
        self._stack, self._context = stack, replace(context, home=stack)
        self._made: dict[str, Page] = {}
        self._view: SeasonView | None = None
        places = [entry.place.split(":")[0] for entry in PAGES]
        self._loading = Loading(self, (*places, *DIALOGS), spared=stack.window())
        self._loading.done.connect(collector.hold)
        self._soon = QTimer(self, interval=LOADED_AFTER_MS, singleShot=True)
        self._soon.timeout.connect(self._loading.start)

    def set_season(self, view: SeasonView) -> None:
        """Take another season; the page in view shows it."""
        if self._view is None:
            self._soon.start()
        self._view = view
        page = self.current
        if page is not None and page.outdated:
            self.show(self.current_key)
        elif page is not None:
            page.refresh(view)

    @property
    def current(self) -> Page | None:
        """The page in view, if it is one of these."""
        shown = self._stack.currentWidget()
        return shown if isinstance(shown, Page) else None

    @property
    def current_key(self) -> str:
        """The key of the page in view, or nothing."""
        shown = self._stack.currentWidget()
        return next((key for key, page in self._made.items() if page is shown), "")

    def show(self, key: str) -> None:
        """Build a page if need be, and bring it to the front; "key:detail" also tells it what of.

        What stands behind the colon goes to the page's ``open_at``.
        """
        if self._view is None:
            return
        key, _, detail = key.partition(":")
        page = self._made.get(key)
        old = self._made.pop(key) if page is not None and page.outdated else None
        if page is None or old is not None:
            entry = next(entry for entry in PAGES if entry.key == key)
            module, name = entry.place.split(":")
            page = getattr(import_module(module), name)(self._context)
            page.session_asked.connect(self.session_asked)
            page.page_asked.connect(self.page_asked)
            page.runner_asked.connect(self.runner_asked)
            page.setObjectName(f"page-{key}")
            self._made[key] = page
            self._stack.addWidget(page)
            if old is not None:
                old.close_quietly()
                self._stack.removeWidget(old)
                old.deleteLater()
        page.refresh(self._view)
        self._stack.setCurrentWidget(page)
        if detail:
            page.open_at(detail)
        ring = page.ring
        (ring[0] if ring else page).setFocus(Qt.FocusReason.OtherFocusReason)

    @property
    def waiting(self) -> bool:
        """Whether the store has questions of the window's to answer."""
        return self._context.answers.waiting > 0

    def ring(self) -> list[QWidget]:
        """What F6 goes round on the page in view."""
        page = self.current
        return page.ring if page is not None else []

    def close_quietly(self) -> None:
        """Tell every page that the window closes."""
        self._soon.stop()
        self._loading.wait()
        collector.let_go()
        for page in self._made.values():
            page.close_quietly()
