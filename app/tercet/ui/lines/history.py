"""The history pane: both lines over the year as pace or heart rate, and step or straight line."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QRadioButton, QVBoxLayout

from tercet.domain import DatedThresholds
from tercet.language import mark, tr
from tercet.library.engine_words import worded
from tercet.ui import words
from tercet.ui.charts.lines_history import HistoryChart, beats_quantity, pace_quantity
from tercet.ui.flow import FlowLayout
from tercet.ui.twin import Twin
from tercet.ui.widgets import ElidedLabel, Label, Pane, button

HEADINGS = (
    mark("from"),
    "LT1",
    "LT2",
    mark("LT1 /min"),
    mark("LT2 /min"),
    mark("change"),
    mark("source"),
)


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
        self.twin = Twin(self.chart, tr("History of thresholds as a table"), self)
        self.quantity = button(tr("Heart rate"), name=tr("Show heart rate instead of pace"))
        self.step, self.linear = QRadioButton(tr("step")), QRadioButton(tr("straight line"))
        self.step.setAccessibleName(tr("Between two tests: step"))
        self.linear.setAccessibleName(tr("Between two tests: straight line"))
        self._group = QButtonGroup(self)
        head = QHBoxLayout()
        head.addWidget(Label(tr("Thresholds"), "pane_title"))
        self.words = ElidedLabel("", "small", "text_2")
        head.addWidget(self.words, 1)
        head.addWidget(self.quantity)
        foot = FlowLayout()
        for made in (Label(tr("Between two tests:"), "small", "text_2"), self.step, self.linear):
            foot.addWidget(made)
        foot.addWidget(Label(tr("grey: where the line lies in 9 of 10 cases"), "small", "text_2"))
        foot.addWidget(Label(tr("open dots: not applied"), "small", "text_2"))
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
        by_pace = {
            "km": mark("pace on level ground, min/km; each run is judged by the line of its day"),
            "miles": mark(
                "pace on level ground, min/mile; each run is judged by the line of its day"
            ),
        }
        by_beats = mark("heart rate; each run is judged by the line of its day")
        self.words.setText(tr(by_beats if self._by_beats else by_pace[self._units]))
        quantity = beats_quantity() if self._by_beats else pace_quantity(self._units)
        self.chart.set(self._entries, self._today, quantity, self._proposed)
        self.twin.set_numbers(
            [tr(head) for head in HEADINGS], [self._row(entry) for entry in self._entries], {0, 6}
        )

    def _row(self, entry: DatedThresholds) -> list[str]:
        values = entry.values

        def told(value: str) -> str:
            return tr("about {value}", value=value) if entry.estimated else value

        paces = [
            words.NOTHING if speed is None else told(words.bare_pace(speed, self._units))
            for speed in (values.lt1_speed, values.lt2_speed)
        ]
        beats = [
            words.NOTHING if rate is None else told(words.number(rate))
            for rate in (values.lt1_hr, values.lt2_hr)
        ]
        change = tr("straight line") if entry.change == "linear" else tr("step")
        day = f"{words.short_day(entry.start)} {entry.start.year}"
        return [day, *paces, *beats, change, worded(entry.source)]

    def _toggle(self) -> None:
        self._by_beats = not self._by_beats
        self.quantity.setText(tr("Pace") if self._by_beats else tr("Heart rate"))
        self.quantity.setAccessibleName(
            tr("Show pace instead of heart rate")
            if self._by_beats
            else tr("Show heart rate instead of pace")
        )
        self._draw()

    def _asked(self) -> None:
        self.change_asked.emit("linear" if self.linear.isChecked() else "step")
