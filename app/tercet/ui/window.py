"""The main window: views, menu, drops, the one place where changes arrive."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import suppress
from datetime import date, datetime, timedelta
from pathlib import Path
from threading import Event
from typing import Any

from PySide6.QtCore import QByteArray, QSettings, Qt, QTimer, Signal
from PySide6.QtGui import (
    QAction,
    QCloseEvent,
    QDragEnterEvent,
    QDragLeaveEvent,
    QDropEvent,
    QGuiApplication,
    QKeySequence,
)
from PySide6.QtWidgets import (
    QApplication,
    QFileDialog,
    QHBoxLayout,
    QMainWindow,
    QMenu,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from tercet.domain import Changes, DatedThresholds
from tercet.library import importing, operations, season
from tercet.library.importing import Progress, Report
from tercet.library.library import Library
from tercet.library.season import SessionDetail
from tercet.library.views import SeasonView, SessionView
from tercet.store import queries
from tercet.ui import theme
from tercet.ui.first_run import EmptyPage
from tercet.ui.jobs import Answers, Job
from tercet.ui.top_bar import TopBar
from tercet.ui.undo_bar import UndoBar
from tercet.ui.why import why
from tercet.ui.widgets import Label

READABLE = "Recordings (*.fit *.tcx *.gpx *.fit.gz *.tcx.gz *.gpx.gz *.gz *.toml);;All files (*)"
#: Names that a recording may end in; others are named before they are let go.
ENDINGS = (".fit", ".tcx", ".gpx", ".gz", ".toml")
#: The strip with estimated thresholds stays away for so long once it was put away.
STRIP_AWAY = timedelta(weeks=4)
SIZES = (100, 115, 130, 150, 175, 200)
#: A running import shows its runs at most this often. [ms]
REFRESH_MS = 400


class MainWindow(QMainWindow):
    """Shows a library; every change comes back through :meth:`changed`."""

    season_shown = Signal(object)  # SeasonView, after each refresh
    import_ended = Signal(object)  # Report

    def __init__(self, library: Library, *, demo: bool = False) -> None:
        super().__init__()
        self._library = library
        self._demo = demo
        self._settings = QSettings(str(library.folder / "window.ini"), QSettings.Format.IniFormat)
        self._answers = Answers(self)
        self._answers.failed.connect(self._trouble)
        self._import: Job | None = None
        self._waiting: list[Path] = []
        self._view: SeasonView | None = None
        self._thresholds: list[DatedThresholds] = []
        self._shown_session: int | None = None
        self._refreshing = self._stale = False
        self._refresh_timer = QTimer(self)
        self._refresh_timer.setSingleShot(True)
        self._refresh_timer.setInterval(REFRESH_MS)
        self._refresh_timer.timeout.connect(self.refresh)
        self.setWindowTitle("Tercet: example season" if demo else "Tercet")
        self.setAcceptDrops(True)
        self.setMinimumSize(640, 480)

        whole = QWidget()
        column = QVBoxLayout(whole)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        self.bar = TopBar()
        self.bar.view_asked.connect(self.show_view)
        self.bar.add_asked.connect(self._add_asked)
        column.addWidget(self.bar)
        self.pages = QStackedWidget()
        self.blank = QWidget()
        self.empty = EmptyPage()
        empty_holder = QWidget()
        holder = QVBoxLayout(empty_holder)
        holder.setContentsMargins(12, 0, 12, 0)
        holder.addWidget(self.empty)
        self.empty_holder = empty_holder
        self.pages.addWidget(self.blank)
        self.pages.addWidget(empty_holder)
        column.addWidget(self.pages, 1)
        column.addWidget(self._foot())
        self.setCentralWidget(whole)
        self.undo_bar = UndoBar(whole)
        self.undo_bar.undo_asked.connect(self.undo)
        self.empty.choose_asked.connect(self.choose_files)
        self.empty.folder_asked.connect(self.choose_folder)
        self.empty.example_asked.connect(self._open_example)
        self.empty.plan_asked.connect(self.edit_plan)
        self.empty.size_chosen.connect(self.set_text_size)
        self._actions()
        self._restore_geometry()
        self._ready = False
        QTimer.singleShot(0, self._load_behind)

    # Building ----------------------------------------------------------------------------

    def _load_behind(self) -> None:
        """Build what needs the plotting library, once the window has been painted."""
        from tercet.ui.season_page import SeasonPage
        from tercet.ui.session_page import SessionPage

        self.season_page = SeasonPage()
        self.session_page = SessionPage()
        self.pages.addWidget(self.season_page)
        self.pages.addWidget(self.session_page)
        page, recordings = self.season_page, self.season_page.recordings
        page.session_asked.connect(self.open_session)
        page.strip.race_asked.connect(lambda: self.edit_thresholds("race"))
        page.strip.maximum_asked.connect(lambda: self.edit_thresholds("maximum"))
        page.strip.typed_asked.connect(lambda: self.edit_thresholds("typed"))
        page.strip.leave_asked.connect(self._leave_strip)
        recordings.choose_asked.connect(self.choose_files)
        recordings.close_asked.connect(lambda: self.show_recordings(False))
        recordings.stop_asked.connect(self.stop_import)
        recordings.skip_asked.connect(
            lambda content: self.do(operations.put_away, content, quiet=True)
        )
        session = self.session_page
        session.back_asked.connect(lambda: self.show_view("season"))
        session.previous_asked.connect(lambda: self._step_session(-1))
        session.next_asked.connect(lambda: self._step_session(1))
        session.note_changed.connect(
            lambda run, text: self.do(operations.set_note, run, text, quiet=True)
        )
        session.effort_changed.connect(
            lambda run, value: self.do(operations.set_effort, run, value, quiet=True)
        )
        session.kind_changed.connect(self._kind_changed)
        state = self._settings.value("splitter")
        if isinstance(state, QByteArray):
            page.splitter.restoreState(state)
        else:
            page.splitter.setSizes([580, 420])
        self._ready = True
        self.refresh()
        if self._waiting:
            waiting, self._waiting = self._waiting, []
            self.take_in(waiting)

    def _foot(self) -> QWidget:
        foot = QWidget()
        line = QHBoxLayout(foot)
        line.setContentsMargins(16, 2, 12, 4)
        self.foot_left = Label("", "small", "text_2")
        self.foot_right = QPushButton("")
        self.foot_right.setProperty("flat", True)
        self.foot_right.setAccessibleName("Open the recordings pane")
        self.foot_right.clicked.connect(lambda: self.show_recordings(True))
        line.addWidget(self.foot_left)
        line.addStretch()
        line.addWidget(self.foot_right)
        return foot

    def _action(
        self, menu: QMenu, text: str, call: Callable[..., Any], keys: Any = None
    ) -> QAction:
        action = QAction(text, self)
        if isinstance(keys, (list, tuple)):
            action.setShortcuts([QKeySequence(key) for key in keys])
        elif keys is not None:
            action.setShortcut(QKeySequence(keys))
        action.triggered.connect(lambda _=False: call())
        menu.addAction(action)
        # On the window as well, so that its keys work while the menu is closed.
        self.addAction(action)
        return action

    def _actions(self) -> None:
        menu = self.bar.menu
        self._action(menu, "Choose files…", self.choose_files, QKeySequence.StandardKey.Open)
        self._action(menu, "Choose a folder…", self.choose_folder, "Ctrl+Shift+O")
        self._action(menu, "Add copied files", self.paste, QKeySequence.StandardKey.Paste)
        self._action(menu, "Recordings", lambda: self.show_recordings(True), "Ctrl+R")
        menu.addSeparator()
        self.undo_action = self._action(menu, "Undo", self.undo, QKeySequence.StandardKey.Undo)
        self.redo_action = self._action(menu, "Redo", self.redo, ["Ctrl+Y", "Ctrl+Shift+Z"])
        self._action(menu, "Delete the session", self.delete_session, "Ctrl+Backspace")
        menu.addSeparator()
        self._action(menu, "Thresholds…", self.edit_thresholds, "Ctrl+H")
        self._action(menu, "Blocks and races…", self.edit_plan, "Ctrl+B")
        menu.addSeparator()
        view = menu.addMenu("View")
        self._action(view, "Season", lambda: self.show_view("season"), "Ctrl+1")
        self._action(view, "Session", lambda: self.show_view("session"), "Ctrl+2")
        self._action(view, "Next pane", self.next_pane, "F6")
        view.addSeparator()
        for name, key in (("Follow the system", "system"), ("Light", "light"), ("Dark", "dark")):
            self._action(view, name, lambda key=key: self.set_look(key))
        view.addSeparator()
        for size in SIZES:
            self._action(view, f"Text {size} %", lambda size=size: self.set_text_size(size))
        view.addSeparator()
        for name in ("quiet", "strong", "off"):
            self._action(view, f"Textures {name}", lambda name=name: self.set_texture(name))
        menu.addSeparator()
        self._action(menu, "Close", self.close, QKeySequence.StandardKey.Quit)

    # Showing -----------------------------------------------------------------------------

    def refresh(self) -> None:
        """Read the season anew and show it; calls while one is under way are merged."""
        if not self._ready:
            return
        if self._refreshing:
            self._stale = True
            return
        self._refreshing = True
        self._answers.when(self._library.submit(_everything), self._show)

    def _show(self, found: tuple[Any, ...]) -> None:
        view, self._thresholds, problems, runner, last, away = found
        self._refreshing = False
        self._view = view
        self.season_page.set_season(view)
        self.season_page.recordings.set_problems(problems)
        self.bar.set_runner(runner or ("Example season" if self._demo else "Your season"))
        count = view.session_count
        other = f", {view.other_sports} of other sports apart" if view.other_sports else ""
        sessions = "1 session" if count == 1 else f"{count} sessions"
        self.foot_left.setText(f"{sessions}{other}, all kept on this computer")
        if self._import is None:
            look = f", {len(problems)} need a look" if problems else ""
            self.foot_right.setText(f"Last import {_when(last)}{look}" if last else "Recordings")
        self._show_strip(away)
        has_plan = any(block.id is not None for block in view.blocks) or bool(view.races)
        nothing = not (view.session_count or view.other_sports or has_plan or problems)
        current = self.pages.currentWidget()
        if nothing and self._import is None:
            self.pages.setCurrentWidget(self.empty_holder)
        elif current in (self.blank, self.empty_holder):
            self.pages.setCurrentWidget(self.season_page)
            self.season_page.sheet.scroll_to_today()
            remembered = str(self._settings.value("session", ""))
            if remembered.isdigit() and self._find(int(remembered)) is not None:
                self.season_page.sheet.select_session(int(remembered))
            self.season_page.sheet.setFocus(Qt.FocusReason.OtherFocusReason)
        self.bar.set_views(not nothing, bool(view.sessions))
        if current is self.session_page and self._shown_session is not None:
            self._load_session(self._shown_session, refreshed=True)
        undo, redo = self._library.undo_names()
        for action, word, name in (
            (self.undo_action, "Undo", undo),
            (self.redo_action, "Redo", redo),
        ):
            action.setEnabled(name is not None)
            action.setText(f"{word}: {name}" if name else word)
        self.season_shown.emit(view)
        if self._stale:
            self._stale = False
            self.refresh()

    def _show_strip(self, away: str) -> None:
        strip = self.season_page.strip
        guess = next((entry for entry in self._thresholds if entry.estimated), None)
        hidden = guess is None or self._import is not None
        if away and not hidden:
            with suppress(ValueError):
                hidden = datetime.now() - datetime.fromisoformat(away) < STRIP_AWAY
        if guess is not None and not hidden:
            strip.show_estimate(guess)
        else:
            strip.hide()
        self.season_page.strip_rule.setVisible(not strip.isHidden())

    def show_view(self, name: str) -> None:
        """Go to "season" or "session"."""
        if not self._ready:
            return
        if name == "session":
            chosen = self._shown_session or self.season_page.sheet.selected_session()
            if chosen is None and self._view is not None and self._view.sessions:
                chosen = self._view.sessions[-1].id
            if chosen is not None:
                self.open_session(chosen)
            return
        if self._view is not None:
            self.pages.setCurrentWidget(self.season_page)
            self.bar.set_current("season")
            if self._shown_session is not None:
                self.season_page.sheet.select_session(self._shown_session)
            self.season_page.sheet.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_recordings(self, shown: bool) -> None:
        """Open or close the recordings pane."""
        if not self._ready:
            return
        if shown and self.pages.currentWidget() is not self.season_page:
            self.pages.setCurrentWidget(self.season_page)
            self.bar.set_current("season")
        self.season_page.show_recordings(shown)
        if shown:
            self.season_page.recordings.choose.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self.season_page.sheet.setFocus(Qt.FocusReason.OtherFocusReason)

    def open_session(self, run_id: int) -> None:
        """Open a session's page."""
        self._load_session(run_id)

    def _load_session(self, run_id: int, *, refreshed: bool = False) -> None:
        session = self._find(run_id)
        if session is None:
            if refreshed:
                self._shown_session = None
                self.show_view("season")
            return
        self._shown_session = run_id
        future = self._library.submit(season.session_detail, run_id)
        self._answers.when(future, lambda detail: self._show_session(session, detail))

    def _show_session(self, session: SessionView, detail: SessionDetail | None) -> None:
        if detail is None or session.id != self._shown_session or self._view is None:
            return
        block, week = "", 0
        for candidate in self._view.blocks:
            for number, part in enumerate(candidate.weeks, 1):
                if any(held.id == session.id for day in part.days for held in day):
                    block, week = candidate.name, number
        made_from = made_from_words(session, detail)
        self.session_page.show_session(
            session,
            detail.trace,
            block_name=block,
            week_number=week,
            made_from=made_from,
            mends=[f"{name}: {count} s" for name, count in detail.mends.items()],
            has_previous=self._view.sessions[0].id != session.id,
            has_next=self._view.sessions[-1].id != session.id,
            why=lambda second: why(detail, second),
        )
        self.pages.setCurrentWidget(self.session_page)
        self.bar.set_current("session")

    def _find(self, run_id: int) -> SessionView | None:
        if self._view is None:
            return None
        return next((item for item in self._view.sessions if item.id == run_id), None)

    def _step_session(self, step: int) -> None:
        if self._view is None or self._shown_session is None:
            return
        ids = [item.id for item in self._view.sessions]
        if self._shown_session in ids:
            place = ids.index(self._shown_session) + step
            if 0 <= place < len(ids):
                self.open_session(ids[place])

    def next_pane(self) -> None:
        """Move the focus round: bar, sheet, chart, session card or recordings."""
        if not self._ready or self.pages.currentWidget() is not self.season_page:
            self.bar.focus_current()
            return
        page = self.season_page
        if page.recordings_shown:
            ring: list[QWidget] = [page.sheet, page.recordings.choose]
        else:
            ring = [page.sheet, page.build_up.chart, page.card.open]
        ring = [widget for widget in ring if widget.isVisible()]
        focus = QApplication.focusWidget()
        at = -1
        if focus is not None:
            at = next((k for k, w in enumerate(ring) if focus is w or w.isAncestorOf(focus)), -1)
        if at + 1 < len(ring):
            ring[at + 1].setFocus(Qt.FocusReason.ShortcutFocusReason)
        else:
            self.bar.focus_current()

    # Changing ----------------------------------------------------------------------------

    def do(self, call: Callable[..., Changes | None], *args: Any, quiet: bool = False) -> None:
        """Run one user action in the store's thread and show what it changed."""
        future = self._library.submit(call, *args)
        self._answers.when(future, lambda changes: self.changed(changes, quiet=quiet))

    def changed(self, changes: Changes | None, *, quiet: bool = False) -> None:
        """Something in the store changed: show it, and offer to undo it."""
        if changes is None:
            return
        if changes.step and not quiet:
            self.undo_bar.say(changes.step)
        self.refresh()

    def undo(self) -> None:
        """Take back the last step."""
        self.undo_bar.hide()
        self.do(operations.undo, quiet=True)

    def redo(self) -> None:
        """Bring back the last undone step."""
        self.do(operations.redo, quiet=True)

    def delete_session(self) -> None:
        """Delete the chosen session; undo brings it back."""
        if not self._ready:
            return
        if self.pages.currentWidget() is self.session_page:
            chosen = self._shown_session
        else:
            chosen = self.season_page.sheet.selected_session()
        if chosen is not None:
            self.do(operations.delete_runs, [chosen])

    def _kind_changed(self, run_id: int, kind: str) -> None:
        sport, detail = ("other", "") if kind == "other sport" else ("running", kind)
        self.do(operations.set_kind, [run_id], sport, "" if detail == "running" else detail)

    def edit_thresholds(self, page: Any = "typed") -> None:
        """Open the thresholds dialog."""
        from tercet.ui.thresholds_dialog import ThresholdsDialog

        entries = self._library.call(queries.thresholds)
        dialog = ThresholdsDialog(self._library, entries, page, parent=self)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.applied.connect(self.changed)
        dialog.open()

    def edit_plan(self) -> None:
        """Open the dialog for blocks and races."""
        from tercet.ui.plan_dialog import PlanDialog

        dialog = PlanDialog(self._library, parent=self)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.applied.connect(self.changed)
        dialog.open()

    def _leave_strip(self) -> None:
        now = datetime.now().isoformat(timespec="seconds")
        self.do(operations.set_setting, "estimate_left", now, quiet=True)

    # Importing ---------------------------------------------------------------------------

    def choose_files(self) -> None:
        """Ask for files and take them in."""
        names, _ = QFileDialog.getOpenFileNames(self, "Choose recordings", "", READABLE)
        self.take_in([Path(name) for name in names])

    def choose_folder(self) -> None:
        """Ask for a folder and take in what is below it."""
        name = QFileDialog.getExistingDirectory(self, "Choose a folder of recordings")
        self.take_in([Path(name)] if name else [])

    def paste(self) -> None:
        """Take in files copied in a file manager."""
        self.take_in(_local_files(QGuiApplication.clipboard().mimeData()))

    def _add_asked(self) -> None:
        self.show_recordings(True)

    def _open_example(self) -> None:
        from tercet.ui import application

        application.start_example()

    def take_in(self, paths: Sequence[Path]) -> None:
        """Take in files and folders; while an import runs they wait for its end."""
        if not paths:
            return
        if not self._ready or self._import is not None:
            self._waiting += paths
            return
        self.show_recordings(True)
        pane = self.season_page.recordings
        pane.begin()

        def call(tell: Callable[[Any], None], stop: Event) -> Report:
            return self._library.take_in(list(paths), tell, stop)

        self._import = Job(call, self)
        self._import.progressed.connect(self._import_progress)
        self._import.finished.connect(self._import_ended)
        self._import.failed.connect(self._import_failed)
        self.foot_right.setText("Import running")
        self._import.start()

    def stop_import(self) -> None:
        """Stop the import; what was read stays."""
        if self._import is not None:
            self._import.stop()
            self.season_page.recordings.stop.setEnabled(False)

    @property
    def is_importing(self) -> bool:
        """Whether an import runs."""
        return self._import is not None

    def _import_progress(self, now: Progress) -> None:
        self.season_page.recordings.progress(now)
        if not self._refresh_timer.isActive():
            self._refresh_timer.start()

    def _import_ended(self, report: Report) -> None:
        self._finish_job()
        self.season_page.recordings.end(report)
        if report.changes.step:
            self.undo_bar.say(f"Added: {report.words}")
        self.refresh()
        self.import_ended.emit(report)
        self._next_import()

    def _import_failed(self, error: Exception) -> None:
        self._finish_job()
        self.season_page.recordings.fail(f"The import ended early: {error}")
        self.refresh()
        self._next_import()

    def _finish_job(self) -> None:
        job, self._import = self._import, None
        if job is not None:
            job.wait()
            job.deleteLater()

    def _next_import(self) -> None:
        waiting, self._waiting = self._waiting, []
        self.take_in(waiting)

    # Drops -------------------------------------------------------------------------------

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take files and folders from anywhere."""
        files = _local_files(event.mimeData())
        if not files:
            return
        event.acceptProposedAction()
        count = sum(1 for place in files if place.is_file())
        folders = len(files) - count
        odd = [
            place.name
            for place in files
            if place.is_file() and not place.name.lower().endswith(ENDINGS)
        ]
        if folders:
            count = len(importing.find_files(files)) if folders <= 3 else count + folders
        self._hovering(count, odd[:3])

    def dragLeaveEvent(self, event: QDragLeaveEvent) -> None:
        """Files went away again."""
        self._hovering(None)

    def dropEvent(self, event: QDropEvent) -> None:
        """Take in what was let go."""
        files = _local_files(event.mimeData())
        self._hovering(None)
        if files:
            event.acceptProposedAction()
            self.take_in(files)

    def _hovering(self, count: int | None, odd: Sequence[str] = ()) -> None:
        self.empty.zone.set_active(count is not None)
        if self._ready:
            self.season_page.recordings.hover(count, odd)
        ring = theme.current().hex("focus")
        self.setStyleSheet(
            f"MainWindow {{ border: 2px solid {ring}; }}" if count is not None else ""
        )

    # The look ----------------------------------------------------------------------------

    def set_look(self, name: str) -> None:
        """Light, dark, or as the system."""
        self._settings.setValue("look", name)
        apply_look(self._settings)

    def set_text_size(self, percent: int) -> None:
        """Text size in per cent."""
        self._settings.setValue("text", percent)
        apply_look(self._settings)

    def set_texture(self, name: str) -> None:
        """Textures quiet, strong or off."""
        self._settings.setValue("texture", name)
        apply_look(self._settings)

    def _restore_geometry(self) -> None:
        saved = self._settings.value("geometry")
        if not (isinstance(saved, QByteArray) and self.restoreGeometry(saved)):
            self.resize(1366, 768)

    def _trouble(self, error: Exception) -> None:
        self._refreshing = False
        self.undo_bar.complain(str(error))

    def closeEvent(self, event: QCloseEvent) -> None:
        """Stop what runs, remember the window."""
        if self._import is not None:
            self._import.stop()
            self._import.wait()
        self._refresh_timer.stop()
        self._settings.setValue("geometry", self.saveGeometry())
        if self._ready:
            self.session_page.save_now()
            self._ready = False
            self._settings.setValue("splitter", self.season_page.splitter.saveState())
            chosen = self.season_page.sheet.selected_session()
            self._settings.setValue("session", chosen if chosen is not None else -1)
        self._settings.sync()
        super().closeEvent(event)


def _everything(store: Any) -> tuple[Any, ...]:
    """All that a refresh shows, read in one go in the store's thread."""
    return (
        season.season(store, date.today()),
        queries.thresholds(store),
        queries.files_to_look_at(store),
        queries.setting(store, "runner"),
        queries.last_taken_in(store),
        queries.setting(store, "estimate_left"),
    )


def made_from_words(session: SessionView, detail: SessionDetail) -> str:
    """Say what a session's shading was made from, and what was remarked."""
    parts = []
    if session.sport != "running":
        parts.append("Not counted as running, so not judged.")
    elif detail.thresholds is None:
        parts.append("Not judged: there are no thresholds yet.")
    else:
        about = "estimated " if detail.estimated else ""
        parts.append(
            f"Shaded by pace and heart rate. Boundaries {about}from {detail.threshold_words}."
        )
    parts += detail.remarks
    if detail.damage:
        parts.append(detail.damage)
    if detail.file_name:
        parts.append(f"File {detail.file_name}.")
    return " ".join(parts)


def _local_files(data: Any) -> list[Path]:
    return [Path(url.toLocalFile()) for url in data.urls() if url.isLocalFile()]


def _when(taken_in: str) -> str:
    moment = datetime.fromisoformat(taken_in).astimezone()
    if moment.date() == date.today():
        return f"{moment:%H:%M}"
    return f"{moment.day} {moment:%b %Y}"


def apply_look(settings: QSettings) -> None:
    """Put the remembered look on the program."""
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    look = str(settings.value("look", "system"))
    text = str(settings.value("text", 100))
    texture = str(settings.value("texture", "quiet"))
    theme.apply(
        app,
        {"light": False, "dark": True}.get(look),
        min(max(int(text) if text.isdigit() else 100, 100), 200) / 100,
        texture if texture in ("quiet", "strong", "off") else "quiet",
    )
