"""After the first import: what was estimated, and three ways to surer thresholds."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from tercet.language import tr
from tercet.library.engine_words import worded
from tercet.ui import words
from tercet.ui.flow import FlowLayout
from tercet.ui.widgets import Label, button

if TYPE_CHECKING:
    from tercet.domain import DatedThresholds


def about_lines(entry: DatedThresholds, units: words.Units = "km") -> str:
    """Both lines of an estimate with their intervals, in words."""
    values, width = entry.values, entry.interval
    parts = []
    for name, speed, heart in (
        ("LT1", "lt1_speed", "lt1_hr"),
        ("LT2", "lt2_speed", "lt2_hr"),
    ):
        said = []
        pace = getattr(values, speed)
        if pace is not None:
            half = width.get(speed, 0.0)
            low = words.bare_pace(pace + half, units)
            high = words.bare_pace(max(pace - half, 0.5), units)
            said.append(
                tr(
                    "about {value} ({low} to {high})",
                    value=words.pace(pace, units),
                    low=low,
                    high=high,
                )
            )
        beats = getattr(values, heart)
        if beats is not None:
            half = width.get(heart, 0.0)
            said.append(
                tr(
                    "about {value} ({low} to {high})",
                    value=words.heart_rate(beats),
                    low=words.number(beats - half),
                    high=words.number(beats + half),
                )
            )
        if said:
            parts.append(f"{name} {', '.join(said)}")
    return ".  ".join(parts) + "."


class ThresholdStrip(QFrame):
    """Over the sheet after the first import: two estimated lines and three ways to surer ones."""

    edit_asked = Signal(str)  # a way of the thresholds page
    leave_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(tr("Estimated thresholds"))
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 8, 14, 10)
        column.setSpacing(4)
        self.title = Label(tr("Shaded by estimated thresholds"), "body_bold")
        self.lines = Label("", "small", "text_2", wrap=True)
        column.addWidget(self.title)
        column.addWidget(self.lines)
        buttons = FlowLayout()
        self.race = button(tr("A recent race"))
        self.maximum = button(tr("Highest heart rate or age"))
        self.typed = button(tr("The thresholds themselves"))
        self.leave = button(tr("Leave them"))
        for made, page in ((self.race, "race"), (self.maximum, "maximum"), (self.typed, "typed")):
            made.clicked.connect(lambda _=False, page=page: self.edit_asked.emit(page))
            buttons.addWidget(made)
        self.leave.clicked.connect(self.leave_asked)
        buttons.addWidget(self.leave)
        column.addLayout(buttons)

    def show_estimate(self, entry: DatedThresholds, units: words.Units = "km") -> None:
        """Show an estimate."""
        origin = tr("From: {source}.", source=worded(entry.source))
        self.lines.setText(f"{about_lines(entry, units)}  {origin}")
        self.show()
