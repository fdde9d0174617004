"""The cards beside a session: repetitions, cleaning, notes and effort."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QObject, QSignalBlocker, Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QWheelEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QPlainTextEdit,
    QSizePolicy,
    QSpinBox,
    QVBoxLayout,
)

from tercet.engine.judgement import Repetition
from tercet.language import mark, tr
from tercet.library.views import SessionView
from tercet.ui import theme as themes
from tercet.ui import words
from tercet.ui.twin import fill_table, fit_table, number_table

SAVE_AFTER_MS = 600
NOT_SAID = -1
NO_REPETITIONS = mark("No repetitions were found in this session.")
NOT_MENDED = mark("Nothing was mended.")
MOST_ROWS = 8


class Card(QFrame):
    """A pane with a title."""

    def __init__(self, title: str) -> None:
        super().__init__()
        self.setProperty("pane", True)
        self.setAccessibleName(title)
        self.title = QLabel(title)
        self.column = QVBoxLayout(self)
        self.column.addWidget(self.title)
        themes.changed.connect(self.restyle)

    def restyle(self, *_: object) -> None:
        look = themes.current()
        self.title.setFont(look.font("pane_title"))
        self.column.setContentsMargins(look.px(16), look.px(10), look.px(16), look.px(12))
        self.column.setSpacing(look.px(6))
        for label in self.findChildren(QLabel):
            if label is not self.title:
                label.setFont(look.font("body"))


class RepetitionsCard(Card):
    """One row a repetition; ``repetition_pointed`` counts from 0, -1 if none is selected."""

    repetition_pointed = Signal(int)

    def __init__(self) -> None:
        super().__init__(tr("Repetitions"))
        self.table = number_table(tr("Repetitions"))
        self.table.itemSelectionChanged.connect(self._selected)
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.words.setProperty("secondary", True)
        self.column.addWidget(self.table)
        self.column.addWidget(self.words)
        self.restyle()

    def show_repetitions(self, repetitions: Sequence[Repetition], units: words.Units) -> None:
        """Fill the table; nothing is selected."""
        rows = []
        for number, repetition in enumerate(repetitions, start=1):
            recovery = repetition.recovery_s
            rows.append(
                (
                    str(number),
                    words.duration(repetition.duration_s),
                    words.bout(repetition.distance_m, units),
                    words.bare_pace(repetition_speed(repetition), units),
                    tr("end of the set") if recovery is None else words.duration(recovery),
                )
            )
        headings = (
            "#",
            tr("time"),
            tr("distance"),
            tr("pace {unit}", unit=words.PACE_WORDS[units]),
            tr("recovery"),
        )
        with QSignalBlocker(self.table):
            fill_table(self.table, headings, rows, left={4})
            self.table.clearSelection()
            self.table.setCurrentCell(-1, -1)
        self.table.setVisible(bool(rows))
        self.words.setText(spread_words(repetitions, units) if rows else tr(NO_REPETITIONS))
        self.words.setVisible(bool(self.words.text()))
        self._fit()

    def mark_repetition(self, index: int) -> None:
        """Select a row without telling of it; -1 selects none."""
        with QSignalBlocker(self.table):
            if index < 0:
                self.table.clearSelection()
                self.table.setCurrentCell(-1, -1)
            else:
                self.table.selectRow(index)
        self.table.viewport().update()

    def restyle(self, *_: object) -> None:
        super().restyle()
        if self.table.columnCount():
            fit_table(self.table, 4)
        self._fit()

    def _fit(self) -> None:
        """As tall as its rows, up to eight."""
        row = themes.current().px(30)
        rows = min(self.table.rowCount(), MOST_ROWS)
        head = max(0, self.table.horizontalHeader().sizeHint().height())
        self.table.setFixedHeight(rows * row + head)

    def _selected(self) -> None:
        rows = self.table.selectionModel().selectedRows()
        self.repetition_pointed.emit(rows[0].row() if rows else -1)


class CleaningCard(Card):
    """What was mended in the recording, one line each."""

    def __init__(self) -> None:
        super().__init__(tr("Cleaning"))
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.column.addWidget(self.words)
        self.restyle()

    def show_mends(self, mends: Sequence[str]) -> None:
        """Show these, or that there were none."""
        self.words.setText("\n".join(mends) or tr(NOT_MENDED))


class _CalmSpinBox(QSpinBox):
    """A number field that doesn't change while the page is scrolled past it."""

    def wheelEvent(self, event: QWheelEvent) -> None:
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()


class NotesCard(Card):
    """Notes and effort of one session, told of once typing has stopped."""

    note_changed = Signal(int, str)
    effort_changed = Signal(int, object)

    def __init__(self) -> None:
        super().__init__(tr("Notes"))
        self._id: int | None = None
        self._kept = ""
        self.note = QPlainTextEdit()
        self.note.setAccessibleName(tr("Notes"))
        self.note.setPlaceholderText(tr("How it felt, the ground, the wind"))
        self.note.setTabChangesFocus(True)
        self.note.installEventFilter(self)
        self.note.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Ignored)
        self.effort = _CalmSpinBox()
        self.effort.setRange(NOT_SAID, 10)
        self.effort.setSpecialValueText(tr("not said"))
        self.effort.setSuffix(tr(" of 10"))
        self.effort.lineEdit().setTextMargins(6, 0, 0, 0)
        self.effort.setKeyboardTracking(False)
        self.effort.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.effort.setAccessibleName(tr("Effort said"))
        self.effort.setAccessibleDescription(
            tr("How hard the whole session felt: 0 rest, 10 the most there is")
        )
        name = QLabel(tr("&Effort said"))
        name.setBuddy(self.effort)
        row = QHBoxLayout()
        row.addWidget(name)
        row.addWidget(self.effort)
        row.addStretch(1)
        self.column.addLayout(row)
        self.column.addWidget(self.note, 1)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(SAVE_AFTER_MS)
        self._timer.timeout.connect(self.save)
        self.note.textChanged.connect(self._timer.start)
        self.effort.valueChanged.connect(self._effort)
        self.restyle()

    def show_session(self, session: SessionView) -> None:
        """Show another session's; what was typed for the one before is told of first.

        The same session shown again leaves alone what has been typed and not yet told of.
        """
        again = session.id == self._id
        typed = self.note.toPlainText()
        if not again:
            self.save()
        with QSignalBlocker(self.effort), QSignalBlocker(self.note):
            self.effort.setValue(NOT_SAID if session.effort is None else session.effort)
            if not (again and typed != self._kept) and typed != session.note:
                self.note.setPlainText(session.note)
        self._id, self._kept = session.id, session.note

    def save(self) -> None:
        """Tell of the note now if it was changed."""
        self._timer.stop()
        typed = self.note.toPlainText()
        if self._id is not None and typed != self._kept:
            self._kept = typed
            self.note_changed.emit(self._id, typed)

    def restyle(self, *_: object) -> None:
        super().restyle()
        look = themes.current()
        for field in (self.note, self.effort, self.effort.lineEdit()):
            field.setFont(look.font("body"))
        self.note.setMinimumHeight(look.px(84))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if isinstance(event, QFocusEvent) and event.type() == QEvent.Type.FocusOut:
            self.save()
        return super().eventFilter(watched, event)

    def _effort(self, value: int) -> None:
        if self._id is not None:
            self.effort_changed.emit(self._id, None if value == NOT_SAID else value)


def repetition_speed(repetition: Repetition) -> float:
    """Speed over the ground, or on the level where no distance was measured [m/s]."""
    if repetition.distance_m > 0.0 and repetition.duration_s > 0.0:
        return repetition.distance_m / repetition.duration_s
    return repetition.level_speed


def spread_words(repetitions: Sequence[Repetition], units: words.Units) -> str:
    """How far apart the slowest and the fastest repetition lie; empty for fewer than two."""
    speeds = [speed for r in repetitions if (speed := repetition_speed(r)) > 0.0]
    if len(speeds) < 2:
        return ""
    metres = words.UNIT_METRES[units]
    spread = metres / min(speeds) - metres / max(speeds)
    return tr(
        "Slowest and fastest lie {seconds} s{unit} apart.",
        seconds=words.number(spread),
        unit=words.PACE_WORDS[units],
    )
