"""What may be said of a stretch of a run, or of all of it: menus, and the words of the stretch."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Signal, SignalInstance
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QInputDialog, QMenu, QWidget

from tercet.language import mark, tr
from tercet.ui import words

#: Letters of what may be said, in the order of the menus.
SAID = (
    ("E", mark("Easy")),
    ("M", mark("Moderate")),
    ("H", mark("Hard")),
    ("X", mark("Leave it out")),
)
#: Belt speeds that the dialog takes. [km/h]
SLOWEST, FASTEST, USUAL = 2.0, 30.0, 10.0
KMH = 3.6


def stretch_words(start_s: float, end_s: float) -> str:
    """Name a stretch: ``12:30 to 15:10``."""
    return tr("{start} to {end}", start=words.duration(start_s), end=words.duration(end_s))


class StretchMenu(QMenu):
    """What may be said of a stretch; tells by signals.

    ``shade_said`` gives start, end [s] and a letter, ``repetition_said`` start and end.
    """

    shade_said = Signal(float, float, str)
    repetition_said = Signal(float, float)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(tr("What this stretch was"))

    def ask(self, start_s: float, end_s: float, length_s: float, where: QPoint) -> None:
        """Open at a place of the screen, for a stretch of a run of this length."""
        self.clear()
        head = self.addAction(f"{stretch_words(start_s, end_s)}, {words.duration(end_s - start_s)}")
        head.setEnabled(False)
        self.addSeparator()
        for letter, word in SAID:
            self._add(tr(word), lambda letter=letter: self.shade_said.emit(start_s, end_s, letter))
        self.addSeparator()
        self._add(tr("A repetition"), lambda: self.repetition_said.emit(start_s, end_s))
        if start_s > 0:
            self._add(tr("Cut off all before it"), lambda: self.shade_said.emit(0.0, start_s, "X"))
        if end_s < length_s:
            self._add(
                tr("Cut off all after it"), lambda: self.shade_said.emit(end_s, length_s, "X")
            )
        self.popup(where)

    def _add(self, text: str, call: object) -> None:
        action = QAction(text, self)
        action.triggered.connect(lambda _=False: call())  # type: ignore[operator]
        self.addAction(action)


def add_whole_run(menu: QMenu, owner: QWidget, told: SignalInstance) -> tuple[QAction, ...]:
    """Add to a menu what may be said of a whole run; ``told`` gets a letter, "belt" or "back"."""
    menu.addSeparator()
    made = []
    for key, text in (
        ("E", tr("Count all of it as easy")),
        ("M", tr("Count all of it as moderate")),
        ("H", tr("Count all of it as hard")),
        ("X", tr("Leave all of it out")),
        ("belt", tr("Treadmill belt speed…")),
        ("back", tr("Take back what was said about the shades")),
    ):
        action = QAction(text, owner)
        action.triggered.connect(lambda _=False, key=key: told.emit(key))
        menu.addAction(action)
        made.append(action)
    return tuple(made)


def ask_belt_speed(parent: QWidget) -> float | None:
    """Ask how fast the belt ran; gives m/s, or None if it was not said."""
    speed, said = QInputDialog.getDouble(
        parent,
        tr("Belt speed"),
        tr("Speed shown by the treadmill, km/h"),
        USUAL,
        SLOWEST,
        FASTEST,
        1,
    )
    return speed / KMH if said else None
