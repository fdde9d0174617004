"""Two panes beside one another, or below one another where the window is narrow for its text."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QSplitter, QWidget

from tercet.ui import theme


class FoldingSplitter(QSplitter):
    """A divider that turns by width over text size; all lengths are at 100 %. [px]"""

    def __init__(
        self, *, below: int, height: int, beside: tuple[int, int], stacked: tuple[int, int]
    ) -> None:
        super().__init__(Qt.Orientation.Horizontal)
        self._below, self._height = below, height
        self._beside, self._stacked = list(beside), list(stacked)
        self.setHandleWidth(10)
        self.setChildrenCollapsible(False)
        theme.changed.connect(self._fold)

    def put(self, first: QWidget, second: QWidget) -> None:
        """Take the two panes."""
        for place, pane in enumerate((first, second)):
            self.addWidget(pane)
            self.setStretchFactor(place, self._beside[place])
        self.setSizes(self._beside)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fold by the width."""
        super().resizeEvent(event)
        self._fold()

    def _fold(self, *_: object) -> None:
        look = theme.current()
        narrow = self.width() / look.scale < self._below
        side = Qt.Orientation.Vertical if narrow else Qt.Orientation.Horizontal
        if self.orientation() != side:
            self.setOrientation(side)
            self.setSizes(self._stacked if narrow else self._beside)
        self.setMinimumHeight(look.px(self._height) if narrow else 0)
