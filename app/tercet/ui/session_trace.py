"""The trace of a session with its heading, what the shading was made from, and the reason why."""

from __future__ import annotations

import math
from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from tercet.language import mark, several, tr
from tercet.library.trace import SessionTrace, minutes
from tercet.library.views import SessionView
from tercet.ui import theme as themes
from tercet.ui import words
from tercet.ui.charts import TraceChart
from tercet.ui.charts.trace_shape import drawn_by, on_level_ground
from tercet.ui.charts.trace_strips import strips_of
from tercet.ui.parts_card import LABELS, parts_sentence
from tercet.ui.twin import Twin

HINT = mark(
    "Point at the trace, or use the arrow keys on it, to read why a second has its shade. Drag "
    "along it, or press Space, arrows and Enter, to say what a stretch was."
)
UNCOUNTED = mark(
    "Kept, and not counted as running. If it is to count, say under Kind that it was a run."
)
#: Time in each shade, in the order of shades.
SHADE_TIMES = (
    mark("easy {time}"),
    mark("moderate {time}"),
    mark("hard {time}"),
    mark("not running {time}"),
    mark("not judged {time}"),
)


class TracePanel(QWidget):
    """Heading, chart (or table after Ctrl+T), and a line that says why a second is so."""

    def __init__(self) -> None:
        super().__init__()
        self._why: Callable[[int], str] = lambda _second: ""
        self._hint = HINT
        self.heading, self.made_from, self.reason = QLabel(), QLabel(), QLabel(tr(HINT))
        self.chart = TraceChart()
        self.chart.second_pointed.connect(self._show_reason)
        self.twin = Twin(self.chart, tr("The session minute by minute"), self)
        for label in (self.made_from, self.reason):
            label.setProperty("secondary", True)
            label.setWordWrap(True)
        self.made_from.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        policy = QSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.reason.setSizePolicy(policy)
        head = QHBoxLayout()
        head.addWidget(self.heading)
        head.addSpacing(12)
        head.addWidget(self.made_from, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addLayout(head)
        column.addWidget(self.twin, 1)
        column.addWidget(self.reason)
        themes.changed.connect(self.restyle)
        self.restyle()

    def show_trace(
        self,
        session: SessionView,
        trace: SessionTrace,
        made_from: str,
        why: Callable[[int], str],
        units: words.Units,
    ) -> None:
        """Show a session's seconds, and what the shading was made from."""
        self._why = why
        self.heading.setText(heading_words(trace, units))
        self.made_from.setText(made_from)
        self._hint = HINT if session.sport == "running" else UNCOUNTED
        self.reason.setText(tr(self._hint))
        self.chart.set_data(trace, units)
        count = len(trace.repetitions)
        repetitions = (
            several(count, mark("{n} repetition"), mark("{n} repetitions"))
            if count
            else tr("no repetitions")
        )
        self.chart.setAccessibleName(self.heading.text())
        strips = [strip.title for strip in strips_of(trace).values()]
        below = tr("Below it: {strips}.", strips=". ".join(strips)) if strips else ""
        self.chart.setAccessibleDescription(
            f"{words.spoken(trace.elapsed_s)}, {repetitions}; "
            f"{parts_sentence(trace.parts, units)} {below} {made_from}"
        )
        self.twin.set_numbers(lambda: minute_rows(trace, units), left={-1})

    def restyle(self, *_: object) -> None:
        look = themes.current()
        self.heading.setFont(look.font("body_bold"))
        for label in (self.made_from, self.reason):
            label.setFont(look.font("body"))
        # Two lines are kept, so that the plot doesn't jump while one points along it.
        self.reason.setMinimumHeight(2 * self.reason.fontMetrics().lineSpacing())

    def _show_reason(self, second: int) -> None:
        if second < 0:
            self.reason.setText(tr(self._hint))
            return
        self.reason.setText(self._why(second))
        self.chart.setAccessibleDescription(self.reason.text())


def heading_words(trace: SessionTrace, units: words.Units) -> str:
    """Title of the trace with its unit, once."""
    by = drawn_by(trace)
    if by == "heart":
        return tr("Heart rate through the session, /min")
    if by == "power":
        return tr("Running power through the session, W")
    unit = words.PACE_WORDS[units]
    if on_level_ground(trace):
        return tr("Pace through the session, hills taken out, min{unit}", unit=unit)
    return tr("Pace through the session, min{unit}", unit=unit)


def minute_rows(
    trace: SessionTrace, units: words.Units
) -> tuple[tuple[str, ...], list[tuple[str, ...]]]:
    """Headings and rows of the table, a minute a row; columns without any data are left out."""
    table = minutes(trace)
    columns: list[tuple[str, list[str]]] = [
        (tr("from"), [words.duration(row.start_s) for row in table])
    ]
    for heading, values, write in (
        (
            tr("pace {unit}", unit=words.PACE_WORDS[units]),
            [row.level_speed for row in table],
            lambda value: words.bare_pace(value, units),
        ),
        (tr("heart rate /min"), [row.heart_rate for row in table], words.number),
        (tr("power W"), [row.power for row in table], words.number),
        (tr("height m"), [row.altitude for row in table], words.number),
    ):
        if any(math.isfinite(value) for value in values):
            written = [write(v) if math.isfinite(v) else words.NOTHING for v in values]
            columns.append((heading, written))
    shades = [
        ", ".join(
            tr(text, time=words.duration(amount))
            for text, amount in zip(SHADE_TIMES, row.seconds, strict=True)
            if amount > 0.0
        )
        for row in table
    ]
    if trace.parts:
        columns.append((tr("part"), [_part_at(trace, row.start_s) for row in table]))
    columns.append((tr("shade"), shades))
    return tuple(name for name, _ in columns), list(zip(*(c for _, c in columns), strict=True))


def _part_at(trace: SessionTrace, start_s: float) -> str:
    """The part that holds the middle of a minute, or its last second."""
    middle = min(start_s + 30.0, trace.elapsed_s)
    return next(
        (tr(LABELS[part.label]) for part in trace.parts if middle <= part.end_s), words.NOTHING
    )
