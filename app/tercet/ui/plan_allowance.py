"""What a week still allows: one sentence, hard first, and three bars on one scale."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from tercet.engine.allowance import Allowance
from tercet.ui import stairs, theme, words
from tercet.ui.widgets import ElidedLabel, Label

#: Less than this is nothing left, or nothing over. [s], [m]
NOTHING = {"time": 30.0, "metres": 50.0}
_NAMES = ("easy", "moderate", "hard")


def amount(value: float, measure: str) -> str:
    """An amount in a sentence: ``18 min``, ``3 h 10``, or ``4.2 km``."""
    if measure == "metres":
        return f"{words.number(value / 1000.0, 1)} km"
    hours, minutes = divmod(round(value / 60.0), 60)
    return f"{hours} h {minutes:02d}" if hours else f"{minutes} min"


def sentences(week: Allowance, measure: str, *, over: bool = False) -> tuple[str, str]:
    """The allowance in words: the sentence on hard, and the rest.

    ``over`` says that the week has passed, then nothing is left to be run.
    """
    least = NOTHING[measure]
    left = week.left
    if over:
        parts = [
            f"{name} {_over(-value, measure)} over"
            for name, value in zip(_NAMES[1:], left[1:], strict=True)
            if value < -least
        ]
        return "The week is over.", f"{words.listed(parts)}.".capitalize() if parts else ""
    hard = left[2]
    if week.wanted[2] < least and hard > -least:
        first = "No hard running is wanted this week."
    elif hard < -least:
        first = f"Hard {_over(-hard, measure)} over this week."
    elif hard < least:
        first = "Hard used up this week."
    else:
        first = f"{amount(hard, measure)} hard left this week."
    moderate = left[1]
    if moderate < -least:
        rest = f"Moderate {_over(-moderate, measure)} over."
    elif moderate < least:
        rest = "Moderate used up."
    else:
        rest = f"{amount(moderate, measure)} moderate left."
    easy = left[0]
    rest += f" {amount(easy, measure)} easy to go." if easy >= least else " Easy is done."
    return first, rest


def _over(value: float, measure: str) -> str:
    return words.hours(value) if measure == "time" else amount(value, measure)


class AllowanceBar(QWidget):
    """Three bars on one scale: run filled, the rest hollow; words below each."""

    def __init__(self) -> None:
        super().__init__()
        self._week: Allowance | None = None
        self._measure = "time"
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def set(self, week: Allowance, measure: str) -> None:
        """Show a week."""
        self._week, self._measure = week, measure
        self.setAccessibleName("; ".join(self._words()))
        self.update()

    def sizeHint(self) -> QSize:
        look = theme.current()
        return QSize(400, look.px(20) + QFontMetricsF(look.font("small")).height().__ceil__() + 4)

    def _words(self) -> list[str]:
        if self._week is None:
            return []

        def write(value: float) -> str:
            if self._measure == "metres":
                return words.number(value / 1000.0, 1)
            return words.hours(value)

        unit = " km" if self._measure == "metres" else ""
        return [
            f"{name} {write(run)} of {write(wanted)}{unit}"
            for name, run, wanted in zip(_NAMES, self._week.run, self._week.wanted, strict=True)
        ]

    def paintEvent(self, event: QPaintEvent) -> None:
        if self._week is None:
            return
        look = theme.current()
        painter = QPainter(self)
        font = look.font("small")
        painter.setFont(font)
        metrics = QFontMetricsF(font)
        gap = look.px(16)
        texts = self._words()
        least = [metrics.horizontalAdvance(text) for text in texts]
        sizes = [max(w, r) for w, r in zip(self._week.wanted, self._week.run, strict=True)]
        # Words that are longer than their bar push the next one on; the scale gives way.
        room = self.width() - 2 * gap - 4
        scale = room / max(sum(sizes), 1.0)
        for _ in range(4):
            taken = sum(max(size * scale, text) for size, text in zip(sizes, least, strict=True))
            if taken > room:
                scale *= max(0.1, (room - (taken - sum(sizes) * scale)) / (sum(sizes) * scale))
        tall = stairs.heights((9, 14, 18), look)
        base = float(look.px(19))
        x = 0.0
        for number, text in enumerate(texts):
            run, wanted = self._week.run[number], self._week.wanted[number]
            seconds = [0.0] * 5
            seconds[number] = run
            stairs.paint_outline(
                painter,
                QRectF(round(x), base - tall[number], max(2.5, wanted * scale), tall[number]),
                "control",
                look,
            )
            if run > 0:
                stairs.paint_stair(painter, x, base, scale * 3600, seconds, tall, look)
            painter.setPen(look.color("text_2"))
            painter.setFont(font)
            box = QRectF(x, base + 2, least[number] + 4, metrics.height())
            painter.drawText(box, 0, text)
            x += max(sizes[number] * scale, least[number]) + gap


class AllowanceLine(QWidget):
    """The sentence with its bars; without a volume it says what would give one."""

    def __init__(self) -> None:
        super().__init__()
        self.first = Label("", "body_bold")
        self.rest = ElidedLabel("", "body", "text_2")
        self.bar = AllowanceBar()
        line = QHBoxLayout()
        line.setSpacing(10)
        line.addWidget(self.first)
        line.addWidget(self.rest, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addLayout(line)
        column.addWidget(self.bar)

    def show_week(self, week: Allowance | None, measure: str, *, over: bool) -> None:
        """Show a week's allowance, or that there is none."""
        self.bar.setVisible(week is not None)
        self.first.setVisible(week is not None)
        if week is None:
            self.first.setText("")
            self.rest.setText("Give the block a first week's volume to see what a week allows.")
            return
        first, rest = sentences(week, measure, over=over)
        self.first.setText(first)
        self.rest.setText(rest)
        self.bar.set(week, measure)
