"""The season sheet: weeks are lines, grouped by block; keyboard, mouse and what it tells others."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import QEvent, QModelIndex, QPoint, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QHelpEvent,
    QHideEvent,
    QKeyEvent,
    QMouseEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from tercet.ui import sheet_layout, sheet_moves
from tercet.ui.panes import BACK, KEYBOARD
from tercet.ui.sheet_marks import WEEK
from tercet.ui.sheet_view import SheetView


class SeasonSheet(SheetView):
    """The season sheet with its keyboard and mouse."""

    session_activated = Signal(int)  # by click or Enter
    week_pointed = Signal(object)  # Monday of the week pointed at, or None
    block_asked = Signal(str)  # a block's first day, ISO 8601: its heading was clicked, or B
    total_asked = Signal(object, object)  # block, and where on the screen to say it
    plan_asked = Signal(object)  # the day to plan
    menu_asked = Signal(object)  # place on the screen of a menu for the sessions chosen
    next_found = Signal(int)  # to the next (1) or previous (-1) of what a search found

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._pressed: QModelIndex | None = None
        self._weeks_from: date | None = None  # the week whose date was pressed
        self._pointed: date | None = None
        self._heading = -1  # row of the heading pressed

    # Keyboard.

    def keyPressEvent(self, event: QKeyEvent) -> None:
        self._delegate.ring = True
        key, modifiers = event.key(), event.modifiers()
        control = bool(modifiers & Qt.KeyboardModifier.ControlModifier)
        extending = bool(modifiers & Qt.KeyboardModifier.ShiftModifier)
        before = self._current_day()
        self._extending = extending
        self._by_key(event, key, control)
        self._extending = False
        day = self._current_day()
        if extending and before is not None and day is not None and day != before:
            self._from_day = self._from_day or before
            (self.choose_weeks if self._whole else self.choose_days)(self._from_day, day)

    def _by_key(self, event: QKeyEvent, key: int, control: bool) -> None:
        if key == Qt.Key.Key_Escape and (self._delegate.chosen or self._delegate.stretch):
            self.choose(())
        elif key == Qt.Key.Key_Space and self._extending and self._current_day() is not None:
            self._choose_week()
        elif key == Qt.Key.Key_Space and control:
            self._toggle()
        elif key == Qt.Key.Key_Menu:
            self._ask_menu()
        elif not control and event.text() in ("n", "N") and self._delegate.found is not None:
            self.next_found.emit(-1 if event.text() == "N" else 1)
        elif key == Qt.Key.Key_Escape and self.card.visible:
            self.card.hide()
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._activate()
        elif key == Qt.Key.Key_Space:
            if self.card.visible:
                self.card.hide()
            elif self._delegate.current is not None:
                self.card.show((*self._delegate.current, self._delegate.part))
        elif key == Qt.Key.Key_T and not control:
            self._today()
        elif key == Qt.Key.Key_B and not control:
            self._ask_block(self.currentIndex().row())
        elif key == Qt.Key.Key_W and not control and self.currentIndex().isValid():
            self._ask_total(self.currentIndex().row())
        elif key in (Qt.Key.Key_N, Qt.Key.Key_E) and not control and self._current_day():
            self.plan_asked.emit(self._current_day())
        elif control and key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self._by_block(-1 if key == Qt.Key.Key_Up else 1)
        elif not self._by_day(Qt.Key(key)):
            event.ignore()
            return
        event.accept()

    def _by_day(self, key: Qt.Key) -> bool:
        """Move by a key within days and weeks; whether the key was one of these."""
        page = max(2, self.viewport().height() // self.verticalHeader().defaultSectionSize())
        weeks = {
            Qt.Key.Key_Up: -1,
            Qt.Key.Key_Down: 1,
            Qt.Key.Key_PageUp: 1 - page,
            Qt.Key.Key_PageDown: page - 1,
        }
        sides = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
        ends = {Qt.Key.Key_Home: False, Qt.Key.Key_End: True}
        if not (key in weeks or key in sides or key in ends):
            return False
        sheet, day = self._model.sheet, self._current_day()
        if sheet is None or day is None:
            self._today()
        elif key in weeks:
            self._go(sheet_moves.by_weeks(sheet, day, weeks[key]))
        elif key in ends:
            self._go(sheet_moves.week_end(sheet, day, last=ends[key]))
        else:
            place = sheet_moves.sideways(sheet, day, self._delegate.part, sides[key])
            if place is not None:
                self._go(*place)
        return True

    def _by_block(self, step: int) -> None:
        sheet, index = self._model.sheet, self.currentIndex()
        if sheet is not None:
            self._go(sheet_moves.by_block(sheet, index.row(), max(1, index.column()), step))

    def _ask_block(self, row: int) -> None:
        rows = self._model.rows()
        if 0 <= row < len(rows):
            self.block_asked.emit(rows[row].block.start.isoformat())

    def _ask_total(self, row: int, at: QPoint | None = None) -> None:
        """Ask how the totals of a row's block came about."""
        if at is None:
            place = self.visualRect(self.currentIndex()).bottomLeft()
            at = self.viewport().mapToGlobal(place)
        self.total_asked.emit(self._model.rows()[row].block, at)

    def _today(self) -> None:
        if self._model.sheet is not None:
            self._go(sheet_moves.today(self._model.sheet))

    def _activate(self) -> None:
        selected = self.selected_session()
        if selected is not None:
            self.session_activated.emit(selected)

    def _toggle(self) -> None:
        """Put the current session among the chosen ones, or take it out."""
        selected = self.selected_session()
        if selected is not None:
            self.choose(self._delegate.chosen ^ {selected})

    def _choose_week(self) -> None:
        """Choose the current day's whole week; moving on with Shift takes further weeks along."""
        day = self._current_day()
        if day is not None:
            self._from_day, self._whole = day, True
            self.choose_weeks(day, day)

    def _week_at(self, point: QPoint) -> date | None:
        """The week whose date stands under a point."""
        row = self.rowAt(point.y()) if self.columnAt(point.x()) == 0 else -1
        week = self._model.rows()[row].week if row >= 0 else None
        return week.first_day if week is not None else None

    def _ask_menu(self) -> None:
        """Open the menu beside the current day."""
        rect = self.visualRect(self.currentIndex())
        self.menu_asked.emit(self.viewport().mapToGlobal(rect.bottomLeft()))

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Offer what can be done with the sessions chosen."""
        if event.reason() != QContextMenuEvent.Reason.Mouse:
            self._ask_menu()
            return
        index, part = self._hit(event.pos())
        session = self._session(index, part)
        if session is None or session.id not in self._delegate.chosen:
            if not index.isValid():
                return
            self._set_current(index.row(), index.column(), part)
        self.card.hide()
        self.menu_asked.emit(event.globalPos())

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Ctrl and the wheel make the rows taller or flatter."""
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom(-1 if event.angleDelta().y() > 0 else 1)
            event.accept()
        else:
            super().wheelEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        if event.reason() in KEYBOARD:
            self._delegate.ring = True
            if self._delegate.current is None:
                self._today()
        self.viewport().update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        self._delegate.ring = self._delegate.ring and event.reason() in BACK
        super().focusOutEvent(event)

    # Mouse.

    def _hit(self, position: QPoint) -> tuple[QModelIndex, int]:
        """The day under a point, and which of its sessions."""
        index = self.indexAt(position)
        cell = self._model.cell(index)
        if cell is None or not cell.inside:
            return QModelIndex(), 0
        placed = self._delegate.bars(index.row(), index.column())
        x = position.x() - self.visualRect(index).left()
        edges = sheet_layout.part_edges(placed, self.visualRect(index).width())
        return index, sum(1 for edge in edges if x >= edge)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._delegate.ring = False
        self._pressed = self._weeks_from = None
        point = event.position().toPoint()
        row = self.rowAt(point.y())
        self._heading = row if row >= 0 and self._model.rows()[row].week is None else -1
        index, part = self._hit(point)
        modifiers = event.modifiers()
        many = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
        if event.button() == Qt.MouseButton.LeftButton and modifiers & many:
            self._choose_at(index, part, to=bool(modifiers & Qt.KeyboardModifier.ShiftModifier))
        elif event.button() == Qt.MouseButton.LeftButton and self._week_at(point) is not None:
            self._press_week(point)
        elif event.button() == Qt.MouseButton.LeftButton and index.isValid():
            self._pressed = index
            self._set_current(index.row(), index.column(), part)
        event.accept()

    def _press_week(self, point: QPoint) -> None:
        """Choose a week by its date; pressed again, let it go."""
        first_day = self._weeks_from = self._week_at(point)
        if first_day is None:
            return
        if self._delegate.stretch == (first_day, first_day + WEEK):
            self.choose(())
        else:
            self.choose_weeks(first_day, first_day)

    def _choose_at(self, index: QModelIndex, part: int, *, to: bool) -> None:
        """Choose up to a day clicked on, or put its session among the chosen ones."""
        cell, session = self._model.cell(index), self._session(index, part)
        if to and cell is not None:
            self._from_day = self._from_day or self._current_day() or cell.day
            self.choose_days(self._from_day, cell.day)
        elif session is not None:
            first = self.selected_session()
            kept = self._delegate.chosen or ({first} if first is not None else set())
            self.choose(frozenset(kept) ^ {session.id})

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        pressed, self._pressed = self._pressed, None
        index, part = self._hit(event.position().toPoint())
        if pressed is not None and index == pressed and part == self._delegate.part:
            self.card.hide()
            self._activate()
        row = self.rowAt(event.position().toPoint().y())
        if event.button() == Qt.MouseButton.LeftButton and row >= 0 and row == self._heading:
            self._ask_block(row)
        event.accept()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        event.accept()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        point = event.position().toPoint()
        row = self.rowAt(point.y())
        week = self._model.rows()[row].week if row >= 0 else None
        self._point(week.first_day if week else None)
        if event.buttons() & Qt.MouseButton.LeftButton and self._weeks_from and week is not None:
            self.choose_weeks(self._weeks_from, week.first_day)
        index, part = self._hit(point)
        self.card.point((index.row(), index.column(), part) if index.isValid() else None)
        event.accept()

    def viewportEvent(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.Leave:
            self._point(None)
            self.card.leave()
        elif event.type() == QEvent.Type.ToolTip:
            assert isinstance(event, QHelpEvent)
            row = self.rowAt(event.pos().y())
            if row >= 0 and self._model.rows()[row].week is None:
                self._ask_total(row, event.globalPos())
                return True
        return super().viewportEvent(event)

    def _point(self, first_day: date | None) -> None:
        if first_day != self._pointed:
            self._pointed = first_day
            self.mark_week(first_day)
            self.week_pointed.emit(first_day)

    def hideEvent(self, event: QHideEvent) -> None:
        self.card.hide()
        super().hideEvent(event)
