"""A layout that sets widgets in a row and goes on in the next one where a row is full."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget

from tercet.ui import theme


class FlowLayout(QLayout):
    """Rows of widgets at their own sizes."""

    def __init__(
        self, parent: QWidget | None = None, gap: int = 8, *, centred: bool = False
    ) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self._gap, self._centred = gap, centred
        self._heights: dict[int, int] = {}  # by width; Qt asks many times between changes
        self.setContentsMargins(0, 0, 0, 0)

    def addItem(self, item: QLayoutItem) -> None:
        self._items.append(item)

    def count(self) -> int:
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        return True

    def invalidate(self) -> None:
        self._heights.clear()
        super().invalidate()

    def heightForWidth(self, width: int) -> int:
        if width not in self._heights:
            self._heights[width] = self._lay(QRect(0, 0, width, 0), move=False)
        return self._heights[width]

    def setGeometry(self, rect: QRect) -> None:
        super().setGeometry(rect)
        self._lay(rect, move=True)

    def sizeHint(self) -> QSize:
        """All in one row."""
        sizes = [item.sizeHint() for item in self._items if not item.isEmpty()]
        gaps = theme.current().px(self._gap) * max(0, len(sizes) - 1)
        width = sum(size.width() for size in sizes) + gaps
        return QSize(width, max((size.height() for size in sizes), default=0))

    def minimumSize(self) -> QSize:
        """As wide as the widest alone."""
        size = QSize()
        for item in self._items:
            if not item.isEmpty():
                size = size.expandedTo(item.minimumSize())
        return size

    def _lay(self, rect: QRect, *, move: bool) -> int:
        """Place the rows (or only reckon) and give the height they take."""
        gap = theme.current().px(self._gap)
        rows: list[list[QLayoutItem]] = [[]]
        used = 0
        for item in self._items:
            if item.isEmpty():
                continue
            width = item.sizeHint().width()
            if rows[-1] and used + gap + width > rect.width():
                rows.append([])
            used = width if not rows[-1] else used + gap + width
            rows[-1].append(item)
        y = rect.y()
        for row in rows:
            sizes = [item.sizeHint() for item in row]
            height = max((size.height() for size in sizes), default=0)
            spare = rect.width() - sum(size.width() for size in sizes) - gap * (len(row) - 1)
            x = rect.x() + (max(0, spare // 2) if self._centred else 0)
            for item, size in zip(row, sizes, strict=True):
                width = min(size.width(), rect.width())
                if move:
                    at = QPoint(x, y + (height - size.height()) // 2)
                    item.setGeometry(QRect(at, QSize(width, size.height())))
                x += width + gap
            y += height + gap
        return y - gap - rect.y()
