"""What the window shows before anything was taken in: plain ways to begin."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QButtonGroup,
    QFrame,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from tercet.language import tr
from tercet.ui import example, theme
from tercet.ui.flow import FlowLayout
from tercet.ui.imports_controller import Hover
from tercet.ui.look import SIZES
from tercet.ui.widgets import DropZone, Label, Pane, Rule, button, clear_scroll

if TYPE_CHECKING:
    from tercet.ui.window import MainWindow

#: Under this width over text size the ways to begin stand below one another.
FOLD_BELOW = 900
COLUMN_WIDTH = 420


class EmptyPage(QWidget):
    """Heading, the ways to begin, and the text size for whoever needs it now."""

    choose_asked = Signal()
    folder_asked = Signal()
    paper_asked = Signal()
    example_asked = Signal()
    plan_asked = Signal()
    size_chosen = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        pane = Pane()
        holder = QVBoxLayout(self)
        holder.setContentsMargins(12, 0, 12, 0)
        holder.addWidget(pane)
        inside = QWidget()
        frame = QVBoxLayout(pane)
        frame.setContentsMargins(1, 1, 1, 1)
        frame.addWidget(clear_scroll(inside))
        self._outer = QVBoxLayout(inside)
        self.zone = DropZone()
        self.choose = button(tr("Choose files…"), primary=True)
        self.folder = button(tr("Choose a folder…"))
        self.paper = button(tr("Type a paper log"))
        self.example = button(tr("Open the example"))
        self.plan = button(tr("Races and blocks…"))
        for made, signal in (
            (self.choose, self.choose_asked),
            (self.folder, self.folder_asked),
            (self.paper, self.paper_asked),
            (self.example, self.example_asked),
            (self.plan, self.plan_asked),
        ):
            made.clicked.connect(signal)
        self._columns = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._frames: list[QFrame] = []
        self.sizes = QButtonGroup(self)
        self._arrange()
        theme.changed.connect(self._dress)
        self._dress()

    def hover(self, hover: Hover | None) -> None:
        """Say what a drop would add."""
        self.zone.set_active(hover is not None)
        self.dropped_words.setText(hover.words if hover is not None else tr("Recordings"))

    def _arrange(self) -> None:
        outer = self._outer
        outer.addStretch(2)
        title = Label(tr("A season starts with what you have run"), "page_title", wrap=True)
        lead = Label(
            tr(
                "Every second of every run is judged easy, moderate or hard, against your own two "
                "thresholds. Four ways to begin:"
            ),
            "body",
            "text_2",
            wrap=True,
        )
        for label in (title, lead):
            label.setAlignment(Qt.AlignmentFlag.AlignHCenter)
            outer.addWidget(label)
        outer.addSpacing(16)
        self.dropped_words = Label(tr("Recordings"), "block", wrap=True)
        columns = self._columns
        columns.setSpacing(24)
        columns.addStretch(1)
        for frame, heading, text, buttons in (
            (
                self.zone,
                self.dropped_words,
                tr(
                    "FIT, TCX or GPX files from a watch or an older program. Drop them anywhere "
                    "on this window. They are copied; the originals are not touched."
                ),
                (self.choose, self.folder),
            ),
            (
                QFrame(),
                Label(tr("A paper log"), "block", wrap=True),
                tr(
                    "A training diary, typed or pasted as it stands: one line a day, understood "
                    "beside it as you type."
                ),
                (self.paper,),
            ),
            (
                QFrame(),
                Label(tr("The example season"), "block", wrap=True),
                tr(
                    "24 weeks of an invented runner, to look round in. It opens in a window of its "
                    "own and stays apart from your runs."
                ),
                (self.example,),
            ),
            (
                QFrame(),
                Label(tr("A race to come"), "block", wrap=True),
                tr("Name the race and the blocks before it now; the runs find their places later."),
                (self.plan,),
            ),
        ):
            columns.addWidget(_column(frame, heading, text, buttons), 4)
            self._frames.append(frame)
        columns.addStretch(1)
        outer.addLayout(columns)
        outer.addSpacing(16)
        outer.addWidget(Rule())
        outer.addSpacing(8)
        outer.addWidget(self._sizes())
        outer.addStretch(3)

    def _sizes(self) -> QWidget:
        holder = QWidget()
        sizes = FlowLayout(holder, gap=16, centred=True)
        self.size_words = Label(tr("Text too small?"), "body_bold")
        sizes.addWidget(self.size_words)
        for size in SIZES:
            choice = QRadioButton(f"{size} %")
            choice.setAccessibleName(tr("Text size {n} per cent", n=size))
            self.sizes.addButton(choice, size)
            sizes.addWidget(choice)
        self.sizes.idClicked.connect(self.size_chosen)
        return holder

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fold by width over text size."""
        super().resizeEvent(event)
        self._fold()

    def _dress(self) -> None:
        look = theme.current()
        self._outer.setContentsMargins(look.px(20), look.px(12), look.px(20), look.px(12))
        now = round(look.scale * 100)
        for choice in self.sizes.buttons():
            choice.setChecked(self.sizes.id(choice) == now)
        self._fold()

    def _fold(self) -> None:
        look = theme.current()
        narrow = self.width() / look.scale < FOLD_BELOW
        way = QBoxLayout.Direction.TopToBottom if narrow else QBoxLayout.Direction.LeftToRight
        self._columns.setDirection(way)
        for frame in self._frames:
            frame.setMaximumWidth(16_777_215 if narrow else look.px(COLUMN_WIDTH))


def _column(frame: QFrame, heading: Label, text: str, buttons: tuple[QWidget, ...]) -> QFrame:
    inside = QVBoxLayout(frame)
    inside.setContentsMargins(20, 14, 20, 14)
    inside.addWidget(heading)
    body = Label(text, "body", "text_2", wrap=True)
    body.setAlignment(Qt.AlignmentFlag.AlignTop)
    inside.addWidget(body, 1)
    inside.addSpacing(8)
    line = FlowLayout()
    for made in buttons:
        line.addWidget(made)
    inside.addLayout(line)
    return frame


def page_of(window: MainWindow) -> EmptyPage:
    """The page of a window, with all its ways leading where they should."""
    page = EmptyPage()
    page.choose_asked.connect(window.imports.choose_files)
    page.folder_asked.connect(window.imports.choose_folder)
    page.paper_asked.connect(lambda: window.show_view("paper"))
    page.example_asked.connect(example.start)
    page.plan_asked.connect(lambda: window.show_view("plan"))
    page.size_chosen.connect(lambda size: window.look.choose(size=size))
    window.pages.addWidget(page)
    return page
