"""What a change would do, before it is done: stairs now above then, and one button to do it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QProgressBar, QVBoxLayout, QWidget

from tercet import week_days
from tercet.domain import DatedThresholds
from tercet.language import mark, several, tr
from tercet.library.dated import in_force
from tercet.library.library import Preview
from tercet.library.views import SeasonView, SessionView
from tercet.store import queries
from tercet.ui import words
from tercet.ui.flow import FlowLayout
from tercet.ui.widgets import Label, Pane, StairWidget, button

#: At most so many stretches are compared.
PAIRS = 3


def stretches(view: SeasonView) -> list[tuple[str, list[SessionView]]]:
    """The running of the block under way, this week, and everything."""
    sessions = [
        session
        for block in view.blocks
        for week in block.weeks
        for day in week.days
        for session in day
        if session.sport == "running"
    ]
    first_day = week_days.start_of(view.today)
    week = [item for item in sessions if first_day <= item.day <= view.today]
    found: list[tuple[str, list[SessionView]]] = []
    for block in view.blocks:
        inside = [item for item in sessions if block.start <= item.day <= block.end]
        if block.start <= view.today <= block.end and inside:
            found.append((block.name, inside))
    if not found:
        run = [b for b in view.blocks if any(b.start <= s.day <= b.end for s in sessions)]
        if run:
            last = max(run, key=lambda block: block.start)
            found.append((last.name, [s for s in sessions if last.start <= s.day <= last.end]))
    if week:
        found.append((tr("this week"), week))
    if sessions:
        found.append((tr("all runs"), sessions))
    return found[:PAIRS]


class _Pair(QWidget):
    """One stretch: its name and share in words, and its two stairs on one scale."""

    def __init__(self) -> None:
        super().__init__()
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setVerticalSpacing(0)
        grid.setColumnStretch(2, 1)
        self.name, self.words = Label("", "small_bold"), Label("", "small", "text_2")
        self.now, self.then = StairWidget(), StairWidget()
        for row, (left, word, stair) in enumerate(
            ((self.name, tr("now"), self.now), (self.words, tr("then"), self.then))
        ):
            grid.addWidget(left, row, 0)
            grid.addWidget(Label(word, "small", "text_2"), row, 1)
            grid.addWidget(stair, row, 2)

    def show_sums(self, name: str, before: Sequence[float], after: Sequence[float]) -> None:
        """Show sums by shade."""
        full = max(sum(before[:3]), sum(after[:3]), 1.0)
        shares = []
        for stair, sums in ((self.now, before), (self.then, after)):
            stair.set((sums[0], sums[1], sums[2], sums[3], sums[4]), full)
            judged = sum(sums[:3])
            shares.append(words.number(100 * sums[0] / judged) if judged else words.NOTHING)
        self.name.setText(name)
        self.words.setText(tr("{now} to {then} % easy", now=shares[0], then=shares[1]))
        self.now.setAccessibleName(tr("{name}, now: {share} % easy", name=name, share=shares[0]))
        self.then.setAccessibleName(tr("{name}, then: {share} % easy", name=name, share=shares[1]))


class ChangePane(Pane):
    """Nothing until it is asked; then a bar; then the pairs and the buttons."""

    use_asked = Signal()
    keep_asked = Signal()

    def __init__(self, units: words.Units = "km") -> None:
        super().__init__()
        self._units = units
        self.use = button(tr("Use them"), primary=True)
        self.keep = button(tr("Keep as it is"))
        self.stop = button(tr("Stop"))
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(tr("Runs judged"))
        self.words = Label("", "small", "text_2")
        self.lines = Label("", "small", wrap=True)
        self.pairs = [_Pair() for _ in range(PAIRS)]
        head = FlowLayout(gap=12)
        head.addWidget(Label(tr("What this would change"), "pane_title"))
        for made in (self.words, self.use, self.keep, self.stop):
            head.addWidget(made)
        row = QHBoxLayout()
        row.setSpacing(24)
        for pair in self.pairs:
            row.addWidget(pair, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 10)
        column.setSpacing(6)
        column.addLayout(head)
        column.addWidget(self.bar)
        column.addLayout(row)
        column.addWidget(self.lines)
        self.use.clicked.connect(self.use_asked)
        self.keep.clicked.connect(self.keep_asked)
        self.stop.clicked.connect(self.keep_asked)
        self.hide()

    def show_waiting(self) -> None:
        """Judging has begun."""
        self.bar.setRange(0, 0)
        self.words.setText(tr("Every run is judged by them, without changing anything yet."))
        self._show(waiting=True)

    def _show(self, *, waiting: bool) -> None:
        self.bar.setVisible(waiting)
        self.stop.setVisible(waiting)
        for part in (self.use, self.keep, self.lines, *self.pairs):
            part.setVisible(not waiting)
        self.show()

    def show_progress(self, now: Any) -> None:
        """Judging goes on."""
        self.bar.setRange(0, max(now.total, 1))
        self.bar.setValue(now.done)

    def show_preview(
        self, preview: Preview, view: SeasonView, before: Sequence[DatedThresholds], start: date
    ) -> None:
        """Say what would change."""
        self._show(waiting=False)
        shown = stretches(view)
        for k, pair in enumerate(self.pairs):
            pair.setVisible(k < len(shown))
            if k < len(shown):
                name, sessions = shown[k]
                pair.show_sums(name, *_sums(sessions, preview))
        changed = preview.changed
        self.words.setText(
            several(
                changed,
                mark("of {whole}, {n} run changes; it can be undone"),
                mark("of {whole}, {n} runs change; it can be undone"),
                whole=len(preview.judgements),
            )
        )
        day = words.short_day(start)
        self.use.setText(tr("Use from {day}", day=day))
        self.lines.setText(self._compared(preview, before, start))

    def _compared(self, preview: Preview, before: Sequence[DatedThresholds], start: date) -> str:
        old, new = in_force(before, start), in_force(preview.entries, start)
        said = []
        for name in ("lt1", "lt2"):
            bits = []
            for kind, write in (
                ("speed", self._pace),
                ("hr", words.heart_rate),
                ("power", words.watts),
            ):
                a = getattr(old.values, f"{name}_{kind}") if old is not None else None
                b = getattr(new.values, f"{name}_{kind}") if new is not None else None
                if a is not None or b is not None:
                    ends = [words.NOTHING if x is None else write(x) for x in (a, b)]
                    old_new = tr("{old} to {new}", old=ends[0], new=ends[1])
                    bits.append(old_new if ends[0] != ends[1] else ends[1])
            if bits:
                said.append(f"{name.upper()} {', '.join(bits)}")
        whole = "; ".join(said) + "."
        return tr("About: {values}", values=whole) if new is not None and new.estimated else whole

    def _pace(self, speed: float) -> str:
        return words.pace(speed, self._units)


def _sums(sessions: Sequence[SessionView], preview: Preview) -> tuple[list[float], list[float]]:
    before, after = [0.0] * 5, [0.0] * 5
    for session in sessions:
        row = preview.judgements.get(session.id)
        then = [row[name] for name in queries.SECONDS] if row is not None else session.seconds
        before = [a + b for a, b in zip(before, session.seconds, strict=True)]
        after = [a + b for a, b in zip(after, then, strict=True)]
    return before, after
