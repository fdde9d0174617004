"""What a week still allows: one sentence, hard first, and three bars on one scale."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from tercet import units
from tercet.engine.allowance import Allowance
from tercet.language import mark, tr
from tercet.ui import stairs, theme, words
from tercet.ui.widgets import ElidedLabel, Label

#: Less than this is nothing left, or nothing over. [s], [m]
NOTHING = {"time": 30.0, "metres": 50.0}
_USED = {
    "time": (
        mark("easy {run} of {wanted}"),
        mark("moderate {run} of {wanted}"),
        mark("hard {run} of {wanted}"),
    ),
    "metres": (
        mark("easy {run} of {wanted} {unit}"),
        mark("moderate {run} of {wanted} {unit}"),
        mark("hard {run} of {wanted} {unit}"),
    ),
}


def amount(value: float, measure: str) -> str:
    """An amount in a sentence: ``18 min``, ``3 h 10``, or ``4.2 km``."""
    if measure == "metres":
        return units.distance(value)
    hours, minutes = divmod(round(value / 60.0), 60)
    if hours:
        return tr("{hours} h {minutes}", hours=hours, minutes=f"{minutes:02d}")
    return tr("{minutes} min", minutes=minutes)


def sentences(week: Allowance, measure: str, *, over: bool = False) -> tuple[str, str]:
    """The allowance in words: the sentence on hard, and the rest.

    ``over`` says that the week has passed, then nothing is left to be run.
    """
    least = NOTHING[measure]
    left = week.left
    if over:
        return tr("The week is over."), _passed(-left[1], -left[2], measure)
    hard = left[2]
    if week.wanted[2] < least and hard > -least:
        first = tr("No hard running is wanted this week.")
    elif hard < -least:
        first = tr("Hard {amount} over this week.", amount=_over(-hard, measure))
    elif hard < least:
        first = tr("Hard used up this week.")
    else:
        first = tr("{amount} hard left this week.", amount=amount(hard, measure))
    moderate = left[1]
    if moderate < -least:
        rest = tr("Moderate {amount} over.", amount=_over(-moderate, measure))
    elif moderate < least:
        rest = tr("Moderate used up.")
    else:
        rest = tr("{amount} moderate left.", amount=amount(moderate, measure))
    easy = left[0]
    if easy >= least:
        last = tr("{amount} easy to go.", amount=amount(easy, measure))
    else:
        last = tr("Easy is done.")
    return first, f"{rest} {last}"


def _passed(moderate: float, hard: float, measure: str) -> str:
    """What a week that is over holds too much of; nothing if none."""
    least = NOTHING[measure]
    if moderate > least and hard > least:
        return tr(
            "Moderate {moderate} over and hard {hard} over.",
            moderate=_over(moderate, measure),
            hard=_over(hard, measure),
        )
    if moderate > least:
        return tr("Moderate {amount} over.", amount=_over(moderate, measure))
    if hard > least:
        return tr("Hard {amount} over.", amount=_over(hard, measure))
    return ""


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
                return words.number(value / units.metres(), 1)
            return words.hours(value)

        sides = zip(_USED[self._measure], self._week.run, self._week.wanted, strict=True)
        unit = units.word()
        return [
            tr(text, run=write(run), wanted=write(wanted), unit=unit) for text, run, wanted in sides
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
            self.rest.setText(tr("A block with a first week's volume tells what its weeks allow."))
            return
        first, rest = sentences(week, measure, over=over)
        self.first.setText(first)
        self.rest.setText(rest)
        self.bar.set(week, measure)
