"""The two sides of the paper log: what is typed, and what was understood of it."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QVBoxLayout, QWidget

from tercet.formats.paper import Shorthand
from tercet.language import mark, several, tr
from tercet.library import paper_log
from tercet.library.paper_log import PaperView
from tercet.ui import words
from tercet.ui.flow import FlowLayout
from tercet.ui.paper.editor import PaperEditor
from tercet.ui.paper.understood import Understood
from tercet.ui.widgets import ElidedLabel, Label, Pane, button

#: What a number without a unit is, as the choice says it.
BARE = {
    "": mark("asked about"),
    "min": mark("minutes"),
    "km": mark("kilometres"),
    "miles": mark("miles"),
}
EXAMPLE = (
    "Week of Mon 2026-06-08\nMon: off\nTue am: 15 min easy, 10 x 100 m fast / 100 m jog\n"
    "Tue pm: 45 min easy\nThu: 2 x (5 x 200 m @ 5k pace / 200 m jog) / 3 min walk\n"
    "Sun: 14 miles easy, 1:52"
)
NOTHING_YET = mark(
    "Each line becomes a run here, as you type: a day, how long, how hard. What is not certain is "
    "asked about; until you answer, that piece is kept unjudged. Nothing is kept before you press "
    "Keep."
)


class TextPane(Pane):
    """The text with its line numbers, and what this runner's words mean."""

    bare_chosen = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 12)
        column.setSpacing(8)
        head = QHBoxLayout()
        head.addWidget(Label(tr("Paper log"), "pane_title"))
        head.addWidget(ElidedLabel(tr("type or paste; one line a day"), "small", "text_2"), 1)
        self.clear = button(tr("New page"))
        self.clear.setToolTip(tr("Empties the text; Ctrl+Z in it brings it back"))
        self.open_file = button(tr("Open a text file…"))
        head.addWidget(self.clear)
        head.addWidget(self.open_file)
        column.addLayout(head)
        self._change = QWidget()
        change = QHBoxLayout(self._change)
        change.setContentsMargins(0, 0, 0, 0)
        self.change_words = Label("", "body_bold", wrap=True)
        self.cancel = button(tr("Leave it as it was"))
        change.addWidget(self.change_words, 1)
        change.addWidget(self.cancel)
        column.addWidget(self._change)
        self.editor = PaperEditor()
        self.editor.setPlaceholderText(EXAMPLE)
        column.addWidget(self.editor, 1)
        self._complaint = Label("", "small", "not_read", wrap=True)
        self._complaint.hide()
        column.addWidget(self._complaint)
        self.known = Label("", "small", "text_2", wrap=True)
        column.addWidget(self.known)
        foot = QWidget()
        line = FlowLayout(foot, gap=10)
        self.shorthand = button(tr("Shorthand…"))
        self.bare = QComboBox()
        self.bare.setAccessibleName(tr("A number alone is"))
        for unit, said in BARE.items():
            self.bare.addItem(tr(said), unit)
        self.bare.activated.connect(lambda _: self.bare_chosen.emit(self.bare.currentData()))
        line.addWidget(self.shorthand)
        line.addWidget(Label(tr("a number alone is"), "small", "text_2"))
        line.addWidget(self.bare)
        column.addWidget(foot)
        self.show_change("")
        self.show_shorthand(Shorthand())

    def show_shorthand(self, own: Shorthand) -> None:
        """List this runner's words."""
        known = sorted(own.words)
        listed = ", ".join(known[:12])
        if len(known) > 12:
            listed = tr("{words} and {n} more", words=listed, n=len(known) - 12)
        self.known.setText(
            tr("Shorthand known for this runner: {words}.", words=listed)
            if known
            else tr("No shorthand known yet.")
        )
        self.bare.setCurrentIndex(max(self.bare.findData(own.bare), 0))

    def show_change(self, day: str) -> None:
        """Say that one run's words are changed, or that a page is typed."""
        self.change_words.setText(tr("Changing the words of the run of {day}.", day=day))
        self._change.setVisible(bool(day))
        for part in (self.clear, self.open_file):
            part.setVisible(not day)

    def complain(self, text: str) -> None:
        """Say why a file could not be opened, or nothing."""
        self._complaint.setText(text)
        self._complaint.setVisible(bool(text))


class UnderstoodPane(Pane):
    """What was understood, and the one button that keeps it."""

    def __init__(self) -> None:
        super().__init__()
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 10, 8, 12)
        column.setSpacing(8)
        head = QHBoxLayout()
        head.setContentsMargins(8, 0, 8, 0)
        head.addWidget(Label(tr("Understood"), "pane_title"))
        self.counts = ElidedLabel("", "small", "text_2")
        head.addWidget(self.counts, 1)
        self.ask_again = button(tr("Ask again"))
        self.ask_again.setToolTip(tr("Asks once more about what was left out"))
        self.keep = button(tr("Keep the runs"), primary=True)
        head.addWidget(self.ask_again)
        head.addWidget(self.keep)
        column.addLayout(head)
        self.hint = Label(tr(NOTHING_YET), "body", "text_2", wrap=True)
        self.hint.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.hint.setContentsMargins(8, 8, 8, 8)
        self.list = Understood()
        column.addWidget(self.hint, 1)
        column.addWidget(self.list, 1)
        self.basis = Label("", "small", "text_2", wrap=True)
        self.basis.setContentsMargins(8, 0, 8, 0)
        column.addWidget(self.basis)
        self.show_view(PaperView(""), ())

    def show_view(
        self, view: PaperView, left_out: Sequence[str], *, changing: bool = False
    ) -> None:
        """Show a page as it is understood."""
        self.list.set_rows(view.rows, left_out)
        self.list.setVisible(bool(view.rows))
        self.hint.setVisible(not view.rows)
        self.counts.setText(count_words(view))
        self.ask_again.setVisible(bool(left_out))
        runs = view.count(*paper_log.KEEPABLE)
        if changing:
            self.keep.setText(tr("Change this run"))
            alone = runs + view.count(paper_log.HERE) == 1
            self.keep.setEnabled(alone and not view.count(paper_log.ASKED))
        else:
            keep = several(runs, mark("Keep {n} run"), mark("Keep {n} runs"))
            self.keep.setText(keep if runs else tr("Keep"))
            self.keep.setEnabled(runs > 0)
        self.basis.setText(basis_words(view))
        self.basis.setVisible(bool(view.rows))


def count_words(view: PaperView) -> str:
    """How many of which rows there are, and of which days."""
    days = [row.entry.start.date() for row in view.rows if row.entry.start is not None]
    span = ""
    if days:
        first, last = min(days), max(days)
        begin = words.short_day(first) + (f" {first.year}" if first.year != last.year else "")
        span = tr("{start} to {end}", start=begin, end=f"{words.short_day(last)} {last.year}")
        if first == last:
            span = f"{words.short_day(last)} {last.year}"
    told = [span] if span else []
    for states, one, more in (
        (paper_log.KEEPABLE, mark("{n} run"), mark("{n} runs")),
        ((paper_log.HERE,), mark("{n} already here"), mark("{n} already here")),
        ((paper_log.GUESSED,), mark("{n} to look at"), mark("{n} to look at")),
        ((paper_log.ASKED,), mark("{n} not read"), mark("{n} not read")),
        ((paper_log.REST,), mark("{n} day off"), mark("{n} days off")),
        ((paper_log.LEFT_OUT,), mark("{n} left out"), mark("{n} left out")),
    ):
        count = view.count(*states)
        if count:
            told.append(several(count, one, more))
    return ", ".join(told)


def basis_words(view: PaperView) -> str:
    """What the shades were made from."""
    if not view.judged:
        said = tr("Shaded by the words alone: no speeds at LT1 and LT2 are known yet.")
    elif view.estimated:
        said = tr(
            "No clock on paper: shaded by a pace that is written, about against LT1 and LT2 of "
            "that day, else by the word. Times in italics follow from typical speeds."
        )
    else:
        said = tr(
            "No clock on paper: shaded by a pace that is written, against LT1 and LT2 of "
            "that day, else by the word. Times in italics follow from typical speeds."
        )
    return " ".join([said, *view.basis[:2]])
