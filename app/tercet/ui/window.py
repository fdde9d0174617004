"""The main window: its frame and pages, and the one place where changes arrive."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, datetime
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDragLeaveEvent, QDropEvent
from PySide6.QtWidgets import QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from tercet.language import tr
from tercet.library.library import Library
from tercet.library.views import SeasonView
from tercet.ui import glance, last_place
from tercet.ui.dressing import Dressing
from tercet.ui.foot import Foot
from tercet.ui.geometry import place
from tercet.ui.glance import Glance
from tercet.ui.imports_controller import Imports, local_files
from tercet.ui.jobs import Answers
from tercet.ui.loading import Loading, in_turns
from tercet.ui.look import Look, settings_of
from tercet.ui.panes import focus_next, put_last
from tercet.ui.season_page import SeasonPage
from tercet.ui.top_bar import TopBar

if TYPE_CHECKING:
    from tercet.ui.empty_page import EmptyPage
    from tercet.ui.shown import Shown
    from tercet.ui.undo_bar import UndoBar
    from tercet.ui.user_actions import Actions


class MainWindow(QMainWindow):
    """Shows a library; every change comes back through :meth:`changed`."""

    sheet_shown = Signal()  # the season sheet was painted for the first time
    season_shown = Signal(object)  # SeasonView, after each refresh
    import_ended = Signal(object)  # Report
    closed = Signal()
    runner_asked = Signal(object)  # the folder of another runner's record
    language_asked = Signal()  # another one was chosen: the window is to be made anew

    def __init__(self, library: Library, *, demo: bool = False) -> None:
        super().__init__()
        self._library, self._demo = library, demo
        self._settings = settings_of(library.folder)
        self.look = Look(self._settings)
        self.look.use_units()
        self._answers = Answers(self)
        self._answers.failed.connect(self._trouble)
        self.imports = Imports(library, self)
        self._shown: Shown | None = None
        self._first: Shown | None = None  # read before all is loaded
        self._refreshing = self._stale = self._ready = self._closed = False
        self._return_to: QWidget | None = None
        self.setAcceptDrops(True)
        self.setMinimumSize(640, 480)
        self._build()
        place(self, self._settings.value("geometry"))
        self._name_window("")
        self._loading = Loading(self)
        self._loading.done.connect(lambda: in_turns(self, self._load_behind(), self.closed))
        self.season_page.sheet.first_painted.connect(self._furnish)
        self.season_page.restore(self._settings.value("splitter"))
        self._begin(glance.read(library.folder, date.today()))

    # Building ----------------------------------------------------------------------------

    def _build(self) -> None:
        whole = self._whole = QWidget()
        column = QVBoxLayout(whole)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        self.bar = TopBar()
        self.bar.view_asked.connect(self.show_view)
        self.bar.add_asked.connect(lambda: self.show_recordings(True))
        self.pages = QStackedWidget()
        self.pages.currentChanged.connect(self._page_changed)
        self.blank = QWidget()
        self.undo_bar: UndoBar
        self.acts: Actions
        self.foot = Foot()
        self.foot.recordings_asked.connect(lambda: self.show_recordings(True))
        self.season_page = SeasonPage()
        for widget in (self.blank, self.season_page):
            self.pages.addWidget(widget)
        for part, stretch in ((self.bar, 0), (self.pages, 1), (self.foot, 0)):
            column.addWidget(part, stretch)
        self.setCentralWidget(whole)
        Dressing(self, whole, self.pages)

    @cached_property
    def empty(self) -> EmptyPage:
        """The ways to begin, built where there is nothing else to show."""
        from tercet.ui.empty_page import page_of

        return page_of(self)

    @property
    def beginning(self) -> bool:
        """Whether the ways to begin are in view."""
        return "empty" in self.__dict__ and self.pages.currentWidget() is self.empty

    def _begin(self, kept: Glance | None) -> None:
        """Show the sheet as it was last seen, or else as soon as it was read."""
        if kept is None:
            self.refresh()
            return
        self.season_page.show_glance(kept)
        self._name(kept.season, kept.runner)
        self.pages.setCurrentWidget(self.season_page)

    def _furnish(self) -> None:
        """The first picture is there: load and build all else behind it."""
        if self._loading.started:
            return
        self.sheet_shown.emit()
        self._loading.start()
        if self._first is None:
            self.refresh()
        from tercet.ui.focus_ring import FocusRing
        from tercet.ui.menu import Menu
        from tercet.ui.undo_bar import UndoBar
        from tercet.ui.user_actions import Actions

        self.undo_bar = UndoBar(self._whole)
        self.acts = Actions(self._library, self._answers, self.undo_bar, self)
        self.acts.changed.connect(self.refresh)
        self.menu_entries = Menu(self.bar.menu, self)
        self._ring = FocusRing(self)

    def _first_read(self, shown: Shown) -> None:
        """The season was read before all else was loaded."""
        self._first = shown
        self._refreshing = False
        if self._loading.started:
            return
        if shown.empty:
            self._furnish()
            return
        self.season_page.set_season(shown.season)
        self._name(shown.season, shown.runner)
        self.pages.setCurrentWidget(self.season_page)
        self.season_page.sheet.scroll_to_today()

    def _load_behind(self) -> Iterator[None]:
        """Build what needs the plotting library, part by part, so that the window answers."""
        from tercet.ui.import_shown import ImportShown
        from tercet.ui.page import Context
        from tercet.ui.pages import Pages
        from tercet.ui.rejudging import Rejudging
        from tercet.ui.session_flow import SessionFlow
        from tercet.ui.session_page import SessionPage
        from tercet.ui.sheet_menu import SheetMenu

        page = self.season_page
        page.load()
        yield
        self.session_page = session = SessionPage()
        self.pages.addWidget(session)
        yield
        flow = (self._library, self._answers, self.acts, self.pages, page, session)
        self.sessions = SessionFlow(*flow)
        page.strip.edit_asked.connect(lambda way: self.show_view(f"thresholds:{way}"))
        page.strip.leave_asked.connect(self._leave_strip)
        self._import_shown = ImportShown(self)
        self._import_shown.ended.connect(self.import_ended)
        page.recordings.skip_asked.connect(self.acts.skip)
        session.back_asked.connect(lambda: self.show_view("season"))
        session.words.asked.connect(self.show_view)
        page.sheet.plan_asked.connect(lambda day: self.show_view(f"plan:{day}"))
        self.undo_bar.lie_over(self.foot, self.foot.left)
        page.offer(SheetMenu(self))
        context = Context(self._library, self._answers, self.acts, self._settings)
        self.further = Pages(self.pages, context)
        self.further.session_asked.connect(self.sessions.open)
        self.further.page_asked.connect(self.show_view)
        page.sheet.block_asked.connect(lambda day: self.show_view(f"middle:{day}"))
        self.further.runner_asked.connect(self.runner_asked)
        yield
        self._ready = True
        self._page_changed()
        if self._first is not None:
            self._show(self._first)
        else:
            self.refresh()
        self.imports.set_ready()
        self._rejudging = Rejudging(self, self._library)

    # Showing -----------------------------------------------------------------------------

    @property
    def view(self) -> SeasonView | None:
        """The season as last shown."""
        return self._shown.season if self._shown is not None else None

    @property
    def refreshing(self) -> bool:
        """Whether the season is being read."""
        return self._refreshing

    def refresh(self) -> None:
        """Read the season anew and show it; calls while one is under way are merged."""
        if self._closed:
            return
        if self._refreshing:
            self._stale = True
            return
        from tercet.ui.shown import everything

        self._refreshing = True
        self._answers.when(self._library.submit(everything, self._demo), self._show, self._not_read)

    def _not_read(self, _: BaseException) -> None:
        self._refreshing = False
        self._furnish()

    def _show(self, shown: Shown) -> None:
        self._refreshing = False
        if self._closed:
            return
        if not self._ready:
            self._first_read(shown)
            return
        before, self._shown = self._shown, shown
        view = shown.season
        units = self.look.use_units()
        self.season_page.set_season(view, units)
        self.season_page.recordings.set_problems(shown.problems)
        self._name(view, shown.runner)
        running = self.imports.running
        self.foot.show_import(shown.last_import, len(shown.problems), running=running)
        estimate = None if running else shown.estimate(datetime.now())
        self.season_page.show_strip(estimate, units)
        empty = shown.empty
        self.bar.set_views(not empty, bool(view.sessions))
        if empty and not running:
            if not self.beginning and self.further.current is None:
                self.pages.setCurrentWidget(self.empty)
                self.empty.choose.setFocus(Qt.FocusReason.OtherFocusReason)
        elif self.beginning or self.pages.currentWidget() is self.blank:
            self.pages.setCurrentWidget(self.season_page)
            self.season_page.sheet.scroll_to_today()
            self.season_page.sheet.setFocus(Qt.FocusReason.OtherFocusReason)
        if not running:
            last_place.choose_session(self.season_page, view, self._settings)
        judged_anew = before is None or before.thresholds != shown.thresholds
        judged_anew |= self.sessions.units != units
        self.sessions.units = units
        self.sessions.set_season(view, judged_anew=judged_anew)
        self.further.set_season(view)
        if self.pages.currentWidget() is self.session_page and self.sessions.current is None:
            self.show_view("season")
        if before is None and view.sessions and not running:
            last_place.go_back(self, self._settings)
        self.menu_entries.name_steps(*self._library.undo_names())
        self.season_shown.emit(view)
        if self._stale:
            self._stale = False
            self.refresh()

    def _page_changed(self, _place: int = 0) -> None:
        if self._ready:
            on_session = self.pages.currentWidget() is self.session_page
            self.bar.set_current(self.further.current_key or ("season", "session")[on_session])
            put_last(self, self.foot.right)

    def _name(self, view: SeasonView, runner: str) -> None:
        """Say whose season this is, and which."""
        self.bar.set_runner(runner or (tr("Example season") if self._demo else tr("Your season")))
        last = view.sessions[-1].day if view.sessions else view.today
        self.bar.set_season_name(tr("Season {year}", year=last.year))
        self.foot.show_counts(view)
        self._name_window(runner)

    def _name_window(self, runner: str) -> None:
        self.setWindowTitle(tr("Example season") if self._demo else runner or tr("Season"))

    def show_view(self, name: str) -> None:
        """Go to "season", "session" or a further page, by its key."""
        view = self.view
        if not self._ready or view is None:
            return
        if name not in ("season", "session"):
            self.further.show(name)
            return
        if self._shown is not None and self._shown.empty:
            self.pages.setCurrentWidget(self.empty)
            return
        sheet = self.season_page.sheet
        if name == "session":
            chosen = self.sessions.current or sheet.selected_session()
            if chosen is None and view.sessions:
                chosen = view.sessions[-1].id
            if chosen is not None:
                self.sessions.open(chosen)
            return
        self.pages.setCurrentWidget(self.season_page)
        left, self.sessions.current = self.sessions.find(self.sessions.current), None
        if left is not None:
            sheet.select_session(left.id)
        sheet.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_recordings(self, shown: bool) -> None:
        """Open the recordings pane, or close it and go back to where it was opened."""
        if not self._ready:
            return
        page, before = self.season_page, self.pages.currentWidget()
        if shown:
            if before is not page:
                self._return_to = before
            self.pages.setCurrentWidget(page)
            page.show_recordings(True)
            page.recordings.choose.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        page.show_recordings(False)
        back, self._return_to = self._return_to, None
        if back is self.session_page and self.sessions.current is not None:
            self.sessions.open(self.sessions.current)
        elif back is self.empty and self._shown is not None and self._shown.empty:
            self.refresh()  # which goes back to the ways to begin, if there is still nothing
        else:
            page.sheet.setFocus(Qt.FocusReason.OtherFocusReason)

    def next_pane(self) -> None:
        """Move the focus round the panes in view."""
        ring: list[QWidget] = [self.bar.current]
        ring += [self.empty.choose] if self.beginning else []
        if self._ready:
            ring += [*self.season_page.ring, *self.session_page.ring, *self.further.ring()]
        focus_next(ring)

    def delete_session(self) -> None:
        """Delete the chosen session; undo brings it back."""
        sessions = self.sessions.chosen() if self._ready else []
        if len(sessions) > 1:
            self.acts.delete_several(sessions)
        elif sessions:
            self.acts.delete(sessions[0])

    def _leave_strip(self) -> None:
        self.acts.leave_estimate()
        self.season_page.sheet.setFocus(Qt.FocusReason.OtherFocusReason)

    # Importing ---------------------------------------------------------------------------

    def take_in(self, paths: Sequence[Path]) -> None:
        """Take in files and folders; while an import runs they wait for its end."""
        self.imports.take_in(paths)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take files and folders from anywhere."""
        files = local_files(event.mimeData())
        if files and self._ready:
            event.acceptProposedAction()
            self.imports.hover(files)

    def dragLeaveEvent(self, event: QDragLeaveEvent) -> None:
        """Files went away again."""
        self.imports.hover_ended()

    def dropEvent(self, event: QDropEvent) -> None:
        """Take in what was let go."""
        self.imports.hover_ended()
        files = local_files(event.mimeData())
        if files:
            event.acceptProposedAction()
            self.take_in(files)

    # Beginning and end -------------------------------------------------------------------

    def _trouble(self, error: Exception) -> None:
        self.undo_bar.complain(str(error))

    def closeEvent(self, event: QCloseEvent) -> None:
        """Stop what runs, remember the window."""
        self._closed = True
        self.closed.emit()
        self.imports.close()
        self._loading.wait()
        self._settings.setValue("geometry", self.saveGeometry())
        if self._ready:
            last_place.keep(self, self._settings)
            self.session_page.save_now()
            self.season_page.close_quietly()
            self.further.close_quietly()
            self._ready = False
            self._import_shown.close()
            self._settings.setValue("splitter", self.season_page.splitter.saveState())
            if self._shown is not None and not self._shown.empty:
                self.season_page.keep_glance(self._library.folder, self._shown.runner)
            chosen = self.season_page.sheet.selected_session()
            self._settings.setValue("session", chosen if chosen is not None else -1)
        self._settings.sync()
        super().closeEvent(event)
