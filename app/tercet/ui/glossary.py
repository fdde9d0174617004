"""The glossary: the trade words of the screens, a sentence or two each; F1 opens it anywhere."""

from __future__ import annotations

from functools import cmp_to_key
from html import escape

from PySide6.QtCore import QCollator
from PySide6.QtGui import QFont
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QLineEdit,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from tercet.language import mark, tr
from tercet.ui import theme

#: Words and what they mean here; shown in the order of the alphabet.
WORDS = (
    (mark("About"),
     mark("Stands before every number that comes from thresholds nobody has confirmed yet.")),
    (mark("Block"),
     mark("Some weeks of training with one purpose, such as base, support or specific.")),
    (mark("Build-up"),
     mark("Easy, moderate and hard time added up from the first day of a block.")),
    (mark("Double"), mark("Two runs on one day.")),
    (mark("Easy"), mark("Running below the first threshold (LT1).")),
    (mark("Easy in hand"), mark(
        "Easy time beyond what the block's wanted share asks for so far; easy short is what "
        "is missing."
    )),
    (mark("Effort said"), mark(
        "The runner's own word for a whole session on a scale from 0 to 10, known as session "
        "RPE."
    )),
    (mark("Hard"), mark("Running above the second threshold (LT2).")),
    (mark("Interval, 9 of 10 cases"),
     mark("Between these two values the truth lies in 9 of 10 runs alike.")),
    (mark("LT1, LT2"), mark(
        "The two thresholds. Up to LT1 lactate in the blood stays near its resting level; "
        "above LT2 it keeps rising. Each is known as a heart rate and as a pace on level "
        "ground."
    )),
    (mark("Moderate"),
     mark("Running between the two thresholds: harder than it feels, easier than it helps.")),
    (mark("Not running"),
     mark("Standing, slow walking, or a timer that stood still; counted in no shade.")),
    (mark("Pace on level ground"),
     mark("The pace on the flat that would cost as much as this hill did.")),
    (mark("Plan rule"), mark("The line under a day's bar, as long as what was planned.")),
    (mark("Recovery"), mark("The time between two repetitions.")),
    (mark("Repetition"), mark("One bout of work with rest before the next.")),
    (mark("Share of easy"), mark(
        "Easy time of all judged running time. Four fifths or more over a whole cycle is "
        "common among distance runners."
    )),
    (mark("Stair"), mark(
        "How a session is drawn: easy low, moderate in the middle, hard at full height, as "
        "long as it lasted."
    )),
    (mark("Strides"), mark("Short relaxed sprints of about 10 to 20 seconds in an easy run.")),
    (mark("Taper"), mark("The last days before a race with less running.")),
    (mark("Unjudged"),
     mark("Running with neither speed nor heart rate, or before there were thresholds.")),
)  # fmt: skip


class Glossary(QDialog):
    """The words with their meanings; typing in the field leaves those that hold it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Glossary"))
        look = theme.current()
        self.resize(look.px(560), look.px(520))
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 14, 16, 14)
        self.field = QLineEdit()
        self.field.setPlaceholderText(tr("Find a word"))
        self.field.setAccessibleName(tr("Find a word"))
        self.field.textChanged.connect(self._fill)
        self.text = QTextBrowser()
        self.text.setAccessibleName(tr("Words and what they mean"))
        self.text.setFont(QFont(look.font("body")))
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        for part in (self.field, self.text, buttons):
            column.addWidget(part)
        self._fill()

    def _fill(self, wanted: str = "") -> None:
        collator = QCollator()
        told = [(tr(word), tr(meaning)) for word, meaning in WORDS]

        def collated(one: tuple[str, str], other: tuple[str, str]) -> int:
            return collator.compare(one[0], other[0])

        lines = [
            f"<p><b>{escape(word)}</b><br>{escape(meaning)}</p>"
            for word, meaning in sorted(told, key=cmp_to_key(collated))
            if wanted.lower() in f"{word} {meaning}".lower()
        ]
        nothing = tr("No word like this stands here.")
        self.text.setHtml("".join(lines) or f"<p>{nothing}</p>")
