"""What stands today: the lines in force, the easy ceiling, and what is worth a look."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from tercet.domain import DatedThresholds
from tercet.engine.steady import Meeting
from tercet.language import mark, several, tr
from tercet.library.dated import in_force
from tercet.library.engine_words import worded
from tercet.library.lines import Flag, Own
from tercet.ui import theme, words
from tercet.ui.flow import FlowLayout
from tercet.ui.widgets import BandRow, Label, Pane, Rule, button

#: Rows of the easy ceiling.
UP, DOWN, WARM = 0.01, -0.02, 25.0
_MADE = (
    mark("{ends} in 9 of 10 cases, on the level; from {n} run with steady running since {day}."),
    mark("{ends} in 9 of 10 cases, on the level; from {n} runs with steady running since {day}."),
)
_MADE_WARM = (
    mark(
        "{ends} in 9 of 10 cases, on the level; from {n} run with steady running since {day}, "
        "at {low} to {high} °C."
    ),
    mark(
        "{ends} in 9 of 10 cases, on the level; from {n} runs with steady running since {day}, "
        "at {low} to {high} °C."
    ),
)


def pace_range(speed: float, half: float, units: words.Units) -> str:
    """Both ends of a speed's interval as paces, the faster first."""
    ends = (speed + half, max(speed - half, 0.5))
    fast, slow = (words.bare_pace(end, units) for end in ends)
    return tr("{low} to {high}", low=fast, high=slow)


class InForcePane(Pane):
    """Both lines as pace, or else watts, and as heart rate, and the ends of the heart's range."""

    def __init__(self, units: words.Units = "km") -> None:
        super().__init__()
        self._units = units
        head = QHBoxLayout()
        head.addWidget(Label(tr("In force today"), "pane_title"))
        self.source = Label("", "small", "text_2", wrap=True)
        self.source.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        head.addWidget(self.source, 1)
        grid = QGridLayout()
        grid.setVerticalSpacing(2)
        grid.setColumnStretch(1, 1)
        grid.setColumnStretch(2, 1)
        self.cells: dict[str, tuple[Label, Label]] = {}
        for row, line in enumerate(("lt1", "lt2")):
            grid.addWidget(Label(line.upper(), "small_bold"), 2 * row, 0)
            for place, kind in enumerate(("speed", "hr"), start=1):
                value, interval = Label("", "big"), Label("", "small", "text_2")
                grid.addWidget(value, 2 * row, place)
                grid.addWidget(interval, 2 * row + 1, place)
                self.cells[f"{line}_{kind}"] = (value, interval)
        self.ends = Label("", "small", "text_2", wrap=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 10)
        column.setSpacing(6)
        column.addLayout(head)
        column.addLayout(grid)
        column.addWidget(Rule())
        column.addWidget(self.ends)
        column.addStretch(1)

    def show_entries(self, entries: Sequence[DatedThresholds], today: date) -> None:
        """Show what is in force on a day."""
        now = in_force(entries, today)

        def told(text: str) -> str:
            estimated = now is not None and now.estimated
            return tr("about {value}", value=text) if estimated else text

        for name, (value, interval) in self.cells.items():
            found = getattr(now.values, name) if now is not None else None
            half = now.interval.get(name) if now is not None else None
            watts = getattr(now.values, f"{name[:3]}_power") if now is not None else None
            if found is None and watts and name.endswith("speed"):
                value.setText(told(words.watts(watts)))
            elif found is None:
                value.setText(words.NOTHING)
            elif name.endswith("speed"):
                value.setText(told(words.pace(found, self._units)))
            else:
                value.setText(told(words.heart_rate(found)))
            if found is None or half is None:
                interval.setText("")
            elif name.endswith("speed"):
                interval.setText(pace_range(found, half, self._units))
            else:
                low, high = f"{found - half:.0f}", f"{found + half:.0f}"
                interval.setText(tr("{low} to {high}", low=low, high=high))
            interval.setVisible(bool(interval.text()))
        if now is None:
            self.source.setText(tr("none yet"))
            self.ends.setText(tr("Running is kept but not judged until there are thresholds."))
            return
        weeks = max(0, (today - now.age_from).days // 7)
        self.source.setText(
            several(
                weeks,
                mark("{source}, {day}, {n} week old"),
                mark("{source}, {day}, {n} weeks old"),
                source=worded(now.source),
                day=words.short_day(now.start),
            )
        )
        values = now.values
        ends = [
            tr(word, beats=words.heart_rate(beats))
            for word, beats in (
                (mark("Resting {beats}"), values.hr_rest),
                (mark("Highest {beats}"), values.hr_max),
            )
            if beats is not None
        ]
        if values.top_speed is not None:
            ends.append(tr("Top speed {pace}", pace=words.pace(values.top_speed, self._units)))
        if values.by_speed and values.lt1_power and values.lt2_power:
            lt1, lt2 = f"{values.lt1_power:.0f}", f"{values.lt2_power:.0f}"
            ends.append(tr("Running power {lt1} and {lt2} W", lt1=lt1, lt2=lt2))
        self.ends.setText(
            ". ".join([*ends, ""]).strip() or tr("Resting and highest are not known.")
        )


class CeilingPane(Pane):
    """Keep easy runs slower than this; and where hard begins."""

    def __init__(self, units: words.Units = "km") -> None:
        super().__init__()
        self._units = units
        self.sentence = Label("", "body_bold", wrap=True)
        self.interval = Label("", "small", "text_2", wrap=True)
        self.rows: list[tuple[Label, Label, Label]] = []
        self._grid = QGridLayout()
        self._grid.setVerticalSpacing(3)
        self._grid.setColumnStretch(0, 1)
        for row in range(3):
            cells = (Label("", "small"), Label("", "small_bold"), Label("", "small", "text_2"))
            for place, cell in enumerate(cells):
                self._grid.addWidget(cell, row, place)
            self.rows.append(cells)
        self.hard = Label("", "small", "text_2", wrap=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 10)
        column.setSpacing(4)
        column.addWidget(Label(tr("Easy ceiling"), "pane_title"))
        for part in (self.sentence, self.interval):
            column.addWidget(part)
        self._rule = Rule()
        column.addWidget(self._rule)
        column.addLayout(self._grid)
        column.addWidget(self.hard)
        column.addStretch(1)

    def show_own(self, own: Own) -> None:
        """Show what steady running of the last weeks tells."""
        met = own.ceiling
        for cells in self.rows:
            for cell in cells:
                cell.setVisible(met is not None)
        self._rule.setVisible(met is not None)
        self.hard.setVisible(own.hard_end is not None)
        if met is None:
            self.sentence.setText(tr("Not known yet"))
            self.interval.setText(
                " ".join(
                    (
                        own.ceiling_refusal,
                        tr("It needs steady easy running with heart rate."),
                    )
                )
            )
            return
        self.sentence.setText(
            tr("Keep easy runs slower than about {pace}", pace=words.pace(met.speed, self._units))
        )
        low, high = (f"{degrees:.0f}" for degrees in own.warmth or (0.0, 0.0))
        self.interval.setText(
            several(
                met.runs,
                *(_MADE if own.warmth is None else _MADE_WARM),
                ends=pace_range(met.speed, met.half, self._units),
                day=words.short_day(own.days[0]),
                low=low,
                high=high,
            )
        )
        self._fill(0, tr("1 % uphill"), met.on_grade(UP), met.half)
        self._fill(1, tr("2 % downhill"), met.on_grade(DOWN), met.half)
        warm = own.warmth is not None
        self._fill(2, tr("at 25 °C"), met.in_warmth(WARM), 1.3 * met.half)
        for cell in self.rows[2]:
            cell.setVisible(warm)
        self._show_hard(own.hard_end)

    def _fill(self, row: int, word: str, speed: float, half: float) -> None:
        cells = self.rows[row]
        cells[0].setText(word)
        cells[1].setText(tr("about {value}", value=words.pace(speed, self._units)))
        cells[2].setText(pace_range(speed, half, self._units))

    def _show_hard(self, met: Meeting | None) -> None:
        if met is not None:
            ends = pace_range(met.speed, met.half, self._units)
            pace = words.pace(met.speed, self._units)
            self.hard.setText(
                tr(
                    "Hard begins at about {pace} ({ends}), by heart rate over LT2.",
                    pace=pace,
                    ends=ends,
                )
            )


class LookPane(Pane):
    """What contradicts the lines: the reason first, then what may be done."""

    runs_asked = Signal(object)  # tuple of run ids
    offer_asked = Signal(str)
    leave_asked = Signal(str)  # key

    def __init__(self) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 10)
        column.setSpacing(8)
        column.addWidget(Label(tr("Worth a look"), "pane_title"))
        self._inside = QVBoxLayout()
        column.addLayout(self._inside)
        column.addStretch(1)
        column.addWidget(Label(tr("Nothing is changed unless you do it."), "small", "text_2"))
        self.rows: list[QWidget] = []
        self._flags: tuple[Flag, ...] = ()

    def show_flags(self, flags: Sequence[Flag]) -> None:
        """Show these; those that are shown already stay, with the focus in them."""
        if self.rows and tuple(flags) == self._flags:
            return
        self._flags = tuple(flags)
        for row in self.rows:
            self._inside.removeWidget(row)
            row.deleteLater()
        self.rows = [self._row(flag) for flag in flags]
        if not self.rows:
            self.rows = [
                Label(
                    tr("Nothing speaks against the lines in force."), "small", "text_2", wrap=True
                )
            ]
        for row in self.rows:
            self._inside.addWidget(row)

    def _row(self, flag: Flag) -> QWidget:
        row = BandRow("control")
        row.setAccessibleName(flag.reason)
        column = QVBoxLayout(row)
        column.setContentsMargins(theme.current().px(20), 8, 10, 8)
        column.addWidget(Label(flag.reason, "small", wrap=True))
        buttons = FlowLayout()
        if flag.runs:
            open_runs = button(
                tr("Open the run") if len(flag.runs) == 1 else tr("Open the last of them")
            )
            open_runs.clicked.connect(lambda: self.runs_asked.emit(flag.runs))
            buttons.addWidget(open_runs)
        offer = button(
            tr("Find them from runs") if flag.offer == "recordings" else tr("Use a race")
        )
        offer.clicked.connect(lambda: self.offer_asked.emit(flag.offer))
        leave = button(tr("Leave it"), name=tr("Leave it: {why}", why=flag.reason))
        leave.clicked.connect(lambda: self.leave_asked.emit(flag.key))
        for made in (offer, leave):
            buttons.addWidget(made)
        column.addLayout(buttons)
        return row
