"""The ways to better lines, a tab each, with the day from which they hold."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import QSignalBlocker, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QDialog,
    QHBoxLayout,
    QLineEdit,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from tercet.domain import DatedThresholds
from tercet.engine.shades import Thresholds
from tercet.language import tr
from tercet.library import lines
from tercet.library.dated import in_force
from tercet.ui import words
from tercet.ui.day_edit import DayEdit
from tercet.ui.fields import ErrorLine, fit_to_screen
from tercet.ui.flow import FlowLayout
from tercet.ui.lines.pointed import PointedPage
from tercet.ui.lines.race import RaceSource
from tercet.ui.lines.recorded import RecordedPage
from tercet.ui.lines.step_test import StepTestPage
from tercet.ui.lines.words import CAUTION, GUIDE
from tercet.ui.thresholds_pages import FieldError, MaximumPage, Page, TypedPage
from tercet.ui.widgets import Label, Pane, button, clear_scroll


class WayTabs(QTabWidget):
    """As high as the page in front, not as the highest."""

    def _height(self) -> int:
        page = self.currentWidget()
        if page is None:
            return 0
        inside = page.layout()
        wide = max(self.width(), 400)
        high = page.sizeHint().height()
        if inside is not None and inside.hasHeightForWidth():
            high = max(inside.heightForWidth(wide), page.minimumSizeHint().height())
        return high + self.tabBar().sizeHint().height() + 2

    def sizeHint(self) -> QSize:
        """Room for the tabs and the page in front."""
        return QSize(600, self._height())

    def minimumSizeHint(self) -> QSize:
        """No lower than that."""
        return QSize(300, self._height())

    def hasHeightForWidth(self) -> bool:
        """No: it would be that of the highest page."""
        return False

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lines wrap anew with the width."""
        super().resizeEvent(event)
        if event.oldSize().width() != event.size().width():
            self.updateGeometry()


class WaysPane(Pane):
    """Asks for one thing at a time; ``preview_asked`` with how to find it, from when, how far."""

    preview_asked = Signal(object, object, bool)  # Finder, date, whether runs before it too
    edited = Signal()
    test_kept = Signal(str, object, object)  # kind, rows, id or None

    def __init__(self, units: words.Units = "km", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._units = units
        self._column = QVBoxLayout(self)
        self.tabs = WayTabs()
        self._column.addWidget(self.tabs, 1)
        self._entries: tuple[DatedThresholds, ...] = ()
        self.recorded, self.steps = RecordedPage(units), StepTestPage(units)
        self.race, self.pointed = RaceSource(units), PointedPage()
        self.maximum = MaximumPage()
        self.typed = TypedPage(units, Thresholds())
        self.tabs.setDocumentMode(True)
        self.tabs.tabBar().setAccessibleName(tr("Ways to thresholds"))
        for page, name in self._pages():
            self.tabs.addTab(page, name)
        self.tabs.tabBar().setUsesScrollButtons(True)
        self.start = DayEdit(date.today(), tr("In force from"))
        self.reach = QComboBox()
        self.reach.setAccessibleName(tr("Which runs are judged by them"))
        self.reach.addItem(tr("from that day on only"), "later")
        self.reach.addItem(tr("runs before it too"), "all")
        self.ask = button(tr("Show what it would change"), primary=True)
        self.guide = button(tr("Tests without a device…"), name=tr("The talk test and other tests"))
        self.error = ErrorLine()
        self._arrange()
        for page, _ in self._pages():
            page.edited.connect(self._edited)
        self.tabs.currentChanged.connect(self._turned)
        self.start.dateChanged.connect(lambda _: self._edited())
        self.reach.currentIndexChanged.connect(lambda _: self._edited())
        self.pointed.edited.connect(self._take_day)
        self.steps.kept.connect(
            lambda rows: self.test_kept.emit("lactate", rows, self.steps.test_id)
        )
        self.ask.clicked.connect(self._ask)
        self.guide.clicked.connect(self._show_guide)

    def _pages(self) -> tuple[tuple[Page, str], ...]:
        return (
            (self.recorded, tr("From recordings")),
            (self.steps, tr("Lactate step test")),
            (self.race, tr("A race")),
            (self.pointed, tr("A field test")),
            (self.maximum, tr("Heart rate or age")),
            (self.typed, tr("Typed")),
        )

    def _arrange(self) -> None:
        column = self._column
        column.setContentsMargins(16, 8, 16, 10)
        column.setSpacing(6)
        column.addWidget(self.error)
        foot = QHBoxLayout()
        line = FlowLayout()
        for part in (Label(tr("In force from")), self.start, self.reach, self.ask, self.guide):
            line.addWidget(part)
        foot.addLayout(line)
        column.addLayout(foot)
        column.addWidget(Label(tr(CAUTION), "small", "text_2", wrap=True))

    # Showing -----------------------------------------------------------------------------

    def show_held(self, held: lines.Stored, today: date) -> None:
        """Take what is stored; what is being typed stays."""
        now = in_force(held.entries, today)
        self.steps.show_now(now)
        tests = [test for test in held.tests if test.kind == "lactate"]
        self.steps.show_kept(tests[0] if tests else None)
        self.pointed.show_runs(held.prints, now, today)
        if held.entries != self._entries:
            values = now.values if now is not None else Thresholds()
            self._entries = held.entries
            self.typed.show_values(values)
            sure = now is not None and not now.estimated
            self.race.race.know(values.hr_max if sure else None)
            # A first guess judged all that is there, so surer lines do as well.
            guessed = all(entry.estimated for entry in held.entries)
            self.reach.setCurrentIndex(self.reach.findData("all" if guessed else "later"))

    def show_way(self, way: str) -> QWidget:
        """Bring the tab of a way to the front; gives its first field, or the tabs."""
        fields: dict[str, tuple[QWidget, QWidget]] = {
            "race": (self.race, self.race.race.time),
            "maximum": (self.maximum, self.maximum.maximum),
            "typed": (self.typed, self.typed.lt1_pace),
        }
        page, field = fields.get(way, (self.recorded, self.tabs.tabBar()))
        self.tabs.setCurrentWidget(page)
        field.setFocus()
        return field

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter in a field asks, as the button does."""
        focus = QApplication.focusWidget()
        page = self.tabs.currentWidget()
        typing = isinstance(focus, (QLineEdit, QAbstractSpinBox)) and page.isAncestorOf(focus)
        if typing and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.ask.click()
        else:
            super().keyPressEvent(event)

    def begin(self, today: date) -> None:
        """Offer the season's own today, which in the example is none of the calendar's."""
        with QSignalBlocker(self.start):
            self.start.setDate(today)

    def ready(self) -> None:
        """Nothing runs."""
        self.ask.setEnabled(True)

    def waiting(self) -> None:
        """A preview runs."""
        self.error.clear_error()
        self.ask.setEnabled(False)

    def _turned(self, _: int) -> None:
        self.tabs.updateGeometry()
        self._edited()

    def _edited(self) -> None:
        self.error.clear_error()
        self.edited.emit()

    def _take_day(self) -> None:
        day = self.pointed.day
        if day is not None:
            self.start.setDate(day)

    def _ask(self) -> None:
        page = self.tabs.currentWidget()
        assert isinstance(page, Page)
        try:
            find = page.finder(self.start.day)
        except FieldError as error:
            self.error.show_error(str(error), error.field)
            return
        self.error.clear_error()
        self.preview_asked.emit(find, self.start.day, self.reach.currentData() == "all")

    def _show_guide(self) -> None:
        dialog = GuideDialog(self)
        dialog.open()


class GuideDialog(QDialog):
    """The talk test, session RPE and two trials in our own words, with the cautions."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Tests without a device"))
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(20, 16, 20, 8)
        column.setSpacing(6)
        for title, text in GUIDE:
            column.addWidget(Label(tr(title), "block"))
            column.addWidget(Label(tr(text), "body", wrap=True))
        column.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 12)
        whole.addWidget(clear_scroll(inside), 1)
        close = button(tr("Close"), primary=True)
        close.clicked.connect(self.accept)
        row = QHBoxLayout()
        row.setContentsMargins(20, 0, 20, 0)
        row.addStretch(1)
        row.addWidget(close)
        whole.addLayout(row)
        fit_to_screen(self, 620, 640)
