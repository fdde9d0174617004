"""Keeps Python's cycle collector on the GUI thread, for it may delete widgets."""

from __future__ import annotations

import gc

from PySide6.QtCore import QObject, QTimer

#: How often a collection may be due. [ms]
EVERY_MS = 500


def hold() -> None:
    """Leave what there is now out of all collections: a full one goes through every module."""
    gc.freeze()


def let_go() -> None:
    """Collect all again, for what was held goes away."""
    gc.unfreeze()


class Collector(QObject):
    """Collects cycles from the event loop instead of from whichever thread happens to allocate.

    A collection in the store's thread or in an import's would delete closed windows there, and
    Qt's widgets may only be deleted in the GUI thread.
    """

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        gc.disable()
        self._timer = QTimer(self)
        self._timer.setInterval(EVERY_MS)
        self._timer.timeout.connect(self.collect)
        self._timer.start()

    def collect(self) -> None:
        """Collect the youngest generations that are due."""
        for generation in (2, 1, 0):
            if gc.get_count()[generation] > gc.get_threshold()[generation]:
                gc.collect(generation)
                return
