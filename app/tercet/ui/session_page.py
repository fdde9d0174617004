"""The page of one session: its values, its trace, and the cards beside it."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QFrame,
    QHBoxLayout,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from tercet.language import mark, tr
from tercet.library.session_kinds import Kind
from tercet.library.trace import SessionTrace
from tercet.library.views import SessionView
from tercet.ui import theme as themes
from tercet.ui import words
from tercet.ui.paper.words_link import WordsLink
from tercet.ui.parts_card import PartsCard
from tercet.ui.session_cards import CleaningCard, NotesCard, RepetitionsCard
from tercet.ui.session_head import SessionHead
from tercet.ui.session_trace import TracePanel
from tercet.ui.stretch_menu import StretchMenu, ask_belt_speed
from tercet.ui.widgets import Label

#: Under this width, at 100 % text, the cards go below the trace.
FOLD_WIDTH = 1200
#: Strips of heart rate and height; with more of them the trace is higher. [px at 100 %]
USUAL_STRIPS = 114
#: Qt's word for no limit of a widget's size. [px]
UNBOUND = (1 << 24) - 1
CAUTION = mark(
    "With pain, illness, dizziness or chest signs stop and ask a doctor; "
    "this program gives no medical advice."
)


class SessionPage(QWidget):
    """One session; what is asked for and what was changed is told by signals.

    ``note_changed`` and ``effort_changed`` give the session's number and the new text or effort
    (None for not said), ``kind_changed`` one of :data:`~tercet.library.session_kinds.KINDS`.
    """

    previous_asked = Signal()
    next_asked = Signal()
    back_asked = Signal()
    note_changed = Signal(int, str)
    effort_changed = Signal(int, object)
    kind_changed = Signal(int, object)
    shade_said = Signal(int, float, float, str)  # run, start, end [s], letter
    repetition_said = Signal(int, float, float)
    belt_said = Signal(int, float, float)  # run, length [s], speed [m/s]
    said_taken_back = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.session: SessionView | None = None
        self.head = SessionHead()
        self.panel = TracePanel()
        self.parts, self.repetitions = PartsCard(), RepetitionsCard()
        self.cleaning = CleaningCard()
        self.words, self.notes = WordsLink(), NotesCard()
        self._caution = Label(tr(CAUTION), "small", "text_2", wrap=True)
        self._main, self._side, self._inside = QFrame(), QWidget(), QWidget()
        self._scroll = QScrollArea()
        self._main_column = QVBoxLayout(self._main)
        self._columns = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._arrange()
        self._connect()
        themes.changed.connect(self.restyle)
        self.restyle()

    def show_session(
        self,
        session: SessionView,
        trace: SessionTrace,
        *,
        block_name: str,
        week_number: int | None,
        made_from: str,
        why: Callable[[int], str],
        mends: Sequence[str] = (),
        units: words.Units = "km",
        has_previous: bool = True,
        has_next: bool = True,
    ) -> None:
        """Show a session.

        Parameters
        ----------
        session, trace : SessionView, SessionTrace
            The same session's sums and seconds.
        block_name : str
            Name of its block, or empty.
        week_number : int or None
            Week of the block, counted from 1; None or 0 where it is in none.
        made_from : str
            What the shading was made from, a sentence.
        why : callable
            From a second to why it has its shade, a sentence.
        mends : sequence of str
            What was mended in the recording, a sentence each.
        units : str
            ``"km"`` or ``"miles"``.
        has_previous, has_next : bool
            Whether there is a session to go to.
        """
        again = self.session is not None and self.session.id == session.id
        selected = self.panel.chart.selected if again else -1
        self.notes.show_session(session)
        self.session = session
        self.head.show_session(session, block_name, week_number, units)
        self.head.previous.setEnabled(has_previous)
        self.head.next.setEnabled(has_next)
        self.panel.show_trace(session, trace, made_from, why, units)
        self._fold()
        self.parts.show_parts(trace.parts, units)
        self.repetitions.show_repetitions(trace.repetitions, units)
        self.cleaning.show_mends(mends)
        self.setAccessibleName(
            tr("Session {session}, {day}", session=session.name, day=words.long_day(session.day))
        )
        if 0 <= selected < len(trace.repetitions):
            self.panel.chart.mark_repetition(selected)
            self.repetitions.mark_repetition(selected)
        if not again:
            self._scroll.verticalScrollBar().setValue(0)

    def save_now(self) -> None:
        """Tell of a note that was typed and not yet told of, before the window closes."""
        self.notes.save()

    @property
    def ring(self) -> list[QWidget]:
        """What F6 goes round here, in order."""
        return [self.head.kind, self.panel.chart, self.repetitions.table, self.notes.note]

    @property
    def folded(self) -> bool:
        """Whether the cards stand below the trace."""
        return self._columns.direction() == QBoxLayout.Direction.TopToBottom

    def restyle(self, *_: object) -> None:
        look = themes.current()
        self._main_column.setContentsMargins(look.px(16), look.px(10), look.px(16), look.px(10))
        self._fold()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fold()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.back_asked.emit()
        else:
            super().keyPressEvent(event)

    def _arrange(self) -> None:
        self._main.setProperty("pane", True)
        main = self._main_column
        main.setSpacing(8)
        main.addWidget(self.head)
        main.addWidget(self.panel, 1)
        side = QVBoxLayout(self._side)
        side.setContentsMargins(0, 0, 0, 0)
        side.setSpacing(10)
        side.addWidget(self.parts)
        side.addWidget(self.repetitions)
        side.addWidget(self.cleaning)
        side.addWidget(self.words)
        side.addWidget(self.notes, 1)
        self._columns.setSpacing(10)
        beside = QVBoxLayout()
        beside.addWidget(self._main, 1)
        beside.addStretch(0)
        self._columns.addLayout(beside, 68)
        self._columns.addWidget(self._side, 30)
        inside = QVBoxLayout(self._inside)
        inside.setContentsMargins(12, 2, 12, 4)
        inside.setSpacing(4)
        inside.addLayout(self._columns, 1)
        foot = QHBoxLayout()
        foot.addWidget(self._caution, 1)
        inside.addLayout(foot)
        for card in (self.parts, self.repetitions, self.cleaning):
            card.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setWidget(self._inside)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._scroll)
        for action in self.panel.twin.actions_by_key:
            self.addAction(action)

    def _connect(self) -> None:
        self.head.previous.clicked.connect(self.previous_asked)
        self.head.next.clicked.connect(self.next_asked)
        self.head.back.clicked.connect(self.back_asked)
        self.head.kind_chosen.connect(self._kind)
        self.notes.note_changed.connect(self.note_changed)
        self.notes.effort_changed.connect(self.effort_changed)
        self.notes.effort_changed.connect(self._effort)
        self.stretch_menu = StretchMenu(self)
        self.panel.chart.stretch_chosen.connect(self._ask_stretch)
        self.stretch_menu.shade_said.connect(self._shade)
        self.stretch_menu.repetition_said.connect(self._repetition)
        self.head.whole_said.connect(self._whole)
        self.panel.chart.repetition_pointed.connect(self.repetitions.mark_repetition)
        self.repetitions.repetition_pointed.connect(self.panel.chart.mark_repetition)

    def _kind(self, kind: Kind) -> None:
        if self.session is not None:
            self.kind_changed.emit(self.session.id, kind)

    def _ask_stretch(self, start: int, end: int) -> None:
        session, chart = self.session, self.panel.chart
        if session is None or session.sport != "running":
            return
        length = max(session.elapsed_s, float(end))
        corner = chart.mapToGlobal(QPoint(int(chart.place_of(end)), chart.height() // 3))
        self.stretch_menu.ask(float(start), float(end), length, corner)

    def _shade(self, start: float, end: float, letter: str) -> None:
        if self.session is not None:
            self.shade_said.emit(self.session.id, start, end, letter)

    def _repetition(self, start: float, end: float) -> None:
        if self.session is not None:
            self.repetition_said.emit(self.session.id, start, end)

    def _whole(self, said: str) -> None:
        session = self.session
        if session is None:
            return
        if said == "back":
            self.said_taken_back.emit(session.id)
        elif said == "belt":
            speed = ask_belt_speed(self)
            if speed is not None:
                self.belt_said.emit(session.id, session.elapsed_s + 1.0, speed)
        else:
            self.shade_said.emit(session.id, 0.0, session.elapsed_s + 1.0, said)

    def _effort(self, _id: int, effort: int | None) -> None:
        self.head.show_effort(effort)

    def _fold(self) -> None:
        look = themes.current()
        narrow = self.width() / look.scale < FOLD_WIDTH
        way = QBoxLayout.Direction.TopToBottom if narrow else QBoxLayout.Direction.LeftToRight
        self._columns.setDirection(way)
        # Below one another the page scrolls, so the trace keeps a height to be read at.
        least = (400 if narrow else 260) + max(0, self.panel.chart.strips_pixels - USUAL_STRIPS)
        self.panel.chart.setMinimumHeight(look.px(least))
        self.head.fold(self.width() / look.scale)
        # However many repetitions stand beside it, the trace is seen whole.
        room = self._scroll.viewport().height() - 8
        needed = self._main_column.minimumHeightForWidth(self._main.width())
        self._main.setMaximumHeight(UNBOUND if narrow else max(room, needed))
