"""A race on the page: its lines, and equal races by two published models side by side."""

from __future__ import annotations

from datetime import date

from PySide6.QtWidgets import QHBoxLayout, QTableWidget, QVBoxLayout

from tercet.engine import physiology
from tercet.language import mark, tr
from tercet.ui import theme, words
from tercet.ui.thresholds_pages import DISTANCES, FieldError, Finder, Page, RacePage
from tercet.ui.twin import fill_table, fit_table, number_table
from tercet.ui.widgets import Label

#: Where the models were made: 3.5 to 230 min, and 3.5 min to 4 h. [s]
POWER_LAW, OXYGEN = (210.0, 13_800.0), (210.0, 14_400.0)
HEADINGS = (mark("equal to"), mark("power law"), mark("pace"), mark("oxygen cost"), mark("pace"))
WORDS = mark(
    "Power law: time grows with distance to the power of 1.06, made on races of 3.5 to 230 "
    "minutes; optimistic for marathons from short races. Oxygen cost: the same aerobic capacity "
    "at the share of it that lasts so long, made for 3.5 minutes to 4 hours. A dash: outside "
    "that range."
)


def equal_races(
    metres: float, seconds: float, units: words.Units = "km"
) -> list[tuple[str, str, str, str, str]]:
    """Rows of equal races by both models."""
    rows = []
    for name, other in sorted(DISTANCES, key=lambda item: item[1]):
        times = (
            (physiology.equivalent_time(seconds, metres, other), POWER_LAW),
            (physiology.equal_capacity_time(metres, seconds, other), OXYGEN),
        )
        cells = [tr(name)]
        for time, (low, high) in times:
            inside = low <= time <= high and low <= seconds <= high
            cells += (
                [words.duration(time), words.pace(other / time, units)]
                if inside
                else [words.NOTHING, words.NOTHING]
            )
        rows.append((cells[0], cells[1], cells[2], cells[3], cells[4]))
    return rows


class RaceSource(Page):
    """The race's fields at the left, the equal races at the right."""

    def __init__(self, units: words.Units = "km", known_maximum: float | None = None) -> None:
        super().__init__()
        self._units = units
        self.race = RacePage(units, known_maximum)
        self.table: QTableWidget = number_table(tr("Equal races by two models"))
        self.words = Label(tr(WORDS), "small", "text_2", wrap=True)
        right = QVBoxLayout()
        right.addWidget(self.table, 1)
        right.addWidget(self.words)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(24)
        row.addWidget(self.race, 40)
        row.addLayout(right, 60)
        self.race.edited.connect(self._changed)
        theme.changed.connect(self._restyle)
        self._changed()

    def _restyle(self, *_: object) -> None:
        fit_table(self.table, 0)
        self.table.setMinimumHeight(theme.current().px(30 * 7 + 8))

    def _changed(self) -> None:
        try:
            metres, seconds = self.race.typed()
        except FieldError:
            none = words.NOTHING
            rows = [(tr(n), none, none, none, none) for n, _ in sorted(DISTANCES, key=_metres)]
        else:
            rows = equal_races(metres, seconds, self._units)
        fill_table(self.table, [tr(head) for head in HEADINGS], rows, {0})
        self._restyle()
        self.edited.emit()

    def finder(self, start: date) -> Finder:
        return self.race.finder(start)


def _metres(item: tuple[str, float]) -> float:
    return item[1]
