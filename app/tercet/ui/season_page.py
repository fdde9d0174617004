"""The season view: the sheet at the left, build-up and session card or recordings at the right."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QSplitter, QStackedWidget, QVBoxLayout, QWidget

from tercet.library.views import SeasonView
from tercet.ui import glance, theme, words
from tercet.ui.first_run import ThresholdStrip
from tercet.ui.glance import Glance
from tercet.ui.search_bar import SearchBar
from tercet.ui.sheet import SeasonSheet
from tercet.ui.stairs import KeyStrip
from tercet.ui.widgets import Pane, Rule

if TYPE_CHECKING:
    from tercet.domain import DatedThresholds
    from tercet.library.season import SessionDetail
    from tercet.ui.buildup_pane import BuildUpPane
    from tercet.ui.recordings_pane import RecordingsPane
    from tercet.ui.session_card import SessionCard
    from tercet.ui.sheet_menu import SheetMenu

#: Window width over text size under which the right side goes below the sheet, and under
#: which the session card folds to its heading line.
STACK_BELOW, FOLD_BELOW = 1000, 1200
#: Beside one another, the least height for the card's body. [px at 100 %]
CARD_HEIGHT = 560
#: Stacked, the least height for the card's heading line. [px at 100 %]
STACKED_CARD_HEIGHT = 420
#: Stacked, the least height for the sheet and a chart. [px at 100 %]
BOTH_HEIGHT = 424
#: Qt's own for a height without limit.
MOST = 16_777_215
#: Least widths of the two sides. [px at 100 %]
LEFT, RIGHT = 520, 420
#: A session's trace is asked for once the arrow keys have rested so long. [ms]
REST_MS = 90
#: A page that is not in view shows what changed once nothing else did for so long. [ms]
IDLE_MS = 400


class SeasonPage(QWidget):
    """Puts the sheet beside the build-up, or beside the recordings pane.

    The sheet is there at once, with empty panes beside it; :meth:`load` fills them.
    """

    session_asked = Signal(int)
    trace_wanted = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self._view: SeasonView | None = None
        self._units: words.Units = "km"
        self._coming: tuple[SeasonView, words.Units] | None = None  # to be shown
        self.had_session = False  # one was chosen since the start
        self.splitter = QSplitter(Qt.Orientation.Horizontal)
        self.splitter.setHandleWidth(10)
        self.splitter.setChildrenCollapsible(False)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(12, 0, 12, 0)
        outer.addWidget(self.splitter)
        self.strip, self.strip_rule = ThresholdStrip(), Rule()
        self._sheet, self.key = SeasonSheet(), KeyStrip()
        self.search = SearchBar(self._sheet)
        self.build_up: BuildUpPane
        self.card: SessionCard
        self.recordings: RecordingsPane
        self.left, self.right = Pane(), QStackedWidget()
        self.loaded = False
        self._arrange()
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST_MS)
        self._rest.timeout.connect(self._want_trace)
        self._behind = False  # the card's trace was not read while another page was in view
        self._idle = QTimer(self, singleShot=True, interval=IDLE_MS)
        self._idle.timeout.connect(self._catch_up)
        theme.changed.connect(self._fold)
        self._fold()

    def load(self) -> None:
        """Fill the right side, with what needs the plotting library."""
        from tercet.ui.buildup_pane import BuildUpPane
        from tercet.ui.recordings_pane import RecordingsPane
        from tercet.ui.session_card import SessionCard

        self.build_up, self.card = BuildUpPane(), SessionCard()
        self.recordings = RecordingsPane()
        for place, part in enumerate((self.build_up, self.card)):
            waiting = self._waiting[place]
            self._chart_column.replaceWidget(waiting, part)
            waiting.deleteLater()
            part.show()
        self._chart_column.setStretch(0, 3)
        self._chart_column.setStretch(1, 2)
        self.right.addWidget(self.recordings)
        self.loaded = True
        self._sheet.session_activated.connect(self.session_asked)
        self.card.open_asked.connect(self.session_asked)
        self._sheet.session_selected.connect(self._selected)
        self._sheet.week_pointed.connect(self.build_up.mark_week)
        self.build_up.week_pointed.connect(self._sheet.mark_week)
        self.build_up.stretch_chosen.connect(self._brushed)
        self._sheet.stretch_chosen.connect(self._show_stretch)
        self.build_up.folded.connect(self._fold)
        self.charts.installEventFilter(self)
        self._fold()

    def _arrange(self) -> None:
        column = QVBoxLayout(self.left)
        column.setContentsMargins(1, 1, 1, 1)
        column.setSpacing(0)
        for part in (self.strip, self.strip_rule):
            part.hide()
            column.addWidget(part)
        column.addWidget(self.search)
        column.addWidget(self._sheet, 1)
        column.addWidget(self.key)
        self.charts = QWidget()
        self._chart_column = QVBoxLayout(self.charts)
        self._chart_column.setContentsMargins(0, 0, 0, 0)
        self._chart_column.setSpacing(10)
        self._waiting = (Pane(), Pane())
        for waiting, stretch in zip(self._waiting, (3, 2), strict=True):
            self._chart_column.addWidget(waiting, stretch)
        self.right.addWidget(self.charts)
        self.splitter.addWidget(self.left)
        self.splitter.addWidget(self.right)
        self.splitter.setStretchFactor(0, 58)
        self.splitter.setStretchFactor(1, 42)
        self.splitter.setSizes([580, 420])

    @property
    def recordings_shown(self) -> bool:
        """Whether the recordings pane is in front."""
        return self.loaded and self.right.currentWidget() is self.recordings

    @property
    def stacked(self) -> bool:
        """Whether the right side stands below the sheet."""
        return self.splitter.orientation() == Qt.Orientation.Vertical

    @property
    def ring(self) -> list[QWidget]:
        """What F6 goes round here, in order, once loaded."""
        ends = [self.card.open, self.recordings.choose]
        return [self.strip.race, self.sheet, *self.build_up.ring, *ends]

    def show_recordings(self, shown: bool) -> None:
        """Bring the recordings pane to the front, or the charts back."""
        self.right.setCurrentIndex(1 if shown else 0)
        self._fold()

    def show_strip(self, estimate: DatedThresholds | None, units: words.Units) -> None:
        """Show an estimate over the sheet with ways to a surer one; None hides the strip."""
        if estimate is not None:
            self.strip.show_estimate(estimate, units)
        for part in (self.strip, self.strip_rule):
            part.setVisible(estimate is not None)
        self._fold()

    def set_season(self, view: SeasonView, units: words.Units = "km") -> None:
        """Show a season: at once in view, else before it comes into view or is asked for."""
        self._coming = view, units
        if self._view is None or self.isVisible():
            self._catch_up()
        else:
            self._idle.start()

    @property
    def sheet(self) -> SeasonSheet:
        """The season sheet, as the season stands."""
        self._catch_up()
        return self._sheet

    def showEvent(self, event: QShowEvent) -> None:
        """Show what changed while another page was in view."""
        self._catch_up()
        if self._behind:
            self._behind = False
            self._want_trace()
        super().showEvent(event)

    def _catch_up(self) -> None:
        self._idle.stop()
        if self._coming is None:
            return
        (view, units), self._coming = self._coming, None
        if view is not self._view:
            self._sheet.set_season(view)
            self.key.set_present(**self._sheet.key_needs())
        self._view, self._units = view, units
        self._sheet.set_units(units)
        self.search.set_season(view)
        if not self.loaded:
            return
        self.build_up.set_units(units)
        from tercet.library import season as seasons

        self.build_up.show_build_up(
            seasons.build_up(view), seasons.build_up(view, "metres"), view.today, view.races
        )
        self._show_stretch(self._sheet.stretch)
        self._selected(self._sheet.selected_session() or -1)

    def offer(self, menu: SheetMenu) -> None:
        """Open this menu where the sheet asks for one."""
        self.sheet_menu = menu
        self._sheet.menu_asked.connect(menu.ask)

    def show_glance(self, kept: Glance) -> None:
        """Show the part of the season last in view, until the whole was read."""
        self._sheet.show_glance(kept)
        self.key.set_present(**self._sheet.key_needs())

    def keep_glance(self, folder: Path, runner: str) -> None:
        """Keep what is in view, so that the next start can show it at once."""
        taken = self.sheet.glance(self._view, runner) if self._view is not None else None
        if taken is not None:
            glance.keep(folder, taken)

    def show_trace(self, session_id: int, detail: SessionDetail | None) -> None:
        """Draw a session's trace on its card, if it is still the chosen one."""
        session = self.card.session
        if detail is not None and session is not None and session.id == session_id:
            self.card.show_trace(detail.trace)

    def restore(self, state: object) -> None:
        """Put the divider where it was."""
        if isinstance(state, QByteArray):
            self.splitter.restoreState(state)
        self._fold()

    def close_quietly(self) -> None:
        """Ask for nothing more: the window closes."""
        self._rest.stop()
        self._idle.stop()

    def _selected(self, session_id: int) -> None:
        if self._view is None:
            return
        found = next((item for item in self._view.sessions if item.id == session_id), None)
        before = self.card.session
        self.had_session |= found is not None
        self.card.show_session(found, self._units)
        if found is None or (found == before and self.card.trace.shown):
            return
        if not self.isVisible():
            self._behind = True  # read when it comes into view
        elif before is not None and found.id == before.id:
            self._want_trace()  # it was edited: no other is to come
        else:
            self._rest.start()

    def _brushed(self, days: tuple[date, date] | None) -> None:
        """Choose in the sheet what was chosen in the chart."""
        if days is None:
            self._sheet.choose(())
            return
        self._sheet.choose_days(*days)
        self._sheet.reveal(days[0])

    def _show_stretch(self, days: tuple[date, date] | None) -> None:
        """Mark in the chart what was chosen in the sheet, with its sums."""
        if self._view is not None:
            from tercet.library.stretch import stretch

            self.build_up.show_stretch(stretch(self._view, *days) if days is not None else None)

    def _want_trace(self) -> None:
        if self.card.session is not None:
            self.trace_wanted.emit(self.card.session.id)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fold by width over text size."""
        super().resizeEvent(event)
        self._fold()

    def _fold(self) -> None:
        look = theme.current()
        width, height = self.width() / look.scale, self.height() / look.scale
        stacked = width < STACK_BELOW
        want = Qt.Orientation.Vertical if stacked else Qt.Orientation.Horizontal
        if self.splitter.orientation() != want:
            self.splitter.setOrientation(want)
            self.splitter.setSizes([620, 380] if stacked else [580, 420])
        self.left.setMinimumWidth(0 if stacked else look.px(LEFT - 80))
        self.right.setMinimumWidth(0 if stacked else look.px(RIGHT - 40))
        if not self.loaded:
            return
        self.build_up.fold(stacked)
        # Below one another there may be no room for both.
        chart = stacked and not self.build_up.short
        hidden = stacked and (self.recordings_shown or (chart and height < BOTH_HEIGHT))
        self.left.setVisible(not hidden)
        # The strip asks for an answer, so it goes before the values.
        asking = stacked and not self.strip.isHidden() and height < STACKED_CARD_HEIGHT
        self.right.setVisible(not asking or hidden)
        self.card.fold(width < FOLD_BELOW or height < CARD_HEIGHT)
        self.card.setVisible(not stacked or (height > STACKED_CARD_HEIGHT and not chart))
        self._limit()

    def _limit(self) -> None:
        """Give folded charts no more height than they need."""
        short = self.stacked and self.build_up.short and not self.recordings_shown
        height = self.charts.sizeHint().height() if short else MOST
        if self.right.maximumHeight() != height:
            self.right.setMaximumHeight(height)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Limit the charts anew when what is in them changed."""
        if watched is self.charts and event.type() == QEvent.Type.LayoutRequest:
            self._limit()
        return False
