"""What the season sheet shows and where: its rows, columns, place and current session."""

from __future__ import annotations

from collections.abc import Collection
from datetime import date, timedelta

from PySide6.QtCore import QModelIndex, QPoint, QRect, QSize, QTimer, Signal
from PySide6.QtGui import QPaintEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QAbstractItemView, QFrame, QTableView, QWidget

from tercet.language import tr
from tercet.library.views import SeasonView, SessionView
from tercet.ui import sheet_layout, sheet_moves, sheet_zoom, theme, words
from tercet.ui.glance import Glance
from tercet.ui.sheet_card import CardKeeper, Found, Place
from tercet.ui.sheet_delegate import SheetDelegate
from tercet.ui.sheet_header import SheetHeader
from tercet.ui.sheet_marks import WEEK
from tercet.ui.sheet_model import SheetModel
from tercet.ui.sheet_rows import Cell
from tercet.ui.sheet_zoom import Zoom

GUTTER = 112


class SheetView(QTableView):
    """Every run of a season on one page, with the current day and session."""

    session_selected = Signal(int)  # the current session is another one, or none: -1
    first_painted = Signal()
    several_chosen = Signal(int)  # how many sessions are chosen for one action
    stretch_chosen = Signal(object)  # first and last day of what is chosen, or None

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        look = theme.current()
        self._model = SheetModel()
        self._delegate = SheetDelegate(self._model, look, self)
        self._header = SheetHeader(look, self)
        self._told: int | None = None
        self._painted = False
        self._zoomed: Zoom | None = None
        self._solver = sheet_layout.Solver()
        self._given: Glance | None = None  # a layout made for the whole season
        self._extending = False  # the choice goes on to where one moves
        self._from_day: date | None = None  # where a choice of several days began
        self._whole = False  # it goes on by whole weeks
        self._unshown = False  # a season was set before the sheet had its size
        self.card = CardKeeper(self, self._find)
        self.setHorizontalHeader(self._header)
        self.setModel(self._model)
        self.setItemDelegate(self._delegate)
        self.setAccessibleName(tr("Season sheet"))
        self.setAccessibleDescription(tr("Rows are weeks grouped by block, columns are days"))
        self.setShowGrid(False)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setCornerButtonEnabled(False)
        self.setTabKeyNavigation(False)
        self.setMouseTracking(True)
        self.setWordWrap(False)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setMinimumSectionSize(4)
        self.verticalScrollBar().valueChanged.connect(self.card.hide)
        theme.changed.connect(self._theme_changed)

    # What others ask and tell.

    def set_season(self, season: SeasonView) -> None:
        """Show a season; the place scrolled to and the selection stay where they can."""
        anchor, selected, day = self._anchor(), self.selected_session(), self._current_day()
        first, stretch = self._model.sheet is None, self._delegate.stretch
        self._given = None
        self.card.hide()
        self._model.set_season(season)
        self._delegate.current = None
        self._delegate.set_layout(self._delegate.layout)
        self._fit()
        if selected is not None and self._where(selected) is not None:
            self.select_session(selected)
        elif day is not None:
            self._go(day)
        if self.selected_session() is None:
            self._told = None  # it went away, and may come back
        if stretch is not None:
            self.choose_days(*stretch)
        if first and self.isVisible():
            self.scroll_to_today()
        elif first:
            self._unshown = True
        else:
            self._restore(anchor)

    def show_glance(self, glance: Glance) -> None:
        """Show part of a season as it stood when it was last in view."""
        self._given = glance
        self._model.set_season(glance.season, glance.cap_s)
        self._delegate.set_layout(self._delegate.layout)
        self._fit()

    def glance(self, season: SeasonView, runner: str) -> Glance | None:
        """What is in view, for the next start."""
        sheet = self._model.sheet
        if sheet is None:
            return None
        room = self.viewport().width() - theme.current().px(GUTTER)
        return Glance(
            season,
            runner,
            sheet.cap_s,
            float(room),
            theme.current().scale,
            self._delegate.layout,
            self._anchor(),
            self.selected_session(),
        )

    def zoom(self, step: int) -> None:
        """Make the rows taller (-1) or flatter (1); 0 as a window opens with."""
        now = self._zoomed or sheet_zoom.usual(self.window().height())
        self._zoomed = sheet_zoom.stepped(now, step) if step else None
        self._refit()

    def light_up(self, found: Collection[int] | None) -> None:
        """Let only these sessions stand out, or all with ``None``."""
        self._delegate.found = None if found is None else frozenset(found)
        self.viewport().update()

    def chosen_sessions(self) -> list[int]:
        """All sessions chosen, oldest first; the current one if no more were."""
        sheet = self._model.sheet
        if sheet is None:
            return []
        chosen = [number for number in sheet.sessions if number in self._delegate.chosen]
        selected = self.selected_session()
        return chosen or ([selected] if selected is not None else [])

    @property
    def stretch(self) -> tuple[date, date] | None:
        """First and last day of what is chosen."""
        return self._delegate.stretch

    def choose(self, sessions: Collection[int]) -> None:
        """Choose several sessions for one action."""
        sheet = self._model.sheet
        cells = (
            [self._cell_of(number) for number in sessions] if sheet and len(sessions) > 1 else []
        )
        days = [cell.day for cell in cells if cell is not None]
        self._choose(frozenset(sessions), (min(days), max(days)) if days else None)

    def choose_days(self, first: date, last: date) -> None:
        """Choose every session from one day to another."""
        sheet = self._model.sheet
        low, high = sorted((first, last))
        cells = [cell for row in sheet.rows for cell in row.cells] if sheet else []
        inside = [s.id for cell in cells if low <= cell.day <= high for s in cell.sessions]
        self._choose(frozenset(inside), (low, high))

    def choose_weeks(self, one: date, other: date) -> None:
        """Choose every session of the weeks from that of one day to that of another."""
        low, high = sorted((one, other))
        self.choose_days(sheet_moves.week_start(low), sheet_moves.week_start(high) + WEEK)

    def reveal(self, day: date) -> None:
        """Bring a day's week into view."""
        place = self._model.sheet.places.get(day) if self._model.sheet else None
        if place is not None:
            self.scrollTo(self._model.index(place[0], 0))

    def _choose(self, chosen: frozenset[int], stretch: tuple[date, date] | None) -> None:
        delegate = self._delegate
        if (chosen, stretch) == (delegate.chosen, delegate.stretch):
            return
        delegate.chosen, delegate.stretch = chosen, stretch
        self.viewport().update()
        self.several_chosen.emit(len(chosen))
        self.stretch_chosen.emit(stretch)

    def mark_week(self, first_day: date | None) -> None:
        """Mark a week that is pointed at elsewhere."""
        if first_day != self._delegate.marked:
            self._delegate.marked = first_day
            self.viewport().update()

    def scroll_to_today(self) -> None:
        """Bring this week into the middle of the view, or the end if today lies outside."""
        sheet = self._model.sheet
        if sheet is None or not sheet.places:
            return
        place = sheet.places.get(sheet.today) or max(sheet.places.values())
        self.scrollTo(self._model.index(place[0], 0), QAbstractItemView.ScrollHint.PositionAtCenter)

    def selected_session(self) -> int | None:
        """Id of the current session, ``None`` on a day without one."""
        session = self._session(self.currentIndex(), self._delegate.part)
        return session.id if session else None

    def select_session(self, session_id: int) -> None:
        """Make a session the current one; ``KeyError`` if it isn't in this season."""
        place = self._where(session_id)
        if place is None:
            raise KeyError(session_id)
        self._set_current(*place)

    def set_units(self, units: words.Units) -> None:
        """Write the card's distances and paces in kilometres or miles."""
        self.card.units = units

    def key_needs(self) -> dict[str, bool]:
        """Which entries the key strip needs for what is shown."""
        sheet = self._model.sheet
        return {
            "unjudged": sheet is not None and sheet.has_unjudged,
            "other": sheet is not None and sheet.has_other,
            "cut": sheet is not None and sheet.has_cut,
            "planned": sheet is not None and sheet.has_planned,
        }

    # Size and look.

    def minimumSizeHint(self) -> QSize:
        return QSize(320, theme.current().px(120))

    def resizeEvent(self, event: QResizeEvent) -> None:
        chosen = self.currentIndex()
        seen = QRect(QPoint(), event.oldSize()).intersects(self.visualRect(chosen))
        super().resizeEvent(event)
        self._fit()
        if seen:
            self._bring(chosen)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if self._unshown:
            self._unshown = False
            self.scroll_to_today()
        elif self._given is not None:
            self._settle(self._given)

    def _settle(self, glance: Glance) -> None:
        """Scroll to where the glance was taken, and choose the session chosen then."""
        if glance.selected is not None and self._where(glance.selected) is not None:
            self.select_session(glance.selected)
        if glance.anchor is not None:
            self._restore(glance.anchor)
        else:
            self.scroll_to_today()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if not self._painted and self._model.sheet is not None:
            self._painted = True
            QTimer.singleShot(0, self, lambda: self.first_painted.emit())

    def _theme_changed(self) -> None:
        self._delegate.set_theme(theme.current())
        self._header.set_theme(theme.current())
        self._refit()

    def _refit(self) -> None:
        """Take on other measures: the same weeks stay in view, and the chosen day where it was."""
        anchor, chosen = self._anchor(), self.currentIndex()
        seen = self.viewport().rect().intersects(self.visualRect(chosen))
        self.card.hide()
        self._fit()
        self._restore(anchor)
        if seen:
            self._bring(chosen)

    def _bring(self, chosen: QModelIndex) -> None:
        self.scrollTo(chosen)
        if not self.viewport().rect().contains(self.visualRect(chosen)):  # its bar is too short yet
            QTimer.singleShot(0, self, lambda: self.scrollTo(self.currentIndex()))

    def _fit(self) -> None:
        self._fit_rows()
        self._fit_columns()

    def _fit_rows(self) -> None:
        px = theme.current().px
        zoom = self._zoomed or sheet_zoom.usual(self.window().height())
        self._delegate.set_zoom(zoom)
        height, heading = px(zoom.row), px(zoom.heading)
        header = self.verticalHeader()
        if header.defaultSectionSize() != height:
            header.setDefaultSectionSize(height)
        for number, row in enumerate(self._model.rows()):
            wanted = heading if row.week is None else height
            if header.sectionSize(number) != wanted:
                header.resizeSection(number, wanted)
            spanned = self.columnSpan(number, 0) > 1
            if row.week is None and not spanned:
                self.setSpan(number, 0, 1, 8)
            elif row.week is not None and spanned:
                self.setSpan(number, 0, 1, 1)

    def _fit_columns(self) -> None:
        sheet = self._model.sheet
        if sheet is None:
            return
        gutter = theme.current().px(GUTTER)
        room = self.viewport().width() - gutter
        if (given := self._given) and (given.room, given.scale) == (room, theme.current().scale):
            layout = given.layout
        else:
            # Neither zoom nor scrolling changes the widths.
            least, scale = self._header.least_width(room), theme.current().scale
            layout = self._solver.solve(sheet, room, scale, self._delegate.extra, least)
        if layout != self._delegate.layout:
            self._delegate.set_layout(layout)
        self._header.px_per_hour = layout.px_per_hour
        for section, width in enumerate((gutter, *layout.widths)):
            if self._header.sectionSize(section) != width:
                self._header.resizeSection(section, width)
        # The scroll bars' ranges are wanted now, not at the next idle moment.
        self.executeDelayedItemsLayout()
        self.updateGeometries()
        self._header.viewport().update()
        self.viewport().update()

    def _anchor(self) -> tuple[date, int] | None:
        """Monday of the first whole week row in view and where it stands."""
        rows = self._model.rows()
        top = self.rowAt(0)
        while 0 <= top < len(rows):
            week = rows[top].week
            if week is not None:
                return week.first_day, self.rowViewportPosition(top)
            top += 1
        return None

    def _restore(self, anchor: tuple[date, int] | None) -> None:
        sheet = self._model.sheet
        if anchor is None or sheet is None:
            return
        days = [anchor[0] + timedelta(days=n) for n in range(7)]
        place = next((sheet.places[day] for day in days if day in sheet.places), None)
        if place is not None:
            bar = self.verticalScrollBar()
            bar.setValue(bar.value() + self.rowViewportPosition(place[0]) - anchor[1])

    # The current day and session.

    def _where(self, session_id: int) -> tuple[int, int, int] | None:
        return self._model.sheet.sessions.get(session_id) if self._model.sheet else None

    def _cell_of(self, session_id: int) -> Cell | None:
        place = self._where(session_id)
        return self._model.cell(self._model.index(*place[:2])) if place is not None else None

    def _session(self, index: QModelIndex, part: int) -> SessionView | None:
        cell = self._model.cell(index)
        if cell is None or not cell.sessions:
            return None
        return cell.sessions[min(part, len(cell.sessions) - 1)]

    def _current_day(self) -> date | None:
        cell = self._model.cell(self.currentIndex())
        return cell.day if cell else None

    def _set_current(self, row: int, column: int, part: int = 0) -> None:
        self._delegate.part = part
        self._delegate.current = (row, column)
        if not self._extending:
            self._from_day, self._whole = None, False
            self.choose(())
        index = self._model.index(row, column)
        self.setCurrentIndex(index)
        self.scrollTo(index)
        if row and self._model.rows()[row - 1].week is None:
            self.scrollTo(self._model.index(row - 1, 0))
        self.viewport().update()
        selected = self.selected_session()
        if selected != self._told:
            self._told = selected
            self.session_selected.emit(-1 if selected is None else selected)

    def _go(self, day: date | None, part: int = 0) -> None:
        """Make a day the current one, if the season has it."""
        sheet = self._model.sheet
        if sheet is not None and day in sheet.places:
            self._set_current(*sheet.places[day], part)

    def _find(self, place: Place) -> Found:
        """The session at a place and where its bar stands in the window."""
        row, column, part = place
        index = self._model.index(row, column)
        session = self._session(index, part)
        if session is None:
            return None
        rect = self.visualRect(index)
        bar = self._delegate.bars(row, column)[part]
        corner = QPoint(rect.left() + int(bar.left), rect.top())
        corner = self.viewport().mapTo(self.window(), corner)
        return session, QRect(corner, QSize(max(24, int(bar.width)), rect.height()))
