"""Preferences: language, units, weeks, theme, text size, textures; each put on as it is chosen."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QDialog, QDialogButtonBox, QFormLayout, QWidget

from tercet import language
from tercet.language import tr
from tercet.ui import spoken
from tercet.ui.look import LOOKS, SIZES, TEXTURES, UNITS, WEEKS, Look
from tercet.ui.widgets import Label


class Preferences(QDialog):
    """A short form; what is chosen holds at once, so there is nothing to confirm."""

    units_changed = Signal()
    remake_asked = Signal()  # the language or the week: all that is shown is to be made anew

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Preferences"))
        self._look = look
        form = QFormLayout(self)
        form.setContentsMargins(20, 16, 20, 16)
        form.setSpacing(10)
        if len(language.languages()) > 1:
            # Each language by its own name, so that nobody is lost in one they cannot read.
            tongues = {spoken.SYSTEM: tr("Follow the system"), **language.languages()}
            self._choice(form, tr("&Language"), tongues, look.language, self._speak)
        self.units = self._choice(form, tr("&Distances and paces"), UNITS, look.units, self._units)
        self.week = self._choice(form, tr("&Weeks begin on"), WEEKS, look.week, self._week)
        self.theme = self._choice(
            form, tr("&Theme"), LOOKS, look.name, lambda key: look.choose(name=key)
        )
        sizes = {str(size): f"{size} %" for size in SIZES}
        self.size_of_text = self._choice(
            form, tr("Text &size"), sizes, str(look.size), lambda key: look.choose(size=int(key))
        )
        self.textures = self._choice(
            form, tr("Te&xtures"), TEXTURES, look.texture, lambda key: look.choose(texture=key)
        )
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        form.addRow(buttons)

    def _choice(
        self,
        form: QFormLayout,
        word: str,
        choices: Mapping[str, str],
        now: str,
        choose: Callable[[str], None],
    ) -> QComboBox:
        field = QComboBox()
        for key, text in choices.items():
            field.addItem(tr(text), key)
        field.setCurrentIndex(max(field.findData(now), 0))
        field.setAccessibleName(word.replace("&", ""))
        label = Label(word)
        label.setBuddy(field)
        form.addRow(label, field)
        field.activated.connect(lambda _: choose(str(field.currentData())))
        return field

    def _speak(self, key: str) -> None:
        self._look.choose(language=key)
        self.accept()
        self.remake_asked.emit()

    def _week(self, key: str) -> None:
        self._look.choose(week=key)
        self.accept()
        self.remake_asked.emit()

    def _units(self, key: str) -> None:
        self._look.choose(units=key)
        self.units_changed.emit()
