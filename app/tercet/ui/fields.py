"""Fields of the dialogs: days and heart rates in one form, and the row that names an error."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractSpinBox, QDialog, QDoubleSpinBox, QWidget

from tercet.language import mark, tr
from tercet.ui import theme
from tercet.ui.widgets import Label


def beats_box(name: str, none: str = mark("not known")) -> QDoubleSpinBox:
    """A heart rate; its lowest value stands for none."""
    return _whole(name, none, 240, " /min")


def watts_box(name: str) -> QDoubleSpinBox:
    """A running power; its lowest value stands for none."""
    return _whole(name, mark("not known"), 1200, " W")


def _whole(name: str, none: str, most: int, unit: str) -> QDoubleSpinBox:
    box = QDoubleSpinBox()
    box.setDecimals(0)
    box.setRange(0, most)
    box.setSpecialValueText(tr(none))
    box.setSuffix(unit)
    box.setAccessibleName(name)
    return box


class ErrorLine(Label):
    """What is wrong, with an example of right, and which field it is in."""

    def __init__(self) -> None:
        super().__init__("", "small", "not_read", wrap=True)
        self._field: QWidget | None = None
        self.hide()

    def show_error(self, text: str, field: QWidget | None = None) -> None:
        """Say what is wrong; the field gets the focus and a border that says so."""
        self.clear_error()
        self.setText(text)
        self.show()
        self._field = field
        if field is not None:
            _mark(field, wrong=True)
            field.setAccessibleDescription(text)
            field.setFocus(Qt.FocusReason.OtherFocusReason)

    def clear_error(self) -> None:
        """There is nothing wrong any more."""
        self.hide()
        field, self._field = self._field, None
        if field is not None:
            _mark(field, wrong=False)
            field.setAccessibleDescription("")


def _mark(field: QWidget, *, wrong: bool) -> None:
    field.setProperty("wrong", wrong)
    field.style().unpolish(field)
    field.style().polish(field)
    if isinstance(field, QAbstractSpinBox):
        field.update()


def fit_to_screen(dialog: QDialog, width: float, height: float) -> None:
    """Give a dialog its size, grown with the text, within its parent's screen."""
    look = theme.current()
    room = dialog.screen().availableSize()
    dialog.resize(min(look.px(width), room.width() - 24), min(look.px(height), room.height() - 64))
