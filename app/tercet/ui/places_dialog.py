"""What of a runner goes out: the whole record, runs without places, or without those near home."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QDialog,
    QDialogButtonBox,
    QHBoxLayout,
    QLineEdit,
    QRadioButton,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from tercet.language import tr
from tercet.library import without_places
from tercet.library.without_places import Home
from tercet.ui.widgets import Label, button

NONE, NEAR, WHOLE = "no places", "not near home", "whole"


class PlacesDialog(QDialog):
    """Three ways, each with what goes out in it; nothing is written before a file is chosen."""

    chosen = Signal(str, object)  # one of the three, and the zone or None
    forgotten = Signal()  # the zone that was kept

    def __init__(self, zone: Home | None, proposed: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Hand over this record"))
        self._zone, self._proposed = zone, proposed
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 16, 20, 16)
        column.setSpacing(8)
        self._group = QButtonGroup(self)
        self.ways: dict[str, QRadioButton] = {}
        for key, word, about in (
            (
                NONE,
                tr("Runs without places"),
                tr(
                    "One TCX file a recorded run, made anew: time, heart rate, speed, distance, "
                    "altitude, cadence and power. No position, original file, name, note, shading "
                    "or plan."
                ),
            ),
            (
                NEAR,
                tr("Runs without the places near home"),
                tr(
                    "The same, with positions, except those in a zone round home. Its middle lies "
                    "aside from home, but whoever has many runs still sees which streets they "
                    "begin in."
                ),
            ),
            (
                WHOLE,
                tr("The whole record, to be merged on another computer"),
                tr(
                    "Every original file as it is, with all its places and what the watch wrote in "
                    "it, and the notes, shadings, thresholds and plan. The zone round home does "
                    "not apply to it."
                ),
            ),
        ):
            way = self.ways[key] = QRadioButton(word)
            way.setAccessibleDescription(about)
            way.toggled.connect(self._ways_changed)
            self._group.addButton(way)
            column.addWidget(way)
            column.addWidget(Label(about, "small", "text_2", wrap=True))
            if key == NEAR:
                column.addWidget(self._home())
                column.addWidget(self._kept())
        self.wrong = Label("", "small", "not_read", wrap=True)
        self.wrong.hide()
        column.addWidget(self.wrong)
        column.addStretch(1)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        self.go_on = button(tr("Choose a file…"), primary=True)
        buttons.addButton(self.go_on, QDialogButtonBox.ButtonRole.ActionRole)
        self.go_on.clicked.connect(self._choose)
        buttons.rejected.connect(self.reject)
        column.addWidget(buttons)
        self.ways[NONE].setChecked(True)
        self.resize(self.fontMetrics().averageCharWidth() * 80, self.sizeHint().height())

    def _home(self) -> QWidget:
        self.home = QWidget()
        line = QHBoxLayout(self.home)
        line.setContentsMargins(24, 0, 0, 0)
        self.place = QLineEdit(self._zone.words if self._zone is not None else "")
        self.place.setAccessibleName(tr("Home, latitude and longitude in degrees"))
        self.place.setPlaceholderText(tr("latitude longitude"))
        self.radius = QSpinBox()
        self.radius.setRange(*without_places.RADII)
        self.radius.setSingleStep(100)
        self.radius.setSuffix(" m")
        radius = self._zone.radius_m if self._zone is not None else without_places.USUAL_RADIUS
        self.radius.setValue(round(radius))
        self.radius.setAccessibleName(tr("How far the zone reaches"))
        self.most = button(tr("Where most runs start"))
        self.most.setEnabled(bool(self._proposed))
        self.most.clicked.connect(lambda: self.place.setText(self._proposed))
        for part, stretch in ((self.place, 1), (self.radius, 0), (self.most, 0)):
            line.addWidget(part, stretch)
        return self.home

    def _kept(self) -> QWidget:
        """The way to forget home, whichever way is chosen; nothing where none is kept."""
        kept = QWidget()
        line = QHBoxLayout(kept)
        line.setContentsMargins(24, 0, 0, 0)
        self.kept = Label(tr("This home is kept for the next time."), "small", "text_2", wrap=True)
        self.forget = button(tr("Forget home"), name=tr("Forget the zone round home"))
        self.forget.clicked.connect(self._forget)
        line.addWidget(self.kept, 1)
        line.addWidget(self.forget)
        kept.setVisible(self._zone is not None)
        return kept

    def _forget(self) -> None:
        self._zone = None
        self.place.clear()
        self.radius.setValue(without_places.USUAL_RADIUS)
        self.kept.setText(
            tr("Home is forgotten. Until Tercet is closed, Undo in the menu brings it back.")
        )
        self.go_on.setFocus()
        self.forget.hide()
        self.forgotten.emit()

    def _ways_changed(self) -> None:
        self.home.setEnabled(self.ways[NEAR].isChecked())
        self.wrong.hide()

    def _choose(self) -> None:
        way = next(key for key, made in self.ways.items() if made.isChecked())
        zone: Home | None = None
        if way == NEAR:
            try:
                zone = self._typed()
            except ValueError:
                self.wrong.setText(
                    tr(
                        "Type home as two numbers in degrees, such as 45.123 7.456, or take the "
                        "place where most runs start."
                    )
                )
                self.wrong.show()
                self.place.setFocus()
                return
        self.accept()
        self.chosen.emit(way, zone)

    def _typed(self) -> Home:
        text, radius = self.place.text(), float(self.radius.value())
        kept = self._zone
        if kept is not None and (kept.words, kept.radius_m) == (text.strip(), radius):
            # With its middle where it was: circles round many middles would close in on home.
            return kept
        return without_places.typed(text, radius)
