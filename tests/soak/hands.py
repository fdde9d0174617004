"""``python -m tests.soak.hands [SEED] [SECONDS]``: random clicks, drags, keys and words.

They fall on a window over the example season, its dialogs and menus. What raises is told with the
last things done, and the exit code is 1. A seed gives the same choices, not the same moments.
"""

from __future__ import annotations

import os
import random
import sys
import time
import traceback
from collections import deque
from pathlib import Path
from tempfile import TemporaryDirectory
from types import TracebackType

import shiboken6
from PySide6.QtCore import QEvent, QObject, QPoint, Qt, QTimer, QtMsgType, qInstallMessageHandler
from PySide6.QtGui import QDesktopServices
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog, QMenu, QWidget

from tercet import resources
from tercet.library.library import Library
from tercet.ui.application import application
from tercet.ui.collector import Collector
from tercet.ui.desk import Desk

SECONDS = 120.0
#: Menus and drags wait in event loops of their own; deeper than this one of them is closed.
DEEPEST = 6
#: Waits between two acts. [ms]
PAUSES_MS = (1, 10, 50, 120)
KEYS = (
    "Tab", "Backtab", "Up", "Down", "Left", "Right", "Return", "Space", "Escape", "Home", "End",
    "PageDown", "PageUp", "F6", "F4", "Delete", "M", "T", "B",
)  # fmt: skip
WITH_CTRL = (*"12345PHLZYFEBRT0ACV", "Plus", "Minus", "Backspace", "Comma")
WORDS = (
    "15", "easy,", "6", "x", "200", "m", "@", "5k", "pace", "/", "jog", "hard", ">", "10 min",
    "44:10", "4:30", "-1", "1e9",
)  # fmt: skip
#: The offscreen platform says so of itself.
USUAL = ("This plugin does not support",)


class Hands(QObject):
    """Does one thing after the other until the time is over, and keeps the main window open."""

    def __init__(self, desk: Desk, seed: int, seconds: float) -> None:
        super().__init__()
        self._desk, self._chance = desk, random.Random(seed)
        self._end = time.perf_counter() + seconds
        self._depth = 0
        self.acts, self.faults = 0, 0
        self.trail: deque[str] = deque(maxlen=8)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep the window, unless another one takes its place."""
        if event.type() == QEvent.Type.Close and watched is self._desk.main:
            event.ignore()
            return True
        return False

    def told(self, what: str) -> None:
        """Something that should not have happened."""
        self.faults += 1
        print(f"{what}\n  after: {'; '.join(self.trail)}", flush=True)

    def act(self) -> None:
        """One of many things, on whatever takes clicks and keys now."""
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        over = time.perf_counter() > self._end
        if over or self._depth > DEEPEST:
            top = app.activePopupWidget() or app.activeModalWidget()
            if top is not None:
                top.close()
            elif over and not self._depth:
                app.exit()
                return
        QTimer.singleShot(self._chance.choice(PAUSES_MS), self, self.act)
        if over or self._depth > DEEPEST:
            return
        self._desk.main.removeEventFilter(self)
        self._desk.main.installEventFilter(self)
        self._depth += 1
        self.acts += 1
        try:
            self._any(app.activePopupWidget() or app.activeModalWidget() or self._desk.main)
        except RuntimeError as error:
            if "already deleted" not in str(error):  # by the click before
                raise
        finally:
            self._depth -= 1

    def _any(self, top: QWidget) -> None:
        chance, share = self._chance, self._chance.random()
        focused = QApplication.focusWidget() or top
        if share < 0.45:
            self._point(top)
        elif share < 0.75:
            still = Qt.KeyboardModifier.NoModifier
            shift, alt = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.AltModifier
            self._press(focused, chance.choice(KEYS), chance.choice([still] * 4 + [shift, alt]))
        elif share < 0.93:
            self._press(focused, chance.choice(WITH_CTRL), Qt.KeyboardModifier.ControlModifier)
        elif share < 0.97:
            word = chance.choice(WORDS)
            self.trail.append(f"typed {word}")
            QTest.keyClicks(focused, word)
        else:
            self._dress()

    def _point(self, top: QWidget) -> None:
        chance = self._chance
        inside = [w for w in top.findChildren(QWidget) if w.isVisible() and w.isEnabled()]
        on = chance.choice(inside) if inside and not isinstance(top, QMenu) else top
        left, right = Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton
        button = left if chance.random() < 0.85 else right
        begin, end = self._place(on), self._place(on)
        drag = chance.random() < 0.15
        self.trail.append(f"{'dragged' if drag else 'clicked'} {type(on).__name__}")
        QTest.mousePress(on, button, pos=begin)
        if drag and shiboken6.isValid(on):
            QTest.mouseMove(on, end)
        if shiboken6.isValid(on):
            QTest.mouseRelease(on, button, pos=end if drag else begin)

    def _place(self, on: QWidget) -> QPoint:
        chance = self._chance
        return QPoint(chance.randrange(max(on.width(), 1)), chance.randrange(max(on.height(), 1)))

    def _press(self, on: QWidget, key: str, keys: Qt.KeyboardModifier) -> None:
        self.trail.append(f"{keys.name} {key} on {type(on).__name__}")
        QTest.keyClick(on, getattr(Qt.Key, f"Key_{key}"), keys)

    def _dress(self) -> None:
        chance, window = self._chance, self._desk.main
        self.trail.append("theme, text size or window size")
        what = chance.randrange(3)
        if what == 0:
            window.look.choose(name=chance.choice(["dark", "light"]))
        elif what == 1:
            window.look.choose(size=chance.choice([100, 130, 150, 200]))
        else:
            window.resize(chance.randrange(800, 1900), chance.randrange(600, 1000))


def without_leaving() -> None:
    """Dialogs of the system and other programs stay away."""
    for name in ("getOpenFileName", "getOpenFileNames", "getSaveFileName"):
        setattr(QFileDialog, name, staticmethod(lambda *_, **__: ("", "")))
    QFileDialog.getExistingDirectory = staticmethod(lambda *_, **__: "")
    QDesktopServices.openUrl = staticmethod(lambda *_: True)


def soak(folder: Path, seed: int, seconds: float) -> int:
    """How many faults there were."""
    without_leaving()
    app = application()
    Collector(app)
    library = Library(folder)
    library.take_in([resources.samples()])
    desk = Desk(library, demo=True)
    hands = Hands(desk, seed, seconds)

    def raised(
        kind: type[BaseException], error: BaseException, where: TracebackType | None
    ) -> None:
        hands.told("".join(traceback.format_exception(kind, error, where)))

    def said(kind: QtMsgType, _: object, text: str) -> None:
        if not text.startswith(USUAL):
            hands.told(f"Qt: {text}")

    sys.excepthook = raised
    qInstallMessageHandler(said)
    desk.main.show()
    QTimer.singleShot(2000, hands, hands.act)
    app.exec()
    desk.main.removeEventFilter(hands)
    desk.main.close()
    desk.close()
    library.close()
    print(f"seed {seed}: {hands.acts} acts, {hands.faults} faults")
    return hands.faults


def main() -> int:
    """Soak in a store that is removed again."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    seed = int(sys.argv[1]) if len(sys.argv) > 1 else 1
    seconds = float(sys.argv[2]) if len(sys.argv) > 2 else SECONDS
    with TemporaryDirectory() as name:
        return int(soak(Path(name) / "store", seed, seconds) > 0)


if __name__ == "__main__":
    sys.exit(main())
