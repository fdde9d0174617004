"""What a block is for: its name and kind, wanted shares that make 100, and the week volume."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from PySide6.QtCore import QDate, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QComboBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QMenu,
    QVBoxLayout,
    QWidget,
)

from tercet import units
from tercet.domain import Block
from tercet.engine.allowance import share_out
from tercet.engine.countback import Volume
from tercet.engine.shades import Shade, whole_shares
from tercet.language import mark, several, tr
from tercet.library.season_file import BLOCK_KINDS
from tercet.library.views import BlockView
from tercet.ui import theme, words
from tercet.ui.amounts import AmountEdit, NumberEdit, mark_wrong
from tercet.ui.day_edit import DayEdit
from tercet.ui.plan_rows import Span, kind_words
from tercet.ui.values import Swatch
from tercet.ui.widgets import ElidedLabel, Label, Pane, StairWidget, button

#: A shade's name, what its field is called, and the shade.
_SHADES = (
    (mark("easy"), mark("Wanted easy, per cent"), Shade.EASY),
    (mark("moderate"), mark("Wanted moderate, per cent"), Shade.MODERATE),
    (mark("hard"), mark("Wanted hard, per cent"), Shade.HARD),
)
MEASURES = {"time": mark("time"), "metres": mark("metres")}
#: What stands in the place of a block where there is none.
NOTHING = mark(
    "These weeks belong to no block. Draw over some of them in the list, or Shift with up and "
    "down, then Enter, to make one there."
)


class BlockPane(Pane):
    """Edits one block; every edit is told at once as the whole block."""

    edited = Signal(object)  # Block
    dated = Signal(object, object)  # first and last day as typed
    split_asked = Signal()
    join_asked = Signal()
    remove_asked = Signal()
    made = Signal(object)  # Span to make a block of

    def __init__(self) -> None:
        super().__init__()
        self._block: Block | None = None
        self._span: Span | None = None
        self._filling = False
        self.title = QLineEdit()
        self.title.setAccessibleName(tr("Name of the block"))
        self.title.setFrame(False)
        self.title.editingFinished.connect(self._renamed)
        self.title.textChanged.connect(self._fit_title)
        self.dates = ElidedLabel("", "small", "text_2")
        self.start, self.end = self._day(tr("First day")), self._day(tr("Last day"))
        self.length = Label("", "small", "text_2")
        self.kind = QComboBox()
        for kind in BLOCK_KINDS:
            self.kind.addItem(kind_words(kind), kind)
        self.kind.setAccessibleName(tr("Kind of block"))
        self.kind.activated.connect(self._kind_chosen)
        self.more = button(tr("Split or join"), name=tr("Split, join or remove this block"))
        menu = QMenu(self.more)
        self.split = _entry(menu, tr("Split at the chosen week"), self.split_asked)
        self.join = _entry(menu, tr("Join with the next block"), self.join_asked)
        self.remove = _entry(menu, tr("Remove this block"), self.remove_asked)
        self.more.setMenu(menu)
        self.measure = QComboBox()
        for measure, word in MEASURES.items():
            self.measure.addItem(tr(word), measure)
        self.measure.setAccessibleName(tr("Shares are of"))
        self.measure.activated.connect(self._measure_chosen)
        self.shares = tuple(
            self._share(tr(named), number) for number, (_, named, _) in enumerate(_SHADES)
        )
        self.wanted, self.run = StairWidget(), StairWidget()
        self.wanted_words = Label(tr("wanted"), "small", "text_2")
        self.run_words = Label("", "small", "text_2")
        self.first = AmountEdit(tr("First week"))
        self.most = AmountEdit(tr("Weeks grow no higher than"))
        self.longest = AmountEdit(tr("Longest run"))
        self.growth = NumberEdit(tr("Grows at most, per cent a week"), -60, 30)
        self.every = NumberEdit(tr("Every how many weeks one is easier"), 0, 8, tr("none"))
        self.easier = NumberEdit(tr("An easier week's share, per cent"), 30, 100)
        self.first.told.connect(lambda value: self._volume(first_s=value))
        # While it is typed, so that Tab goes on to the next of them.
        self.first.textEdited.connect(lambda text: self._open_volume(bool(text.strip())))
        self.most.told.connect(lambda value: self._volume(most_s=value))
        self.growth.valueChanged.connect(lambda value: self._volume(growth=value / 100))
        self.every.valueChanged.connect(lambda n: self._volume(easier_every=0 if n == 1 else n))
        self.easier.valueChanged.connect(lambda value: self._volume(easier_share=value / 100))
        self.longest.told.connect(lambda value: self._tell(longest=value))
        self.nothing = Label(tr(NOTHING), "body", "text_2", wrap=True)
        self.make = button(tr("Make a block here"))
        self.make.clicked.connect(lambda: self.made.emit(self._span))
        self._arrange()
        self._dress()
        theme.changed.connect(self._dress)

    def _share(self, name: str, number: int) -> NumberEdit:
        box = NumberEdit(name, 0, 100)
        box.valueChanged.connect(lambda value: self._share_edited(number, value))
        return box

    def _day(self, name: str) -> DayEdit:
        field = DayEdit(date.today(), name)
        field.dateChanged.connect(self._dated)
        return field

    def _arrange(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(8)
        head.addWidget(self.title)
        head.addWidget(self.dates, 1)
        head.addWidget(self.kind)
        head.addWidget(self.more)
        of = QHBoxLayout()
        of.addWidget(Label(tr("Wanted shares, in % of")))
        of.addWidget(self.measure)
        of.addStretch(1)
        days = QHBoxLayout()
        days.setSpacing(6)
        first, last = tr("From", "first day of a block"), tr("to", "last day of a block")
        for text, day in ((first, self.start), (last, self.end)):
            named = QLabel(text)
            named.setBuddy(day)
            days.addWidget(named)
            days.addWidget(day)
        days.addWidget(self.length)
        days.addStretch(1)
        shares = QHBoxLayout()
        shares.setSpacing(6)
        for (name, _, shade), box in zip(_SHADES, self.shares, strict=True):
            shares.addWidget(Swatch(shade))
            word = QLabel(tr(name))
            word.setBuddy(box)
            shares.addWidget(word)
            shares.addWidget(box)
            shares.addSpacing(10)
        shares.addStretch(1)
        left = QVBoxLayout()
        left.setSpacing(3)
        left.addLayout(days)
        left.addSpacing(4)
        left.addLayout(of)
        left.addLayout(shares)
        left.addSpacing(10)
        for stair, said in ((self.wanted, self.wanted_words), (self.run, self.run_words)):
            left.addWidget(stair)
            left.addWidget(said)
        left.addStretch(1)
        grid = QGridLayout()
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(3)
        grid.addWidget(Label(tr("Week volume"), "body_bold"), 0, 0, 1, 3)
        self.unit_labels: list[QLabel] = []
        rows = (
            (tr("first week"), self.first, mark("h")),
            (tr("grows at most"), self.growth, mark("% a week")),
            (tr("up to"), self.most, "h"),
            (tr("easier every"), self.every, mark("weeks")),
            (tr("which are"), self.easier, mark("% of it")),
            (tr("longest run"), self.longest, "h"),
        )
        for row, (text, field, unit) in enumerate(rows, 1):
            word, after = Label(text, "small", "text_2"), Label(tr(unit), "small", "text_2")
            word.setBuddy(field)
            grid.addWidget(word, row, 0)
            grid.addWidget(field, row, 1)
            grid.addWidget(after, row, 2)
            if unit == "h":
                self.unit_labels.append(after)
        body = QHBoxLayout()
        body.setSpacing(28)
        body.addLayout(left, 1)
        upright = QVBoxLayout()
        upright.addLayout(grid)
        upright.addStretch(1)
        body.addLayout(upright)
        self.body = QWidget()
        self.body.setProperty("clear", True)
        body.setContentsMargins(0, 0, 0, 0)
        self.body.setLayout(body)
        empty = QHBoxLayout()
        empty.addWidget(self.nothing, 1)
        empty.addWidget(self.make)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 10)
        column.setSpacing(6)
        column.addLayout(head)
        column.addLayout(empty)
        column.addWidget(self.body, 1)
        column.addStretch(0)

    # Showing -----------------------------------------------------------------------------

    def show_block(self, block: Block, view: BlockView, *, last: bool) -> None:
        """Show a block and what was run in it."""
        other = self._block is None or self._block.id != block.id
        self._block, self._span = block, None
        self._filling = True
        if other or not (self.title.hasFocus() and self.title.isModified()):
            self.title.setText(block.name)
        self._for_block(True)
        self.join.setEnabled(not last)
        self.dates.setText("")
        for shown, day in ((self.start, block.start), (self.end, block.end)):
            shown.setDate(QDate(day.year, day.month, day.day))
        self.length.setText(several(len(view.weeks), mark("{n} week"), mark("{n} weeks")))
        self.kind.setCurrentIndex(self.kind.findData(block.kind))
        self.measure.setCurrentIndex(self.measure.findData(block.measure))
        percents = whole_shares(view.shares)
        for box, value in zip(self.shares, percents, strict=True):
            box.setValue(value)
        self._show_stairs(view, percents)
        volume = block.volume
        self.first.show_amount(volume.first_s if volume else None, block.measure)
        self.most.show_amount(volume.most_s if volume else None, block.measure)
        self.longest.show_amount(block.longest, block.measure)
        self.growth.setValue(round(100 * volume.growth) if volume else 0)
        self.every.setValue(volume.easier_every if volume else 0)
        self.easier.setValue(round(100 * volume.easier_share) if volume else 70)
        self._open_volume(volume is not None)
        for label in self.unit_labels:
            label.setText(units.word() if block.measure == "metres" else tr("h"))
        self._filling = False

    def show_gap(self, span: Span | None) -> None:
        """Show that the chosen week lies in no block."""
        self._block, self._span = None, span
        self.title.setText(tr("Unplanned"))
        self.dates.setText("" if span is None else span_dates(span.start, span.end))
        self._for_block(False)

    def _for_block(self, there: bool) -> None:
        for part in (self.body, self.kind, self.more):
            part.setVisible(there)
        self.title.setReadOnly(not there)
        self.nothing.setVisible(not there)
        self.make.setVisible(not there)

    def _show_stairs(self, view: BlockView, percents: tuple[int, int, int]) -> None:
        a, b, c = (float(value) for value in percents)
        self.wanted.set((a, b, c, 0.0, 0.0), 100.0)
        self.wanted.setAccessibleName(
            tr(
                "Wanted: {easy} easy, {moderate} moderate, {hard} hard",
                easy=percents[0],
                moderate=percents[1],
                hard=percents[2],
            )
        )
        run = (view.seconds if view.measure == "time" else view.metres)[:3]
        total = sum(run)
        self.run.setVisible(total > 0)
        if total <= 0:
            self.run_words.setText(tr("nothing run yet"))
            return
        easy, moderate, hard = (part / total for part in run)
        shown = whole_shares((easy, moderate, hard))
        self.run.set((easy * 100, moderate * 100, hard * 100, 0.0, 0.0), 100.0)
        said = (
            mark("run so far: about {easy} % easy, {moderate} moderate, {hard} hard")
            if view.estimated
            else mark("run so far: {easy} % easy, {moderate} moderate, {hard} hard")
        )
        self.run_words.setText(tr(said, easy=shown[0], moderate=shown[1], hard=shown[2]))
        self.run.setAccessibleName(self.run_words.text())

    # Editing -----------------------------------------------------------------------------

    def _tell(self, **changes: object) -> None:
        if self._filling or self._block is None:
            return
        self._block = replace(self._block, **changes)  # type: ignore[arg-type]
        self.edited.emit(self._block)

    def _dated(self) -> None:
        """Tell typed days once they are days of a block; until then say what is wrong with them."""
        if self._filling or self._block is None:
            return
        start, end = self.start.day, self.end.day
        wrong = tr("The last day must not lie before the first.") if end < start else ""
        mark_wrong(self.end, wrong)
        self.length.setText(wrong)
        if not wrong and (start, end) != (self._block.start, self._block.end):
            self.dated.emit(start, end)

    def _renamed(self) -> None:
        text = self.title.text().strip()
        if self.title.isModified() and self._block is not None and text:
            self.title.setModified(False)
            self._tell(name=text)

    def _kind_chosen(self, _: int) -> None:
        kind = self.kind.currentData()
        if self._block is not None and kind != self._block.kind:
            from tercet.engine.countback import SHARES

            easy, moderate, hard = SHARES[kind]
            self._tell(kind=kind, easy_target=easy, moderate_target=moderate, hard_target=hard)

    def _measure_chosen(self, _: int) -> None:
        if self._block is not None and self.measure.currentData() != self._block.measure:
            # An amount in the other measure would be another amount: it is typed anew.
            self._tell(measure=self.measure.currentData(), volume=None, longest=None)

    def _share_edited(self, number: int, value: int) -> None:
        if self._filling or self._block is None:
            return
        before = whole_shares(_targets(self._block))
        easy, moderate, hard = share_out(number, value, before)
        self._filling = True
        for box, part in zip(self.shares, (easy, moderate, hard), strict=True):
            box.setValue(part)
        self.wanted.set((float(easy), float(moderate), float(hard), 0.0, 0.0), 100.0)
        self._filling = False
        self._tell(easy_target=easy / 100, moderate_target=moderate / 100, hard_target=hard / 100)

    def _volume(self, **changes: object) -> None:
        if self._filling or self._block is None:
            return
        volume = self._block.volume
        if changes.get("first_s", 0) is None:
            self._tell(volume=None)
        elif volume is None:
            first = changes.get("first_s")
            if first is not None:
                self._tell(volume=Volume(float(first), growth=0.0))  # type: ignore[arg-type]
        else:
            self._tell(volume=replace(volume, **changes))  # type: ignore[arg-type]

    def _open_volume(self, there: bool) -> None:
        """Let what only a first week's volume gives a meaning be typed."""
        for field in (self.growth, self.every, self.easier, self.most):
            field.setEnabled(there)

    def _fit_title(self) -> None:
        wide = self.title.fontMetrics().horizontalAdvance(self.title.text()) + 24
        self.title.setFixedWidth(min(max(wide, 80), 320))

    def _dress(self) -> None:
        look = theme.current()
        self.title.setFont(look.font("pane_title"))
        self.title.setStyleSheet(
            "QLineEdit { background: transparent; border-color: transparent; padding: 0; }"
            "QLineEdit:hover:!read-only, QLineEdit:focus:!read-only "
            f"{{ border: 1px solid {look.hex('control')}; }}"
        )
        self._fit_title()
        self.body.setStyleSheet(
            f"QLineEdit, QComboBox {{ min-height: {look.px(22)}px; padding: 2px 6px; }}"
            "QLineEdit:focus, QComboBox:focus { padding: 1px 5px; }"
        )
        for box in (*self.shares, self.growth, self.every, self.easier):
            box.setFixedWidth(look.px(72 if box not in self.shares else 52))


def _entry(menu: QMenu, text: str, signal: object) -> QAction:
    action = menu.addAction(text)
    action.triggered.connect(lambda: signal.emit())  # type: ignore[attr-defined]
    return action


def _targets(block: Block) -> tuple[float, float, float]:
    from tercet.library.plans import shares_of

    return shares_of(block)


def span_dates(start: date, end: date) -> str:
    """First and last day: ``8 Jun to 12 Jul``."""
    return tr("{first} to {last}", first=words.short_day(start), last=words.short_day(end))
