"""The card of the chosen session: four figures, its trace, and a way to its page."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from tercet.language import mark, tr
from tercet.library.trace import SessionTrace
from tercet.library.views import SessionView
from tercet.ui import words
from tercet.ui.session_head import length_word, mean_speed
from tercet.ui.sheet_rows import session_length
from tercet.ui.small_trace import SmallTrace
from tercet.ui.widgets import ElidedLabel, Figure, Label, Pane, button

_TOLD = (mark("{time} easy"), mark("{time} moderate"), mark("{time} hard"))
_ABOUT = (mark("about {time} easy"), mark("about {time} moderate"), mark("about {time} hard"))


class SessionCard(Pane):
    """The chosen session, or what would fill the card."""

    open_asked = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(tr("Chosen session"))
        self.session: SessionView | None = None
        self._folded = False
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 10)
        column.setSpacing(6)
        head = QHBoxLayout()
        self.name = ElidedLabel("", "pane_title")
        self.when = Label("", "small", "text_2")
        self.open = button(tr("Open"))
        self.open.clicked.connect(self._open)
        head.addWidget(self.name)
        head.addWidget(self.when)
        head.addStretch(1)
        head.addWidget(self.open)
        column.addLayout(head)
        self.body = QWidget()
        body = QVBoxLayout(self.body)
        body.setContentsMargins(0, 0, 0, 0)
        body.setSpacing(6)
        figures = QHBoxLayout()
        self.running = Figure(tr("running time"))
        self.distance = Figure(tr("distance"))
        self.pace = Figure(tr("pace"))
        self.effort = Figure(tr("effort said"))
        for figure in (self.running, self.distance, self.pace, self.effort):
            figures.addWidget(figure, 1)
        body.addLayout(figures)
        self.trace = SmallTrace()
        body.addWidget(self.trace, 1)
        self.shares = Label("", "small", "text_2", wrap=True)
        body.addWidget(self.shares)
        column.addWidget(self.body, 1)
        self.hint = Label("", "body", "text_2", wrap=True)
        self.hint.setAlignment(Qt.AlignmentFlag.AlignTop)
        column.addWidget(self.hint, 1)
        self.show_session(None)

    def show_session(self, session: SessionView | None, units: words.Units = "km") -> None:
        """Show a session; its trace comes with :meth:`show_trace`."""
        if session is None or self.session is None or session.id != self.session.id:
            self.trace.show_trace(None)
        self.session = session
        self._arrange()
        if session is None:
            self.name.setText(tr("No session on this day"))
            self.when.setText("")
            self.hint.setText(tr("The arrow keys choose another day; a click on a bar opens it."))
            return
        self.name.setText(session.name)
        self.when.setText(
            words.at_clock(words.short_day(session.day), session.start, session.clock)
        )
        self.running.word.setText(length_word(session))
        self.running.set(words.duration(session_length(session)))
        self.distance.set(words.distance(session.distance_m, units))
        self.pace.set(words.pace(mean_speed(session), units))
        self.effort.set(
            tr("{effort} of 10", effort=session.effort)
            if session.effort is not None
            else tr("not said")
        )
        self.shares.setText(_shares(session))
        self.open.setAccessibleName(
            tr("Open {session}, {day}", session=session.name, day=words.long_day(session.day))
        )

    def show_trace(self, trace: SessionTrace) -> None:
        """Draw the chosen session's seconds."""
        self.trace.show_trace(trace)

    def fold(self, folded: bool) -> None:
        """Keep only the heading line."""
        if folded != self._folded:
            self._folded = folded
            self._arrange()

    def _arrange(self) -> None:
        chosen = self.session is not None
        self.open.setVisible(chosen)
        self.body.setVisible(chosen and not self._folded)
        self.hint.setVisible(not chosen and not self._folded)
        policy = QSizePolicy.Policy.Maximum if self._folded else QSizePolicy.Policy.Preferred
        self.setSizePolicy(QSizePolicy.Policy.Preferred, policy)

    def _open(self) -> None:
        if self.session is not None:
            self.open_asked.emit(self.session.id)


def _shares(session: SessionView) -> str:
    """Time by shade in words."""
    if session.sport != "running":
        sport = tr(session.sport.replace("_", " "))
        return tr("{sport}: kept, not counted as running", sport=sport)
    told = _ABOUT if session.estimated else _TOLD
    parts = [
        tr(part, time=words.hours(value))
        for part, value in zip(told, session.seconds, strict=False)
    ]
    if session.seconds[4] >= 30:
        parts.append(tr("{time} not judged", time=words.hours(session.seconds[4])))
    return ", ".join(parts)
