"""The history pane: both lines over the year as pace or heart rate, and step or straight line."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QRadioButton, QVBoxLayout

from tercet.domain import DatedThresholds
from tercet.ui import words
from tercet.ui.charts.lines_history import HistoryChart, beats_quantity, pace_quantity
from tercet.ui.flow import FlowLayout
from tercet.ui.twin import Twin
from tercet.ui.widgets import ElidedLabel, Label, Pane, button

HEADINGS = ("from", "LT1", "LT2", "LT1 /min", "LT2 /min", "change", "source")


class HistoryPane(Pane):
    """Shows all dated thresholds; ``change_asked`` when the way between them is chosen anew."""

    change_asked = Signal(str)  # step or linear

    def __init__(self, units: words.Units = "km") -> None:
        super().__init__()
        self._units = units
        self._entries: list[DatedThresholds] = []
        self._today = date.today()
        self._proposed: DatedThresholds | None = None
        self.chart = HistoryChart()
        self.twin = Twin(self.chart, "History of thresholds as a table", self)
        self.quantity = button("Heart rate", name="Show heart rate instead of pace")
        self.step, self.linear = QRadioButton("step"), QRadioButton("straight line")
        self.step.setAccessibleName("Between two tests: step")
        self.linear.setAccessibleName("Between two tests: straight line")
        self._group = QButtonGroup(self)
        head = QHBoxLayout()
        head.addWidget(Label("Thresholds", "pane_title"))
        self.words = ElidedLabel("", "small", "text_2")
        head.addWidget(self.words, 1)
        head.addWidget(self.quantity)
        foot = FlowLayout()
        for made in (Label("Between two tests:", "small", "text_2"), self.step, self.linear):
            foot.addWidget(made)
        foot.addWidget(Label("grey: where the line lies in 9 of 10 cases", "small", "text_2"))
        foot.addWidget(Label("open dots: not applied", "small", "text_2"))
        for made in (self.step, self.linear):
            self._group.addButton(made)
            made.clicked.connect(self._asked)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 8)
        column.setSpacing(4)
        column.addLayout(head)
        column.addWidget(self.twin, 1)
        column.addLayout(foot)
        self.quantity.clicked.connect(self._toggle)
        self._by_beats = False

    def show_entries(
        self,
        entries: Sequence[DatedThresholds],
        today: date,
        proposed: DatedThresholds | None = None,
    ) -> None:
        """Show what is dated, and what is proposed but not applied."""
        self._entries, self._today, self._proposed = list(entries), today, proposed
        linear = any(entry.change == "linear" for entry in entries)
        (self.linear if linear else self.step).setChecked(True)
        for made in (self.step, self.linear):
            made.setEnabled(len(entries) > 1)
        self._draw()

    def _draw(self) -> None:
        per = words.PACE_WORDS[self._units].strip("/")
        self.words.setText(
            "heart rate; each run is judged by the line of its day"
            if self._by_beats
            else f"pace on level ground, min/{per}; each run is judged by the line of its day"
        )
        quantity = beats_quantity() if self._by_beats else pace_quantity(self._units)
        self.chart.set(self._entries, self._today, quantity, self._proposed)
        self.twin.set_numbers(HEADINGS, [self._row(entry) for entry in self._entries], {0, 6})

    def _row(self, entry: DatedThresholds) -> list[str]:
        values = entry.values
        about = "about " if entry.estimated else ""
        paces = [
            words.NOTHING if speed is None else about + words.bare_pace(speed, self._units)
            for speed in (values.lt1_speed, values.lt2_speed)
        ]
        beats = [
            words.NOTHING if rate is None else about + words.number(rate)
            for rate in (values.lt1_hr, values.lt2_hr)
        ]
        change = "straight line" if entry.change == "linear" else "step"
        day = f"{words.short_day(entry.start)} {entry.start.year}"
        return [day, *paces, *beats, change, entry.source]

    def _toggle(self) -> None:
        self._by_beats = not self._by_beats
        self.quantity.setText("Pace" if self._by_beats else "Heart rate")
        self.quantity.setAccessibleName(
            "Show pace instead of heart rate"
            if self._by_beats
            else "Show heart rate instead of pace"
        )
        self._draw()

    def _asked(self) -> None:
        self.change_asked.emit("linear" if self.linear.isChecked() else "step")
