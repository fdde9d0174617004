"""The page of the intensity curve: one stretch large with its class, every block small."""

from __future__ import annotations

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from tercet.engine.shades import whole_shares
from tercet.language import mark, tr
from tercet.library import insight
from tercet.library.counted import DIFFER
from tercet.library.insight import CurvePage
from tercet.library.shape import Shape
from tercet.library.views import SeasonView
from tercet.ui import theme, words
from tercet.ui.curve_blocks import CurveBlocks
from tercet.ui.curve_view import CurveView
from tercet.ui.page import Context, Page
from tercet.ui.span_chooser import SpanChooser
from tercet.ui.total_words import why_total
from tercet.ui.twin import Numbers, Twin
from tercet.ui.widgets import ElidedLabel, Label, Pane, Rule, button, clear_scroll

#: Width over text size under which the blocks go below the curve. [px at 100 %]
STACK_BELOW = 1000
HEADINGS = (
    mark("stretch"), mark("easy"), mark("moderate"), mark("hard"), mark("easy wanted"),
)  # fmt: skip
#: Ways of counting a class.
BY = {
    "time": mark("By time: {said}"),
    "distance": mark("By distance: {said}"),
    "sessions": mark("By sessions: {said}"),
}
EMPTY = mark("Nothing has been judged yet. Recordings or a paper log fill this curve.")
SHORT = mark("The curve needs 3 hours of judged running; the shares below hold already.")
HELP = mark(
    "Classes and index by Treff et al. 2019: polarised is easy > hard > moderate with an index "
    "above 2; pyramidal is easy > moderate > hard. Sessions count as hard from 5 minutes hard, as "
    "moderate from 10 minutes moderate. Never compare shares counted in different ways."
)


class IntensityCurvePage(Page):
    """Draws the curve of the season or of a block, and all blocks on one scale."""

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self._key = "season"
        self._view: SeasonView | None = None
        self.data: CurvePage | None = None
        self.chooser = SpanChooser()
        self.chooser.chosen.connect(self.choose)
        self.middle = button(tr("Where the middle came from"))
        self.middle.clicked.connect(lambda: self.page_asked.emit("middle"))
        self.curve = CurveView()
        self.curve.setAccessibleName(tr("Intensity curve"))
        self.blocks = CurveBlocks()
        self.blocks.asked.connect(self.choose)
        self._about = ElidedLabel("", "small", "text_2")
        self._said = Label("", "body", "text_2", wrap=True)
        self._classes = [Label("", "body", wrap=True) for _ in range(3)]
        self._why = Label("", "body", "text_2", wrap=True)
        self._left, self._right = Pane(), Pane()
        self.twin = Twin(self.curve, tr("Shares of every stretch"), self._left)
        self._outer = QVBoxLayout(self)
        self._outer.setContentsMargins(12, 0, 12, 0)
        self._box = QHBoxLayout()
        self._box.setSpacing(10)
        self._outer.addLayout(self._box)
        self._box.addWidget(self._left, 72)
        self._box.addWidget(self._right, 28)
        self._arrange()

    def _arrange(self) -> None:
        # Large text would leave the curve no height: then all of it scrolls.
        whole = QWidget()
        frame = QVBoxLayout(self._left)
        frame.setContentsMargins(1, 1, 1, 1)
        frame.addWidget(clear_scroll(whole))
        column = QVBoxLayout(whole)
        column.setContentsMargins(15, 9, 15, 11)
        column.setSpacing(6)
        head = QHBoxLayout()
        head.setSpacing(10)
        head.addWidget(Label(tr("Intensity curve"), "pane_title"))
        head.addWidget(self._about, 1)
        head.addWidget(self.middle)
        head.addWidget(self.chooser)
        column.addLayout(head)
        column.addWidget(self._said)
        column.addWidget(self.twin, 1)
        column.addWidget(Rule())
        for label in self._classes:
            column.addWidget(label)
        column.addWidget(self._why)
        for text in (DIFFER, HELP):
            column.addWidget(Label(tr(text), "small", "text_2", wrap=True))
        side = QVBoxLayout(self._right)
        side.setContentsMargins(16, 10, 4, 8)
        side.addWidget(Label(tr("Block by block"), "pane_title"))
        side.addWidget(self.blocks, 1)

    @property
    def ring(self) -> list[QWidget]:
        """The chooser, the curve, the blocks."""
        return [self.chooser, self.curve, self.twin.table, self.blocks]

    def choose(self, key: str) -> None:
        """Show a stretch of the season by its key."""
        self._key = key
        if self._view is not None:
            self.refresh(self._view)

    def refresh(self, view: SeasonView) -> None:
        """Read the curves of the stretch in view."""
        self._view = view
        future = self.context.library.submit(insight.curve_page, view, self._key)
        self.context.answers.when(future, self.show_data)

    def show_data(self, data: CurvePage) -> None:
        """Draw what was read."""
        self.data = data
        self.chooser.show_spans(data.spans, data.shown)
        drawn, span = data.drawn, data.shown
        paces = self._paces(data)
        self.curve.show_curve(drawn, paces)
        self.curve.setVisible(drawn is not None)
        if drawn is None or span is None:
            self._said.setText(tr(EMPTY))
            self._about.setText("")
        else:
            total = sum(drawn.seconds)
            first, last = words.short_day(span.start), words.short_day(span.end)
            if span.start.year != span.end.year:
                first, last = f"{first} {span.start.year}", f"{last} {span.end.year}"
            self._about.setText(
                tr(
                    "{first} to {last}, {time} judged",
                    first=first,
                    last=last,
                    time=words.hours(total),
                )
            )
            self._said.setText(tr(SHORT) if drawn.run is None else "")
        self._said.setVisible(bool(self._said.text()))
        for label, shape in zip(self._classes, data.shapes, strict=False):
            label.setText(class_words(shape))
        for label in self._classes:
            label.setVisible(bool(data.shapes) and drawn is not None)
        told = data.behind if drawn is not None else None
        self._why.setText(why_total(span.name, told) if told is not None and span else "")
        self._why.setVisible(bool(self._why.text()))
        shown = [*data.blocks, *([drawn] if drawn else [])]
        curves = [c for item in shown for c in (item.run, item.wanted) if c is not None]
        highest = max((float(curve.density.max()) for curve in curves), default=1.0)
        self.blocks.show_blocks(data.blocks, highest)
        self.twin.set_numbers(lambda: table_rows(data), {0})

    def _paces(self, data: CurvePage) -> tuple[str, str]:
        entry = data.thresholds
        if entry is None or not (entry.values.lt1_speed and entry.values.lt2_speed):
            return "LT1", "LT2"
        lt1, lt2 = words.pace(entry.values.lt1_speed), words.pace(entry.values.lt2_speed)
        if entry.estimated:
            return tr("about {amount}", amount=lt1), tr("about {amount}", amount=lt2)
        return lt1, lt2

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Put the blocks below where the width is short."""
        super().resizeEvent(event)
        narrow = self.width() / theme.current().scale < STACK_BELOW
        self._right.setVisible(not narrow)


def table_rows(data: CurvePage) -> Numbers:
    """Headings and rows of the table: what is drawn, and every block."""
    listed = [*([data.drawn] if data.drawn else []), *data.blocks]
    rows = []
    for item in listed:
        whole = whole_shares(item.shares)
        cells = [f"{words.hours(s)}  {p} %" for s, p in zip(item.seconds, whole, strict=True)]
        rows.append((item.span.name, *cells, words.share(item.span.shares[0])))
    return tuple(map(tr, HEADINGS)), rows


def class_words(shape: Shape) -> str:
    """One way of counting in a line: shares, class, index."""
    if shape.shares is None:
        return tr(BY[shape.by], said=tr("nothing judged"))
    whole = whole_shares(shape.shares)
    shares = f"{whole[0]} / {whole[1]} / {whole[2]} %, {shape.words}"
    if shape.index is None:
        return tr(BY[shape.by], said=tr("{shares}; index not defined", shares=shares))
    said = mark("{shares}; index {index} (polarised above 2.00)")
    if shape.polarised:
        said = mark("{shares}; index {index}")
    index = words.number(shape.index, 2)
    return tr(BY[shape.by], said=tr(said, shares=shares, index=index))
