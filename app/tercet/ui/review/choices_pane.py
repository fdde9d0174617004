"""This page's choices, and what belongs to all pages: presenting and saving."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, QTimer, Signal
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QGridLayout,
    QPlainTextEdit,
    QProgressBar,
    QVBoxLayout,
    QWidget,
)

from tercet.language import tr
from tercet.library.review.choices import Choices
from tercet.library.review.content import Page, Review
from tercet.ui import theme
from tercet.ui.review.looks import LOOKS, PAPERS
from tercet.ui.widgets import Label, Rule, button

#: What is typed is kept this long after the last key. [ms]
KEEP_AFTER_MS = 700


class Words(QPlainTextEdit):
    """A field for words; ``said`` comes a moment after typing ends, or when the focus goes."""

    said = Signal(str)

    def __init__(self, name: str, lines: int, hint: str = "") -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setTabChangesFocus(True)
        self.setPlaceholderText(hint)
        self._lines = lines
        self._kept = ""
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(KEEP_AFTER_MS)
        self._timer.timeout.connect(self.save)
        self.textChanged.connect(self._timer.start)
        self.dress()
        theme.changed.connect(self.dress)

    def show_words(self, text: str, *, other: bool) -> None:
        """Show words; while they are being edited only those of another page replace them."""
        if not other and (self.hasFocus() or self._timer.isActive()):
            return
        if other:
            self.save()
        self._kept = text
        if text != self.toPlainText():
            blocker = QSignalBlocker(self)
            self.setPlainText(text)
            blocker.unblock()
        self._timer.stop()

    def save(self) -> None:
        """Tell what was typed, if it is something else."""
        self._timer.stop()
        text = self.toPlainText().strip()
        if text != self._kept.strip():
            self._kept = text
            self.said.emit(text)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        self.save()
        super().focusOutEvent(event)

    def dress(self, *_: object) -> None:
        """Take the theme's font, as high as its lines."""
        self.setFont(theme.current().font("body"))
        self.setFixedHeight(self.fontMetrics().lineSpacing() * self._lines + theme.current().px(16))


class ChoicesPane(QWidget):
    """The right side of the organiser; tells what was chosen."""

    titled = Signal(str)
    remarked = Signal(str)
    lines_said = Signal(str)
    left_out = Signal(bool)
    scope_chosen = Signal(str)
    pair_chosen = Signal(str, str)
    look_chosen = Signal(str)
    present_asked = Signal()
    pdf_asked = Signal(str, bool)  # paper, in black ink
    html_asked = Signal()
    picture_asked = Signal()
    tables_asked = Signal()
    stop_asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._key = ""
        self.title = Words(tr("Title of this page"), 2)
        self.remark = Words(tr("Remark on this page"), 2, tr("A remark that stands on the page"))
        self.lines = Words(tr("Lines for the next block"), 5, tr("One line each"))
        self.out = QCheckBox(tr("Leave this page out"))
        self.scope, self.then, self.now = QComboBox(), QComboBox(), QComboBox()
        self.beside, self.look, self.paper = QComboBox(), QComboBox(), QComboBox()
        self.ink = QCheckBox(tr("For printing in black"))
        self.present = button(tr("Present (F5)"), primary=True)
        self.pdf, self.html = button(tr("Save as PDF…")), button(tr("Save as HTML…"))
        self.picture, self.tables = (
            button(tr("This page as picture…")),
            button(tr("Tables as CSV…")),
        )
        self.stop = button(tr("Stop"))
        self.bar = QProgressBar()
        self.said = Label("", "small", "text_2", wrap=True)
        self._next = Label(tr("Next block, one line each"), "small_bold")
        self._compare = QWidget()
        self._arrange()
        self._connect()

    def show_review(self, review: Review, page: Page, chosen: Choices, look: str) -> None:
        """Show a page's choices and the review's."""
        other = page.key != self._key
        self._key = page.key
        self.title.show_words(page.title, other=other)
        self.remark.show_words(page.remark, other=other)
        for widget in (self.lines, self._next):
            widget.setVisible(page.key == "next")
        own = chosen.next_lines or (getattr(page.picture, "lines", ()))
        self.lines.show_words("\n".join(own) if page.key == "next" else "", other=other)
        _check(self.out, page.hidden)
        first, _, second = review.scope.partition("+")
        _fill(self.scope, review.scopes or ((review.scope, review.name),), first)
        self.scope.setEnabled(len(review.scopes) > 1)
        blocks = [entry for entry in review.scopes if ".." not in entry[0]]
        # A season stands beside a season, a block beside a block.
        of_a_kind = [e for e in review.scopes if (".." in e[0]) == (".." in first)]
        others = [entry for entry in of_a_kind if entry[0] != first]
        _fill(self.beside, [("", tr("Nothing else")), *others], second)
        self.beside.setEnabled(bool(others))
        self._compare.setVisible(page.key == "curve" and len(blocks) > 1 and not second)
        offered = [("", tr("Chosen by the program")), *blocks]
        _fill(self.then, offered, chosen.then)
        _fill(self.now, offered, chosen.now)
        _fill(self.look, [(key, tr(words)) for key, words in LOOKS.items()], look)

    def show_progress(self, done: int, count: int) -> None:
        """Show how far the file is."""
        self.bar.setRange(0, count)
        self.bar.setValue(done)

    def show_writing(self, words: str, running: bool) -> None:
        """Say what is being written or what became of it."""
        self.said.setText(words)
        for widget in (self.bar, self.stop):
            widget.setVisible(running)
        for made in (self.pdf, self.html, self.picture, self.tables):
            made.setEnabled(not running)

    def save_now(self) -> None:
        """Keep what is being typed."""
        for field in (self.title, self.remark, self.lines):
            field.save()

    def _arrange(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 12, 16, 12)
        column.setSpacing(6)
        column.addWidget(Label(tr("This page"), "pane_title"))
        column.addWidget(Label(tr("Title"), "small_bold"))
        column.addWidget(self.title)
        column.addWidget(Label(tr("Remark"), "small_bold"))
        column.addWidget(self.remark)
        column.addWidget(self._next)
        column.addWidget(self.lines)
        compare = QGridLayout(self._compare)
        compare.setContentsMargins(0, 0, 0, 0)
        for row, (words, name, box) in enumerate(
            (
                (tr("Then"), tr("Block shown as then"), self.then),
                (tr("Now"), tr("Block shown as now"), self.now),
            )
        ):
            compare.addWidget(Label(words, "small_bold"), row, 0)
            compare.addWidget(box, row, 1)
            box.setAccessibleName(name)
        compare.setColumnStretch(1, 1)
        column.addWidget(self._compare)
        column.addWidget(self.out)
        column.addWidget(Rule())
        column.addWidget(Label(tr("All pages"), "pane_title"))
        grid = QGridLayout()
        for row, (words, box) in enumerate(
            (
                (tr("About"), self.scope),
                (tr("And"), self.beside),
                (tr("Look"), self.look),
                (tr("Paper"), self.paper),
            )
        ):
            grid.addWidget(Label(words, "small_bold"), row, 0)
            grid.addWidget(box, row, 1)
            box.setAccessibleName(words)
            box.setSizeAdjustPolicy(
                QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
            )
            box.setMinimumContentsLength(12)
        grid.setColumnStretch(1, 1)
        column.addLayout(grid)
        column.addWidget(self.ink)
        for key, (words, _, _) in PAPERS.items():
            self.paper.addItem(tr(words), key)
        column.addWidget(self.present)
        for made in (self.pdf, self.html, self.picture, self.tables):
            column.addWidget(made)
        self.bar.setAccessibleName(tr("Pages written"))
        column.addWidget(self.bar)
        column.addWidget(self.stop)
        column.addWidget(self.said)
        column.addStretch(1)
        self.show_writing(tr("Places are left out of every file."), False)

    def _connect(self) -> None:
        self.title.said.connect(self.titled)
        self.remark.said.connect(self.remarked)
        self.lines.said.connect(self.lines_said)
        self.out.toggled.connect(self.left_out)
        self.scope.activated.connect(lambda _: self.scope_chosen.emit(self.scope.currentData()))
        self.beside.activated.connect(self._beside)
        for box in (self.then, self.now):
            box.activated.connect(
                lambda _: self.pair_chosen.emit(self.then.currentData(), self.now.currentData())
            )
        self.look.activated.connect(lambda _: self.look_chosen.emit(self.look.currentData()))
        self.present.clicked.connect(self.present_asked)
        self.pdf.clicked.connect(
            lambda: self.pdf_asked.emit(self.paper.currentData(), self.ink.isChecked())
        )
        self.html.clicked.connect(self.html_asked)
        self.picture.clicked.connect(self.picture_asked)
        self.tables.clicked.connect(self.tables_asked)
        self.stop.clicked.connect(self.stop_asked)

    def _beside(self, _: int) -> None:
        parts = [self.scope.currentData(), self.beside.currentData()]
        self.scope_chosen.emit("+".join(sorted(part for part in parts if part)))


def _fill(box: QComboBox, entries: Sequence[tuple[str, str]], key: str) -> None:
    """Offer entries, by key and name, and choose one without telling of it."""
    blocker = QSignalBlocker(box)
    if [(box.itemData(k), box.itemText(k)) for k in range(box.count())] != list(entries):
        box.clear()
        for value, words in entries:
            box.addItem(words, value)
    box.setCurrentIndex(max(box.findData(key), 0))
    blocker.unblock()


def _check(box: QCheckBox, on: bool) -> None:
    blocker = QSignalBlocker(box)
    box.setChecked(on)
    blocker.unblock()
