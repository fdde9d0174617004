"""Presenting: the wall shows a page, the presenter's screen the notes; both turn together."""

from __future__ import annotations

from PySide6.QtCore import QObject, QPointF, QTimer, Signal
from PySide6.QtGui import QGuiApplication, QScreen
from PySide6.QtWidgets import QWidget

from tercet.library.review.content import Page, Review
from tercet.library.views import SeasonView
from tercet.ui import theme
from tercet.ui.page import Page as WindowPage
from tercet.ui.review.frame import Foot
from tercet.ui.review.looks import Look
from tercet.ui.review.presenter import Presenter
from tercet.ui.review.run_view import RunView
from tercet.ui.review.wall import Wall

#: Off the page.
NOWHERE = QPointF(-1.0, -1.0)


class Show(QObject):
    """One showing of a review, from F5 to Esc."""

    turned = Signal(int)
    left = Signal(str)  # key of the page that was on the wall

    def __init__(self, page: WindowPage) -> None:
        super().__init__(page)
        self._window = page
        self._review: Review | None = None
        self._view: SeasonView | None = None
        self._look = Look()
        self._at = 0
        self._minutes = 0
        self.wall: Wall | None = None
        self.presenter: Presenter | None = None
        self.run: RunView | None = None
        self._clock = QTimer(self)
        self._clock.setInterval(60_000)
        self._clock.timeout.connect(self._minute)
        self._after = QTimer(self)
        self._after.setSingleShot(True)
        self._after.setInterval(0)
        self._after.timeout.connect(self._draw_presenter)
        app = QGuiApplication.instance()
        assert isinstance(app, QGuiApplication)
        app.screenAdded.connect(self._screens_changed)
        app.screenRemoved.connect(self._screens_changed)

    @property
    def running(self) -> bool:
        """Whether the review is being shown."""
        return self.wall is not None

    @property
    def page(self) -> Page | None:
        """The page on the wall."""
        pages = self._review.shown if self._review is not None else ()
        return pages[self._at] if self._at < len(pages) else None

    def start(self, review: Review, view: SeasonView, key: str, look: Look) -> None:
        """Show the pages from this one on."""
        if self.running or not review.shown:
            return
        self._review, self._view, self._look = review, view, look
        keys = [page.key for page in review.shown]
        self._at = keys.index(key) if key in keys else 0
        self._minutes = 0
        self._clock.start()
        wall = self.wall = Wall()
        theme.dress(wall)
        wall.turned.connect(self.turn)
        wall.jumped.connect(self.go_to)
        wall.ended.connect(self.escape)
        wall.row_asked.connect(self.open_row)
        wall.run_asked.connect(self.open_run)
        self._place()
        self._draw()

    def update(self, review: Review, view: SeasonView | None) -> None:
        """Take the review anew after a change; the page stays the same."""
        if not self.running or view is None:
            return
        key = self.page.key if self.page is not None else ""
        self._review, self._view = review, view
        keys = [page.key for page in review.shown]
        self._at = keys.index(key) if key in keys else min(self._at, max(len(keys) - 1, 0))
        self._draw()
        if self.run is not None:
            self.run.refresh(view)

    def set_look(self, look: Look) -> None:
        """Show the pages light, dark or in ink."""
        self._look = look
        if self.running:
            self._draw()

    def turn(self, by: int) -> None:
        """Go on or back."""
        self.go_to(self._at + by)

    def go_to(self, at: int) -> None:
        """Go to a page by its place; past the ends nothing happens."""
        count = len(self._review.shown) if self._review is not None else 0
        self._at = min(max(at, 0), max(count - 1, 0))
        if self.wall is not None and self.wall.on_run:
            self.wall.show_run(False)
        self._draw()
        self.turned.emit(self._at)

    def open_row(self, row: int) -> None:
        """Step into the run behind a number, the longest of several."""
        page = self.page
        if page is not None:
            self._open(page.table.behind(row))

    def open_run(self) -> None:
        """Step into the longest run behind the page."""
        page = self.page
        if page is not None:
            self._open(tuple(run for runs in page.table.runs for run in runs))

    def _open(self, ids: tuple[int, ...]) -> None:
        if self.wall is None or self._view is None:
            return
        held = [s for s in self._view.sessions if s.id in set(ids)]
        if not held:
            return
        if self.run is None:
            self.run = RunView(self._window.context)
            self.run.back_asked.connect(self.escape)
            self.run.blank_asked.connect(self.wall.toggle_blank)
            self.wall.add_run(self.run)
        self.run.open(self._view, held, max(held, key=lambda s: s.running_s).id)
        self.wall.show_run(True)

    def escape(self) -> None:
        """Back from a run to its page, or out of the showing to the same page."""
        if self.wall is not None and self.wall.on_run:
            self.wall.show_run(False)
            self._draw()
            return
        key = self.page.key if self.page is not None else ""
        self.end()
        self.left.emit(key)

    def end(self) -> None:
        """Put both screens away."""
        self._clock.stop()
        if self.run is not None:
            self.run.save_now()
        for widget in (self.wall, self.presenter):
            if widget is not None:
                widget.close()
                widget.deleteLater()
        self.wall = self.presenter = self.run = None

    # Screens -----------------------------------------------------------------------------

    def _place(self) -> None:
        """The wall on the screen the window is not on, the presenter's on the window's."""
        wall = self.wall
        if wall is None:
            return
        home = self._window.screen()
        other = next((s for s in QGuiApplication.screens() if s is not home), None)
        _fill_screen(wall, other or home)
        if other is None:
            # With one screen notes are never shown.
            if self.presenter is not None:
                self.presenter.close()
                self.presenter.deleteLater()
                self.presenter = None
                wall.view.point_at(NOWHERE)
        elif self.presenter is None:
            self.presenter = Presenter()
            theme.dress(self.presenter)
            self.presenter.turned.connect(wall.turn_by)
            self.presenter.row_asked.connect(self.open_row)
            self.presenter.pointed.connect(wall.view.point_at)
            self.presenter.jumped.connect(self.go_to)
            self.presenter.blanked.connect(wall.toggle_blank)
            self.presenter.ended.connect(self.escape)
            self.presenter.run_asked.connect(self.open_run)
            _fill_screen(self.presenter, home)
        wall.activateWindow()

    def _screens_changed(self, _screen: object) -> None:
        if self.running:
            # Not at once: the screen that went is still being taken apart.
            QTimer.singleShot(0, self._again)

    def _again(self) -> None:
        self._place()
        self._draw()

    def _minute(self) -> None:
        self._minutes += 1
        self._draw_presenter()

    def _draw(self) -> None:
        page, review = self.page, self._review
        if page is None or review is None or self.wall is None:
            return
        foot = Foot(review.runner, self._at + 1, len(review.shown))
        self.wall.show_page(page, self._look, foot)
        self._after.start()  # the room first

    def _draw_presenter(self) -> None:
        if self.presenter is not None and self._review is not None:
            self.presenter.show_page(self._review, self._at, self._look, self._minutes)


def _fill_screen(widget: QWidget, screen: QScreen) -> None:
    widget.setScreen(screen)
    widget.setGeometry(screen.geometry())
    widget.showFullScreen()
