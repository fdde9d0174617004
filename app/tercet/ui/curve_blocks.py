"""The blocks beside the intensity curve: name, share of easy and a small curve, a row each."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import (
    QModelIndex,
    QPersistentModelIndex,
    QRect,
    QRectF,
    QSize,
    QStringListModel,
    Qt,
    Signal,
)
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter, QPen
from PySide6.QtWidgets import (
    QFrame,
    QListView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from tercet.engine.shades import whole_shares
from tercet.language import tr
from tercet.library.shape import Drawn
from tercet.ui import theme
from tercet.ui.curve_paint import paint_small
from tercet.ui.curve_view import sentence

Index = QModelIndex | QPersistentModelIndex
#: Room round a row, and the height of its curve. [px at 100 %]
ROOM, CURVE = 4, 88


class CurveBlocks(QListView):
    """Every block on one scale; a row is painted when it comes into view."""

    asked = Signal(str)  # show it large, by its key

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(tr("Block by block"))
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setEditTriggers(QListView.EditTrigger.NoEditTriggers)
        self.setSelectionMode(QListView.SelectionMode.NoSelection)
        self.setUniformItemSizes(True)
        self.viewport().setCursor(Qt.CursorShape.PointingHandCursor)
        self._rows = _Rows()
        self.setModel(self._rows)
        self.setItemDelegate(_Painter(self._rows, self))
        self.clicked.connect(self._ask)
        theme.changed.connect(self.scheduleDelayedItemsLayout)

    def show_blocks(self, blocks: Sequence[Drawn], highest: float) -> None:
        """Show blocks on a scale that ends at ``highest``; of other blocks the latest in view."""
        if self._rows.show_blocks(blocks, highest):
            self.setCurrentIndex(self._rows.index(len(blocks) - 1, 0))
            self.scrollToBottom()
        self.viewport().update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Open a block large."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self._ask(self.currentIndex())
        else:
            super().keyPressEvent(event)

    def _ask(self, index: QModelIndex) -> None:
        if index.isValid():
            self.asked.emit(self._rows.blocks[index.row()].span.key)


class _Rows(QStringListModel):
    """The blocks' words; Qt counts the rows, for a list asks it several times for each."""

    def __init__(self) -> None:
        super().__init__()
        self.blocks: Sequence[Drawn] = ()
        self.highest = 1.0

    def show_blocks(self, blocks: Sequence[Drawn], highest: float) -> bool:
        """Take blocks; gives whether they are others than before."""
        before, self.blocks, self.highest = self.blocks, blocks, highest
        named = [[(item.span.key, item.span.name) for item in each] for each in (before, blocks)]
        other = named[0] != named[1]
        if other:
            self.setStringList([item.span.name for item in blocks])
        return other

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        if role == Qt.ItemDataRole.AccessibleTextRole:
            item = self.blocks[index.row()]
            share, _ = share_words(item)
            return tr("{block}, {share}; opens it large", block=item.span.name, share=share)
        if role == Qt.ItemDataRole.AccessibleDescriptionRole:
            return sentence(self.blocks[index.row()])
        return super().data(index, role)


class _Painter(QStyledItemDelegate):
    def __init__(self, rows: _Rows, parent: QWidget) -> None:
        super().__init__(parent)
        self._rows = rows

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        look = theme.current()
        line = QFontMetrics(look.font("small_bold")).height()
        return QSize(look.px(160), line + look.px(CURVE) + 2 * look.px(ROOM))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        look, item = theme.current(), self._rows.blocks[index.row()]
        place: QRect = option.rect
        room = look.px(ROOM)
        inside = place.adjusted(room, room, -room, -room)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        share, short = share_words(item)
        bold = look.font("small_bold")
        painter.setFont(bold if short else look.font("small"))
        painter.setPen(look.color("text_2"))
        painter.drawText(inside, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop, share)
        left = inside.width() - painter.fontMetrics().horizontalAdvance(share) - 2 * room
        painter.setFont(bold)
        painter.setPen(look.color("text"))
        metrics = painter.fontMetrics()
        name = metrics.elidedText(item.span.name, Qt.TextElideMode.ElideRight, left)
        painter.drawText(inside, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop, name)
        area = QRectF(inside).adjusted(0, metrics.height() + look.px(4), 0, -look.px(8))
        paint_small(painter, item, area, self._rows.highest, look)
        view = self.parent()
        assert isinstance(view, QListView)
        if view.hasFocus() and view.currentIndex() == index:
            painter.setPen(QPen(look.color("focus"), 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(place).adjusted(1, 1, -1, -1))
        painter.restore()


def share_words(item: Drawn) -> tuple[str, bool]:
    """Share of easy in words, and whether it is short of what is wanted."""
    easy = whole_shares(item.shares)[0]
    if item.shares[0] >= item.span.shares[0] - 0.005:
        return tr("{n} % easy", n=easy), False
    wanted = round(100 * item.span.shares[0])
    return tr("{n} % easy, short of {wanted}", n=easy, wanted=wanted), True
