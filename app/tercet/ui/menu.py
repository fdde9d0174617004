"""The menu: every action with its words and keys."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMenu

from tercet.language import mark, tr
from tercet.ui.look import LOOKS, SIZES
from tercet.ui.pages import of_group
from tercet.ui.undo_keys import UndoKeys

if TYPE_CHECKING:
    from tercet.ui.window import MainWindow

Keys = str | QKeySequence.StandardKey | Sequence[str]


class Menu:
    """Fills the top bar's menu; its keys work while it is closed."""

    def __init__(self, menu: QMenu, window: MainWindow) -> None:
        self._window = window
        menu.setAccessibleName(tr("Menu"))
        standard = QKeySequence.StandardKey
        imports = window.imports
        self._add(menu, tr("Choose files…"), imports.choose_files, standard.Open)
        self._add(menu, tr("Choose a folder…"), imports.choose_folder, "Ctrl+Shift+O")
        self._add(menu, tr("Add copied files"), self._paste, standard.Paste)
        self._add(menu, tr("Recordings"), lambda: window.show_recordings(True), "Ctrl+R")
        menu.addSeparator()
        self.undo = self._add(menu, tr("Undo"), window.acts.undo, standard.Undo)
        self._undo_keys = UndoKeys(window)
        self.redo = self._add(menu, tr("Redo"), window.acts.redo, ["Ctrl+Y", "Ctrl+Shift+Z"])
        self.delete = self._add(
            menu, tr("Delete the session"), window.delete_session, ["Ctrl+Backspace", "Ctrl+Del"]
        )
        self._add(menu, tr("Find…"), self._find, standard.Find)
        self._add(
            menu,
            tr("Corrections…"),
            lambda: window.acts.correct(window.sessions.chosen()),
            "Ctrl+E",
        )
        menu.addSeparator()
        self._add(menu, tr("Blocks and races…"), window.acts.edit_plan, "Ctrl+B")
        for group, place in (
            ("season", window.bar.season_menu),
            ("runner", window.bar.runner_menu),
        ):
            self._pages(place, group)
        menu.addSeparator()
        view = menu.addMenu(tr("View"))
        self._add(view, tr("Season"), lambda: window.show_view("season"), "Ctrl+1")
        self._add(view, tr("Session"), lambda: window.show_view("session"), "Ctrl+2")
        self._pages(view, "view")
        self._add(view, tr("Next pane"), window.next_pane, "F6")
        sheet = window.season_page.sheet
        self._add(view, tr("Taller rows"), lambda: sheet.zoom(-1), ["Ctrl++", "Ctrl+="])
        self._add(view, tr("Flatter rows"), lambda: sheet.zoom(1), "Ctrl+-")
        self._add(view, tr("Usual rows"), lambda: sheet.zoom(0), "Ctrl+0")
        look = window.look
        looks = {key: tr(word) for key, word in LOOKS.items()}
        self._choices(view, looks, lambda: look.name, lambda key: look.choose(name=key))
        sizes = {str(size): tr("Text {n} %", n=size) for size in SIZES}
        self._choices(view, sizes, lambda: str(look.size), lambda key: look.choose(size=int(key)))
        textures = {
            "quiet": tr("Textures quiet"),
            "strong": tr("Textures strong"),
            "off": tr("Textures off"),
        }
        self._choices(view, textures, lambda: look.texture, lambda key: look.choose(texture=key))
        self._add(menu, tr("Glossary"), self._glossary, standard.HelpContents)
        self._add(menu, tr("A look round"), self._tour)
        self._add(menu, tr("Preferences…"), self._preferences, "Ctrl+,")
        menu.addSeparator()
        self._add(menu, tr("Close"), window.close, standard.Quit)

    def _preferences(self) -> None:
        from tercet.ui.preferences import Preferences

        dialog = Preferences(self._window.look, self._window)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.units_changed.connect(self._window.refresh)
        dialog.remake_asked.connect(self._window.language_asked)
        dialog.open()

    def _glossary(self) -> None:
        from tercet.ui.glossary import Glossary

        dialog = Glossary(self._window)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.open()

    def _tour(self) -> None:
        from tercet.ui.tour import Tour

        view = self._window.view
        if view is not None and view.sessions and self._window.findChild(Tour) is None:
            Tour(self._window)

    def _paste(self) -> None:
        if not self._window.imports.paste():
            self._window.undo_bar.tell(
                tr("No files were copied. Copy some in a file manager first.")
            )

    def _find(self) -> None:
        self._window.show_view("season")
        self._window.season_page.search.begin()

    def name_steps(self, undo: str | None, redo: str | None) -> None:
        """Say what undo and redo would do."""
        for action, word, named, name in (
            (self.undo, mark("Undo"), mark("Undo: {step}"), undo),
            (self.redo, mark("Redo"), mark("Redo: {step}"), redo),
        ):
            action.setEnabled(name is not None)
            action.setText(tr(named, step=tr(name)) if name else tr(word))

    def _pages(self, menu: QMenu, group: str) -> None:
        """An entry for each further page that is reached from here."""
        for entry in of_group(group):
            self._add(
                menu,
                tr(entry.title),
                lambda key=entry.key: self._window.show_view(key),  # type: ignore[misc]
                entry.keys or None,
            )

    def _add(
        self, menu: QMenu, text: str, call: Callable[[], Any], keys: Keys | None = None
    ) -> QAction:
        action = QAction(text, self._window)
        if isinstance(keys, QKeySequence.StandardKey):
            action.setShortcuts(keys)
        elif keys is not None:
            several = [keys] if isinstance(keys, str) else keys
            action.setShortcuts([QKeySequence(key) for key in several])
        action.triggered.connect(lambda _=False: call())
        menu.addAction(action)
        # On the window as well, so that its keys work while the menu is closed.
        self._window.addAction(action)
        return action

    def _choices(
        self,
        menu: QMenu,
        choices: dict[str, str],
        chosen: Callable[[], str],
        choose: Callable[[str], None],
    ) -> None:
        """Entries of which one is in force, marked when the menu opens."""
        menu.addSeparator()
        group = QActionGroup(self._window)
        made = {}
        for key, text in choices.items():
            made[key] = self._add(menu, text, lambda key=key: choose(key))  # type: ignore[misc]
            made[key].setCheckable(True)
            group.addAction(made[key])
        menu.aboutToShow.connect(lambda: made[chosen()].setChecked(True))
