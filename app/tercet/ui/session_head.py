"""The head of a session's page: title, ways on, six values and the stair bar."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction, QActionGroup
from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QMenu,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from tercet.language import tr
from tercet.library import session_kinds
from tercet.library.session_kinds import KINDS, Kind
from tercet.library.views import SessionView
from tercet.ui import theme as themes
from tercet.ui import words
from tercet.ui.session_stair import SessionStair, left_out_words
from tercet.ui.sheet_rows import session_length
from tercet.ui.stretch_menu import add_whole_run
from tercet.ui.values import Value

#: Under this width, at 100 % text, the six values stand in two rows.
TWO_ROWS_WIDTH = 700


def mean_speed(session: SessionView) -> float:
    """Mean speed while running, or while moving where nothing was counted as running [m/s]."""
    counted = session.sport == "running"
    running_m = sum(session.metres[:3]) + session.metres[4] if counted else 0.0
    seconds = session.running_s if running_m > 0.0 else session.moving_s
    metres = running_m if running_m > 0.0 else session.distance_m
    return metres / seconds if seconds > 0.0 else 0.0


def length_word(session: SessionView) -> str:
    """What the length of a session is called: that of other sports is the time they moved."""
    return tr("running time") if session.sport == "running" else tr("moving time")


class SessionHead(QWidget):
    """Title and date, Previous, Next, Back and Kind, the values, and the stair."""

    kind_chosen = Signal(object)  # session_kinds.Kind
    whole_said = Signal(str)  # of the whole run: a letter of a shade, "belt" or "back"

    def __init__(self) -> None:
        super().__init__()
        self.title, self.date = QLabel(), QLabel()
        self.title.setWordWrap(True)
        self.date.setProperty("secondary", True)
        self.back = QPushButton(tr("&Back"))
        self.back.setToolTip(tr("Esc"))
        self.back.setAccessibleName(tr("Back to the season"))
        self.previous, self.next = QPushButton(tr("‹ &Previous")), QPushButton(tr("&Next ›"))
        self.previous.setAccessibleName(tr("Previous session"))
        self.next.setAccessibleName(tr("Next session"))
        self.kind = QPushButton()
        self._kinds: dict[Kind, QAction] = {}
        self._make_menu()
        self.running = Value(tr("running time"))
        self.distance = Value(tr("distance"))
        self.pace = Value(tr("pace"))
        self.climb = Value(tr("climb"))
        self.heart = Value(tr("heart rate, mean"))
        self.effort = Value(tr("effort said"))
        self.stair = SessionStair()
        self.left_out = QLabel()
        self.left_out.setProperty("secondary", True)
        self.left_out.setWordWrap(True)
        self._grid = QGridLayout()
        self._columns = 0
        self._arrange()
        themes.changed.connect(self.restyle)
        self.restyle()

    def show_session(
        self, session: SessionView, block_name: str, week_number: int | None, units: words.Units
    ) -> None:
        """Show a session's sums in words."""
        self.title.setText(session.name)
        place = block_name
        if block_name and week_number:
            place = tr("{block}, week {n}", block=block_name, n=week_number)
        when = words.at_clock(words.long_day(session.day), session.start, session.clock)
        self.date.setText("   ".join(part for part in (when, place) if part))
        counted = session.sport == "running"
        self.running.show_value(words.duration(session_length(session)), length_word(session))
        self.distance.show_value(words.distance(session.distance_m, units))
        self.pace.show_value(words.pace(mean_speed(session), units))
        self.climb.show_value(
            words.NOTHING if session.climb_m is None else words.climb(session.climb_m, units)
        )
        self.heart.show_value(
            words.NOTHING if session.hr_mean is None else words.heart_rate(session.hr_mean)
        )
        self.show_effort(session.effort)
        self.stair.setVisible(counted)
        self.stair.show_seconds(session.seconds, session.estimated)
        left_out = left_out_words(session.seconds) if counted else ""
        if counted and session.estimated:
            estimate = tr(
                "The shares are about right only: nobody has confirmed the thresholds yet."
            )
            left_out = f"{left_out} {estimate}".strip()
        self.left_out.setText(left_out)
        self.left_out.setVisible(bool(left_out))
        known = session_kinds.of(session.sport, session.kind)
        for each, action in self._kinds.items():
            action.setChecked(each == known)
        kind = session_kinds.said(session.sport, session.kind)
        self.kind.setText(tr("&Kind: {kind}", kind=kind))
        self.kind.setAccessibleName(tr("Kind of session: {kind}", kind=kind))

    def show_effort(self, effort: int | None) -> None:
        """Show what the runner said of the effort."""
        self.effort.show_value(
            tr("not said") if effort is None else tr("{effort} of 10", effort=effort)
        )

    def fold(self, width: float) -> None:
        """Set the values in one row, or in two on a narrow page (width at 100 % text)."""
        columns = 3 if width < TWO_ROWS_WIDTH else 6
        if columns == self._columns:
            return
        self._columns = columns
        values = (self.running, self.distance, self.pace, self.climb, self.heart, self.effort)
        for k, value in enumerate(values):
            self._grid.removeWidget(value)
            self._grid.addWidget(value, k // columns, k % columns)
        for column in range(6):
            self._grid.setColumnStretch(column, 1 if column < columns else 0)

    def restyle(self, *_: object) -> None:
        look = themes.current()
        self.title.setFont(look.font("page_title"))
        for label in (self.date, self.left_out):
            label.setFont(look.font("body"))
        for button in (self.back, self.previous, self.next, self.kind):
            button.setFont(look.font("body_bold"))

    def _make_menu(self) -> None:
        menu = QMenu(self.kind)
        group = QActionGroup(self)
        group.setExclusionPolicy(QActionGroup.ExclusionPolicy.ExclusiveOptional)
        for kind in KINDS:
            action = QAction(tr(kind.said), self)
            action.setCheckable(True)
            action.triggered.connect(lambda _checked, chosen=kind: self.kind_chosen.emit(chosen))
            group.addAction(action)
            menu.addAction(action)
            self._kinds[kind] = action
        add_whole_run(menu, self, self.whole_said)
        self.kind.setMenu(menu)

    def _arrange(self) -> None:
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(self.title, 1)
        for button in (self.kind, self.previous, self.next, self.back):
            row.addWidget(button, 0, Qt.AlignmentFlag.AlignTop)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addLayout(row)
        column.addWidget(self.date)
        column.addSpacing(4)
        column.addLayout(self._grid)
        column.addSpacing(2)
        column.addWidget(self.stair)
        column.addWidget(self.left_out)
        self.fold(float(TWO_ROWS_WIDTH))
