"""The history pane: both lines over the year by pace, heart rate or power; step or straight."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QRadioButton, QVBoxLayout

from tercet.domain import DatedThresholds
from tercet.language import mark, tr
from tercet.library.engine_words import worded
from tercet.ui import words
from tercet.ui.charts.lines_history import (
    HistoryChart,
    Quantity,
    beats_quantity,
    pace_quantity,
    watts_quantity,
)
from tercet.ui.flow import FlowLayout
from tercet.ui.twin import Twin
from tercet.ui.widgets import ElidedLabel, Label, Pane, button

HEADINGS = (
    mark("from"),
    "LT1",
    "LT2",
    mark("LT1 /min"),
    mark("LT2 /min"),
)
WATTS = ("LT1 W", "LT2 W")
BEHIND = (mark("change"), mark("source"))
#: What the lines may be shown by: the button that leads there, and what it does.
KINDS = {
    "pace": (mark("Pace"), mark("Show pace")),
    "heart": (mark("Heart rate"), mark("Show heart rate")),
    "power": (mark("Running power"), mark("Show running power")),
}
SAID = {
    "km": mark("pace on level ground, min/km; each run is judged by the line of its day"),
    "miles": mark("pace on level ground, min/mile; each run is judged by the line of its day"),
    "heart": mark("heart rate; each run is judged by the line of its day"),
    "power": mark("running power by your own meter, W; each run is judged by the line of its day"),
}


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
        self.quantity = button("")
        self.quantity.hide()
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
        self._asked_for = "pace"

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
        quantities, shown, then = self._quantities(), self._shown, self._next
        self.words.setText(tr(SAID[self._units if shown == "pace" else shown]))
        self.quantity.setVisible(then != shown)
        self.quantity.setText(tr(KINDS[then][0]))
        self.quantity.setAccessibleName(tr(KINDS[then][1]))
        self.chart.set(self._entries, self._today, quantities[shown], self._proposed)
        watts = "power" in self._known
        heads = [tr(head) for head in (*HEADINGS, *(WATTS if watts else ()), *BEHIND)]
        entries = list(self._entries)
        self.twin.set_numbers(
            lambda: (heads, [self._row(entry, watts=watts) for entry in entries]), {0, -1}
        )

    def _quantities(self) -> dict[str, Quantity]:
        made = (pace_quantity(self._units), beats_quantity(), watts_quantity())
        return dict(zip(KINDS, made, strict=True))

    @property
    def _known(self) -> list[str]:
        """What any of the lines, or those proposed, are known by."""
        entries = [*self._entries, *([self._proposed] if self._proposed is not None else [])]
        found = self._quantities().items()
        return [kind for kind, by in found if any(by.known(entry) for entry in entries)]

    @property
    def _shown(self) -> str:
        known = self._known
        return self._asked_for if self._asked_for in known or not known else known[0]

    @property
    def _next(self) -> str:
        """What the button leads to; what is shown already where nothing else is known."""
        known, shown = self._known, self._shown
        return known[(known.index(shown) + 1) % len(known)] if known else shown

    def _row(self, entry: DatedThresholds, *, watts: bool) -> list[str]:
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
        power = [
            words.NOTHING if value is None else told(words.number(value))
            for value in (values.lt1_power, values.lt2_power)
        ]
        change = tr("straight line") if entry.change == "linear" else tr("step")
        day = f"{words.short_day(entry.start)} {entry.start.year}"
        return [day, *paces, *beats, *(power if watts else ()), change, worded(entry.source)]

    def _toggle(self) -> None:
        self._asked_for = self._next
        self._draw()

    def _asked(self) -> None:
        self.change_asked.emit("linear" if self.linear.isChecked() else "step")
