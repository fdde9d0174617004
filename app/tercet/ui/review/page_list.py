"""The pages of a review as a list: number, thumbnail, name; moved by Alt and arrows or by hand."""

from __future__ import annotations

import time
from collections.abc import Sequence

from PySide6.QtCore import (
    QModelIndex,
    QPersistentModelIndex,
    QRect,
    QSignalBlocker,
    QSize,
    Qt,
    QTimer,
    Signal,
)
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter, QPixmap
from PySide6.QtWidgets import (
    QAbstractItemView,
    QListView,
    QListWidget,
    QListWidgetItem,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
)

from tercet.language import tr
from tercet.library.review.content import Page
from tercet.ui import theme
from tercet.ui.review.looks import Look
from tercet.ui.review.page_view import thumbnail

KEY = Qt.ItemDataRole.UserRole
OUT = Qt.ItemDataRole.UserRole + 1
NUMBER = Qt.ItemDataRole.UserRole + 2
THUMB = (96, 54)
#: Pictures are drawn for so long before the list is painted with them. [s]
DRAWN_S = 0.012


class _Row(QStyledItemDelegate):
    """Draws a row: its number, the page in small, its name."""

    def sizeHint(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        look = theme.current()
        view = option.widget
        wide = view.viewport().width() if isinstance(view, QListWidget) else look.px(236)
        room = wide - look.px(22) - THUMB[0] - 28
        high = QFontMetrics(look.font("small_bold")).boundingRect(
            QRect(0, 0, room, 10_000), int(Qt.TextFlag.TextWordWrap), _words(index)
        )
        return QSize(look.px(200), max(THUMB[1] + look.px(16), high.height() + look.px(16)))

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        look = theme.current()
        rect: QRect = option.rect
        state = option.state
        out = str(index.data(OUT) or "")
        painter.save()
        if state & QStyle.StateFlag.State_Selected:
            painter.fillRect(rect, look.color("selected"))
            edge = QRect(rect.left(), rect.top(), 3, rect.height())
            painter.fillRect(edge, look.color("focus"))
        painter.setFont(look.font("small"))
        painter.setPen(look.color("text_2"))
        number = QRect(rect.left() + 8, rect.top(), look.px(22), rect.height())
        painter.drawText(number, Qt.AlignmentFlag.AlignVCenter, str(index.data(NUMBER) or ""))
        picture = index.data(Qt.ItemDataRole.DecorationRole)
        left, top = number.right() + 4, rect.top() + (rect.height() - THUMB[1]) // 2
        if isinstance(picture, QPixmap):
            painter.setOpacity(0.45 if out else 1.0)
            painter.drawPixmap(left, top, picture)
            painter.setOpacity(1.0)
        painter.setPen(look.color("edge"))
        painter.drawRect(left, top, THUMB[0] - 1, THUMB[1] - 1)
        left += THUMB[0] + 8
        room = QRect(left, rect.top() + 4, rect.right() - left - 4, rect.height() - 8)
        painter.setPen(look.color("text_3" if out else "text"))
        painter.setFont(look.font("small_bold"))
        flags = Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextWordWrap
        painter.drawText(room, int(flags), _words(index))
        painter.restore()


def _words(index: QModelIndex | QPersistentModelIndex) -> str:
    """A page's name, and below it why it is not shown."""
    words, out = str(index.data(Qt.ItemDataRole.DisplayRole)), str(index.data(OUT) or "")
    return f"{words}\n{out}" if out else words


class PageList(QListWidget):
    """Pages in their order; the one chosen is the current row."""

    chosen = Signal(str)  # key
    moved = Signal(str, int)  # key, rows down

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(tr("Pages of the review"))
        self.setItemDelegate(_Row(self))
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setResizeMode(QListView.ResizeMode.Adjust)  # names are broken at its width
        self.setDragDropMode(QAbstractItemView.DragDropMode.InternalMove)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self._shown: tuple[Page, ...] = ()
        self._undrawn: set[str] = set()  # keys of pages whose picture is missing or an older one
        self._look: Look | None = None
        self._drawing = QTimer(self)
        self._drawing.setSingleShot(True)
        self._drawing.setInterval(0)
        self._drawing.timeout.connect(self._draw_next)
        self.currentRowChanged.connect(self._row_changed)
        self.model().rowsMoved.connect(self._dragged)

    def show_pages(self, pages: Sequence[Page], look: Look, key: str) -> None:
        """Show pages and choose the one of this key."""
        if (tuple(pages), look) == (self._shown, self._look):
            return
        before = {page.key: page for page in self._shown} if look == self._look else {}
        self._undrawn = {
            page.key for page in pages if page.key in self._undrawn or before.get(page.key) != page
        }
        keys = [page.key for page in pages]
        # What was drawn of a page stays until it is drawn anew.
        drawn = {item.data(KEY): item.data(Qt.ItemDataRole.DecorationRole) for item in self._items}
        self._shown, self._look = tuple(pages), look
        self.blockSignals(True)
        if list(drawn) != keys:
            self.clear()
            for page in pages:
                item = QListWidgetItem()
                item.setData(KEY, page.key)
                item.setData(Qt.ItemDataRole.DecorationRole, drawn.get(page.key))
                self.addItem(item)
        number = 0
        for item, page in zip(self._items, pages, strict=True):
            item.setText(page.name)
            item.setData(
                OUT, tr("left out") if page.hidden else tr("no data yet") if page.empty else ""
            )
            number += not (page.hidden or page.empty)
            item.setData(NUMBER, 0 if page.hidden or page.empty else number)
            said = (
                tr("{name}, left out: {title}", name=page.name, title=page.title)
                if page.hidden
                else tr("{name}, nothing to show yet: {title}", name=page.name, title=page.title)
                if page.empty
                else f"{page.name}: {page.title}"
            )
            item.setData(Qt.ItemDataRole.AccessibleTextRole, said)
        self.setCurrentRow(keys.index(key) if key in keys else 0)
        self.blockSignals(False)
        self._drawing.start()

    @property
    def _items(self) -> list[QListWidgetItem]:
        return [self.item(row) for row in range(self.count())]

    def _draw_next(self) -> None:
        """Draw thumbnails that are missing, a few in one go; the page itself comes first."""
        until = time.perf_counter() + DRAWN_S
        for item, page in zip(self._items, self._shown, strict=False):
            if page.key not in self._undrawn or item.data(KEY) != page.key:
                continue
            assert self._look is not None
            drawn = thumbnail(page, self._look, *THUMB, self.devicePixelRatio())
            with QSignalBlocker(self.model()):  # the rows need not be laid out again
                item.setData(Qt.ItemDataRole.DecorationRole, drawn)
            self.viewport().update(self.visualItemRect(item))
            self._undrawn.discard(page.key)
            if time.perf_counter() > until:
                self._drawing.start()
                return

    def keyPressEvent(self, event: QKeyEvent) -> None:
        step = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}.get(Qt.Key(event.key()))
        if step is not None and event.modifiers() & Qt.KeyboardModifier.AltModifier:
            item = self.currentItem()
            if item is not None:
                self.moved.emit(item.data(KEY), step)
            return
        super().keyPressEvent(event)

    def _row_changed(self, row: int) -> None:
        if 0 <= row < self.count():
            self.chosen.emit(self.item(row).data(KEY))

    def _dragged(self, _p: object, start: int, _e: int, _d: object, to: int) -> None:
        key = self._shown[start].key
        self._shown = ()  # the rows stand in another order now
        self.moved.emit(key, to - start - (1 if to > start else 0))
