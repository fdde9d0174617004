"""The glossary: the trade words of the screens, a sentence or two each; F1 opens it anywhere."""

from __future__ import annotations

from html import escape

from PySide6.QtGui import QFont
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QLineEdit,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from tercet.ui import theme

#: Words in the order of the alphabet, and what they mean here.
WORDS = (
    ("About", "Stands before every number that comes from thresholds nobody has confirmed yet."),
    ("Block", "Some weeks of training with one purpose, such as base, support or specific."),
    ("Build-up", "Easy, moderate and hard time added up from the first day of a block."),
    ("Double", "Two runs on one day."),
    ("Easy", "Running below the first threshold (LT1)."),
    ("Easy in hand", "Easy time beyond what the block's wanted share asks for so far; easy short "
                     "is what is missing."),
    ("Effort said", "The runner's own word for a whole session on a scale from 0 to 10, known as "
                    "session RPE."),
    ("Hard", "Running above the second threshold (LT2)."),
    ("Interval, 9 of 10 cases", "Between these two values the truth lies in 9 of 10 runs alike."),
    ("LT1, LT2", "The two thresholds. Up to LT1 lactate in the blood stays near its resting level; "
                 "above LT2 it keeps rising. Each is known as a heart rate and as a pace on level "
                 "ground."),
    ("Moderate", "Running between the two thresholds: harder than it feels, easier than it helps."),
    ("Not running", "Standing, slow walking, or a timer that stood still; counted in no shade."),
    ("Pace on level ground", "The pace on the flat that would cost as much as this hill did."),
    ("Plan rule", "The line under a day's bar, as long as what was planned."),
    ("Recovery", "The time between two repetitions."),
    ("Repetition", "One bout of work with rest before the next."),
    ("Share of easy", "Easy time of all judged running time. Four fifths or more over a whole "
                      "cycle is common among distance runners."),
    ("Stair", "How a session is drawn: easy low, moderate in the middle, hard at full height, as "
              "long as it lasted."),
    ("Strides", "Short relaxed sprints of about 10 to 20 seconds in an easy run."),
    ("Taper", "The last days before a race with less running."),
    ("Unjudged", "Running with neither speed nor heart rate, or before there were thresholds."),
)  # fmt: skip


class Glossary(QDialog):
    """The words with their meanings; typing in the field leaves those that hold it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Glossary")
        look = theme.current()
        self.resize(look.px(560), look.px(520))
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 14, 16, 14)
        self.field = QLineEdit()
        self.field.setPlaceholderText("Find a word")
        self.field.setAccessibleName("Find a word")
        self.field.textChanged.connect(self._fill)
        self.text = QTextBrowser()
        self.text.setAccessibleName("Words and what they mean")
        self.text.setFont(QFont(look.font("body")))
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        for part in (self.field, self.text, buttons):
            column.addWidget(part)
        self._fill()

    def _fill(self, wanted: str = "") -> None:
        lines = [
            f"<p><b>{escape(word)}</b><br>{escape(meaning)}</p>"
            for word, meaning in WORDS
            if wanted.lower() in f"{word} {meaning}".lower()
        ]
        self.text.setHtml("".join(lines) or "<p>No word like this stands here.</p>")
