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
from tercet.library import paper_log
from tercet.library.paper_log import PaperRow
from tercet.ui import theme
from tercet.ui.flow import FlowLayout
from tercet.ui.paper.rows import HEIGHT, when
from tercet.ui.widgets import Label, button

_SHADES = {Shade.EASY: "easy", Shade.MODERATE: "moderate", Shade.HARD: "hard"}
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
        hint = f"From now on “{guess.text}” means {reading}" if word else f"Write {reading}"
        return Choice(label, Answer(guess.start, guess.end, guess.text, reading, word), hint)

    other = guess.others[0] if guess.others else ""
    choices = [choice("Right", guess.reading)]
    if other:
        choices.append(choice(f"It was {other}" if word else other.strip(" :"), other))
    shade = WORDS.get(guess.reading)
    told = f", {_SHADES[shade]}" if shade in _SHADES and _SHADES[shade] != guess.reading else ""
    told = f"{told} (not judged until you say)"
    return f"“{guess.text}”: {guess.reading}?{told}", choices


def _unclear(row: PaperRow, item: Unclear) -> tuple[str, list[Choice]]:
    word = item.kind == "word"
    choices = []
    for reading in item.readings[:OFFERED]:
        hint = f"From now on “{item.text}” means {reading}" if word else f"Write {reading}"
        answer = Answer(item.start, item.end, item.text, reading, word)
        choices.append(Choice(reading.strip(" :"), answer, hint))
    if word:
        hint = f"From now on “{item.text}” says nothing of how hard it was"
        answer = Answer(item.start, item.end, item.text, NOT_JUDGED, word)
        choices.append(Choice("Not judged", answer, hint))
    rest = row.running_s > 0
    if item.kind != "year":
        skip = "Keep the rest" if rest else "Skip"
        choices.append(Choice(skip, None, f"Leave “{item.text.strip()}” out"))
    shown = item.text.strip()
    return f"Line {row.entry.number}, “{_short(shown)}”: {item.question}", choices


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
            made = button(choice.words, name=f"{choice.words}, for {when(row)}")
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
