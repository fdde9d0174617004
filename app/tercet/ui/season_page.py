"""The season view: the sheet at the left, build-up and session card or recordings at the right."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from tercet.library import season as seasons
from tercet.library.views import SeasonView, SessionView
from tercet.ui import theme, words
from tercet.ui.first_run import ThresholdStrip
from tercet.ui.recordings_pane import RecordingsPane
from tercet.ui.sheet import SeasonSheet
from tercet.ui.stairs import KeyStrip
from tercet.ui.widgets import Figure, Label, Pane, Rule, StairWidget, button

#: Window width over text size under which the right side goes below the sheet, and under
#: which the session card folds to its heading line.
STACK_BELOW, FOLD_BELOW = 1000, 1200


class SessionCard(Pane):
    """The selected session in a few figures, with a way to its page."""

    open_asked = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("Selected session")
        self._id: int | None = None
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 12, 16, 12)
        column.setSpacing(8)
        head = QHBoxLayout()
        self.name = Label("", "pane_title")
        self.when = Label("", "small", "text_2")
        self.open = button("Open")
        self.open.clicked.connect(self._open)
        head.addWidget(self.name)
        head.addWidget(self.when, 1)
        head.addWidget(self.open)
        column.addLayout(head)
        self.body = QWidget()
        body = QVBoxLayout(self.body)
        body.setContentsMargins(0, 0, 0, 0)
        figures = QHBoxLayout()
        self.running = Figure("running time")
        self.distance = Figure("distance")
        self.pace = Figure("pace")
        self.effort = Figure("effort said")
        for figure in (self.running, self.distance, self.pace, self.effort):
            figures.addWidget(figure, 1)
        body.addLayout(figures)
        self.stair = StairWidget()
        body.addWidget(self.stair)
        self.shares = Label("", "small", "text_2", wrap=True)
        body.addWidget(self.shares)
        column.addWidget(self.body)
        column.addStretch()
        self.show_session(None)

    def show_session(self, session: SessionView | None, units: words.Units = "km") -> None:
        """Show a session, or what would fill the card."""
        self._id = session.id if session is not None else None
        self.open.setVisible(session is not None)
        self.body.setVisible(session is not None)
        if session is None:
            self.name.setText("No session chosen")
            self.when.setText("Point at a bar, or move to it with the arrow keys.")
            return
        self.name.setText(session.name)
        self.when.setText(f"{words.short_day(session.day)}, {session.start:%H:%M}")
        running = session.running_s if session.sport == "running" else session.moving_s
        self.running.set(words.duration(running))
        self.distance.set(words.distance(session.distance_m, units))
        speed = session.distance_m / session.moving_s if session.moving_s else 0.0
        self.pace.set(words.pace(speed, units) if speed else "–")
        self.effort.set(f"{session.effort} of 10" if session.effort is not None else "not said")
        self.stair.set(session.seconds, max(running, 1.0))
        easy, moderate, hard = (words.hours(value) for value in session.seconds[:3])
        about = "about " if session.estimated else ""
        if session.sport == "running":
            text = f"{about}{easy} easy, {about}{moderate} moderate, {about}{hard} hard"
            if session.seconds[4] >= 30:
                text += f", {words.hours(session.seconds[4])} not judged"
        else:
            text = f"{session.sport.replace('_', ' ')}: kept, not counted as running"
        self.stair.setVisible(session.sport == "running")
        self.shares.setText(text)

    def fold(self, folded: bool) -> None:
        """Keep only the heading line."""
        self.body.setVisible(not folded and self._id is not None)

    def _open(self) -> None:
        if self._id is not None:
            self.open_asked.emit(self._id)


class SeasonPage(QWidget):
    """Puts the sheet beside the build-up, or beside the recordings pane."""

    session_asked = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        # The plotting library loads with this import; the window imports this page after its
        # first picture.
        from tercet.ui.buildup_pane import BuildUpPane

        self._view: SeasonView | None = None
        self._units: words.Units = "km"
        outer = QVBoxLayout(self)
        outer.setContentsMargins(12, 0, 12, 0)
        self.splitter = QSplitter(Qt.Orientation.Horizontal)
        self.splitter.setHandleWidth(10)
        self.splitter.setChildrenCollapsible(False)
        outer.addWidget(self.splitter)

        left = Pane()
        column = QVBoxLayout(left)
        column.setContentsMargins(1, 1, 1, 1)
        column.setSpacing(0)
        self.strip = ThresholdStrip()
        self.strip.hide()
        column.addWidget(self.strip)
        self.strip_rule = Rule()
        self.strip_rule.hide()
        column.addWidget(self.strip_rule)
        self.sheet = SeasonSheet()
        column.addWidget(self.sheet, 1)
        self.key = KeyStrip()
        column.addWidget(self.key)
        self.splitter.addWidget(left)

        self.right = QStackedWidget()
        charts = QWidget()
        chart_column = QVBoxLayout(charts)
        chart_column.setContentsMargins(0, 0, 0, 0)
        chart_column.setSpacing(10)
        self.build_up = BuildUpPane()
        chart_column.addWidget(self.build_up, 3)
        self.card = SessionCard()
        chart_column.addWidget(self.card, 2)
        self.recordings = RecordingsPane()
        self.right.addWidget(charts)
        self.right.addWidget(self.recordings)
        self.splitter.addWidget(self.right)
        self.splitter.setStretchFactor(0, 58)
        self.splitter.setStretchFactor(1, 42)
        left.setMinimumWidth(440)
        self.right.setMinimumWidth(380)

        self.sheet.session_activated.connect(self.session_asked)
        self.card.open_asked.connect(self.session_asked)
        self.sheet.session_selected.connect(self._selected)
        self.sheet.week_pointed.connect(self.build_up.mark_week)
        self.build_up.week_pointed.connect(self.sheet.mark_week)

    @property
    def recordings_shown(self) -> bool:
        """Whether the recordings pane is in front."""
        return self.right.currentWidget() is self.recordings

    def show_recordings(self, shown: bool) -> None:
        """Bring the recordings pane to the front, or the charts back."""
        self.right.setCurrentIndex(1 if shown else 0)

    def set_season(self, view: SeasonView, units: words.Units = "km") -> None:
        """Show a season."""
        self._view, self._units = view, units
        self.sheet.set_season(view)
        self.key.set_present(**self.sheet.key_needs())
        self.build_up.show_build_up(
            seasons.build_up(view), seasons.build_up(view, "metres"), view.today, view.races
        )
        self._selected(self.sheet.selected_session() or -1)

    def _selected(self, session_id: int) -> None:
        if self._view is None:
            return
        found = next((item for item in self._view.sessions if item.id == session_id), None)
        self.card.show_session(found, self._units)
        self._fold()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fold by width over text size."""
        super().resizeEvent(event)
        self._fold()

    def _fold(self) -> None:
        width = self.width() / theme.current().scale
        stacked = width < STACK_BELOW
        want = Qt.Orientation.Vertical if stacked else Qt.Orientation.Horizontal
        if self.splitter.orientation() != want:
            self.splitter.setOrientation(want)
        self.card.fold(width < FOLD_BELOW)
