"""Preferences: language, units, weeks, theme, text size, textures; each put on as it is chosen."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QVBoxLayout,
    QWidget,
)

from tercet import language
from tercet.language import tr
from tercet.ui import spoken
from tercet.ui.look import LOOKS, SIZES, TEXTURES, UNITS, WEEKS, Look
from tercet.ui.widgets import Label


class Preferences(QDialog):
    """A short form; what is chosen holds at once, so there is nothing to confirm.

    For another language, or another week, the window is made anew: once the form is closed, so
    that arrow keys can go on to the choice that is meant.
    """

    units_changed = Signal()
    remake_asked = Signal()  # the language or the week: all that is shown is to be made anew

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Preferences"))
        self._look = look
        self._before = look.language, look.week
        column, form = QVBoxLayout(self), QFormLayout()
        column.setContentsMargins(20, 16, 20, 16)
        column.setSpacing(10)
        column.addLayout(form)
        form.setSpacing(10)
        if len(language.languages()) > 1:
            # Each language by its own name, so that nobody is lost in one they cannot read.
            tongues = {spoken.SYSTEM: tr("Follow the system"), **language.languages()}
            self.tongue = self._choice(
                form, tr("&Language"), tongues, look.language, lambda key: look.choose(language=key)
            )
        self.units = self._choice(form, tr("&Distances and paces"), UNITS, look.units, self._units)
        self.week = self._choice(
            form, tr("&Weeks begin on"), WEEKS, look.week, lambda key: look.choose(week=key)
        )
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
        self.later = Label(
            tr("Another language or week is shown once this is closed."),
            "small",
            "text_2",
            wrap=True,
        )
        column.addWidget(self.later)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        column.addWidget(buttons)

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

    def done(self, result: int) -> None:
        """Close, and ask for a new window where this one cannot show what was chosen."""
        super().done(result)
        if (self._look.language, self._look.week) != self._before:
            self.remake_asked.emit()

    def _units(self, key: str) -> None:
        self._look.choose(units=key)
        self.units_changed.emit()
