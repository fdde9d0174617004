"""A field test in a run that the runner points at: recognised, or said why not."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from PySide6.QtWidgets import QComboBox, QVBoxLayout

from tercet.domain import DatedThresholds
from tercet.language import tr
from tercet.library import lines
from tercet.library.library import Library
from tercet.store.lines_queries import RunPrint
from tercet.ui import words
from tercet.ui.flow import FlowLayout
from tercet.ui.lines.source import completed
from tercet.ui.lines.words import MAXIMAL
from tercet.ui.thresholds_pages import Finder, Page
from tercet.ui.widgets import Label

#: Runs older than this are not offered. [days]
OFFERED_DAYS = 183


class PointedPage(Page):
    """A run to choose; the test in it is sought when its change is asked for."""

    def __init__(self) -> None:
        super().__init__()
        self._now: DatedThresholds | None = None
        self._prints: dict[int, RunPrint] = {}
        self.run = QComboBox()
        self.run.setAccessibleName(tr("Run with a field test in it"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 10, 0, 0)
        line = FlowLayout()
        line.addWidget(Label(tr("The test is in the run of")))
        line.addWidget(self.run)
        column.addLayout(line)
        text = tr(
            "Recognised are half an hour at one even speed, and trials of about 3 and 12 minutes "
            "in one run, with easy running around them."
        )
        column.addWidget(Label(" ".join((text, tr(MAXIMAL))), "small", "text_2", wrap=True))
        column.addStretch(1)
        self.run.currentIndexChanged.connect(lambda _: self.edited.emit())

    def show_runs(
        self, prints: Sequence[RunPrint], now: DatedThresholds | None, today: date
    ) -> None:
        """Offer the runs of the last half year, latest first; the choice stays."""
        self._now = now
        chosen = self.run.currentData()
        late = [
            item for item in reversed(prints) if item.day > today - timedelta(days=OFFERED_DAYS)
        ]
        if [item.id for item in late] == [self.run.itemData(k) for k in range(self.run.count())]:
            return
        self.run.blockSignals(True)
        self.run.clear()
        for item in late:
            name = item.name or (tr("Race") if item.kind == "race" else tr("Run"))
            self.run.addItem(
                f"{words.short_day(item.day)}, {name}, {words.hours(item.moving_s)}", item.id
            )
        self.run.setCurrentIndex(max(0, self.run.findData(chosen)))
        self.run.blockSignals(False)
        self._prints = {item.id: item for item in late}

    @property
    def day(self) -> date | None:
        """Day of the run chosen."""
        found = self._prints.get(self.run.currentData())
        return found.day if found is not None else None

    def finder(self, start: date) -> Finder:
        from tercet.ui.thresholds_pages import FieldError

        run_id = self.run.currentData()
        if run_id is None:
            raise FieldError(tr("There is no run of the last half year yet."), self.run)
        now = self._now

        def find(library: Library) -> DatedThresholds:
            test = library.call(lines.field_test, run_id)
            estimate = test.estimate
            # LT2's heart rate alone is half a pair: LT1's is taken at the same share of it.
            return completed(
                lines.paired(estimate.values, now),
                estimate.interval,
                now,
                start,
                estimate.source,
                estimated=False,
            )

        return find
