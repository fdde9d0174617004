"""A first look round: four cards at most, each beside the part of the window that it is about."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QKeySequence, QPainter, QPaintEvent, QPen, QShortcut
from PySide6.QtWidgets import QApplication, QFrame, QVBoxLayout, QWidget

from tercet.language import mark, tr
from tercet.ui import theme
from tercet.ui.flow import FlowLayout
from tercet.ui.widgets import Label, button

if TYPE_CHECKING:
    from tercet.ui.window import MainWindow

STEPS = (
    (
        mark("Runs come in here"),
        mark("Files can also be dropped anywhere on this window. Each is copied, kept as it is."),
    ),
    (
        mark("A line is a week"),
        mark(
            "A stair is a run, as long as its running time: the low step is easy, the middle one "
            "moderate, the high one hard. Arrow keys go from day to day, Enter opens a run."
        ),
    ),
    (
        mark("Each block starts at zero"),
        mark("Easy builds up above the line; moderate and hard hang below, beside what is wanted."),
    ),
    (
        mark("Looking ahead and back"),
        mark(
            "Under this name: back from race day, where a week is planned. Review, in the same "
            "row, makes pages of the season to show or to print."
        ),
    ),
)
KEPT = "tour"
_GAP = 14
_MOVES = (QEvent.Type.Move, QEvent.Type.Resize, QEvent.Type.Show, QEvent.Type.Hide)


class Outline(QWidget):
    """A line round a part of the window; the mouse goes through it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.hide()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw it in the colour of what is chosen, outside a gap."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(theme.current().color("focus"), 3))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(2, 2, -2, -2), 6, 6)


class Tour(QFrame):
    """The card that goes round; the window stays as usable as ever, and nothing moves by itself."""

    def __init__(self, window: MainWindow) -> None:
        whole = window.pages.parentWidget()
        assert whole is not None
        self._whole: QWidget = whole
        super().__init__(self._whole)
        self._window, self._step = window, 0
        self._target: QWidget | None = None
        self._focus_before = QApplication.focusWidget()
        self.setProperty("raised", True)
        self.outline = Outline(self._whole)
        self.title = Label("", "block", wrap=True)
        self.words = Label("", "body", "text_2", wrap=True)
        self.place_words = Label("", "small", "text_2")
        self.following = button("", primary=True)
        self.back = button(tr("Back"))
        self.skip = button(tr("Leave the tour"))
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 12, 16, 12)
        column.setSpacing(8)
        line = FlowLayout()
        for made in (self.following, self.back, self.skip):
            line.addWidget(made)
        for part in (self.place_words, self.title, self.words):
            column.addWidget(part)
        column.addLayout(line)
        self.following.clicked.connect(lambda: self.go_to(self._step + 1))
        self.back.clicked.connect(lambda: self.go_to(self._step - 1))
        self.skip.clicked.connect(self.end)
        QShortcut(QKeySequence(Qt.Key.Key_Escape), self, self.end)
        window.pages.currentChanged.connect(self._page_changed)
        window.season_page.right.currentChanged.connect(self._page_changed)
        window.closed.connect(self.end)
        theme.changed.connect(self._look_changed)
        self._whole.installEventFilter(self)
        self.go_to(0)

    def go_to(self, step: int) -> None:
        """Show a step; after the last one the tour is over."""
        if step >= len(STEPS):
            self.end()
            return
        self._window.show_view("season")
        self._window.season_page.show_recordings(False)
        self._step = step
        title, text = STEPS[step]
        self._aim(self._targets()[step])
        self.title.setText(tr(title))
        self.words.setText(tr(text))
        self.place_words.setText(
            tr("A look round, {n} of {whole}", n=str(step + 1), whole=str(len(STEPS)))
        )
        last = step == len(STEPS) - 1
        self.following.setText(tr("Done") if last else tr("Next"))
        self.back.setVisible(step > 0)
        self.skip.setVisible(not last)
        self.setAccessibleName(f"{self.place_words.text()}. {self.title.text()}")
        self.setAccessibleDescription(self.words.text())
        self.following.setAccessibleDescription(f"{self.title.text()}. {self.words.text()}")
        self.show()
        self._place()
        self.following.setFocus(Qt.FocusReason.TabFocusReason)

    def end(self) -> None:
        """Go away for good, and give the focus back."""
        self._aim(None)
        self._whole.removeEventFilter(self)
        self._window.look.keep(KEPT, 1)
        self.hide()
        self.outline.hide()
        before = self._focus_before
        if before is not None and before.isVisible():
            before.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self._window.season_page.sheet.setFocus(Qt.FocusReason.OtherFocusReason)
        self.outline.deleteLater()
        self.deleteLater()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Stay beside what is pointed at."""
        if event.type() in _MOVES:
            self._place()
        return False

    def _targets(self) -> tuple[QWidget, ...]:
        bar, page = self._window.bar, self._window.season_page
        return bar.add, page.left, page.build_up, bar.season

    def _aim(self, target: QWidget | None) -> None:
        if self._target is not None:
            self._target.removeEventFilter(self)
        self._target = target
        if target is not None:
            target.installEventFilter(self)

    def _look_changed(self) -> None:
        self._place()

    def _page_changed(self) -> None:
        """Wait while something else is in view; end where there are no runs any more."""
        if self._target is None:
            return  # it has ended, and is only not gone yet
        shown, page = self._window.pages.currentWidget(), self._window.season_page
        if shown is self._window.empty:
            self.end()
            return
        self.setVisible(shown is page and not page.recordings_shown)
        self._place()

    def _place(self) -> None:
        target, whole = self._target, self._whole.rect()
        if target is None:
            return
        shown = target.isVisible() and not self.isHidden()
        around = QRect(target.mapTo(self._whole, QPoint()), target.size()).adjusted(-5, -5, 5, 5)
        self.outline.setVisible(shown)
        self.outline.setGeometry(around & whole)
        width = min(theme.current().px(340), whole.width() - 2 * _GAP)
        height = max(self.heightForWidth(width), self.minimumSizeHint().height())
        self.setGeometry(_beside(around if shown else QRect(), QSize(width, height), whole))
        self.outline.raise_()
        self.raise_()


def _beside(around: QRect, size: QSize, whole: QRect) -> QRect:
    """Below, left, right or above what is pointed at; over its lower corner where none has room."""
    inside = whole.adjusted(_GAP, _GAP, -_GAP, -_GAP)
    corner = QRect(QPoint(0, 0), size)
    corner.moveBottomRight(inside.bottomRight())
    if around.isEmpty():
        return corner
    left = min(max(around.left(), inside.left()), inside.right() - size.width())
    top = min(max(around.top(), inside.top()), inside.bottom() - size.height())
    for point in (
        QPoint(left, around.bottom() + _GAP),
        QPoint(around.left() - _GAP - size.width(), top),
        QPoint(around.right() + _GAP, top),
        QPoint(left, around.top() - _GAP - size.height()),
    ):
        if inside.contains(QRect(point, size)):
            return QRect(point, size)
    return corner


def offer(window: MainWindow) -> None:
    """Begin the tour once: when there are runs to see and nothing else is being looked at."""
    page = window.season_page

    def look(*_: object) -> None:
        view = window.view
        free = page.loaded and not page.recordings_shown and not window.imports.running
        seen = window.look.kept(KEPT) is not None
        if view is None or not view.sessions or not free or seen or not page.isVisible():
            return
        window.season_shown.disconnect(look)
        page.right.currentChanged.disconnect(look)
        window.look.keep(KEPT, 1)
        Tour(window)

    window.season_shown.connect(look)
    page.right.currentChanged.connect(look)
