"""What is asked of one row of a paper log, with its likely readings as buttons."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from tercet.engine.notation import WORDS
from tercet.engine.shades import Shade
from tercet.formats.paper import Guess, Unclear
from tercet.formats.paper.shorthand import NOT_JUDGED
from tercet.language import mark, tr
from tercet.library import paper_log
from tercet.library.paper_log import PaperRow
from tercet.ui import theme
from tercet.ui.flow import FlowLayout
from tercet.ui.paper.rows import HEIGHT, when
from tercet.ui.widgets import Label, button

_SHADES = {Shade.EASY: mark("easy"), Shade.MODERATE: mark("moderate"), Shade.HARD: mark("hard")}
#: So many likely readings are offered.
OFFERED = 3


@dataclass(frozen=True)
class Answer:
    """What a button says: a reading for some characters, or for a word from now on."""

    start: int
    end: int
    text: str
    reading: str
    word: bool  # remembered as shorthand; else written into the text


@dataclass(frozen=True)
class Choice:
    """A button of a question: its words, what it answers, and what it is said to do."""

    words: str
    answer: Answer | None  # None leaves the piece out
    hint: str = ""


def asked_of(row: PaperRow, left_out: Sequence[str] = ()) -> tuple[str, list[Choice]] | None:
    """The one question of a row, and its choices; None where nothing is asked."""
    if row.state == paper_log.GUESSED:
        return _guess(row.entry.guesses[0])
    if row.state != paper_log.ASKED:
        return None
    waiting = paper_log.waiting(row.entry, left_out)
    return _unclear(row, waiting[0]) if waiting else None


def _guess(guess: Guess) -> tuple[str, list[Choice]]:
    word = guess.kind == "word"

    def choice(label: str, reading: str) -> Choice:
        hint = _means(guess.text, reading) if word else tr("Write {reading}", reading=reading)
        return Choice(label, Answer(guess.start, guess.end, guess.text, reading, word), hint)

    other = guess.others[0] if guess.others else ""
    choices = [choice(tr("Right"), guess.reading)]
    if other:
        choices.append(
            choice(tr("It was {reading}", reading=other) if word else other.strip(" :"), other)
        )
    shade = WORDS.get(guess.reading)
    if shade in _SHADES and _SHADES[shade] != guess.reading:
        told = tr(
            "“{typed}”: {reading}?, {shade} (not judged until you say)",
            typed=guess.text,
            reading=guess.reading,
            shade=tr(_SHADES[shade]),
        )
    else:
        told = tr(
            "“{typed}”: {reading}? (not judged until you say)",
            typed=guess.text,
            reading=guess.reading,
        )
    return told, choices


def _means(typed: str, reading: str) -> str:
    return tr("From now on “{typed}” means {reading}", typed=typed, reading=reading)


def _unclear(row: PaperRow, item: Unclear) -> tuple[str, list[Choice]]:
    word = item.kind == "word"
    choices = []
    for reading in item.readings[:OFFERED]:
        hint = _means(item.text, reading) if word else tr("Write {reading}", reading=reading)
        answer = Answer(item.start, item.end, item.text, reading, word)
        choices.append(Choice(reading.strip(" :"), answer, hint))
    if word:
        hint = tr("From now on “{typed}” says nothing of how hard it was", typed=item.text)
        answer = Answer(item.start, item.end, item.text, NOT_JUDGED, word)
        choices.append(Choice(tr("Not judged"), answer, hint))
    rest = row.running_s > 0
    if item.kind != "year":
        skip = tr("Keep the rest") if rest else tr("Skip")
        choices.append(Choice(skip, None, tr("Leave “{typed}” out", typed=item.text.strip())))
    shown = item.text.strip()
    return tr(
        "Line {number}, “{typed}”: {question}",
        number=row.entry.number,
        typed=_short(shown),
        question=item.question,
    ), choices


def _short(text: str) -> str:
    return text if len(text) <= 40 else f"{text[:39]}…"


class Question(QWidget):
    """Lies over its row; the row's own words are painted above it."""

    answered = Signal(object)  # Answer
    left_out = Signal(str)

    def __init__(self, row: PaperRow, left_out: Sequence[str]) -> None:
        super().__init__()
        self.row, self._left_out = row, tuple(left_out)
        text, choices = asked_of(row, left_out) or ("", [])
        self.setAccessibleName(f"{when(row)}: {text}")
        self._color = "check" if row.state == paper_log.GUESSED else "not_read"
        self.label = Label(text, "body", self._color, wrap=True)
        self.buttons: list[QPushButton] = []
        self._column = QVBoxLayout(self)
        self._column.setSpacing(4)
        self._column.addWidget(self.label)
        flow = FlowLayout()
        for number, choice in enumerate(choices):
            made = button(
                choice.words, name=tr("{choice}, for {day}", choice=choice.words, day=when(row))
            )
            made.setToolTip(choice.hint)
            made.clicked.connect(partial(self._choose, number))
            made.setProperty("slim", True)
            flow.addWidget(made)
            self.buttons.append(made)
        self._column.addLayout(flow)

    def _choose(self, number: int, _: bool = False) -> None:
        """Answer by where the words stand now: text before them may have changed meanwhile."""
        asked = asked_of(self.row, self._left_out)
        if asked is None or number >= len(asked[1]):
            return
        answer = asked[1][number].answer
        if answer is not None:
            self.answered.emit(answer)
            return
        entry = self.row.entry
        for item in paper_log.waiting(entry, self._left_out)[:1]:
            self.left_out.emit(paper_log.piece_key(entry, item))

    def place(self, left: int) -> None:
        """Set the margins so that the words begin where those of the row do."""
        look = theme.current()
        # The list's style sheet has taken the colour away from what was put into it.
        self.label.set_color(self._color)
        self._column.setContentsMargins(left, look.px(HEIGHT) - 4, look.px(12), look.px(10))

    def height_at(self, width: int) -> int:
        """The height it needs below the row's own line."""
        layout = self.layout()
        assert layout is not None
        return layout.totalHeightForWidth(width) - theme.current().px(HEIGHT)
