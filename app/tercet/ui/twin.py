"""A chart and the same numbers as a table, one at a time, to be changed over and copied."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, Qt
from PySide6.QtGui import QAction, QGuiApplication, QKeySequence, QPainter
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QMessageBox,
    QStackedWidget,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableWidget,
    QTableWidgetItem,
    QWidget,
)

from tercet.language import tr
from tercet.ui import theme as themes
from tercet.ui.taken import Handle, ask_where, save

#: Headings and rows of a table.
Numbers = tuple[Sequence[str], Sequence[Sequence[str]]]


class _MarkedRow(QStyledItemDelegate):
    """Draws the focus-coloured left edge of a selected row."""

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        super().paint(painter, option, index)
        if index.column() == 0 and option.state & QStyle.StateFlag.State_Selected:
            edge = QRect(option.rect.left(), option.rect.top(), 3, option.rect.height())
            painter.fillRect(edge, themes.current().color("focus"))


def number_table(name: str) -> QTableWidget:
    """A table to read: no editing, whole rows, one step for Tab."""
    table = QTableWidget(0, 0)
    table.setAccessibleName(name)
    table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
    table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
    table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
    table.setTabKeyNavigation(False)
    table.setShowGrid(False)
    table.setWordWrap(False)
    table.verticalHeader().setVisible(False)
    table.setItemDelegate(_MarkedRow(table))
    return table


def fill_table(
    table: QTableWidget, headings: Sequence[str], rows: Sequence[Sequence[str]], left: set[int]
) -> None:
    """Put rows in; columns in ``left`` hold words, all others numbers, set to the right.

    The last column of words takes the room that is over.
    """
    table.clear()
    table.setColumnCount(len(headings))
    table.setRowCount(len(rows))
    right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
    middle = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
    for column, heading in enumerate(headings):
        side = middle if column in left else right
        title = QTableWidgetItem(heading)
        title.setTextAlignment(side)
        table.setHorizontalHeaderItem(column, title)
        for row, cells in enumerate(rows):
            item = QTableWidgetItem(cells[column])
            item.setTextAlignment(side)
            table.setItem(row, column, item)
    table.horizontalHeader().setHighlightSections(False)
    fit_table(table, max(left))


def fit_table(table: QTableWidget, stretched: int) -> None:
    """Take the theme's font and give the columns their room, the rest to one of them."""
    look = themes.current()
    header = table.horizontalHeader()
    header.setFont(look.font("small"))
    table.setFont(look.font("body"))
    # Headings and cells stand at the same distance from the column's edges.
    table.setStyleSheet(f"QTableView::item {{ padding: 0px {look.px(8)}px; }}")
    table.verticalHeader().setDefaultSectionSize(look.px(30))
    for column in range(table.columnCount()):
        mode = QHeaderView.ResizeMode
        header.setSectionResizeMode(
            column, mode.Stretch if column == stretched else mode.ResizeToContents
        )


class Twin(QStackedWidget):
    """The chart, or its table after Ctrl+T; both can be copied from the context menu.

    The actions are put on ``owner`` (a pane), so that the keys work wherever in it one is.
    """

    def __init__(self, chart: QWidget, name: str, owner: QWidget) -> None:
        super().__init__()
        self.chart, self.table = chart, number_table(name)
        self._owner = owner
        self._word: Callable[[], Numbers] = lambda: ((), ())
        self._numbers: Numbers | None = None
        self.addWidget(chart)
        self.addWidget(self.table)
        self.show_table = QAction(tr("Show as table"), self)
        self.show_table.setCheckable(True)
        self.show_table.setShortcut(QKeySequence("Ctrl+T"))
        self.show_table.toggled.connect(self._show_table)
        self.copy_picture = QAction(tr("Copy picture"), self)
        self.copy_picture.triggered.connect(self._copy_picture)
        self.copy_numbers = QAction(tr("Copy numbers"), self)
        self.copy_numbers.triggered.connect(self._copy_numbers)
        self.save = QAction(tr("Save chart…"), self)
        self.save.triggered.connect(self._save)
        taken = [self.copy_picture, self.copy_numbers, self.save]
        self.handle = Handle(chart, owner, taken)
        self.handle.name = name.removesuffix(tr(" as a table", "end of a table's name"))
        self._left = {0}
        self._stale = self._unfit = False
        themes.changed.connect(self.restyle)
        for action in (self.show_table, *taken):
            action.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
            for widget in (owner, chart, self.table):
                widget.addAction(action)
        for widget in (owner, chart, self.table):
            widget.setContextMenuPolicy(Qt.ContextMenuPolicy.ActionsContextMenu)

    def set_numbers(self, word: Callable[[], Numbers], left: set[int]) -> None:
        """Give what words the table's contents; columns in ``left`` hold words, -1 is the last.

        They are worded once they are looked at or taken along, for it takes its time.
        """
        self._word, self._numbers = word, None
        self._left = set(left)
        self.handle.numbers = lambda: self.text
        self._stale = True
        if self.currentWidget() is self.table:
            self._fill()

    @property
    def numbers(self) -> Numbers:
        """Headings and rows, worded now if nobody asked before."""
        if self._numbers is None:
            self._numbers = self._word()
        return self._numbers

    def _fill(self) -> None:
        if self._stale:
            self._stale = False
            headings, rows = self.numbers
            left = {column % len(headings) for column in self._left}
            fill_table(self.table, headings, rows, left)
        elif self._unfit:
            self.restyle()

    def restyle(self, *_: object) -> None:
        columns = self.table.columnCount()
        self._unfit = self.currentWidget() is not self.table
        if columns and not self._unfit:
            fit_table(self.table, max(column % columns for column in self._left))

    @property
    def actions_by_key(self) -> tuple[QAction, ...]:
        """What a key does, for a page around the owner to take up too."""
        return (self.show_table,)

    @property
    def text(self) -> str:
        """All numbers, parted by tabs, a heading line first."""
        headings, rows = self.numbers
        return "\n".join("\t".join(row) for row in (headings, *rows))

    def _show_table(self, shown: bool) -> None:
        before, after = (self.chart, self.table) if shown else (self.table, self.chart)
        focused = before.hasFocus()
        self.setCurrentWidget(after)
        if shown:
            self._fill()
        if focused:
            after.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _copy_picture(self) -> None:
        QGuiApplication.clipboard().setPixmap(self._owner.grab())

    def _save(self) -> None:
        target = ask_where(self, self.handle.name)
        if target is None:
            return
        try:
            save(self._owner, self.handle.name, self.text, target)
        except OSError as error:
            box = QMessageBox(self.window())
            box.setText(tr("{file} was not written: {why}.", file=target.name, why=error.strerror))
            box.setInformativeText(tr("Choose another folder, or free some room on the disk."))
            box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
            box.open()

    def _copy_numbers(self) -> None:
        QGuiApplication.clipboard().setText(self.text)
