"""The lines from the runner's own recordings: what was found, from which efforts, or why not."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QGridLayout, QVBoxLayout

from tercet.domain import DatedThresholds
from tercet.language import mark, several, tr
from tercet.library.engine_words import worded
from tercet.library.library import Library
from tercet.library.lines import Own
from tercet.ui import words
from tercet.ui.flow import FlowLayout
from tercet.ui.lines.source import completed
from tercet.ui.lines.standing import pace_range
from tercet.ui.thresholds_pages import FieldError, Finder, Page
from tercet.ui.widgets import Label, button

SPANS = (
    (mark("the last 8 weeks"), 56),
    (mark("the last 90 days"), 90),
    (mark("the last 6 months"), 183),
)


class RecordedPage(Page):
    """Critical speed, both lines and their heart rates, each with its interval."""

    span_asked = Signal(int)  # days
    read_asked = Signal()

    def __init__(self, units: words.Units = "km") -> None:
        super().__init__()
        self._units = units
        self._own: Own | None = None
        self._now: DatedThresholds | None = None
        self.span = QComboBox()
        self.span.setAccessibleName(tr("Runs that count"))
        for name, days in SPANS:
            self.span.addItem(tr(name), days)
        self.span.setCurrentIndex(1)
        self.read = button(tr("Read earlier runs again"))
        self.summary = Label("", "body", wrap=True)
        self.efforts = Label("", "small", "text_2", wrap=True)
        self.silence = Label("", "small", "text_2", wrap=True)
        self.cells: list[tuple[Label, Label, Label]] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 10, 0, 0)
        column.setSpacing(6)
        line = FlowLayout()
        for part in (Label(tr("Races and hard efforts of")), self.span, self.read):
            line.addWidget(part)
        column.addLayout(line)
        column.addWidget(self.summary)
        grid = QGridLayout()
        grid.setColumnStretch(2, 1)
        grid.setHorizontalSpacing(24)
        for row in range(5):
            cells = (Label("", "small", "text_2"), Label("", "body_bold"), Label("", "small"))
            for place, cell in enumerate(cells):
                grid.addWidget(cell, row, place)
            self.cells.append(cells)
        column.addLayout(grid)
        for part in (self.efforts, self.silence):
            column.addWidget(part)
        column.addStretch(1)
        self.read.clicked.connect(self.read_asked)
        self.span.currentIndexChanged.connect(self._respan)

    def _respan(self, _: int) -> None:
        self.edited.emit()
        self.span_asked.emit(self.span_days)

    @property
    def span_days(self) -> int:
        """How far back efforts count. [days]"""
        return int(self.span.currentData())

    def show_own(self, own: Own, now: DatedThresholds | None) -> None:
        """Show what was found."""
        self._own, self._now = own, now
        self.read.setVisible(own.unread > 0)
        self.read.setToolTip(
            several(
                own.unread,
                mark("{n} run was taken in by an earlier version."),
                mark("{n} runs were taken in by an earlier version."),
            )
        )
        found = own.recorded
        rows = self._rows() if found is not None else []
        for k, cells in enumerate(self.cells):
            for place, cell in enumerate(cells):
                cell.setVisible(k < len(rows))
                cell.setText(rows[k][place] if k < len(rows) else "")
        for part in (self.efforts, self.silence):
            part.setVisible(found is not None)
        if found is None:
            self.summary.setText(
                tr(
                    "The recordings do not tell critical speed. {why} Run a trial, enter a race, "
                    "or choose a longer span.",
                    why=own.refusal,
                )
            )
        else:
            self.summary.setText(tr("About, from hard efforts and steady running:"))
            told = [
                tr(
                    "{time} at {pace}",
                    time=words.duration(effort.seconds),
                    pace=words.pace(effort.metres / effort.seconds, self._units),
                )
                for effort in found.critical.efforts
            ]
            self.efforts.setText(
                tr(
                    "From {efforts}, level ground. LT2 is put midway between the maximal lactate "
                    "steady state and critical speed; LT1 at a published share of it, which is "
                    "the rougher of the two.",
                    efforts=words.listed(told),
                )
            )
            self.silence.setText(" ".join(map(worded, found.silence)))

    def _rows(self) -> list[tuple[str, str, str]]:
        assert self._own is not None and self._own.recorded is not None
        critical, estimate = self._own.recorded.critical, self._own.recorded.estimate
        rows = [
            (
                tr("Critical speed"),
                tr("about {value}", value=words.pace(critical.speed, self._units)),
                pace_range(critical.speed, critical.speed_half, self._units),
            ),
            (
                tr("Distance above it"),
                tr("about {value}", value=f"{words.number(critical.reserve)} m"),
                tr(
                    "{low} to {high} m",
                    low=f"{max(critical.reserve - critical.reserve_half, 0):.0f}",
                    high=f"{critical.reserve + critical.reserve_half:.0f}",
                ),
            ),
        ]
        for name in ("lt1", "lt2"):
            speed = getattr(estimate.values, f"{name}_speed")
            beats = getattr(estimate.values, f"{name}_hr")
            value = tr("about {value}", value=words.pace(speed, self._units))
            ends = pace_range(speed, estimate.interval[f"{name}_speed"], self._units)
            if beats is not None:
                half = estimate.interval[f"{name}_hr"]
                value += f", {words.heart_rate(beats)}"
                low, high = f"{beats - half:.0f}", f"{beats + half:.0f}"
                ends += "; " + tr("{low} to {high} /min", low=low, high=high)
            rows.append((name.upper(), value, ends))
        return rows

    def finder(self, start: date) -> Finder:
        if self._own is None or self._own.recorded is None:
            raise FieldError(
                tr("The recordings do not tell the lines. Choose a longer span or another way."),
                self.span,
            )
        estimate = self._own.recorded.estimate
        try:
            entry = completed(
                estimate.values,
                estimate.interval,
                self._now,
                start,
                mark("from runs"),
                estimated=True,
            )
        except ValueError as error:
            raise FieldError(str(error), self.span) from error

        def find(_: Library) -> DatedThresholds:
            return entry

        return find
