"""The window in use and the runner in it; going to another runner opens that one's record."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QAction

from tercet.language import tr
from tercet.library.library import Library
from tercet.store.errors import StoreError
from tercet.ui import spoken, window
from tercet.ui.look import look_of
from tercet.ui.tour import offer

#: What goes along from one runner's window to the next.
CARRIED = ("language", "look", "text", "texture", "units", "week", "tour")


class Desk(QObject):
    """Holds one window over one library at a time."""

    def __init__(self, library: Library, *, demo: bool = False) -> None:
        super().__init__()
        self._demo = demo
        self._first = library
        self.library = library
        look = look_of(library.folder)
        spoken.speak(look.language)
        look.begin_weeks()
        look.apply()
        self.main = self._window(library)

    def _window(self, library: Library) -> window.MainWindow:
        made = window.MainWindow(library, demo=self._demo and library is self._first)
        # Not at once: the window that asks is the one that goes away.
        made.runner_asked.connect(self.go_to, Qt.ConnectionType.QueuedConnection)
        made.language_asked.connect(self.speak, Qt.ConnectionType.QueuedConnection)
        following = QAction(tr("Next runner"), made)
        following.setShortcut("Ctrl+Tab")
        following.triggered.connect(self.next_runner)
        made.addAction(following)
        self._following = following
        made.bar.runner_menu.aboutToShow.connect(self._list_runners)
        self._listed: list[QAction] = []
        offer(made)
        made.sheet_shown.connect(lambda: self._open_door(made, library.folder))
        return made

    def _open_door(self, made: window.MainWindow, folder: Path) -> None:
        """Listen for second starts on the same store."""
        from tercet.ui.door import Door, bring_forward

        def asked(paths: list[Path]) -> None:
            bring_forward(made)
            made.take_in(paths)

        door = Door(folder, made)
        door.asked.connect(asked)
        door.open()
        made.closed.connect(door.close)

    def _list_runners(self) -> None:
        from tercet.library import roster

        menu = self.main.bar.runner_menu
        for action in self._listed:
            menu.removeAction(action)
            action.deleteLater()
        self._listed = []
        menu.removeAction(self._following)
        others = [r for r in roster.runners(self.library.folder) if r.folder != self.library.folder]
        for runner in others:
            action = QAction(tr("Open {runner}", runner=runner.name), menu)
            action.setEnabled(not runner.problem)
            action.triggered.connect(lambda _=False, to=runner.folder: self.go_to(to))
            menu.addAction(action)
            self._listed.append(action)
        if others:
            menu.addAction(self._following)

    def next_runner(self) -> None:
        """Go to the runner after this one, by name."""
        from tercet.library import roster

        folders = [r.folder for r in roster.runners(self.library.folder) if not r.problem]
        if len(folders) > 1 and self.library.folder in folders:
            self.go_to(folders[(folders.index(self.library.folder) + 1) % len(folders)])

    def go_to(self, folder: Path) -> None:
        """Open another runner's record in this window's place; tell why if it cannot be."""
        before = self.main
        if folder == self.library.folder:
            return
        try:
            library = Library(folder)
        except StoreError as error:
            before.undo_bar.complain(str(error))
            return
        left, self.library = self.library, library
        settings = before.look.kept
        look = look_of(folder)
        for name in CARRIED:
            look.keep(name, settings(name))
        spoken.speak(look.language)
        look.begin_weeks()
        look.apply()
        self._replace(before)
        left.close()

    def speak(self) -> None:
        """Make the window anew in the language, and with the weeks, chosen."""
        spoken.speak(self.main.look.language)
        self.main.look.begin_weeks()
        self._replace(self.main)

    def _replace(self, before: window.MainWindow) -> None:
        """Put a window over the library in use in the place of another."""
        made = self._window(self.library)
        made.restoreGeometry(before.saveGeometry())
        self.main = made
        made.show()
        before.close()
        before.deleteLater()

    def close(self) -> None:
        """Let go of the library that was opened here; the first one is its opener's."""
        if self.library is not self._first:
            self.library.close()
