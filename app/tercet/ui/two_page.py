"""The page of two seasons or blocks side by side, and of the years at a glance."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QComboBox,
    QGridLayout,
    QHBoxLayout,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from tercet.language import mark, several, tr
from tercet.library import years
from tercet.library.views import SeasonView
from tercet.library.years import Past
from tercet.store import season_queries
from tercet.ui import theme, words
from tercet.ui.back_rows import BackRows
from tercet.ui.page import Context, Page
from tercet.ui.widgets import ElidedLabel, Label, Pane, Rule, StairWidget, button, clear_scroll

#: Width over text size under which the right side goes below. [px at 100 %]
STACK_BELOW = 1000
ONE = mark("There is one season so far. A second one, or two blocks, can be laid beside it.")
EMPTY = mark("Nothing has been run yet. Recordings or a paper log fill this page.")
SEPARATE = mark("Two seasons, back from the race")
BLOCKS = mark("Two blocks, back from their last week")


class HourScale(QWidget):
    """The length of one hour in the rows."""

    def __init__(self, rows: BackRows) -> None:
        super().__init__()
        self._rows = rows
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(80, theme.current().px(22))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the scale at the right end."""
        look = theme.current()
        painter = QPainter(self)
        length = int(self._rows.hour_px())
        right, y = self.width() - 5, self.height() - 5
        painter.setPen(look.color("text_2"))
        painter.drawLine(right - length, y, right, y)
        for x in (right - length, right):
            painter.drawLine(x, y - 4, x, y + 4)
        painter.setFont(look.font("small"))
        place = self.rect().adjusted(0, 0, -8 - length, 0)
        painter.drawText(
            place, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignBottom, tr("1 h")
        )


class TwoPage(Page):
    """Two pasts in rows at the left; what differs, and the years, at the right."""

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self._view: SeasonView | None = None
        self.data: list[Past] | None = None
        self._spacing = 2
        self.by_block = button(tr("By block"))
        self.by_block.setCheckable(True)
        self.by_block.toggled.connect(self._by_changed)
        self.choosers = (QComboBox(), QComboBox())
        for chooser, name in zip(
            self.choosers, (mark("Left season"), mark("Right season")), strict=True
        ):
            chooser.setAccessibleName(tr(name))
            chooser.setSizeAdjustPolicy(
                QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
            )
            chooser.setMinimumContentsLength(19)
            chooser.activated.connect(lambda _: self._show())
        self._title = Label(tr(SEPARATE), "pane_title")
        self._heads = [Label("", "small", "text_2", wrap=True) for _ in range(2)]
        self._said = Label("", "body", "text_2", wrap=True)
        self.back_rows = BackRows()
        outer = QVBoxLayout(self)
        outer.setContentsMargins(12, 0, 12, 0)
        self._box = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._box.setSpacing(10)
        outer.addLayout(self._box)
        self._box.addWidget(self._left(), 72)
        self._box.addWidget(self._right(), 28)

    def _left(self) -> QWidget:
        pane = Pane()
        column = QVBoxLayout(pane)
        column.setContentsMargins(16, 10, 4, 6)
        column.setSpacing(4)
        head = QHBoxLayout()
        head.setContentsMargins(0, 0, 12, 0)
        head.addWidget(self._title, 1)
        head.addWidget(self.by_block)
        column.addLayout(head)
        column.addWidget(self._said)
        names = QGridLayout()
        names.setContentsMargins(0, 0, 12, 0)
        names.setColumnStretch(0, 1)
        names.setColumnStretch(2, 1)
        side = Qt.AlignmentFlag
        for place, (chooser, label, align) in enumerate(
            zip(self.choosers, self._heads, (side.AlignRight, side.AlignLeft), strict=True)
        ):
            names.addWidget(chooser, 0, 2 * place, align)
            label.setAlignment(align)
            names.addWidget(label, 1, 2 * place)
        self._to_go = Label(tr("to go"), "small", "text_2")
        names.addWidget(self._to_go, 0, 1, side.AlignCenter)
        column.addLayout(names)
        self._scale = HourScale(self.back_rows)
        column.addWidget(self._scale)
        column.addWidget(clear_scroll(self.back_rows), 1)
        return pane

    def _right(self) -> QWidget:
        pane = Pane()
        column = QVBoxLayout(pane)
        column.setContentsMargins(16, 10, 4, 6)
        column.setSpacing(4)
        column.addWidget(Label(tr("What differs"), "pane_title"))
        inside = QWidget()
        self._differs = QVBoxLayout(inside)
        self._differs.setContentsMargins(0, 0, 12, 0)
        self._differs.setSpacing(0)
        column.addWidget(clear_scroll(inside), 1)
        return pane

    @property
    def ring(self) -> list[QWidget]:
        """The choosers, then the rows."""
        return [*self.choosers, self.by_block, self.back_rows]

    def refresh(self, view: SeasonView) -> None:
        """Lay the season's pasts out anew."""
        self._view = view
        by = "block" if self.by_block.isChecked() else "season"
        future = self.context.library.submit(
            lambda store: (years.pasts(view, by), season_queries.spacing(store))
        )
        self.context.answers.when(future, self.show_data)

    def _by_changed(self, by_block: bool) -> None:
        self._title.setText(tr(BLOCKS if by_block else SEPARATE))
        for chooser in self.choosers:
            chooser.clear()
        if self._view is not None:
            self.refresh(self._view)

    def show_data(self, answer: tuple[list[Past], int]) -> None:
        """List what can be laid side by side; the last two at first, blocks of the only season."""
        pasts, self._spacing = answer
        fresh, self.data = self.data is None, pasts
        if fresh and len(pasts) == 1 and len(pasts[0].blocks) > 1:
            self.by_block.setChecked(True)
            return
        for place, chooser in enumerate(self.choosers):
            held = chooser.currentData()
            chooser.clear()
            for past in reversed(pasts):
                chooser.addItem(past.name, past.key)
            at = chooser.findData(held) if held else -1
            chooser.setCurrentIndex(at if at >= 0 else min(1 - place, len(pasts) - 1))
            chooser.setEnabled(len(pasts) > 1)
        self.choosers[0].setVisible(len(pasts) > 1)
        for part in (self.choosers[1], self._to_go, self._scale, self.back_rows):
            part.setVisible(bool(pasts))
        self._said.setText("" if len(pasts) > 1 else tr(ONE if pasts else EMPTY))
        self._said.setVisible(len(pasts) < 2)
        self._show()

    def _chosen(self) -> list[Past | None]:
        by_key = {past.key: past for past in self.data or ()}
        found = [by_key.get(chooser.currentData()) for chooser in self.choosers]
        return [None, found[1]] if len(by_key) < 2 else found

    def _show(self) -> None:
        view = self._view
        if view is None:
            return
        left, right = self._chosen()
        sides = [(past, years.weeks_back(past, view.races)) if past else None
                 for past in (left, right)]  # fmt: skip
        self.back_rows.show_pasts(*sides)
        for label, past in zip(self._heads, (left, right), strict=True):
            label.setText(_summary(past) if past is not None else "")
        self._scale.update()
        self._fill(left, right, view)

    def _fill(self, left: Past | None, right: Past | None, view: SeasonView) -> None:
        while (held := self._differs.takeAt(0)) is not None:
            widget = held.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        told = years.differs(left, right, self._spacing) if left and right else []
        for item in told:
            self._differs.addWidget(Rule())
            title = Label(item.title, "body_bold", wrap=True)
            text = Label(item.text, "body", "text_2", wrap=True)
            title.setContentsMargins(0, 8, 0, 2)
            text.setContentsMargins(0, 0, 0, 10)
            self._differs.addWidget(title)
            self._differs.addWidget(text)
        listed = years.years(view)
        if listed:
            self._differs.addWidget(Rule())
            self._differs.addWidget(YearsPart(listed))
        self._differs.addStretch(1)


class YearsPart(QWidget):
    """The last ten years, one line each on one scale."""

    def __init__(self, listed: Sequence[years.Year]) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 10, 0, 6)
        column.addWidget(Label(tr("Years"), "body_bold"))
        grid = QGridLayout()
        grid.setColumnStretch(1, 1)
        grid.setHorizontalSpacing(8)
        full = max((sum(year.seconds[:3]) for year in listed), default=1.0)
        for row, year in enumerate(listed):
            stair = StairWidget()
            stair.set(year.seconds, full)
            judged = sum(year.seconds[:3])
            share = words.share(year.easy_share) if year.easy_share is not None else words.NOTHING
            text = tr("{hours}, {share} easy", hours=words.hours(judged), share=share)
            stair.setAccessibleName(
                several(
                    year.sessions,
                    mark("{year}: {text}, {n} session"),
                    mark("{year}: {text}, {n} sessions"),
                    year=year.year,
                    text=text,
                )
            )
            grid.addWidget(Label(str(year.year), "body_bold"), row, 0)
            grid.addWidget(stair, row, 1)
            grid.addWidget(ElidedLabel(text, "small", "text_2"), row, 2)
        column.addLayout(grid)


def _summary(past: Past) -> str:
    judged = sum(past.seconds[:3])
    hours = words.hours(judged)
    if judged <= 0:
        return several(
            past.weeks,
            mark("{hours} run in {n} week"),
            mark("{hours} run in {n} weeks"),
            hours=hours,
        )
    return several(
        past.weeks,
        mark("{hours} run in {n} week, {share} easy"),
        mark("{hours} run in {n} weeks, {share} easy"),
        hours=hours,
        share=words.share(past.seconds[0] / judged),
    )
