"""The presenter's own screen: notes largest, numbers behind the page, now and next."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import QFont, QFontMetrics, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from tercet.language import mark, several, tr
from tercet.library.review.content import Before, Page, Review
from tercet.ui import theme
from tercet.ui.review.frame import Foot
from tercet.ui.review.looks import Look
from tercet.ui.review.page_view import PageView
from tercet.ui.review.wall import Keys
from tercet.ui.twin import fill_table, number_table
from tercet.ui.widgets import Label, button, clear_scroll

KEYS = mark(
    "Right, space, page down: on    Left, page up: back    number, Enter: go to    "
    "B: blank    O: open a run    Esc: end"
)
#: The notes are written this large. [px]
NOTE_PX = 24


class Notes(QWidget):
    """Notes in a large hand."""

    def __init__(self) -> None:
        super().__init__()
        self._text = ""
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.MinimumExpanding)

    def show_text(self, text: str) -> None:
        """Show notes."""
        self._text = text
        self.setAccessibleName(text or tr("No notes for this page"))
        self.updateGeometry()
        self.update()

    def heightForWidth(self, width: int) -> int:
        """As high as the words need."""
        metrics = self._metrics()
        flags = int(Qt.TextFlag.TextWordWrap)
        return metrics.boundingRect(0, 0, max(width, 10), 100_000, flags, self._text).height() + 8

    def hasHeightForWidth(self) -> bool:
        return True

    def sizeHint(self) -> QSize:
        return QSize(400, self.heightForWidth(max(self.width(), 300)))

    def _metrics(self) -> QFontMetrics:
        return QFontMetrics(self._font())

    def _font(self) -> QFont:
        look = theme.current()
        font = look.font("body")
        font.setPixelSize(look.px(NOTE_PX))
        return font

    def paintEvent(self, event: QPaintEvent) -> None:
        look = theme.current()
        painter = QPainter(self)
        painter.setFont(self._font())
        painter.setPen(look.color("text" if self._text else "text_3"))
        flags = int(Qt.AlignmentFlag.AlignTop) | int(Qt.TextFlag.TextWordWrap)
        painter.drawText(self.rect(), flags, self._text or tr("No notes for this page."))


class Presenter(QWidget):
    """Full screen beside the wall."""

    turned = Signal(int)
    jumped = Signal(int)
    blanked = Signal()
    ended = Signal()
    run_asked = Signal()
    row_asked = Signal(int)
    pointed = Signal(QPointF)

    def __init__(self) -> None:
        super().__init__()
        self.setWindowTitle(tr("Review: notes"))
        self.keys = Keys(self)
        self.keys.turned.connect(self.turned)
        self.keys.jumped.connect(self.jumped)
        self.keys.blanked.connect(self.blanked)
        self.keys.ended.connect(self.ended)
        self.keys.run_asked.connect(self.run_asked)
        self._top = Label("", "body_bold")
        self._clock = Label("", "body", "text_2")
        self.notes = Notes()
        self._before, self._before_words = Label("", "small_bold"), Label("", "body", wrap=True)
        self.table = number_table(tr("Numbers behind this page"))
        self.table.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.table.clicked.connect(lambda index: self.row_asked.emit(index.row()))
        self.now, self.next = PageView(), PageView()
        self.now.row_asked.connect(self.row_asked)
        self.now.pointed.connect(self.pointed)
        self.open = button(tr("Open a run behind this page"))
        self.open.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.open.clicked.connect(self.run_asked)
        self._arrange()

    def show_page(self, review: Review, at: int, look: Look, minutes: int) -> None:
        """Show a page's notes and numbers, the page, and the one after it."""
        pages = review.shown
        page = pages[at]
        self._top.setText(
            tr("{n} of {count}: {title}", n=at + 1, count=len(pages), title=page.title)
        )
        self._clock.setText(several(minutes, mark("{n} minute"), mark("{n} minutes")))
        self.notes.show_text(page.notes)
        self._show_before(review.before)
        fill_table(self.table, page.table.headings, page.table.rows, set(page.table.words) or {0})
        self.now.show_page(page, look, Foot(review.runner, at + 1, len(pages)))
        after: Page | None = pages[at + 1] if at + 1 < len(pages) else None
        self.next.setVisible(after is not None)
        self._next_word.setText(tr("Next") if after is not None else tr("This is the last page"))
        if after is not None:
            self.next.show_page(after, look, Foot(review.runner, at + 2, len(pages)))
        self.open.setEnabled(any(page.table.runs))

    def _show_before(self, before: Before | None) -> None:
        for label in (self._before, self._before_words):
            label.setVisible(before is not None)
        if before is None:
            return
        written = tr("Last review, {name}, written {day}", name=before.name, day=before.day)
        undated = tr("Last review, {name}, day not kept", name=before.name)
        self._before.setText(written if before.day else undated)
        self._before_words.setText("\n".join(before.lines))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not self.keys.press(event):
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), theme.current().color("pane"))

    def _arrange(self) -> None:
        whole = QVBoxLayout(self)
        whole.setContentsMargins(24, 16, 24, 12)
        whole.setSpacing(12)
        top = QHBoxLayout()
        top.addWidget(self._top, 1)
        top.addWidget(self._clock)
        whole.addLayout(top)
        sides = QHBoxLayout()
        sides.setSpacing(24)
        left = QVBoxLayout()
        words = QWidget()
        held = QVBoxLayout(words)
        held.setContentsMargins(0, 0, 8, 0)
        held.addWidget(self.notes)
        held.addWidget(self._before)
        held.addWidget(self._before_words)
        held.addStretch(1)
        left.addWidget(clear_scroll(words), 3)
        left.addWidget(Label(tr("Numbers behind this page"), "small_bold"))
        left.addWidget(self.table, 2)
        sides.addLayout(left, 3)
        right = QVBoxLayout()
        right.addWidget(Label(tr("Now"), "small_bold"))
        right.addWidget(self.now, 1)
        self._next_word = Label(tr("Next"), "small_bold")
        right.addWidget(self._next_word)
        right.addWidget(self.next, 1)
        right.addWidget(self.open)
        sides.addLayout(right, 2)
        whole.addLayout(sides, 1)
        whole.addWidget(Label(tr(KEYS), "small", "text_2", wrap=True))
        for view in (self.now, self.next):
            view.setFocusPolicy(Qt.FocusPolicy.NoFocus)
