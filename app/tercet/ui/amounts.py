"""Fields for a week's or a run's amount: hours as h:mm, or a distance, typed and checked."""

from __future__ import annotations

import re

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from tercet import units
from tercet.language import mark, tr
from tercet.ui import theme, words

_HOURS = re.compile(r"\s*(\d{1,2})(?:\s*[:h]\s*([0-5]?\d))?\s*h?\s*")
_KM = re.compile(r"\s*(\d{1,3}(?:[.,]\d{1,2})?)\s*(?:km|mi|miles)?\s*")

DISTANCE_WANTED = {
    "km": mark("Give kilometres, such as 62.5."),
    "miles": mark("Give miles, such as 38.5."),
}
HOURS_WANTED = mark("Give hours, such as 6:20.")


def amount_of(text: str, measure: str) -> float | None:
    """Read "6:20" as seconds, or with measure "metres" "62.5" as metres, in the
    unit chosen; None if neither."""
    if measure == "metres":
        found = _KM.fullmatch(text)
        return float(found[1].replace(",", ".")) * units.metres() if found else None
    found = _HOURS.fullmatch(text)
    return int(found[1]) * 3600.0 + int(found[2] or 0) * 60.0 if found else None


def amount_words(value: float, measure: str) -> str:
    """Write an amount as its field shows it: ``6:20``, or a distance."""
    return words.number(value / units.metres(), 1) if measure == "metres" else words.hours(value)


class AmountEdit(QLineEdit):
    """One amount; ``told`` carries it once it was typed whole, ``None`` for an emptied field."""

    told = Signal(object)

    def __init__(self, name: str) -> None:
        super().__init__()
        self._measure = "time"
        self._value: float | None = None
        self.setAccessibleName(name)
        self.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.editingFinished.connect(self._finished)
        self.textEdited.connect(lambda _: self._mark(wrong=False))
        self._dress()
        theme.changed.connect(self._dress)

    def show_amount(self, value: float | None, measure: str) -> None:
        """Show an amount, unless it is being typed."""
        self._measure, self._value = measure, value
        if not (self.hasFocus() and self.isModified()):
            self.setText("" if value is None else amount_words(value, measure))
            self._mark(wrong=False)

    def _finished(self) -> None:
        if not self.isModified():
            return
        self.setModified(False)
        text = self.text().strip()
        value = amount_of(text, self._measure) if text else None
        if text and not value:
            self._mark(wrong=True)
            return
        self._mark(wrong=False)
        if value != self._value:
            self._value = value
            self.told.emit(value)

    def _mark(self, *, wrong: bool) -> None:
        metres = self._measure == "metres"
        wanted = DISTANCE_WANTED[units.chosen()] if metres else HOURS_WANTED
        mark_wrong(self, tr(wanted) if wrong else "")

    def _dress(self) -> None:
        self.setFixedWidth(theme.current().px(72))


class NumberEdit(QLineEdit):
    """A whole number within a range; up and down step it. ``none`` is shown for the lowest."""

    valueChanged = Signal(int)

    def __init__(self, name: str, low: int, high: int, none: str = "") -> None:
        super().__init__()
        self._low, self._high, self._none = low, high, none
        self._value = low
        self.setAccessibleName(name)
        self.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.editingFinished.connect(self._finished)
        self.setValue(low)

    def value(self) -> int:
        """The number."""
        return self._value

    def setValue(self, value: int) -> None:
        """Show a number, unless another is being typed; tell it if it is another one."""
        value = min(max(value, self._low), self._high)
        changed, self._value = value != self._value, value
        if not (self.hasFocus() and self.isModified()):
            self.setText(self._none if self._none and value == self._low else str(value))
        if changed:
            self.valueChanged.emit(value)

    def _finished(self) -> None:
        text = self.text().strip()
        self.setModified(False)
        self.setValue(int(text) if text.lstrip("-").isdigit() else self._value)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Step with up and down."""
        step = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1}.get(Qt.Key(event.key()))
        if step is None:
            super().keyPressEvent(event)
            return
        self._finished()
        self.setValue(self._value + step)


def mark_wrong(field: QWidget, text: str) -> None:
    """Give a field the border of an error and say what is wrong, or take both away."""
    if bool(field.property("wrong")) != bool(text):
        field.setProperty("wrong", bool(text))
        field.style().unpolish(field)
        field.style().polish(field)
    field.setAccessibleDescription(text)
    field.setToolTip(text)
