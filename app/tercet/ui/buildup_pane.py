"""The pane of the build-up by block: four values, the chart, and the same as a table."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAccessible, QAccessibleEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from tercet.engine.shades import Shade
from tercet.language import mark, several, tr
from tercet.library.counted import Behind, sessions_of
from tercet.library.stretch import Stretch
from tercet.library.views import BuildUp, RaceView
from tercet.ui import theme as themes
from tercet.ui import words
from tercet.ui.charts import BuildUpChart
from tercet.ui.charts.buildup_shape import BlockShape
from tercet.ui.total_values import TotalValues
from tercet.ui.total_words import Total, block_total, sessions_words, stretch_total, total_words
from tercet.ui.twin import Twin
from tercet.ui.values import TARGET, Value

EMPTY = mark("Nothing has been run in this season yet. Recordings or a paper log fill this chart.")
HEADINGS = (
    mark("block"), mark("easy"), mark("moderate"), mark("hard"), mark("share of easy"),
    mark("sessions easy / moderate / hard"),
)  # fmt: skip
TIME = mark("time in hours")
DISTANCE = {"km": mark("distance in kilometres"), "miles": mark("distance in miles")}
SHOW_TIME = mark("Show time in hours")
SHOW_DISTANCE = {
    "km": mark("Show distance in kilometres"),
    "miles": mark("Show distance in miles"),
}


def stretch_words(stretch: Stretch) -> str:
    """Which days a stretch holds: ``4 weeks, 6 Apr to 3 May``."""
    first, last = words.short_day(stretch.first), words.short_day(stretch.last)
    if stretch.first == stretch.last:
        return first
    days = tr("{first} to {last}", first=first, last=last)
    if (stretch.last - stretch.first).days % 7 != 6:
        return days
    return several(stretch.weeks, mark("{n} week, {days}"), mark("{n} weeks, {days}"), days=days)


class BuildUpPane(QFrame):
    """Cumulative easy, moderate and hard by block, in hours or by distance.

    ``week_pointed`` gives the Monday of the week under the pointer or the arrow keys, or None.
    """

    week_pointed = Signal(object)
    stretch_chosen = Signal(object)  # first and last day of a stretch of weeks, or None
    why_asked = Signal(object, object)  # first and last day of the totals shown
    folded = Signal()  # the chart was shown or hidden, on asking

    def __init__(self, units: words.Units = "km") -> None:
        super().__init__()
        self.setProperty("pane", True)
        self._units = units
        self._time: tuple[BuildUp, ...] = ()
        self._metres: tuple[BuildUp, ...] = ()
        self._today = date.min
        self._races: tuple[RaceView, ...] = ()
        self._title, self._block = QLabel(tr("Build-up by block")), QLabel()
        self._block.setProperty("secondary", True)
        self.unit_button = QPushButton()
        self.unit_button.setProperty("flat", True)
        self.unit_button.setCheckable(True)
        self.unit_button.setAccessibleName(tr("Unit of the build-up"))
        self.unit_button.toggled.connect(self._redraw)
        self.easy = Value(tr("easy"), Shade.EASY)
        self.moderate = Value(tr("moderate"), Shade.MODERATE)
        self.hard = Value(tr("hard"), Shade.HARD)
        self.in_hand = Value(tr("easy in hand"), TARGET)
        self.chart = BuildUpChart()
        self.chart.week_pointed.connect(self.week_pointed)
        self.chart.stretch_chosen.connect(self.stretch_chosen)
        self._stretch: Stretch | None = None
        self.twin = Twin(self.chart, tr("Build-up by block as a table"), self)
        self._folded = False
        self._written: dict[int, tuple[BlockShape, tuple[str, ...]]] = {}
        self.show_chart = QPushButton(tr("Show chart"))
        self.show_chart.setCheckable(True)
        self.show_chart.toggled.connect(self._chart_asked)
        self._empty = QLabel(tr(EMPTY))
        self._empty.setWordWrap(True)
        self._empty.setAlignment(Qt.AlignmentFlag.AlignTop)
        self._values = TotalValues()
        self._values.asked.connect(self._ask_why)
        self._column = QVBoxLayout(self)
        self._arrange()
        themes.changed.connect(self.restyle)
        self.restyle()
        self._redraw()

    def show_build_up(
        self,
        time: Sequence[BuildUp],
        metres: Sequence[BuildUp],
        today: date,
        races: Sequence[RaceView] = (),
    ) -> None:
        """Show a season.

        Parameters
        ----------
        time, metres : sequence of BuildUp
            The same blocks in seconds and in metres, oldest first.
        today : date
            The day that parts what was run from what is to come.
        races : sequence of RaceView
            Marked at the chart's foot.
        """
        self._time, self._metres = tuple(time), tuple(metres)
        self._today, self._races = today, tuple(races)
        self._redraw()

    def set_units(self, units: words.Units) -> None:
        """Write distances in kilometres or miles."""
        if units != self._units:
            self._units = units
            self._redraw()

    def mark_week(self, first_day: date | None) -> None:
        """Mark the week pointed at in the sheet."""
        self.chart.mark_week(first_day)

    def show_stretch(self, stretch: Stretch | None) -> None:
        """Show the sums of a stretch in place of the block's, or the block's again."""
        if stretch is None and self._stretch is None:
            return
        self._stretch = stretch
        self.chart.mark_stretch((stretch.first, stretch.last) if stretch is not None else None)
        self._redraw()

    def restyle(self, *_: object) -> None:
        look = themes.current()
        self._title.setFont(look.font("pane_title"))
        for label in (self._block, self._empty):
            label.setFont(look.font("body"))
        self.unit_button.setFont(look.font("body"))
        side, foot = look.px(16), look.px(6 if self._folded else 12)
        self._column.setContentsMargins(side, look.px(6 if self._folded else 8), side, foot)

    @property
    def ring(self) -> tuple[QWidget, ...]:
        """What may take the focus of this pane, the chart first."""
        return (self.chart, self.twin.table, self.show_chart)

    def show_why(self, first: date, last: date, told: Behind) -> None:
        """Say how the totals of these days came about, if they are still shown."""
        shown = self._total()
        if shown is not None and (shown.first, shown.last) == (first, last):
            self._values.show_why(total_words(shown, told))

    def _ask_why(self) -> None:
        shown = self._total()
        if shown is not None:
            self.why_asked.emit(shown.first, shown.last)

    def _total(self) -> Total | None:
        """What the values are the totals of: the stretch chosen, or the current block."""
        if self._stretch is not None:
            return stretch_total(stretch_words(self._stretch), self._stretch)
        current = self.chart.current
        return block_total(current.block) if current is not None else None

    def fold(self, folded: bool) -> None:
        """Keep the values, with the chart only on asking."""
        if folded == self._folded:
            return
        self._folded = folded
        for value in (self.easy, self.moderate, self.hard, self.in_hand):
            value.set_inline(folded)
        self.restyle()
        self._redraw()

    @property
    def short(self) -> bool:
        """Whether the pane holds no chart now, so that it needs little height."""
        return self._folded and not self.show_chart.isChecked()

    def _chart_asked(self, shown: bool) -> None:
        self.show_chart.setText(tr("Hide chart") if shown else tr("Show chart"))
        self._redraw()
        self.folded.emit()

    def _arrange(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self._title)
        head.addSpacing(8)
        head.addWidget(self._block, 1)
        head.addWidget(self.unit_button)
        head.addWidget(self.show_chart)
        values = QHBoxLayout(self._values)
        values.setContentsMargins(0, 0, 0, 0)
        for value in (self.easy, self.moderate, self.hard, self.in_hand):
            values.addWidget(value, 1)
        column = self._column
        column.setSpacing(8)
        column.addLayout(head)
        column.addWidget(self._values)
        column.addWidget(self._empty, 1)
        column.addWidget(self.twin, 1)

    def _redraw(self, *_: object) -> None:
        by_distance = self.unit_button.isChecked()
        self.unit_button.setText(tr(DISTANCE[self._units] if by_distance else TIME))
        other = SHOW_TIME if by_distance else SHOW_DISTANCE[self._units]
        self.unit_button.setToolTip(tr(other))
        self.unit_button.setAccessibleDescription(self.unit_button.text())
        blocks = self._metres if by_distance else self._time
        unit = "metres" if by_distance else "time"
        self.chart.set_data(blocks, self._today, self._races, unit, self._units)
        current = self.chart.current
        self._values.forget(self._total())
        ran = any(shape.share is not None for shape in self.chart.shapes)
        for widget, shown in (
            (self._values, ran),
            (self.twin, ran and not self.short),
            (self._empty, not ran and not self.short),
            (self.unit_button, ran and not self.short),
            (self.show_chart, ran and self._folded),
        ):
            widget.setVisible(shown)
        self.chart.setMinimumHeight(themes.current().px(130) if self._folded else 0)
        self.twin.set_numbers(lambda: (tuple(map(tr, HEADINGS)), self._rows()), left={0})
        summary = self._summary() if ran else tr(EMPTY)
        self.chart.setAccessibleDescription(summary)
        self.setAccessibleName(tr("Build-up by block"))
        self.setAccessibleDescription(summary)
        if not ran or current is None:
            self._block.setText("")
            return
        if self._stretch is not None:
            self._show_stretch(self._stretch)
            return
        going = current.left <= self._today.toordinal() < current.right
        name = current.block.name
        self._block.setText(tr("{block} so far", block=name) if going else name)
        ends = (current.easy, current.moderate, current.hard)
        about = current.block.estimated
        for value, line in zip((self.easy, self.moderate, self.hard), ends, strict=True):
            value.show_value(_about(self.chart.value(line[-1] if len(line) else 0.0), about))
        short = current.in_hand < 0.0
        self.in_hand.show_swatch(True)
        self.in_hand.show_value(
            _about(self.chart.value(current.in_hand), about),
            tr("easy short") if short else tr("easy in hand"),
        )

    def _show_stretch(self, stretch: Stretch) -> None:
        time = not self.unit_button.isChecked()
        amounts = stretch.seconds if time else stretch.metres
        for value, amount in zip((self.easy, self.moderate, self.hard), amounts, strict=False):
            written = words.hours(amount) if time else words.distance(amount, self._units)
            value.show_value(_about(written, stretch.estimated))
        easy = words.NOTHING
        if stretch.share is not None:
            easy = words.share(stretch.share, estimated=stretch.estimated)
        self.in_hand.show_swatch(False)
        self.in_hand.show_value(easy, tr("of it easy"))
        self._block.setText(stretch_words(stretch))
        said = ", ".join(
            value.accessibleName() for value in (self.easy, self.moderate, self.hard, self.in_hand)
        )
        self.chart.setAccessibleDescription(f"{stretch_words(stretch)}: {said}.")
        QAccessible.updateAccessibility(
            QAccessibleEvent(self.chart, QAccessible.Event.DescriptionChanged)
        )

    def _rows(self) -> list[tuple[str, ...]]:
        """The table; a block of which nothing has changed keeps its row."""
        before, self._written = self._written, {}
        for shape in self.chart.shapes:
            held = before.get(id(shape))
            self._written[id(shape)] = held or (shape, self._row(shape))
        return [row for _, row in self._written.values()]

    def _row(self, shape: BlockShape) -> tuple[str, ...]:
        if shape.share is None:
            return (shape.block.name, *[words.NOTHING] * 5)
        ends = (shape.easy[-1], shape.moderate[-1], shape.hard[-1])
        return (
            shape.block.name,
            *(self.chart.value(end) for end in ends),
            words.share(shape.share, estimated=shape.block.estimated),
            sessions_words(sessions_of(shape.block)),
        )

    def _summary(self) -> str:
        """One sentence that says what the chart shows."""
        shapes = self.chart.shapes
        if self.unit_button.isChecked():
            one, many = mark("{n} block in distance"), mark("{n} blocks in distance")
        else:
            one, many = mark("{n} block in hours"), mark("{n} blocks in hours")
        parts = [several(len(shapes), one, many)]
        current = self.chart.current
        if current is not None and current.share is not None:
            share = words.share(current.share, estimated=current.block.estimated)
            said = mark("{block} {values}, {share} easy, {amount} easy in hand")
            if current.in_hand < 0.0:
                said = mark("{block} {values}, {share} easy, {amount} easy short")
            parts.append(
                tr(
                    said,
                    block=current.block.name,
                    values=self.chart.values_words(current),
                    share=share,
                    amount=self.chart.value(current.in_hand),
                )
            )
        short = [s for s in shapes if s.short and s is not current]
        if short:
            named = [
                tr(
                    "{block} of its {share} easy",
                    block=s.block.name,
                    share=words.share(s.block.easy_target),
                )
                for s in short
            ]
            parts.append(tr("short: {blocks}", blocks=words.listed(named)))
        return f"{'; '.join(parts)}."


def _about(amount: str, estimated: bool) -> str:
    """An amount, as an estimate where it is one."""
    return tr("about {amount}", amount=amount) if estimated else amount
